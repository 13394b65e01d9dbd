"""A quote in, what the people of the house should mind out: before we start, while we work, afterwards; each thing said once."""

from collections.abc import Iterable

from estimator.model.judgement import Effect
from estimator.model.offer import Option
from estimator.model.work import all_repairs
from estimator.papers.letter import Letter

BEFORE = frozenset({
    "cau-811", "cau-in-slab", "cau-asbestos", "cau-lead", "cau-trees", "cau-water-off", "cau-local",
    "asbestos-before-cutting", "lead-paint", "find-what-runs-in-the-slab", "locate-utilities",
    "treated-soil", "trees",
})  # fmt: skip
AFTER = frozenset({"cau-settle"})
"""Sentences of the firm's and rules, by when they count; everything else counts while we work."""
LIMITS = frozenset({
    "cau-clean-opens", "big-offset", "liner-wall-is-asked", "only-the-main-is-lined", "pieces-or-full-liner",
    "cleaning-closes-no-opening", "lining-keeps-the-grade", "branches-are-opened-again", "fiber-is-not-patched",
    "rusted-metal-is-replaced", "size-never-shrinks", "many-sharp-bends", "long-liner",
})  # fmt: skip
"""What a repair leaves or cannot do: no caution for people, so it stands with what is not included."""

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


NOTHING_TO_MIND = frozenset({"liner-wall-is-asked", "empty-pipe-floats", "foundation-work-planned"})
"""Rules that ask nothing of the people of the house: for the office, for the crew, or said among what is not covered."""

Groups = tuple[list[str], list[str], list[str]]
"""Sentences for before, while and after the work."""


def limits(letter: Letter, option: Option) -> list[str]:
    """What the repair leaves or cannot do, in the reader's language."""
    return [text for text, by in _texts(letter, option).items() if by in LIMITS]


def cautions(letter: Letter, option: Option) -> Groups:
    """The three lists in the reader's language, the firm's sentences first."""
    groups: Groups = ([], [], [])
    for text, by in _texts(letter, option).items():
        if by not in LIMITS:
            groups[0 if by in BEFORE else 2 if by in AFTER else 1].append(text)
    return groups


def _texts(letter: Letter, option: Option) -> dict[str, str]:
    """Each sentence with the id of the firm's row or the rule it comes from."""
    texts = {letter.text(term): term.id for term in option.terms if term.kind == "caution"}
    said = set(texts.values())
    by_text = {text: rule for rule, text in _rules(letter, option)}
    for text in letter.all(option.cautions):
        rule = by_text.get(text, "")
        if SAID_BY.get(rule) not in said and rule not in NOTHING_TO_MIND:
            texts.setdefault(text, rule)
    return texts


def grouped(letter: Letter) -> list[dict[str, list[str]]]:
    """Return, for before, while and after the work, the sentences by the letters of the options they are for; "" for every option."""
    options, out = letter.quote.options, []
    for letters in _letters_by_text(letter, options):
        by: dict[str, list[str]] = {"": []}
        for text, those in letters.items():
            by.setdefault("" if len(those) == len(options) else ", ".join(those), []).append(text)
        own = {those: texts for those, texts in by.items() if not those or len(texts) >= FEW}
        own[""] += [f"{those}: {text}" for those, texts in by.items() if those not in own for text in texts]
        out.append(own)
    return out


FEW = 3
"""Sentences for the same options; fewer stand with the others, their letters in front."""


def _letters_by_text(letter: Letter, options: Iterable[Option]) -> list[dict[str, list[str]]]:
    """For each of the three groups, every sentence with the letters of the options it is for; each in the first group that has it."""
    found: list[dict[str, list[str]]] = [{}, {}, {}]
    for option in options:
        for number, group in enumerate(cautions(letter, option)):
            for text in group:
                known = next((texts for texts in found if text in texts), found[number])
                if option.letter not in known.setdefault(text, []):
                    known[text].append(option.letter)
    return found


def _rules(letter: Letter, option: Option) -> list[tuple[str, str]]:
    before = [v for repair in all_repairs(option.scope.repairs) for v in repair.verdicts]
    measured = [v for takeoff in option.takeoffs for v in takeoff.finds]
    told = [v for v in (*before, *measured) if v.effect is Effect.CAUTION]
    return [(v.rule, letter.all([v.homeowner])[0]) for v in told]
