"""A scope in, what is done and what stays old out, in sentences."""

from collections.abc import Container, Iterable, Mapping, Sequence

from estimator.model.job import Job
from estimator.model.line import Line
from estimator.model.offer import TestPromise
from estimator.model.say import GAP, Feet, Say
from estimator.model.stretch import Stretch
from estimator.model.visit import KINDS, kinds_in
from estimator.model.work import JOB, Repair, Scope, Takeoff, all_repairs, tested
from estimator.quote import where
from estimator.quote.where import old_on_paper, on_paper
from estimator.wording.finding_words import in_words
from estimator.wording.plain import FINDINGS, LINES, in_plain_words
from estimator.works.methods import REPLACE, record_of, renews

LEAST_FT = 1.0


def work_lines(job: Job, scope: Scope, takeoffs: Iterable[Takeoff]) -> tuple[Say, ...]:
    """One sentence a repair: how many feet of which line become what; from where to where in its gap `ends`, where it is along the line."""
    lengths = {t.repair.id: t for t in takeoffs}
    return tuple(_does(job, repair, lengths.get(repair.id)) for repair in all_repairs(scope.repairs))


def _does(job: Job, repair: Repair, takeoff: Takeoff | None) -> Say:
    line = job.line(repair.line)
    record, stretch = record_of(repair.method), where.worked_on(line, repair)
    words: dict[str, object] = {
        "length": Feet(on_paper(line, stretch.length_ft)),
        "line": where.line_name(line),
        "place": where.place(line, repair.stretch),
        "way": repair.reroute,
        "tasks": tuple(KINDS[kind] for kind in kinds_in(repair.facts)),
    }
    if takeoff and takeoff.works.goes_round:
        words["length"] = Feet(on_paper(line, takeoff.value("reroute_ft")))
    work = record.does
    if work == REPLACE and (size := _new_size(takeoff)):
        words["size"] = size
        work = Say.of("Replace {length} of the {line} with new {size}-inch pipe")
    said = Say.of(work.text, **_named(words, work))
    if "length" not in dict(said.words) or (takeoff and takeoff.works.goes_round):
        return said
    return Say.of("{work}: {ends}.", work=said, ends=where.ends(line, stretch))


def _named(words: Mapping[str, object], sentence: Say) -> dict[str, object]:
    """The words the sentence has gaps for."""
    return {gap: words[gap] for gap in GAP.findall(sentence.text)}


def _new_size(takeoff: Takeoff | None) -> str:
    """The size of the pipe that is laid, inches, where it is one."""
    sizes = {f"{pipe.size_in:g}" for pipe in takeoff.works.new_pipe} if takeoff else set()
    return sizes.pop() if len(sizes) == 1 else ""


def pipe_left(job: Job, scope: Scope, takeoffs: Iterable[Takeoff]) -> tuple[Say, ...]:
    """Old pipe that stays in use, findings that are left, and what nobody saw."""
    renewed = [r for r in all_repairs(scope.repairs) if renews(r.method)]
    touched = {r.line for r in scope.repairs} | {n.line for n in scope.needs}
    out = [
        _old(line, [r.stretch for r in renewed if r.line == line.name]) for line in job.lines if line.name in touched
    ]
    out += [Say.of("{line}: all of it.", line=where.line_name(line)) for line in job.lines if line.name not in touched]
    if any(t.value("branches") + t.value("branches_tunnel") + t.value("reinstatements") > 0 for t in takeoffs):
        out.append(Say.of("Branch drains past the new fittings."))
    if scope.leaves:
        left = dict.fromkeys(_left(job, scope, i) for i in range(len(scope.leaves)))
        out += [Say.of("Left as it is: {left}.", left=one) for one in left]
    return tuple(say for say in out if say is not None)


def _old(line: Line, renewed: list[Stretch]) -> Say | None:
    old = old_on_paper(line, renewed)
    return Say.of("{line}: {length}.", line=where.line_name(line), length=Feet(old)) if old >= LEAST_FT else None


def _left(job: Job, scope: Scope, index: int) -> Say:
    need = scope.leaves[index]
    what = tuple(dict.fromkeys(map(in_words, need.findings))) or tuple(in_plain_words(FINDINGS, k) for k in need.kinds)
    return Say.of("{what} ({place})", what=what, place=where.place(job.line(need.line), need.stretch))


def floors_opened(job: Job, takeoffs: Iterable[Takeoff]) -> tuple[str, ...]:
    """Names of the rooms whose floor is cut along a line."""
    cut = (o for t in takeoffs for o in t.works.floors if o.line)
    return tuple(dict.fromkeys(room for o in cut for room in where.rooms(job.line(o.line), o.along)))


def water_test(scope: Scope, takeoffs: Sequence[Takeoff], old_pipe_left_ft: float) -> tuple[TestPromise, Say]:
    """What the water test after the work promises: all of it, the new part, or nothing; only a test in the price is promised."""
    methods = {r.method for r in all_repairs(scope.repairs)}
    if not any(renews(m) for m in methods):
        return "not promised", Say.of("Not promised: the old pipe stays as it is.")
    with_test = tested(takeoffs)
    if not with_test:
        return "not promised", Say.of("No water test is in this price; ask us if you want one.")
    new = [t.repair for t in takeoffs if renews(t.repair.method) and t.repair.method != JOB]
    if any(r.id not in with_test for r in new):
        return "only this part", _some_tested(new, with_test)
    if old_pipe_left_ft < LEAST_FT and not scope.leaves:
        return "yes", Say.of("Yes: the new pipe is filled and must hold, for you and the inspector to see.")
    if all(record_of(m).lined or not renews(m) for m in methods):
        return "only this part", Say.of(
            "We inspect and test the lined part only. Our warranty does not cover the existing pipe."
        )
    return "only this part", Say.of("We water-test the new pipe only. Our warranty does not cover the existing pipe.")


def _some_tested(new: Sequence[Repair], with_test: Container[str]) -> Say:
    """Names the lines all of whose new pipe is tested; a line with one untested piece is not promised."""
    untested = {r.line for r in new if r.id not in with_test}
    lines = [in_plain_words(LINES, r.line) for r in new if r.line not in untested]
    if not lines:
        return Say.of("Only the pieces whose water test stands among the lines of this price. The rest is not tested.")
    return Say.of(
        "We water-test the new part of the {lines} only. {elsewhere} has no water test in this price. Our warranty does not cover the existing pipe.",
        lines=tuple(dict.fromkeys(lines)),
        elsewhere=_elsewhere({r.method for r in new if r.line in untested}),
    )


def _elsewhere(methods: set[str]) -> Say:
    """What the lines are given whose work is not tested."""
    if all(record_of(m).lined for m in methods):
        return Say.of("The lining elsewhere")
    return Say.of("What is new elsewhere") if any(record_of(m).lined for m in methods) else Say.of("New pipe elsewhere")
