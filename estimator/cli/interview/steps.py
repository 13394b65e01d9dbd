"""A job file's data in, the questions in their order out, each with where its answer goes; and finding one again."""

import re
from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from estimator.cli.reader import for_reader
from estimator.fieldnotes.answers import nearest
from estimator.fieldnotes.question_defaults import table_of
from estimator.fieldnotes.questions import SECTIONS, Data, Question, Section
from estimator.model.frozen import Frozen
from estimator.model.gas import GAS_SMELL, fuel_gas
from estimator.model.job import Sign

Path = tuple[str | int, ...]
MOST_OTHERS = 4


class Step(Frozen):
    """A question about one table; `index` counts from 0 where there are several."""

    section: Section
    index: int | None
    question: Question

    @property
    def table(self) -> Path:
        return (self.section.table,) if self.index is None else (self.section.table, self.index)

    @property
    def id(self) -> str:
        return ".".join(map(str, (*self.table, self.question.key)))

    @property
    def begins(self) -> bool:
        """The first question of a thing of which there may be more: an empty answer says there are no more."""
        return self.section.many and self.question is self.section.questions[0]


def items(data: Data, table: str) -> list[Data]:
    found = data.get(table, ())
    return [item for item in found if isinstance(item, Mapping)] if isinstance(found, list) else []


def item_of(step: Step, data: Data) -> Data:
    """The table the step writes to, or an empty one."""
    if step.index is None:
        return table_of(data, step.section.table)
    several = items(data, step.section.table)
    return several[step.index] if step.index < len(several) else {}


def steps(data: Data) -> list[Step]:
    """Every question that is asked of this job as it stands, and for each kind of thing one more."""
    out: list[Step] = []
    for section in SECTIONS:
        if not section.many:
            out += _of(section, None, data)
            continue
        count = len(items(data, section.table))
        for index in range(count):
            out += _of(section, index, data)
        out.append(Step(section, count, section.questions[0]))
    return out


def _of(section: Section, index: int | None, data: Data) -> list[Step]:
    found = [Step(section, index, question) for question in section.questions]
    return [step for step in found if step.question.asked(data, item_of(step, data))]


def answer_of(step: Step, data: Data) -> Any:
    """What is written for the step, or None."""
    item = item_of(step, data)
    keys = ("log", "pass") if step.question.is_log else (step.question.key, *step.question.also)
    return next((item[key] for key in keys if key in item), None)


def number_of(step_id: str, all_steps: Sequence[Step]) -> int:
    """Where the step stands; of a step that is gone, where its table begins, else the first."""
    ids = [step.id for step in all_steps]
    if step_id in ids:
        return ids.index(step_id)
    table = step_id.rpartition(".")[0]
    return next((n for n, step in enumerate(all_steps) if step.id.startswith(table + ".")), 0)


def first_open(all_steps: Sequence[Step], data: Data) -> str:
    """Where a plain file goes on: a needed answer that is missing, else what comes after the last answer there is."""
    for step in all_steps:
        started = step.index is None or not step.begins or (step.section.table == "line" and step.index == 0)
        if step.question.needed and started and answer_of(step, data) is None:
            return step.id
    last = max((n for n, step in enumerate(all_steps) if answer_of(step, data) is not None), default=-1)
    return all_steps[min(last + 1, len(all_steps) - 1)].id


def failed_branches(data: Data, branches: Sequence[str]) -> Iterator[str]:
    """Branches in the logs that an isolated test failed, and that no line tells of."""
    lines = {str(line.get("name", "")).lower() for line in items(data, "line")}
    for test in items(data, "water_test"):
        covers = test.get("covers", ())
        if test.get("kind") == "isolated" and test.get("result") == "failed" and isinstance(covers, list):
            yield from (name for name in map(str, covers) if name in branches and name.lower() not in lines)


# ── finding a question again ──────────────────────────────────────────────────────────────────


def found(words: str, data: Data) -> tuple[Step | str, tuple[str, ...]]:
    """The step meant by `soil`, `house`, `line 2`, `log main`, `kitchen`, `water test`, or the nearest such words; and
    what else begins so. Of several a whole part comes first: `water` is the tests, then the water lines."""
    low = " ".join(words.lower().replace(".", " ").replace("_", " ").split())
    names, keys = _names(data), _keys(data)
    if low in names:
        same = keys.get(low)
        other = () if same is None or same == names[low] or low == "log" else (_numbered(same),)
        return names[low], other
    if low in keys:
        return keys[low], ()
    begins = _one_each({name: step for name, step in names.items() if low and name.startswith(low)})
    if begins:
        first, *others = sorted(begins, key=lambda name: not _is_part(begins[name]))
        return begins[first], tuple(others[:MOST_OTHERS])
    inside = next(
        (s for s in steps(data) if low and re.search(rf"\b{re.escape(low)}\b", for_reader(s.question.text).lower())),
        None,
    )
    return inside or nearest(low, tuple(names)), ()


def _keys(data: Data) -> dict[str, Step]:
    """What `list` calls the questions of lines, tests …: each as it is asked of the last one there is."""
    there = [s for s in steps(data) if s.index is not None and s.index < len(items(data, s.section.table))]
    last = {(s.section.table, s.question.key): s for s in there}
    out: dict[str, Step] = {}
    for (_, key), step in last.items():
        out.setdefault(key.replace("_", " "), step)
    return out


def _numbered(step: Step) -> str:
    return f"{step.section.one} {(step.index or 0) + 1} {step.question.key.replace('_', ' ')}"


def _one_each(names: Mapping[str, Step]) -> dict[str, Step]:
    """Each step by the first of its names."""
    first = {step.id: name for name, step in reversed(list(names.items()))}
    return {name: step for name, step in names.items() if first[step.id] == name}


def _is_part(step: Step) -> bool:
    """It begins a whole part of the interview."""
    return step.question is step.section.questions[0]


def _names(data: Data) -> dict[str, Step]:
    """Every way to call a step, the shortest for the first that has it."""
    out: dict[str, Step] = {}
    logs: dict[str, Step] = {}
    for step in steps(data):
        key, table = step.question.key.replace("_", " "), step.section.table.replace("_", " ")
        if step.index is None:
            calls = [
                key,
                f"{table} {key}",
                table,
                str(step.section.title).lower(),
                str(step.section.title).lower().removeprefix("the "),
                for_reader(step.section.title).lower(),
            ]
        else:
            calls = _calls(step, key, table, data)
        if step.question.is_log:
            logs["log"] = step  # the last line's
        for call in calls:
            out.setdefault(call, step)
    return out | logs


def _calls(step: Step, key: str, table: str, data: Data) -> list[str]:
    number = (step.index or 0) + 1
    name = str(item_of(step, data).get("name", "")).lower()
    one = step.section.one
    calls = [f"{one} {number} {key}", f"{table} {step.index} {key}", f"{one} {number}", f"{one}s", one, table]
    short = one.split()[-1]  # tests for water tests
    calls += [f"{short} {number}", short, f"{short}s"] if short != one else []
    if name:
        calls += [f"{name} {key}", f"{key} {name}", f"{key} {number}", name, f"{one} {name}"]
    return calls if not step.begins or name or number == 1 else [*calls, f"new {one}", f"another {one}"]


def smells_of_gas(data: Data) -> bool:
    """What comes before any question; the answer that tells of it is answered so at once."""
    told = [Sign(what=str(s.get("what", "")), note=str(s.get("note", ""))) for s in items(data, "sign")]
    cleared = any(GAS_SMELL in paper.get("covers", ()) for paper in items(data, "approval"))
    return not cleared and any(fuel_gas(sign) for sign in told)
