"""Options in, what can hurt the crew out: before anyone goes in, every day, while working; each sentence once, hazards only."""

from collections.abc import Iterable

from estimator.model.judgement import Verdict
from estimator.model.offer import Option
from estimator.model.say import Say
from estimator.papers.hazards_of_a_dig import speaks_of_one_dig, told
from estimator.papers.letter import Letter
from estimator.papers.rules_for_the_crew import FOR_THE_OFFICE, for_the_crew
from estimator.papers.said_elsewhere import said_elsewhere, standing
from estimator.quote.stays import all_repairs

BEFORE = frozenset({
    "crw-protective", "crw-type", "crw-footing", "crw-which-rule", "crw-overhead", "crw-gas",
    "crw-permit-space", "crw-chemicals", "crw-stray-current", "asbestos-cement-pipe",
    "water-in-the-ground", "room-is-dug-in-a-crawl-space", "sewage-under-pressure", "tendons-in-the-slab", "footing-below-dig", "tunnel-under-a-beam", "edge-beam-is-known",
    "competent-person-is-named", "protect-from-five-feet", "soil-over-an-old-pipe", "engineer-past-twenty-feet",
    "slope-that-does-not-fit", "machine-reaches", "second-way-out", "headroom", "soil-that-runs", "asbestos-before-cutting", "lead-paint",
    "find-what-runs-in-the-slab", "locate-utilities", "burst-near-utilities", "utility-in-the-bore", "void-needs-an-engineer",
})  # fmt: skip
EVERY_DAY = frozenset({
    "crw-daily", "crw-air", "crw-gas-numbers", "crw-co", "crw-co-around", "crw-lockout", "crw-heat", "crw-night", "people-in-a-tunnel", "heat-wires-sewage-night",
    "ladder-from-four-feet", "drains-are-locked-out", "crawl-space-is-tight",
})  # fmt: skip
WHILE_WORKING = frozenset({
    "crw-soil-gas", "crw-jetter", "crw-cable-machine", "crw-blow-back", "crw-line-of-pull", "crw-heave", "crw-lead-joint",
    "crw-asbestos-cement",
    "slabs-are-not-undermined", "strip-stops-at-a-beam", "concrete-dust", "test-water-and-plugs", "resin-smell",
})  # fmt: skip
"""Ids of the firm's sentences for the crew and of the rules that guard people, by when they count."""

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
    stands = standing(option.terms)
    for verdict in verdicts(option):
        here = verdict.rule in BEFORE | EVERY_DAY | WHILE_WORKING and not speaks_of_one_dig(verdict.estimator)
        if here and not said_elsewhere(verdict.estimator, stands):
            texts.setdefault(letter.all([for_the_crew(verdict.estimator)])[0], verdict.rule)
    told_by_rules = {verdict.estimator for verdict in verdicts(option)}
    for caution in _cautions(option):
        elsewhere = speaks_of_one_dig(caution) or caution in told_by_rules or said_elsewhere(caution, stands)
        if not elsewhere and caution.text not in NOT_HAZARDS:
            texts.setdefault(letter.all([for_the_crew(caution)])[0], "")
    return texts


def notes(letter: Letter, option: Option) -> list[str]:
    """What else the crew of one option should know: nothing that hurts people, nothing about money."""
    by_rule = [
        for_the_crew(v.estimator)
        for v in verdicts(option)
        if v.rule not in BEFORE | EVERY_DAY | WHILE_WORKING and v.estimator.text not in FOR_THE_OFFICE
    ]
    by_takeoff = [caution for caution in _cautions(option) if caution.text in NOT_HAZARDS]
    return list(dict.fromkeys(letter.all([*by_rule, *by_takeoff])))


def verdicts(option: Option) -> list[Verdict]:
    """What the rules say to those who do the work, before and after it was measured."""
    before = [v for r in all_repairs(option.scope.repairs) for v in r.verdicts]
    after = [v for takeoff in option.takeoffs for v in takeoff.finds]
    return [v for v in (*before, *after) if told(v)]


def _cautions(option: Option) -> list[Say]:
    return [caution for takeoff in option.takeoffs for caution in takeoff.cautions]
