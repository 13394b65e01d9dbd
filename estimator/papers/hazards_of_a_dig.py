"""Options in, the dangers that hang on how deep one dig is out, each with the digs it belongs to: no two can be mixed up."""

from collections.abc import Iterable, Iterator

from estimator.model.judgement import Verdict
from estimator.model.offer import Option
from estimator.model.say import Feet, Say
from estimator.model.work import JOB, Repair
from estimator.papers.crew_where import where_it_is
from estimator.papers.letter import Letter
from estimator.papers.segments import all_repairs

TOLD = frozenset({"caution", "adds work", "requires first", "until approved", "no fixed price"})


def told(verdict: Verdict) -> bool:
    """Whether those who do the work are to know it."""
    return verdict.effect.value in TOLD and not verdict.overruled


def speaks_of_one_dig(what: Say) -> bool:
    """It names a depth or how the sides are held: true of this dig, perhaps not of the next."""
    return any(name == "way" or (name == "depth" and isinstance(value, Feet)) for name, value in what.words)


def of_one_dig(letter: Letter, options: Iterable[Option]) -> list[tuple[str, str]]:
    """(sentence, id of the rule or ""), the digs' names in front; alike sentences once, with all their digs."""
    digs: dict[tuple[str, Say], dict[str, list[str]]] = {}
    for option in options:
        for repair, rule, what in _said(option):
            if speaks_of_one_dig(what):
                letters = digs.setdefault((rule, what), {}).setdefault(where_it_is(letter, repair), [])
                if option.letter not in letters:
                    letters.append(option.letter)
    return [(f"{_names(letter, places)}: {letter.all([what])[0]}", rule) for (rule, what), places in digs.items()]


def _said(option: Option) -> Iterator[tuple[Repair, str, Say]]:
    for repair in all_repairs(option.scope.repairs):
        yield from ((repair, v.rule, v.estimator) for v in repair.verdicts if told(v))
    for takeoff in (t for t in option.takeoffs if t.repair.method != JOB):
        yield from ((takeoff.repair, v.rule, v.estimator) for v in takeoff.finds if told(v))
        yield from ((takeoff.repair, "", caution) for caution in takeoff.cautions)


def _names(letter: Letter, places: dict[str, list[str]]) -> str:
    return "; ".join(
        letter.speak("{place} (option {letters})", place=place, letters=", ".join(letters))
        for place, letters in places.items()
    )
