"""A job, what its problems are and what it means in, the answer of `check` out: drawings, needs, questions."""

from collections.abc import Iterable

from estimator.cli.views.gas import gas_first
from estimator.cli.views.needs import needs_rows
from estimator.cli.views.screen import Row
from estimator.cli.views.strip import strip, title
from estimator.cli.views.table import indented, table
from estimator.cli.views.vocabulary import term
from estimator.cli.views.words import ENGLISH, at, day, feet, inches, mark, number, sentence
from estimator.fieldnotes.agreement import agreement
from estimator.model.job import Job, WaterTest
from estimator.model.judgement import Diagnosis, Question
from estimator.model.line import Line, Pass
from estimator.quote.urgency import HOW_SOON
from estimator.wording.say import say, speaker

ON_THE_WAY: tuple[str, ...] = ("branch", "beam", "loc", "pothole", "bend", "crossing", "tree", "footing", "cleanout")
AGREES_WITHIN_FT = 1.0


def rows(job: Job, diagnosis: Diagnosis | None, columns: int, language: str = ENGLISH, answer: str = "") -> list[Row]:
    """The answer, where there is one; what the notes say, line by line; what it means; what to ask on a return visit."""
    said = speaker(language)("filmed and tested for {day}, by {who}", day=day(job.day, language), who=job.prepared_by)
    return [
        *gas_first(job, columns, language),
        *([Row(answer, "head"), Row("")] if answer else []),
        Row(f"{job.number}  {job.customer.site}", "head"),
        Row(said),
        *(row for line in job.lines for row in line_rows(line, columns, language)),
        *_tests(job.water_tests, columns, language),
        *(_compared(diagnosis, columns, language) if diagnosis else []),
        *(_meaning(diagnosis, columns, language) if diagnosis else []),
    ]


def line_rows(line: Line, columns: int, language: str) -> list[Row]:
    """One line: its drawing, what is on the way, what each camera run saw."""
    head = [Row(text, "head") for text in title(line, columns, language)]
    drawn = strip(line, columns, language=language)
    body = [Row(text) for text in [*drawn, *_way(line, columns, language)]]
    passes = [Row(text, "dim") for text in _passes(line, columns, language)]
    return [Row(""), *head, *body, *passes]


def _way(line: Line, columns: int, language: str) -> list[str]:
    """Side drains, beams and locates, with the station of each."""
    marks = sorted((m for m in line.marks if m.word in ON_THE_WAY), key=lambda m: m.stretch)
    cells = [(at(m.stretch, language), mark(m, language) + _depth(m.depth_ft, m.surface, language)) for m in marks]
    return [speaker(language)("on the way"), *table(("", ""), cells, columns)] if cells else []


def _depth(depth_ft: float | None, surface: str | None, language: str) -> str:
    if depth_ft is None:
        return ""
    speak = speaker(language)
    under = term(surface, language) if surface else speak("the surface")
    return " " + speak("{depth} under {surface}", depth=feet(depth_ft, language), surface=under)


def _passes(line: Line, columns: int, language: str) -> Iterable[str]:
    """What each camera run saw, what was put right on its reel, and how well the runs agree after that."""
    for run in line.passes:
        yield from indented(_pass(run, language), columns, by=0, hanging=2)
    found = agreement(line)
    if found is not None:
        speak, (numbers, apart) = speaker(language), found
        within = feet(max(apart, 0.1), language)
        said = speak("passes {passes} agree within {within}", passes=", ".join(map(str, numbers)), within=within)
        ask = speak(" (measure again)") if apart > AGREES_WITHIN_FT else ""
        yield from indented(said + ask, columns, by=0, hanging=2)


def _pass(run: Pass, language: str) -> str:
    speak = speaker(language)
    head = speak("pass {number}", number=run.number)
    how = (term(part, language) for part in (run.access, run.flow, run.when) if part)
    seen = speak("saw {where} ft", where=at(run.seen, language)) if run.seen else speak("saw nothing")
    moved = number(-run.shift_ft, 2, language)
    slipped = [speak("its zero slipped {moved} ft: taken off", moved=moved)] if abs(run.shift_ft) >= 0.05 else []
    return f"{', '.join((head, *how))}: {', '.join((seen, *slipped))}"


