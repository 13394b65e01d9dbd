"""Options in, what can hurt the crew out: before anyone goes in, every day, while working; each sentence once, hazards only."""

from collections.abc import Iterable

from estimator.model.judgement import Verdict
from estimator.model.offer import Option
from estimator.model.say import Say
from estimator.papers.hazards_of_a_dig import speaks_of_one_dig, told
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
    "ladder-from-four-feet", "drains-are-locked-out",
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
    "no beam is sawn or notched; the crew stops on each side and digs under it by hand": "crw-beam",
    "the pit mouth is held by what the competent person decides, fenced, and covered at night": "crw-night",
    "no air test on plastic pipe": "crw-plug",
    "Inside or enclosed: water-fed saw and shrouded breaker, respirator APF 10 for both at any duration (29 CFR 1926.1153 Table 1).": "crw-silica",
    "No walk, drive or slab undermined without support (29 CFR 1926.651(i)(3)).": "crw-footing",
}
"""Sentences of takeoff and rules that one of the firm's already says in full, and which."""
SAID_BY_ALL: dict[str, frozenset[str]] = {
    "people-in-a-tunnel": frozenset({"crw-air", "crw-lockout", "crw-which-rule", "crw-vapor"}),
    "heat-wires-sewage-night": frozenset({"crw-overhead", "crw-sewage", "crw-night"}),
}
"""Rules that several of the firm's sentences and the daily boxes say together."""
IN_THE_BOXES = frozenset({"locate-utilities", "asbestos-before-cutting", "lead-paint"})
"""Rules whose whole text stands in the boxes that every safety page has."""
NOT_HAZARDS = frozenset({
    "old iron can have holes under the rust: scraping shows them, it does not make them",
    "a rod or the camera passes all the way before the pull is promised",
    "{count} dead side drain(s) stay closed under the liner",
    "native fill packed by hand settles: the tunnel is not a support",
    "up to {over} over the pipe the fill is packed by hand, in layers of {layer}; the machine packs only above that",
})  # fmt: skip
"""Warnings of the takeoff that hurt the work, not people: they stand on the work sheet."""


Groups = tuple[list[str], list[str], list[str]]
"""Sentences for before anyone goes in, every day, while working."""


def hazards(letter: Letter, options: Iterable[Option]) -> tuple[Groups, list[str]]:
    """What counts for every option, in three groups; then what counts for some, their letters in front. No single digs."""
    chosen = tuple({o.letter: o for o in options}.values())
    by_text: dict[str, str] = {}
    letters: dict[str, list[str]] = {}
    for option in chosen:
        for text, by in _of_option(letter, option).items():
            by_text.setdefault(text, by)
            letters.setdefault(text, []).append(option.letter)
    every = {text: by for text, by in by_text.items() if len(letters[text]) == len(chosen)}
    before = [text for text, by in every.items() if by in BEFORE]
    daily = [text for text, by in every.items() if by in EVERY_DAY]
    working = [text for text, by in every.items() if by not in BEFORE | EVERY_DAY]
    some = [f"{', '.join(letters[text])}: {text}" for text in by_text if text not in every]
    return (before, daily, working), some


def _of_option(letter: Letter, option: Option) -> dict[str, str]:
    """Each sentence of one option with the id it is grouped by; the firm's own first."""
    texts = {letter.text(term): term.id for term in option.terms if term.kind == "crew caution"}
    said = frozenset(texts.values())
    for verdict in verdicts(option):
        if verdict.rule in BEFORE | EVERY_DAY | WHILE_WORKING and not _known(verdict, said):
            texts.setdefault(letter.all([verdict.estimator])[0], verdict.rule)
    told_by_rules = {v.estimator.text for v in _every(option)} | NOT_HAZARDS
    if SERVICES in texts.values():
        told_by_rules.add(SHUT_OFF)
    for caution in _cautions(option):
        elsewhere = speaks_of_one_dig(caution) or caution.text in told_by_rules or SAID_BY.get(caution.text) in said
        if not elsewhere:
            texts.setdefault(letter.all([caution])[0], "")
    return texts


SERVICES = "find-what-runs-in-the-slab"
SHUT_OFF = "water, gas, power and ducts in and under the floor are found and shut off before the first cut"
"""What the takeoff warns of and the rule on services says with what is known of this house."""


def _known(verdict: Verdict, said: frozenset[str]) -> bool:
    """Said elsewhere on the page: with its dig, in the boxes, or by the firm's own sentences."""
    others = SAID_BY_ALL.get(verdict.rule)
    return (
        speaks_of_one_dig(verdict.estimator)
        or verdict.rule in IN_THE_BOXES
        or SAID_BY.get(verdict.estimator.text) in said
        or (others is not None and others <= said)
    )


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
