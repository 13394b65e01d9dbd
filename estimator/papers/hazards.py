"""An option in, what can hurt the crew out by topic; each sentence once, hazards only."""

from estimator.model.offer import Option
from estimator.model.say import Say
from estimator.papers.hazards_of_a_dig import speaks_of_one_dig, verdicts
from estimator.papers.letter import Letter
from estimator.papers.rules_for_the_crew import FOR_THE_OFFICE, for_the_crew
from estimator.papers.said_elsewhere import said_elsewhere, standing

EXCAVATION, AIR, SLAB = Say.of("Excavation"), Say.of("Air and gas"), Say.of("Slab, saw, dust")
LINES, PIPE, PEOPLE = Say.of("Buried lines"), Say.of("Pipe and test"), Say.of("People")
TOPICS: dict[Say, frozenset[str]] = {
    EXCAVATION: frozenset({
        "crw-protective", "crw-daily", "crw-spoil", "crw-type", "crw-footing", "crw-which-rule", "crw-overhead", "crw-night",
        "water-in-the-ground", "room-is-dug-in-a-crawl-space", "footing-below-dig", "tunnel-under-a-beam", "edge-beam-is-known",
        "competent-person-is-named", "protect-from-five-feet", "soil-over-an-old-pipe", "engineer-past-twenty-feet",
        "slope-that-does-not-fit", "machine-reaches", "second-way-out", "headroom", "soil-that-runs", "void-needs-an-engineer",
        "ladder-from-four-feet", "slabs-are-not-undermined", "crw-heave",
    }),
    AIR: frozenset({
        "crw-air", "crw-gas-numbers", "crw-co", "crw-gas", "crw-permit-space", "crw-vapor", "crw-soil-gas",
        "people-in-a-tunnel", "crawl-space-is-tight", "utility-in-the-bore", "resin-smell",
    }),
    SLAB: frozenset({
        "crw-silica", "crw-beam", "crw-asbestos-cement", "asbestos-cement-pipe", "tendons-in-the-slab",
        "asbestos-before-cutting", "lead-paint", "strip-stops-at-a-beam", "concrete-dust",
    }),
    LINES: frozenset({"find-what-runs-in-the-slab", "locate-utilities", "burst-near-utilities", "crw-stray-current"}),
    PIPE: frozenset({
        "crw-plug", "crw-film-twice", "crw-float", "crw-jetter", "crw-cable-machine", "crw-blow-back", "crw-chemicals", "crw-line-of-pull",
        "crw-lead-joint", "sewage-under-pressure", "test-water-and-plugs",
    }),
    PEOPLE: frozenset({"crw-lockout", "crw-sewage", "crw-heat", "drains-are-locked-out", "heat-wires-sewage-night"}),
}  # fmt: skip
"""Ids of the firm's sentences for the crew and of the rules that guard people, by what they are about."""
SAFETY = frozenset().union(*TOPICS.values())

NOT_HAZARDS = frozenset({
    "old iron can have holes under the rust: scraping shows them, it does not make them",
    "a rod or the camera passes all the way before the pull is promised",
    "{count} dead side drain(s) stay closed under the liner",
    "native fill packed by hand settles: the tunnel is not a support",
    "up to {over} over the pipe the fill is packed by hand, in layers of {layer}; the machine packs only above that",
})  # fmt: skip
"""Warnings of the takeoff that hurt the work, not people: they stand on the work sheet."""


def hazards(letter: Letter, option: Option) -> dict[Say, list[str]]:
    """Return what can hurt the crew of one option by topic, each sentence once; what is said of a single dig is left out."""
    out: dict[Say, list[str]] = {topic: [] for topic in TOPICS}
    for text, by in _of_option(letter, option).items():
        out[next((topic for topic, ids in TOPICS.items() if by in ids), PIPE)].append(text)
    return {topic: texts for topic, texts in out.items() if texts}


def _of_option(letter: Letter, option: Option) -> dict[str, str]:
    """Each sentence with the id it is grouped by; the firm's own first."""
    texts = {letter.text(term): term.id for term in option.terms if term.kind == "crew caution"}
    stands = standing(letter.quote, option)
    for verdict in verdicts(option):
        here = verdict.rule in SAFETY and not speaks_of_one_dig(verdict.estimator)
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
        if v.rule not in SAFETY and v.estimator.text not in FOR_THE_OFFICE
    ]
    by_takeoff = [caution for caution in _cautions(option) if caution.text in NOT_HAZARDS]
    stands = standing(letter.quote, option)
    return list(dict.fromkeys(letter.all(what for what in (*by_rule, *by_takeoff) if not said_elsewhere(what, stands))))


def _cautions(option: Option) -> list[Say]:
    return [caution for takeoff in option.takeoffs for caution in takeoff.cautions]