def _tests(tests: tuple[WaterTest, ...], columns: int, language: str) -> list[Row]:
    if not tests:
        return []
    cells = [(term(t.section, language), term(t.result or "no result", language), _fell(t, language)) for t in tests]
    head = Row(speaker(language)("Water tests"), "head")
    return [Row(""), head, *(Row(text) for text in table(("", "", ""), cells, columns))]


def _fell(test: WaterTest, language: str) -> str:
    """`fell 1 5/8 in in 20 min`, from the last reading."""
    speak = speaker(language)
    if not test.readings:
        return speak("no readings")
    minutes, fallen = test.readings[-1]
    time = number(minutes, language=language)
    fell = speak("fell {inches} in {minutes} min", inches=inches(fallen, language), minutes=time)
    said = fell if fallen else speak("held for {minutes} min", minutes=time)
    return said if test.sealed is not False else f"{said}; {speak('the ball did not seal, so this says nothing')}"


def _meaning(diagnosis: Diagnosis, columns: int, language: str) -> list[Row]:
    speak = speaker(language)
    out = [Row(""), Row(speak("What it means"), "head")]
    meanings = dict.fromkeys(sentence(e.meaning, language) for e in diagnosis.evidence)
    out += [Row(line) for text in meanings for line in indented(text, columns, hanging=2)]
    out += needs_rows(diagnosis.needs, columns, language)
    out += _how_soon(diagnosis, columns, language)
    return [*out, *_lift(diagnosis, columns, language), *_questions(diagnosis.questions, columns, language)]


def _how_soon(diagnosis: Diagnosis, columns: int, language: str) -> list[Row]:
    """Each line with a need: how soon, and what makes it so."""
    if not diagnosis.urgency:
        return []
    speak = speaker(language)
    cells = [
        (
            f"{term(one.line, language)} ({one.level})",
            " ".join(say(text, language) for text in (HOW_SOON[one.level], *one.because)),
        )
        for one in diagnosis.urgency
    ]
    return [Row(""), Row(speak("Is it urgent?"), "head"), *(Row(text) for text in table(("", ""), cells, columns))]


def _compared(diagnosis: Diagnosis, columns: int, language: str) -> list[Row]:
    """What two tests of one section show together."""
    if not diagnosis.tests_compared:
        return []
    said = [line for say in diagnosis.tests_compared for line in indented(sentence(say, language), columns, hanging=2)]
    return [Row(""), Row(speaker(language)("Tests compared"), "head"), *map(Row, said)]


def _lift(diagnosis: Diagnosis, columns: int, language: str) -> list[Row]:
    """Tests, repairs and the lift in their order, each with the places it is about."""
    if not diagnosis.lift_steps:
        return []
    places = {need.id: f"{term(need.line, language)} {at(need.stretch, language)} ft" for need in diagnosis.needs}
    out = [Row(""), Row(speaker(language)("The order with the foundation work"), "head")]
    for i, step in enumerate(diagnosis.lift_steps, start=1):
        about = "; ".join(places[need] for need in step.needs)
        text = f"{i}. {sentence(step.text, language)}" + (f" ({about})" if about else "")
        out += [Row(line) for line in indented(text, columns, hanging=3)]
    return out


def _questions(questions: tuple[Question, ...], columns: int, language: str) -> list[Row]:
    if not questions:
        return []
    out = [Row(""), Row(speaker(language)("To find out on a return visit"), "head")]
    for i, question in enumerate(questions, start=1):
        text = f"{i}. {_where(question, language)}{sentence(question.about, language)}"
        if question.not_fixed:
            text += " " + speaker(language)("No fixed price before that.")
        out += [Row(line) for line in indented(text, columns, hanging=3)]
    return out


def _where(question: Question, language: str) -> str:
    if not question.line:
        return ""
    line = term(question.line, language)
    return f"{line} {at(question.stretch, language)} ft: " if question.stretch else f"{line}: "
