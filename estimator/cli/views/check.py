"""A job, what its problems are and what it means in, the answer of `check` out: drawings, needs, questions."""

from collections.abc import Sequence

from estimator.cli.views.layout import Layout
from estimator.cli.views.problems import write_gas_first
from estimator.cli.views.strip import draw_line
from estimator.cli.views.words import Words
from estimator.fieldnotes.agreement import agreement
from estimator.model.crossing import near_drain
from estimator.model.job import Job, WaterTest
from estimator.model.judgement import Diagnosis, Need, Question
from estimator.model.line import Line, Mark, Pass
from estimator.quote.urgency import HOW_SOON

ON_THE_WAY: tuple[str, ...] = ("branch", "beam", "loc", "pothole", "bend", "crossing", "tree", "footing", "cleanout")
AGREES_WITHIN_FT = 1.0


def write_check(out: Layout, job: Job, diagnosis: Diagnosis | None, answer: str = "") -> None:
    """The answer, where there is one; what the notes say, line by line; what it means; what to ask on a return visit."""
    write_gas_first(out, job)
    if answer:
        out.line(answer, "head")
        out.line()
    out.line(f"{job.number}  {job.customer.site}", "head")
    out.line(out.speak("filmed and tested for {day}, by {who}", day=out.day(job.day), who=job.prepared_by))
    for line in job.lines:
        out.line()
        write_line(out, line)
    if job.water_tests:
        out.heading(out.speak("Water tests"))
        tests = [(out.term(t.section), out.term(t.result or "no result"), _fell(t, out)) for t in job.water_tests]
        out.table(("", "", ""), tests)
    if diagnosis:
        _meaning(out, diagnosis)


def write_line(out: Layout, line: Line) -> None:
    """One line: its drawing, what is on the way, what each camera run saw and how well the runs agree after that."""
    draw_line(out, line)
    marks = sorted((m for m in line.marks if m.word in ON_THE_WAY), key=lambda m: m.stretch)
    if marks:
        out.line(out.speak("on the way"))
        out.pairs([(out.at(m.stretch), _place(m, out)) for m in marks])
    for run in line.passes:
        out.paragraph(_pass(run, out), hanging=2, look="dim")
    if (found := agreement(line)) is not None:
        numbers, apart = found
        words = {"passes": ", ".join(map(str, numbers)), "within": out.feet(max(apart, 0.1))}
        ask = out.speak(" (measure again)") if apart > AGREES_WITHIN_FT else ""
        out.paragraph(out.speak("passes {passes} agree within {within}", **words) + ask, hanging=2, look="dim")


def _place(mark: Mark, words: Words) -> str:
    """A mark with its depth; another buried line with how near it is."""
    near = map(words.say, near_drain(mark)) if mark.word == "crossing" else ()
    return ", ".join([words.mark(mark) + _depth(mark, words), *near])


def _depth(mark: Mark, words: Words) -> str:
    if mark.depth_ft is None:
        return ""
    under = words.term(mark.surface) if mark.surface else words.speak("the surface")
    return " " + words.speak("{depth} under {surface}", depth=words.feet(mark.depth_ft), surface=under)


def _pass(run: Pass, words: Words) -> str:
    """What a camera run saw, and what was put right on its reel."""
    head = words.speak("pass {number}", number=run.number)
    how = (words.term(part) for part in (run.access, run.flow, run.when) if part)
    seen = words.speak("saw {where} ft", where=words.at(run.seen)) if run.seen else words.speak("saw nothing")
    moved = words.number(-run.shift_ft, 2)
    slipped = [words.speak("its zero slipped {moved} ft: taken off", moved=moved)] if abs(run.shift_ft) >= 0.05 else []
    return f"{', '.join((head, *how))}: {', '.join((seen, *slipped))}"


