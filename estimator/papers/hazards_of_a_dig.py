"""Options in, the dangers that hang on how deep one dig is out, each with the digs it belongs to: no two can be mixed up."""

from collections.abc import Iterable, Iterator

from estimator.model.judgement import Verdict
from estimator.model.offer import Option
from estimator.model.say import Feet, Say
from estimator.model.work import JOB, Repair
from estimator.papers.crew_where import where_it_is
from estimator.papers.letter import Letter
from estimator.papers.rules_for_the_crew import for_the_crew
from estimator.quote.stays import all_repairs

TOLD = frozenset({"caution", "adds work", "requires first", "until approved", "no fixed price"})


def told(verdict: Verdict) -> bool:
    """Whether those who do the work are to know it."""
    return verdict.effect.value in TOLD and not verdict.overruled


def speaks_of_one_dig(what: Say) -> bool:
    """It names a depth or how the sides are held: true of this dig, perhaps not of the next."""
    return any(name == "way" or (name == "depth" and isinstance(value, Feet)) for name, value in what.words)


def of_each_dig(letter: Letter, options: Iterable[Option]) -> list[str]:
    """A text for each dig, its place and its options' letters in front; digs of which the same is said stand together."""
    said: dict[str, tuple[list[str], list[Say]]] = {}  # the dig: letters, what is said of it
    for option in options:
        for repair, what in _said(option):
            if speaks_of_one_dig(what):
                letters, sentences = said.setdefault(_key(letter, repair, option), ([], []))
                letters += [option.letter] if option.letter not in letters else []
                sentences += [what] if what not in sentences else []
    alike: dict[tuple[Say, ...], dict[str, list[str]]] = {}
    for key, (letters, sentences) in said.items():
        place = key.partition(BETWEEN)[0]
        places = alike.setdefault(tuple(sentences), {})
        places[place] = [*places.get(place, []), *letters]
    return [f"{_names(letter, places)}: {' '.join(_ended(letter, what))}" for what, places in alike.items()]


BETWEEN = "\n"


def _key(letter: Letter, repair: Repair, option: Option) -> str:
    """The place of a dig in an option: two options may dig the same place to other depths."""
    return f"{where_it_is(letter, repair)}{BETWEEN}{option.letter}"


def _ended(letter: Letter, sentences: Iterable[Say]) -> list[str]:
    """The sentences, each with its stop."""
    texts = letter.all(for_the_crew(what) for what in sentences)
    return [text if text.endswith(".") else f"{text}." for text in texts]


def _said(option: Option) -> Iterator[tuple[Repair, Say]]:
    for repair in all_repairs(option.scope.repairs):
        yield from ((repair, v.estimator) for v in repair.verdicts if told(v))
    for takeoff in (t for t in option.takeoffs if t.repair.method != JOB):
        yield from ((takeoff.repair, v.estimator) for v in takeoff.finds if told(v))
        yield from ((takeoff.repair, caution) for caution in takeoff.cautions)


def _names(letter: Letter, places: dict[str, list[str]]) -> str:
    return "; ".join(
        letter.speak("{place} (option {letters})", place=place, letters=", ".join(letters))
        for place, letters in places.items()
    )
