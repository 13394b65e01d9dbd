"""Options in, what can hurt the crew out: before anyone goes in, every day, while working; each sentence once, hazards only."""

from collections.abc import Iterable

from estimator.model.judgement import Verdict
from estimator.model.offer import Option
from estimator.model.say import Feet, Say
from estimator.papers.letter import Letter
from estimator.papers.segments import all_repairs

BEFORE = frozenset({
    "crw-protective", "crw-type", "crw-footing", "crw-which-rule", "crw-overhead", "crw-gas",
    "water-in-the-ground", "tendons-in-the-slab", "footing-below-dig", "tunnel-under-a-beam", "edge-beam-is-known",
    "competent-person-is-named", "protect-from-five-feet", "soil-over-an-old-pipe", "engineer-past-twenty-feet",
    "slope-that-does-not-fit", "second-way-out", "headroom", "soil-that-runs", "asbestos-before-cutting", "lead-paint",
    "find-what-runs-in-the-slab", "locate-utilities", "burst-near-utilities", "utility-in-the-bore", "void-needs-an-engineer",
})  # fmt: skip
EVERY_DAY = frozenset({
    "crw-daily", "crw-air", "crw-lockout", "crw-heat", "crw-night", "people-in-a-tunnel", "heat-wires-sewage-night",
    "ladder-from-four-feet",
})  # fmt: skip
WHILE_WORKING = frozenset({
    "slabs-are-not-undermined", "strip-stops-at-a-beam", "concrete-dust", "test-water-and-plugs", "resin-smell",
})  # fmt: skip
"""Ids of the firm's sentences for the crew and of the rules that guard people, by when they count."""

SAID_BY: dict[str, str] = {
    "a test plug is rated and tied, nobody stands in line with the pipe, and the water is let down before the plug": "crw-plug",
    "spoil, tools and machines stay at least {back} from the edge": "crw-spoil",
    "the pipe is filled with water and held down before fill is pumped: an empty pipe floats": "crw-float",
    "concrete dust is deadly over the years: wet saw, shrouded breaker, and masks indoors for saw and breaker alike": "crw-silica",
    "nobody flushes while someone is under the house; air is tested before entry and all the time": "crw-lockout",
}
"""Warnings of the takeoff that a sentence of the firm's already says, and which."""
NOT_HAZARDS = frozenset({
    "old iron can have holes under the rust: scraping shows them, it does not make them",
    "a rod or the camera passes all the way before the pull is promised",
    "{count} dead side drain(s) stay closed under the liner",
    "native fill packed by hand settles: the tunnel is not a support",
})  # fmt: skip
"""Warnings of the takeoff that hurt the work, not people: they stand on the work sheet."""


def hazards(letter: Letter, options: Iterable[Option]) -> tuple[list[str], list[str], list[str]]:
    """The three groups in the reader's language."""
    chosen = tuple(options)
    texts: dict[str, str] = {}  # sentence: the id it is grouped by
    for term in (term for option in chosen for term in option.terms if term.kind == "crew caution"):
        texts.setdefault(letter.text(term), term.id)
    for verdict in _deepest(v for option in chosen for v in verdicts(option)):
        if verdict.rule in BEFORE | EVERY_DAY | WHILE_WORKING:
            texts.setdefault(letter.all([verdict.estimator])[0], verdict.rule)
    said = set(texts.values())
    harmless = {v.estimator.text for option in chosen for v in _every(option)} | NOT_HAZARDS
    for caution in (c for option in chosen for c in _cautions(option)):
        if caution.text not in harmless and SAID_BY.get(caution.text) not in said:
            texts.setdefault(letter.all([caution])[0], "")
    before = [text for text, by in texts.items() if by in BEFORE]
    daily = [text for text, by in texts.items() if by in EVERY_DAY]
    return before, daily, [text for text, by in texts.items() if by not in BEFORE | EVERY_DAY]


def notes(letter: Letter, option: Option) -> list[str]:
    """What else the crew of one option should know: nothing that hurts people."""
    by_rule = [v.estimator for v in verdicts(option) if v.rule not in BEFORE | EVERY_DAY | WHILE_WORKING]
    by_takeoff = [caution for caution in _cautions(option) if caution.text in NOT_HAZARDS]
    return list(dict.fromkeys(letter.all([*by_rule, *by_takeoff])))


TOLD = frozenset({"caution", "adds work", "requires first", "until approved", "no fixed price"})


def verdicts(option: Option) -> list[Verdict]:
    """What the rules say to those who do the work, before and after it was measured."""
    return [v for v in _every(option) if v.effect.value in TOLD and not v.overruled]


def _every(option: Option) -> list[Verdict]:
    before = [v for r in all_repairs(option.scope.repairs) for v in r.verdicts]
    return [*before, *(v for takeoff in option.takeoffs for v in takeoff.finds)]


def _deepest(found: Iterable[Verdict]) -> list[Verdict]:
    """Of the rules that speak of a depth only what they say of the deepest dig: it is the stricter for all."""
    out: dict[object, Verdict] = {}
    for verdict in found:
        depth = dict(verdict.estimator.words).get("depth")
        key: object = verdict.rule if isinstance(depth, Feet) else verdict.estimator
        held = dict(out[key].estimator.words).get("depth") if key in out else None
        if key not in out or (isinstance(depth, Feet) and isinstance(held, Feet) and depth.ft > held.ft):
            out[key] = verdict
    return list(out.values())


def _cautions(option: Option) -> list[Say]:
    return [caution for takeoff in option.takeoffs for caution in takeoff.cautions]
