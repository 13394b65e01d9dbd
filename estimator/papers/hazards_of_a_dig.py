"""An option in, the dangers that hang on how deep one dig is out, each with the digs it belongs to: no two can be mixed up."""

from collections.abc import Iterator

from estimator.model.judgement import Verdict
from estimator.model.offer import Option
from estimator.model.say import Feet, Say
from estimator.model.work import JOB, Repair, all_repairs
from estimator.papers.crew_where import where_it_is
from estimator.papers.letter import Letter
from estimator.papers.rules_for_the_crew import for_the_crew

TOLD = frozenset({"caution", "adds work", "requires first", "until approved", "no fixed price"})


def told(verdict: Verdict) -> bool:
    """Whether those who do the work are to know it."""
    return verdict.effect.value in TOLD and not verdict.overruled


def verdicts(option: Option) -> list[Verdict]:
    """What the rules say to those who do the work, before and after it was measured."""
    before = [v for r in all_repairs(option.scope.repairs) for v in r.verdicts]
    after = [v for takeoff in option.takeoffs for v in takeoff.finds]
    return [v for v in (*before, *after) if told(v)]


def speaks_of_one_dig(what: Say) -> bool:
    """It names a depth or how the sides are held: true of this dig, perhaps not of the next."""
    return any(name == "way" or (name == "depth" and isinstance(value, Feet)) for name, value in what.words)


def of_each_dig(letter: Letter, option: Option) -> list[str]:
    """Return a text for each dig: its name, its depth with the locator's tolerance, then all that is asked for there; those alike together."""
    asked: dict[str, list[str]] = {}
    for repair, what in _said(option):
        head, text = _parted(letter, repair, for_the_crew(what))
        texts = asked.setdefault(head, [])
        texts += [text] if text not in texts else []
    alike: dict[tuple[str, ...], list[str]] = {}
    for head, texts in asked.items():
        alike.setdefault(tuple(texts), []).append(head)
    return [f"{'; '.join(heads)}: {' '.join(texts)}" for texts, heads in alike.items()]


HEAD = Say.of("{opening}, {depth} with tolerance").text
"""How a rule that speaks of one opening begins."""


def _parted(letter: Letter, repair: Repair, what: Say) -> tuple[str, str]:
    """The dig with its depth, and what is asked for; the place of the repair where the sentence names no opening."""
    words = dict(what.words)
    text = letter.all([what])[0]
    head = letter.all([Say.of(HEAD, opening=words["opening"], depth=words["depth"])])[0] if "opening" in words else ""
    if not head or not text.startswith(head):
        return where_it_is(letter, repair), _ended(text)
    return head, _ended(text.removeprefix(head).lstrip(":, "))


def _ended(text: str) -> str:
    return f"{text[:1].upper()}{text[1:].rstrip('.')}."


def _said(option: Option) -> Iterator[tuple[Repair, Say]]:
    for repair in all_repairs(option.scope.repairs):
        yield from ((repair, v.estimator) for v in repair.verdicts if told(v) and speaks_of_one_dig(v.estimator))
    for takeoff in (t for t in option.takeoffs if t.repair.method != JOB):
        repair = takeoff.repair
        yield from ((repair, v.estimator) for v in takeoff.finds if told(v) and speaks_of_one_dig(v.estimator))
        yield from ((repair, caution) for caution in takeoff.cautions if speaks_of_one_dig(caution))
