"""Options in, what can hurt the crew out: before anyone goes in, every day, while working; each sentence once, hazards only."""

from collections.abc import Iterable

from estimator.model.judgement import Verdict
from estimator.model.offer import Option
from estimator.model.say import Say
from estimator.papers.hazards_of_a_dig import of_one_dig, speaks_of_one_dig, told
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
    for text, rule in of_one_dig(letter, chosen):
        if not rule or rule in BEFORE | EVERY_DAY | WHILE_WORKING:
            texts.setdefault(text, rule)
    for verdict in (v for option in chosen for v in verdicts(option)):
        if verdict.rule in BEFORE | EVERY_DAY | WHILE_WORKING and not speaks_of_one_dig(verdict.estimator):
            texts.setdefault(letter.all([verdict.estimator])[0], verdict.rule)
    said = set(texts.values())
    harmless = {v.estimator.text for option in chosen for v in _every(option)} | NOT_HAZARDS
    for caution in (c for option in chosen for c in _cautions(option)):
        known = speaks_of_one_dig(caution) or caution.text in harmless or SAID_BY.get(caution.text) in said
        if not known:
            texts.setdefault(letter.all([caution])[0], "")
    before = [text for text, by in texts.items() if by in BEFORE]
    daily = [text for text, by in texts.items() if by in EVERY_DAY]
    return before, daily, [text for text, by in texts.items() if by not in BEFORE | EVERY_DAY]


SPEAKS_OF_PRICE = ("price", "offer", "allowance", "surcharge", "charge", "cheap")
"""Words of what a rule says to who writes the quote: such a sentence is not for who does the work."""


def notes(letter: Letter, option: Option) -> list[str]:
    """What else the crew of one option should know: nothing that hurts people, nothing about money."""
    by_rule = [
        v.estimator
        for v in verdicts(option)
        if v.rule not in BEFORE | EVERY_DAY | WHILE_WORKING
        and not any(word in v.estimator.text.lower() for word in SPEAKS_OF_PRICE)
    ]
    by_takeoff = [caution for caution in _cautions(option) if caution.text in NOT_HAZARDS]
    return list(dict.fromkeys(letter.all([*by_rule, *by_takeoff])))


def verdicts(option: Option) -> list[Verdict]:
    """What the rules say to those who do the work, before and after it was measured."""
    return [v for v in _every(option) if told(v)]


def _every(option: Option) -> list[Verdict]:
    before = [v for r in all_repairs(option.scope.repairs) for v in r.verdicts]
    return [*before, *(v for takeoff in option.takeoffs for v in takeoff.finds)]


def _cautions(option: Option) -> list[Say]:
    return [caution for takeoff in option.takeoffs for caution in takeoff.cautions]
