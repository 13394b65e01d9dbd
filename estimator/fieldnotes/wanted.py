"""The [[option]] tables of the form come in; the estimator's own options, and what is wrong with their repairs, go out."""

import re
from collections.abc import Iterator, Sequence
from itertools import combinations

from estimator.fieldnotes.forms import JobFileForm, RerouteForm, WantedRepairForm
from estimator.fieldnotes.limits import Limits
from estimator.fieldnotes.nearest import nearest
from estimator.fieldnotes.syntax import Document
from estimator.model.line import Line
from estimator.model.problem import Place, Problem, error
from estimator.model.profile import Profile
from estimator.model.say import Say
from estimator.model.stretch import Stretch
from estimator.model.visit import KINDS
from estimator.model.wanted import WantedOption, WantedRepair
from estimator.works.methods import known as known_way
from estimator.works.methods import names

UNKNOWN_LINE = error("job/unknown-line", "there is no line {name}.", "Write one of: {known}.")
WHERE = error("job/where", "where = “{text}” is no stretch.", 'Write two stations, such as where = "2-29".')
METHOD = error("job/method", "there is no way of repair called “{text}”. {nearest}", "Write one of: {known}.")
NO_LENGTH = error(
    "job/no-length",
    "where = “{text}” has no length, so there is nothing to price.",
    'Write where the repair begins and where it ends, such as where = "2-29".',
    "An option is never priced on nothing.",
)
OFF_THE_LINE = error(
    "job/off-the-line",
    "where = “{text}” lies off line {line}, which is known from {low} to {high} ft.",
    "Name stations between these.",
    "An option is never priced on pipe that nobody has seen or measured.",
)
NO_WAY_ROUND = error(
    "job/no-way-round",
    "this option goes around line {line} {where}, and no [[reroute]] says how.",
    "Write the way you saw on site as [[reroute]] with what it replaces and its legs, or take the option out.",
    "A reroute that nobody walked has no length, no fall and no price.",
)
OVERLAP = error(
    "job/overlap",
    "{one} and {other} of one option lie over each other on line {line} from {low} to {high} ft.",
    "Let one end where the other begins, or make two options of them.",
    "The same foot of pipe is never sold twice.",
)
TASKS = error(
    "job/visit-tasks",
    "what is done on this visit? tasks = “{text}” does not say it.",
    'Write one or several of these with commas between, such as tasks = "film, test": {known}.',
    "A visit is never sold without what it is for.",
)
NO_TASKS = error(
    "job/tasks-of-a-repair",
    "tasks are those of a visit; {method} is none.",
    "Take tasks out, or make it a visit.",
    "What is typed is never dropped without a word.",
)
PROBLEMS = (UNKNOWN_LINE, WHERE, METHOD, TASKS, NO_TASKS, NO_LENGTH, OFF_THE_LINE, NO_WAY_ROUND, OVERLAP)


_WHERE = re.compile(r"\s*(-?\d+(?:\.\d+)?)\s*(?:-|–|to|\.\.)\s*(-?\d+(?:\.\d+)?)\s*", re.ASCII)


def wanted_options(
    form: JobFileForm, document: Document, lines: Sequence[Line], limits: Limits
) -> tuple[tuple[WantedOption, ...], list[Problem]]:
    """Every option, each repair with its stations; and every problem with them."""
    problems: list[Problem] = []
    out = []
    for number, option in enumerate(form.option):
        for index, repair in enumerate(option.repairs):
            problems += _wrong(repair, ("option", number, "repairs", index), form.reroute, document, lines, limits)
        problems += _overlaps(option.repairs, number, document, lines, limits)
        out.append(
            WantedOption(
                do=option.do, name=option.name, new_name=option.new_name, repairs=tuple(map(_repair, option.repairs))
            )
        )
    return tuple(out), problems


def _repair(form: WantedRepairForm) -> WantedRepair:
    here = _stretch(form.where)
    ends = (here.from_ft, here.to_ft) if here else (None, None)
    return WantedRepair(
        method=form.method, line=form.line, from_ft=ends[0], to_ft=ends[1], entry=form.entry, tasks=_tasks(form)
    )


def _tasks(form: WantedRepairForm) -> tuple[str, ...]:
    return tuple(word.strip().lower() for word in form.tasks.split(",") if word.strip())


