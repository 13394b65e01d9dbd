"""A job in, what was filmed, what was not, what was found and what the tests showed out, in a homeowner's words."""

from dataclasses import replace

from estimator.model.found import Found, letter
from estimator.model.job import Job
from estimator.model.judgement import Diagnosis, Need
from estimator.model.line import Finding, Line
from estimator.model.profile import Profile
from estimator.model.say import Feet, Inches, Say
from estimator.model.stretch import Stretch, joined
from estimator.model.test_read import TestRead
from estimator.quote import where
from estimator.wording.finding_words import in_words
from estimator.wording.plain import FINDINGS

LEAST_FT = 0.5  # shorter pieces that the camera missed are not worth a sentence
UNDER_SCALE = "scale-hides"
"""The reading of scale that hides the pipe."""
WHY_STOPPED: dict[str, Say] = {
    "blocked": Say.of("to where the camera could not pass"),
    "water": Say.of("to where the camera went under water"),
    "reached main": Say.of("to the city sewer main"),
    "end": Say.of("to the end of the pipe"),
}


def seen(job: Job) -> tuple[Say, ...]:
    """One sentence a line: how many feet from each access, and why a single run stopped."""
    return tuple(_seen(line) for line in job.lines if line.filmed and Profile(line).filmed)


def _seen(line: Line) -> Say:
    by_access: dict[str, list[Stretch]] = {}
    for run in line.passes:
        if run.seen is not None:
            by_access.setdefault(run.access, []).append(run.seen)
    each = tuple(
        Say.of("{length} from {access}", length=Feet(sum(part.length_ft for part in joined(seen))), access=access)
        for access, seen in by_access.items()
    )
    why = WHY_STOPPED.get(line.passes[0].stopped_because) if len(line.passes) == 1 else None
    if why is None:
        return Say.of("{line}: {each}.", line=where.line_name(line), each=each)
    return Say.of("{line}: {each}, {why}.", line=where.line_name(line), each=each, why=why)


def not_seen(job: Job) -> tuple[Say, ...]:
    """What no camera saw: pieces of lines, and whole lines."""
    out: list[Say] = []
    for line in job.lines:
        gaps = [part for part in Profile(line).not_inspected if part.length_ft >= LEAST_FT]
        if not line.filmed or not Profile(line).filmed:
            out.append(Say.of("{line}: not inspected.", line=where.line_name(line)))
        else:
            out += [_gap(line, part) for part in gaps]
    return tuple(out)


def hidden(job: Job, diagnosis: Diagnosis) -> tuple[Say, ...]:
    """Pipe inspected under scale so thick that it hides the wall."""
    places = [(job.line(e.line), e.stretch) for e in diagnosis.evidence if e.rule == UNDER_SCALE and e.stretch]
    return tuple(
        Say.of(
            "{line}, {place}: heavy scale hides part of the wall.",
            line=where.line_name(line),
            place=where.place(line, stretch),
        )
        for line, stretch in places
    )


def _gap(line: Line, part: Stretch) -> Say:
    return Say.of(
        "{line}: {length} not inspected, {place}.",
        line=where.line_name(line),
        length=Feet(part.length_ft),
        place=where.place(line, part),
    )


def found(job: Job, diagnosis: Diagnosis) -> tuple[Found, ...]:
    """Return the defects, lettered: what must be repaired first, then the rest, each group in the order of the notes.

    Alike ones of one line are one entry, with their number. A failed test with nothing seen is a defect too, and stands first.
    """
    unseen = [_not_located(job, need) for need in diagnosis.needs if "failed test" in need.kinds]
    entries = [*unseen, *(_entry(line, alike, diagnosis) for line in job.lines for alike in _alike(line))]
    ordered = sorted(entries, key=lambda entry: entry.act != "now")
    return tuple(replace(entry, letter=letter(number)) for number, entry in enumerate(ordered))


OF_THE_DIAMETER = frozenset({"offset", "oval"})
"""Findings measured across the pipe; others take away some of its opening."""
MANY = 4  # from so many alike things on a line on they are counted, not listed


def _alike(line: Line) -> list[tuple[Finding, ...]]:
    """The findings of a line, those of one kind and grade together where they are many."""
    groups: dict[object, list[Finding]] = {}
    for finding in line.findings:
        groups.setdefault((finding.kind, finding.grade, in_words(finding, line)), []).append(finding)
    many = {id(f): tuple(group) for group in groups.values() if len(group) >= MANY for f in group}
    return list(dict.fromkeys(many.get(id(f), (f,)) for f in line.findings))


def _entry(line: Line, alike: tuple[Finding, ...], diagnosis: Diagnosis) -> Found:
    seen = {f.id for f in alike}
    needs = [n for n in diagnosis.needs if n.line == line.name and any(f.id in seen for f in n.findings)]
    return Found(
        letter="",
        text=_found(line, alike[0]) if len(alike) < MANY else _many(line, alike),
        name=_named(alike[0], line),
        of_line=where.line_name(line),
        line=line.name,
        act="now" if any(n.must for n in needs) else "later",
        places=tuple(f.stretch for f in alike),
        findings=alike,
        needs=tuple(n.id for n in needs),
        beside=_found(line, alike[0], drawn=True) if len(alike) < MANY else None,
    )