def _fell(test: WaterTest, words: Words) -> str:
    """`fell 1 5/8 in in 20 min`, from the last reading."""
    if not test.readings:
        return words.speak("no readings")
    minutes, fallen = test.readings[-1]
    time = words.number(minutes)
    fell = words.speak("fell {inches} in {minutes} min", inches=words.inches(fallen), minutes=time)
    said = fell if fallen else words.speak("held for {minutes} min", minutes=time)
    return said if test.sealed is not False else f"{said}; {words.speak('the ball did not seal, so this says nothing')}"


def _meaning(out: Layout, diagnosis: Diagnosis) -> None:
    if diagnosis.tests_compared:
        out.heading(out.speak("Tests compared"))
    for said in diagnosis.tests_compared:
        out.paragraph(out.sentence(said), by=2, hanging=2)
    out.heading(out.speak("What it means"))
    for text in dict.fromkeys(out.sentence(e.meaning) for e in diagnosis.evidence):
        out.paragraph(text, by=2, hanging=2)
    write_needs(out, diagnosis.needs)
    _how_soon(out, diagnosis)
    _lift(out, diagnosis)
    if diagnosis.questions:
        out.heading(out.speak("To find out on a return visit"))
    for i, question in enumerate(diagnosis.questions, start=1):
        out.paragraph(f"{i}. {_asked(question, out)}", by=2, hanging=3)


def _how_soon(out: Layout, diagnosis: Diagnosis) -> None:
    """Each line with a need: how soon, and what makes it so."""
    if diagnosis.urgency:
        out.heading(out.speak("Is it urgent?"))
        out.pairs([
            (f"{out.term(one.line)} ({one.level})", " ".join(map(out.say, (HOW_SOON[one.level], *one.because))))
            for one in diagnosis.urgency
        ])  # fmt: skip


def _lift(out: Layout, diagnosis: Diagnosis) -> None:
    """Tests, repairs and the lift in their order, each with the places it is about."""
    if diagnosis.lift_steps:
        out.heading(out.speak("The order with the foundation work"))
    places = {need.id: f"{out.term(need.line)} {out.at(need.stretch)} ft" for need in diagnosis.needs}
    for i, step in enumerate(diagnosis.lift_steps, start=1):
        about = "; ".join(places[need] for need in step.needs)
        text = f"{i}. {out.sentence(step.text)}" + (f" ({about})" if about else "")
        out.paragraph(text, by=2, hanging=3)


def _asked(question: Question, words: Words) -> str:
    where = f"{words.term(question.line)}: " if question.line else ""
    if question.line and question.stretch:
        where = f"{words.term(question.line)} {words.at(question.stretch)} ft: "
    firm = " " + words.speak("No fixed price before that.") if question.not_fixed else ""
    return where + words.sentence(question.about) + firm


def write_needs(out: Layout, needs: Sequence[Need]) -> None:
    """What must be repaired, then what may stay, each under its own heading; the first heading always."""
    must, may_stay = ([need for need in needs if need.must is must] for must in (True, False))
    out.heading(out.speak("What must be repaired"))
    for need in must:
        write_need(out, need)
    if not must:
        out.line("  " + out.speak("Nothing seen that must be repaired."))
    if may_stay:
        out.heading(out.speak("What may stay for now"))
    for need in may_stay:
        write_need(out, need)


def write_need(out: Layout, need: Need) -> None:
    """A stretch with what is on it, how bad and how sure."""
    must = out.speak("must be repaired") if need.must else out.speak("may stay")
    how = out.speak("severity {severity}, urgency {urgency}", severity=need.severity, urgency=need.urgency)
    out.paragraph(f"{place_of(need, out)} — {must}; {how}, {out.term(need.grade)}.", by=2, hanging=4)


def place_of(need: Need, words: Words) -> str:
    """`main 10.9 – 18.3 ft: channel, hole`."""
    kinds = ", ".join(map(words.finding_term, need.kinds))
    return f"{words.term(need.line)} {words.stations(need.stretch)}: {kinds}"
