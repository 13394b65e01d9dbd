"""An option in, what the people of the house should mind out: before we start, while we work, afterwards; each thing said once."""

from estimator.model.judgement import Effect
from estimator.model.offer import Option
from estimator.papers.letter import Letter
from estimator.papers.segments import all_repairs

BEFORE = frozenset({
    "cau-811", "cau-in-slab", "cau-asbestos", "cau-lead", "cau-trees", "cau-water-off", "cau-lift", "cau-local",
    "asbestos-before-cutting", "lead-paint", "find-what-runs-in-the-slab", "locate-utilities", "foundation-work-planned",
    "treated-soil", "trees",
})  # fmt: skip
AFTER = frozenset({"cau-settle", "empty-pipe-floats", "cau-rust", "lining-keeps-the-grade"})
"""Sentences of the firm's and rules, by when they count; everything else counts while we work."""

SAID_BY: dict[str, str] = {
    "lead-paint": "cau-lead",
    "asbestos-before-cutting": "cau-asbestos",
    "find-what-runs-in-the-slab": "cau-in-slab",
    "locate-utilities": "cau-811",
    "people-in-a-tunnel": "cau-no-use-tunnel",
    "soil-over-an-old-pipe": "cau-depth",
    "ladder-from-four-feet": "cau-depth",
    "protect-from-five-feet": "cau-depth",
    "competent-person-is-named": "cau-depth",
}
"""What a rule would say and the firm's own sentence already does."""


def cautions(letter: Letter, option: Option) -> tuple[list[str], list[str], list[str]]:
    """The three lists in the reader's language, the firm's sentences first."""
    texts = {letter.text(term): term.id for term in option.terms if term.kind == "caution"}
    said = set(texts.values())
    by_text = {text: rule for rule, text in _rules(letter, option)}
    for text in letter.all(option.cautions):
        rule = by_text.get(text, "")
        if SAID_BY.get(rule) not in said:
            texts.setdefault(text, rule)
    groups: tuple[list[str], list[str], list[str]] = ([], [], [])
    for text, by in texts.items():
        groups[0 if by in BEFORE else 2 if by in AFTER else 1].append(text)
    return groups


def _rules(letter: Letter, option: Option) -> list[tuple[str, str]]:
    before = [v for repair in all_repairs(option.scope.repairs) for v in repair.verdicts]
    measured = [v for takeoff in option.takeoffs for v in takeoff.finds]
    told = [v for v in (*before, *measured) if v.effect is Effect.CAUTION]
    return [(v.rule, letter.all([v.homeowner])[0]) for v in told]