def is_where(text: str) -> bool:
    """Whether it names a station or a stretch of a line, such as `14` or `2-29`."""
    return _stretch(text) is not None or re.fullmatch(r"\s*-?\d+(\.\d+)?\s*", text, re.ASCII) is not None


def _stretch(where: str) -> Stretch | None:
    match = _WHERE.fullmatch(where)
    return Stretch.between(float(match[1]), float(match[2])) if match else None


def _wrong(
    form: WantedRepairForm,
    path: tuple[str | int, ...],
    ways: Sequence[RerouteForm],
    document: Document,
    lines: Sequence[Line],
    limits: Limits,
) -> Iterator[Problem]:
    here = _stretch(form.where)
    line = next((one for one in lines if one.name == form.line), None)
    if form.line and line is None:
        known = ", ".join(one.name for one in lines) or Say.of("no line yet")
        yield UNKNOWN_LINE(document.place(*path, "line"), name=form.line, known=known)
    method = known_way(form.method)
    if method is None:
        near, known = nearest(form.method, names()), ", ".join(names())
        yield METHOD(document.place(*path, "method"), text=form.method, nearest=near, known=known)
    elif method.measure == "visit" and (not _tasks(form) or set(_tasks(form)) - set(KINDS)):
        yield TASKS(document.place(*path, "tasks" if form.tasks else "method"), text=form.tasks, known=", ".join(KINDS))
    elif method.measure != "visit" and form.tasks:
        yield NO_TASKS(document.place(*path, "tasks"), method=form.method)
    if form.where and here is None:
        yield WHERE(document.place(*path, "where"), text=form.where)
    if here and line and not (method and method.at_a_point):
        yield from _off(form, here, Profile(line).extent, document.place(*path, "where"), limits.beyond_the_end_ft)
    if method and method.goes_round and line and not any(_replaces(way, form.line, here) for way in ways):
        ends = {"low": here.from_ft, "high": here.to_ft} if here else {}
        where = Say.of("from {low} to {high} ft", **ends) if here else ""
        yield NO_WAY_ROUND(document.place(*path, "method"), line=form.line, where=where)


def _off(form: WantedRepairForm, here: Stretch, known: Stretch, place: Place, beyond_ft: float) -> Iterator[Problem]:
    if here.length_ft <= 0:
        yield NO_LENGTH(place, text=form.where)
    elif known.length_ft > 0 and not known.padded(beyond_ft, beyond_ft).covers(here):
        yield OFF_THE_LINE(place, text=form.where, line=form.line, low=known.from_ft, high=known.to_ft)


def _overlaps(
    repairs: Sequence[WantedRepairForm], number: int, document: Document, lines: Sequence[Line], limits: Limits
) -> Iterator[Problem]:
    """Each two repairs that would sell the same pipe twice, at the second of them."""
    renew = [(n, r) for n, r in enumerate(repairs) if _sells_the_pipe(r.method)]
    for (_, one), (index, other) in combinations(renew, 2):
        twice = _both(one, other, lines)
        if twice is not None and twice.length_ft > limits.same_station_ft:
            place = document.place("option", number, "repairs", index, "where")
            words = {"line": one.line, "low": twice.from_ft, "high": twice.to_ft}
            yield OVERLAP(place, one=one.method, other=other.method, **words)


def _sells_the_pipe(method: str) -> bool:
    """What only cleans, looks, tests or closes may go over the same pipe as another: it is cleaned and lined, renewed and filled."""
    record = known_way(method)
    return record is None or record.renews


def _both(one: WantedRepairForm, other: WantedRepairForm, lines: Sequence[Line]) -> Stretch | None:
    """The pipe that both renew. One way asked for twice, without saying where, is asked for over all of the line."""
    if one.line != other.line:
        return None
    first, second = _stretch(one.where), _stretch(other.where)
    if one.method == other.method and (line := next((line for line in lines if line.name == one.line), None)):
        whole = Profile(line).extent
        first, second = first or whole, second or whole
    return first.common(second) if first and second else None


def _replaces(way: RerouteForm, line: str, here: Stretch | None) -> bool:
    if way.replaces.line != line:
        return False
    low, high = way.replaces.from_, way.replaces.to
    if here is None:
        return True
    return (low is None or low <= here.from_ft) and (high is None or here.to_ft <= high)