def _named(finding: Finding, line: Line) -> Say:
    """Its name alone; what was not seen for certain is called possible."""
    name = in_words(finding, line)
    return Say.of("{what} (possible)", what=name) if _suspected(finding) else name


def _suspected(finding: Finding) -> bool:
    return finding.grade in ("suspected", "not inspected")


def _not_located(job: Job, need: Need) -> Found:
    line = job.line(need.line)
    name = where.line_name(line)
    stopped = next(
        (t for t in job.water_tests if t.held_at_in is not None and (need.line in t.covers or not t.covers)), None
    )
    text = (
        Say.of("{line}: failed water test, leak not located. The camera did not show where it leaks.", line=name)
        if stopped is None or stopped.held_at_in is None
        else Say.of(
            "{line}: failed water test, leak not located. The water stopped {height} below the {level}. The camera did not show where it leaks.",
            line=name,
            height=Inches(stopped.held_at_in),
            level=stopped.level,
        )
    )
    return Found(
        letter="",
        text=text,
        name=FINDINGS["failed test"],
        of_line=name,
        line=need.line,
        act="now" if need.must else "later",
        needs=(need.id,),
    )


def _found(line: Line, finding: Finding, *, drawn: bool = False) -> Say:
    """The sentence; beside a drawing without what it shows."""
    distance = where.distance(line, finding.stretch, drawn=drawn)
    words: dict[str, object] = {"line": where.line_name(line), "distance": distance, "what": _what(finding, line)}
    if _suspected(finding):
        words["what"] = Say.of("{what}; possible, not confirmed", what=words["what"])
    if drawn and where.in_the_open_yard(line, finding.stretch):
        return Say.of("{line}, {distance}: {what}.", **words)
    return Say.of("{line}, {place}, {distance}: {what}.", **words, place=where.place(line, finding.stretch))


def _many(line: Line, alike: tuple[Finding, ...]) -> Say:
    whole = Stretch(min(f.stretch.from_ft for f in alike), max(f.stretch.to_ft for f in alike))
    words: dict[str, object] = {
        "line": where.line_name(line),
        "place": where.place(line, whole),
        "what": _what(alike[0], line),
        "count": len(alike),
    }
    if _suspected(alike[0]):
        return Say.of("{line}, {place}: {what}, at {count} places; possible, not confirmed.", **words)
    return Say.of("{line}, {place}: {what}, at {count} places.", **words)


def _what(finding: Finding, line: Line) -> Say:
    name = in_words(finding, line)
    if finding.size_in:
        return Say.of("{what}, about {size}", what=name, size=Inches(finding.size_in))
    if finding.worst_percent is None:
        return name
    percent = round(finding.worst_percent)
    if finding.kind == "sag":
        return Say.of("{what}, about {percent}% of the way up the pipe", what=name, percent=percent)
    if finding.kind in OF_THE_DIAMETER:
        return Say.of("{what}, by about {percent}% of the diameter", what=name, percent=percent)
    return Say.of("{what}, about {percent}% of the pipe opening", what=name, percent=percent)


def tests(diagnosis: Diagnosis) -> tuple[Say, ...]:
    """Return what each water test showed, its verdict first."""
    return tuple(_test(read) for read in diagnosis.tests)


VERDICTS: dict[str, Say] = {
    "passed": Say.of("PASSED"),
    "failed": Say.of("FAILED"),
    "inconclusive": Say.of("INCONCLUSIVE"),
}


def _test(read: TestRead) -> Say:
    verdict, section = VERDICTS[read.outcome], read.test.section
    shown = _shown(read)
    if shown is None:
        return Say.of("Water test, {section}: {verdict}.", section=section, verdict=verdict)
    return Say.of("Water test, {section}: {verdict}. {shown}", section=section, verdict=verdict, shown=shown)


def in_short(read: TestRead) -> Say:
    """Section, verdict and reading in a few words, under a heading that says it is a water test."""
    minutes, drop = (read.test.readings or ((0.0, 0.0),))[-1]
    words: dict[str, object] = {"section": read.test.section, "verdict": VERDICTS[read.outcome]}
    if _not_sealed(read):
        return Say.of("{section}: {verdict}, could not be sealed", **words)
    if not minutes:
        return Say.of("{section}: {verdict}", **words)
    if drop <= 0:
        return Say.of("{section}: {verdict}, held {minutes} minutes", **words, minutes=minutes)
    if read.outcome == "passed":
        return Say.of("{section}: {verdict}, held after the air was out", **words)
    return Say.of("{section}: {verdict}, {drop} down in {minutes} minutes", **words, drop=Inches(drop), minutes=minutes)


def _not_sealed(read: TestRead) -> bool:
    return read.test.result == "could not be sealed" or read.test.sealed is False


def _shown(read: TestRead) -> Say | None:
    """What the readings say; the last one counts from the start."""
    test = read.test
    if _not_sealed(read):
        return Say.of("The existing pipe could not be sealed.")
    if not test.readings:
        return None if read.outcome == "passed" else Say.of("No level readings.")
    minutes, drop = test.readings[-1]
    if drop <= 0:
        return Say.of("The water held for {minutes} minutes.", minutes=minutes)
    if read.outcome == "passed":
        return Say.of("The water dropped {drop} while air left the pipe, then held.", drop=Inches(drop))
    return Say.of("The water dropped {drop} over {minutes} minutes.", drop=Inches(drop), minutes=minutes)
