"""A water test as written comes in; a WaterTest with minutes and inches goes out."""

import re
from decimal import Decimal
from itertools import pairwise
from typing import Any

from estimator.fieldnotes.forms import WaterTestForm
from estimator.model.job import WaterTest
from estimator.model.lengths import match_length, parse_length
from estimator.model.problem import Place, Problem, error, warning
from estimator.model.say import Say
from estimator.model.stretch import Stretch

READINGS = error(
    "test/readings",
    "“{text}” is no pair of minutes and drop.",
    'Write `readings = { 0 = "0", 5 = "3/8 in" }` or `readings = "0:0, 5:3/8, 10:3/4"`.',
)
OUT_OF_ORDER = error(
    "test/water-rises",
    "the water stands higher at {late} min than at {early} min.",
    "Write how far it fell since the start; if it was topped up, begin the readings after that.",
)
HELD_AT = error("test/held-at", "“{text}” is no depth.", 'Write `held_at = "9 in below slab top"`.')
HELD_DIFFERS = warning(
    "test/held-differs",
    "the readings end {drop} in below the start, but held_at says that the water held {held} in below its level.",
    "Check both; if the start was not at the level of held_at, write how far from it in `note`.",
    "The height at which the water holds is where the leak is looked for.",
)
HELD_NEAR_IN = 0.5
"""How far a height read in a riser and the drop from its start may differ, inches: common practice, a tape held by hand."""
DROP_ALONE = error(
    "test/drop-alone",
    "{given} is written without {other}, so nobody knows how fast the water fell.",
    'Write both, such as drop = "1/2 in" and minutes = 15.',
    "A drop that is left out of the test would read as water that held.",
)
SETTLED = error("test/settled", "settled = “{text}” is no time.", 'Write minutes, such as settled = "30 min".')
MINUTE_TWICE = error(
    "test/minute-twice",
    "the water test says twice how far the water had fallen at {minute} min.",
    "Keep the drop that was read; of two only one would count.",
)
PART = error(
    "test/part",
    "“from” and “to” of a water test say which part of one line was tested.",
    'Write both stations and one line, such as covers = ["main"], from = 22 and to = 33.',
)
PROBLEMS = (READINGS, OUT_OF_ORDER, HELD_AT, HELD_DIFFERS, DROP_ALONE, SETTLED, MINUTE_TWICE, PART)

_RESULTS: dict[str, Any] = {"pass": "passed", "fail": "failed"}
_AS_WRITTEN = tuple(
    sorted(WaterTestForm.model_fields.keys() & WaterTest.__dataclass_fields__.keys() - {"level", "readings", "result"})
)
"""Keys whose value the record holds as it is written."""


def _inches(feet: float) -> float:
    return round(feet * 12, 6)


def _pairs(form: WaterTestForm) -> list[tuple[str, float]] | str:
    """Minutes as text and feet of drop; or the piece that cannot be read."""
    if isinstance(form.readings, dict):
        return list(form.readings.items())
    pairs: list[tuple[str, float]] = []
    for part in filter(None, (p.strip() for p in form.readings.split(","))):
        minutes, colon, drop = part.partition(":")
        feet = parse_length(drop, "in")
        if not colon or isinstance(feet, Say):
            return part
        pairs.append((minutes.strip(), feet))
    return pairs


def _readings(form: WaterTestForm, place: Place, problems: list[Problem]) -> tuple[tuple[float, float], ...]:
    pairs = _pairs(form)
    bad = (
        pairs
        if isinstance(pairs, str)
        else next((m for m, _ in pairs if not re.fullmatch(r"\d{1,5}(?:\.\d+)?", m, re.ASCII)), None)
    )
    if bad is not None or isinstance(pairs, str):
        problems.append(READINGS(place, text=bad))
        return ()
    out = sorted((float(m), _inches(drop)) for m, drop in pairs)
    if not out:
        out = _one_drop(form, place, problems)
    for (early, first), (late, second) in pairwise(out):
        if early == late:
            problems.append(MINUTE_TWICE(place, minute=early))
        elif second < first:
            problems.append(OUT_OF_ORDER(place, early=early, late=late))
    return tuple(out)


def _one_drop(form: WaterTestForm, place: Place, problems: list[Problem]) -> list[tuple[float, float]]:
    """`drop` in `minutes`, which belong together."""
    if form.drop is not None and form.minutes is not None:
        return [(0.0, 0.0), (form.minutes, _inches(form.drop))]
    if form.drop is not None:
        problems.append(DROP_ALONE(place, given=Say.of("a drop"), other=Say.of("its minutes")))
    if form.minutes is not None and not form.result and form.held_at is None:
        problems.append(DROP_ALONE(place, given=Say.of("a number of minutes"), other=Say.of("the drop")))
    return []


def _held_at(form: WaterTestForm, place: Place, problems: list[Problem]) -> float | None:
    if form.held_at is None:
        return None
    found = match_length(form.held_at.strip(), 0, "in")
    if found is None:
        problems.append(HELD_AT(place, text=form.held_at))
        return None
    return _inches(found[0])


def _held_differs(test: WaterTest, place: Place) -> list[Problem]:
    """The readings stop at another height than `held_at`, or go below it. Both may be so: the start may not be the level."""
    drops, held = [drop for _, drop in test.readings], test.held_at_in
    if held is None or not drops or test.note:
        return []
    stopped = len(drops) > 1 and drops[-1] == drops[-2]
    if drops[-1] > held + HELD_NEAR_IN or (stopped and drops[-1] < held - HELD_NEAR_IN):
        return [HELD_DIFFERS(place, drop=f"{drops[-1]:g}", held=f"{held:g}")]
    return []


def _level(form: WaterTestForm) -> str:
    """What was written; else what the height it held at is counted from; else nothing: no paper says more than the notes."""
    if "level" in form.model_fields_set:
        return form.level
    below = re.search(r"\bbelow\s+(?:the\s+)?(.+)", form.held_at or "")
    return below[1].strip() if below else ""


def _settled(form: WaterTestForm, place: Place, problems: list[Problem]) -> float | None:
    if form.settled is None or not form.settled.strip():
        return None
    match = re.match(r"\s*(\d{1,5}(?:\.\d+)?)\s*(?:min|m\b|$)", form.settled, re.ASCII)
    if match is None:
        problems.append(SETTLED(place, text=form.settled))
        return None
    return float(Decimal(match[1]))


def _part(form: WaterTestForm, place: Place, problems: list[Problem]) -> Stretch | None:
    if form.from_ is None and form.to is None:
        return None
    if form.from_ is None or form.to is None or form.from_ == form.to or len(form.covers) != 1:
        problems.append(PART(place))
        return None
    return Stretch.between(form.from_, form.to)


def water_test(form: WaterTestForm, place: Place) -> tuple[WaterTest, list[Problem]]:
    problems: list[Problem] = []
    risers = form.open_risers or ((form.riser_size,) if form.riser_size is not None else ())
    same = {name: getattr(form, name) for name in _AS_WRITTEN}
    test = WaterTest(
        **same,
        part=_part(form, place, problems),
        level=_level(form),
        open_risers_in=tuple(_inches(r) for r in risers),
        readings=_readings(form, place, problems),
        held_at_in=_held_at(form, place, problems),
        result=_RESULTS.get(form.result, form.result),
        settled_min=_settled(form, place, problems),
    )
    return test, [*problems, *_held_differs(test, place)]
