"""A job, what its problems are and what it means in, the answer of `check` out: drawings, needs, questions."""

from collections.abc import Iterable

from estimator.cli.views.screen import Row
from estimator.cli.views.strip import strip, title
from estimator.cli.views.table import indented, table
from estimator.cli.views.why import need_rows
from estimator.cli.views.words import at, feet, mark, number, sentence
from estimator.model.job import Job, WaterTest
from estimator.model.judgement import Diagnosis, Question
from estimator.model.line import Line

ON_THE_WAY: tuple[str, ...] = ("branch", "beam", "loc", "pothole", "bend", "crossing", "tree", "footing", "cleanout")
AGREES_WITHIN_FT = 1.0


def rows(job: Job, diagnosis: Diagnosis | None, columns: int, language: str = "en_US") -> list[Row]:
    """Everything the notes say, line by line, then what it means and what to find out on a return visit."""
    return [
        Row(f"{job.number}  {job.customer.site}", "head"),
        Row(f"filmed and tested for {job.day}, by {job.prepared_by}"),
        *(row for line in job.lines for row in _line(line, columns)),
        *_tests(job.water_tests, columns),
        *(_meaning(diagnosis, columns, language) if diagnosis else []),
    ]


def _line(line: Line, columns: int) -> list[Row]:
    head = [Row(text, "head") for text in title(line, columns)]
    body = [Row(text) for text in [*strip(line, columns), *_way(line, columns)]]
    passes = [Row(text, "dim") for text in _passes(line, columns)]
    return [Row(""), *head, *body, *passes]


def _way(line: Line, columns: int) -> list[str]:
    """Side drains, beams and locates, with the station of each."""
    marks = [m for m in line.marks if m.word in ON_THE_WAY]
    cells = [(at(m.stretch), mark(m) + _depth(m.depth_ft, m.surface)) for m in sorted(marks, key=lambda m: m.stretch)]
    return ["on the way", *table(("", ""), cells, columns)] if cells else []


def _depth(depth_ft: float | None, surface: str | None) -> str:
    return f" {feet(depth_ft)} under {surface or 'the surface'}" if depth_ft is not None else ""


def _passes(line: Line, columns: int) -> Iterable[str]:
    """What each camera run saw and how well it agrees with the others."""
    for run in line.passes:
        seen = f"saw {at(run.seen)} ft" if run.seen else "saw nothing"
        shift = f", reel moved by {number(run.shift_ft, 2)} ft" if abs(run.shift_ft) >= 0.05 else ""
        off = max((abs(difference) for _, difference in run.ties), default=None)
        agrees = "" if off is None else f", agrees within {number(max(off, 0.1))} ft"
        ask = " (measure again)" if off is not None and off > AGREES_WITHIN_FT else ""
        text = f"pass {run.number}, {run.access}, {run.flow}{', ' + run.when if run.when else ''}: {seen}{shift}{agrees}{ask}"
        yield from indented(text, columns, by=0, hanging=2)


def _tests(tests: tuple[WaterTest, ...], columns: int) -> list[Row]:
    if not tests:
        return []
    cells = [(test.section, test.result or "no result", _fell(test)) for test in tests]
    return [Row(""), Row("Water tests", "head"), *(Row(text) for text in table(("", "", ""), cells, columns))]


def _fell(test: WaterTest) -> str:
    """`fell 1 5/8 in in 20 min`, from the last reading."""
    if not test.readings:
        return "no readings"
    minutes, inches = test.readings[-1]
    fell = f"fell {number(inches, 3)} in in {number(minutes)} min" if inches else f"held for {number(minutes)} min"
    return fell if test.sealed is not False else f"{fell}; the ball did not seal, so this says nothing"


def _meaning(diagnosis: Diagnosis, columns: int, language: str) -> list[Row]:
    out = [Row(""), Row("What it means", "head")]
    meanings = dict.fromkeys(sentence(e.meaning, language) for e in diagnosis.evidence)
    out += [Row(line) for text in meanings for line in indented(text, columns, hanging=2)]
    out += [Row(""), Row("What has to be put right", "head")]
    needs = [row for need in diagnosis.needs for row in need_rows(need, columns)]
    out += needs or [Row("  Nothing seen that has to be put right.")]
    return [*out, *_questions(diagnosis.questions, columns, language)]


def _questions(questions: tuple[Question, ...], columns: int, language: str) -> list[Row]:
    if not questions:
        return []
    out = [Row(""), Row("To find out on a return visit", "head")]
    for i, question in enumerate(questions, start=1):
        where = (
            f"{question.line} {at(question.stretch)} ft: "
            if question.stretch
            else f"{question.line}: "
            if question.line
            else ""
        )
        stops = " No fixed price before that." if question.blocks_fixed_price else ""
        out += [
            Row(line)
            for line in indented(f"{i}. {where}{sentence(question.about, language)}{stops}", columns, hanging=3)
        ]
    return out
