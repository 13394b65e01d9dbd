"""A job in, what was filmed, what was not, what was found and what the tests showed out, in a homeowner's words."""

from estimator.model.job import Job, WaterTest
from estimator.model.judgement import Diagnosis, Need
from estimator.model.line import Finding, Line
from estimator.model.profile import Profile
from estimator.model.say import Feet, Inches, Say
from estimator.model.stretch import Stretch
from estimator.quote import where
from estimator.wording.found import in_words

LEAST_FT = 0.5  # shorter pieces that the camera missed are not worth a sentence
UNDER_SCALE = "scale-hides"
"""The reading of scale that hides the pipe."""
WHY_STOPPED: dict[str, Say] = {
    "blocked": Say.of("there the camera could not pass"),
    "water": Say.of("there it went under water"),
    "reached main": Say.of("there it reached the city's main"),
    "end": Say.of("there the pipe ends"),
}


def seen(job: Job) -> tuple[Say, ...]:
    """One sentence a line: how many feet, from where, and why the camera stopped."""
    return tuple(_seen(line) for line in job.lines if line.filmed and Profile(line).filmed)


def _seen(line: Line) -> Say:
    filmed = sum(part.length_ft for part in Profile(line).filmed)
    first = line.passes[0]
    words: dict[str, object] = {"line": where.line_name(line), "length": Feet(filmed), "access": first.access}
    # Several passes end in several places; only a single one tells where the line was given up.
    why = WHY_STOPPED.get(first.stopped_because) if len(line.passes) == 1 else None
    if why is None:
        return Say.of("{line}: {length} filmed, starting at {access}.", **words)
    return Say.of("{line}: {length} filmed, starting at {access}; {why}.", why=why, **words)


def not_seen(job: Job) -> tuple[Say, ...]:
    """What no camera saw: pieces of lines, and whole lines."""
    out: list[Say] = []
    for line in job.lines:
        gaps = [part for part in Profile(line).not_inspected if part.length_ft >= LEAST_FT]
        if not line.filmed or not Profile(line).filmed:
            out.append(Say.of("{line}: not filmed at all.", line=where.line_name(line)))
        else:
            out += [_gap(line, part) for part in gaps]
    return tuple(out)


def hidden(job: Job, diagnosis: Diagnosis) -> tuple[Say, ...]:
    """Pipe filmed under scale so thick that nothing seen there proves nothing."""
    places = [(job.line(e.line), e.stretch) for e in diagnosis.evidence if e.rule == UNDER_SCALE and e.stretch]
    return tuple(
        Say.of(
            "{line}: the pipe under the rust could not be judged, {place}.",
            line=where.line_name(line),
            place=where.place(line, stretch),
        )
        for line, stretch in places
    )


def _gap(line: Line, part: Stretch) -> Say:
    return Say.of(
        "{line}: {length} not seen, {place}.",
        line=where.line_name(line),
        length=Feet(part.length_ft),
        place=where.place(line, part),
    )


def found(job: Job, diagnosis: Diagnosis) -> tuple[Say, ...]:
    """One sentence a finding, in the order of the notes; alike ones of one line are told once, with their number.

    A section that failed its test with nothing seen is a finding too, and stands first.
    """
    out: list[Say] = [_not_located(job, need) for need in diagnosis.needs if "failed test" in need.kinds]
    for line in job.lines:
        done: set[str] = set()
        for finding in line.findings:
            alike = [
                f
                for f in line.findings
                if (f.kind, f.grade, in_words(f)) == (finding.kind, finding.grade, in_words(finding))
            ]
            key = f"{in_words(finding)} {finding.grade}"
            if len(alike) < MANY:
                out.append(_found(line, finding))
            elif key not in done:
                out.append(_many(line, finding, alike))
            done.add(key)
    return tuple(out)


def _not_located(job: Job, need: Need) -> Say:
    line = job.line(need.line)
    stopped = next(
        (t for t in job.water_tests if t.held_at_in is not None and (need.line in t.covers or not t.covers)), None
    )
    if stopped is not None and stopped.held_at_in is not None:
        return Say.of(
            "{line}: failed water test, leak not located. The water stopped {height} below the {level}. The camera did not show where it leaks.",
            line=where.line_name(line),
            height=Inches(stopped.held_at_in),
            level=stopped.level,
        )
    return Say.of(
        "{line}: failed water test, leak not located. The camera did not show where it leaks.",
        line=where.line_name(line),
    )


MANY = 4  # from so many alike things on a line on they are counted, not listed


def _found(line: Line, finding: Finding) -> Say:
    words: dict[str, object] = {
        "what": _what(finding),
        "place": where.place(line, finding.stretch),
        "distance": where.distance(line, finding.stretch),
        "line": where.line_name(line),
    }
    if finding.grade in ("suspected", "not inspected"):
        return Say.of("{line}, {place}, {distance}: suspected, not seen for certain: {what}.", **words)
    return Say.of("{line}, {place}, {distance}: {what}.", **words)


def _many(line: Line, finding: Finding, alike: list[Finding]) -> Say:
    whole = Stretch(min(f.stretch.from_ft for f in alike), max(f.stretch.to_ft for f in alike))
    return Say.of(
        "{line}, {place}: {what}, at {count} places.",
        line=where.line_name(line),
        place=where.place(line, whole),
        what=_what(finding),
        count=len(alike),
    )


def _what(finding: Finding) -> Say:
    name = in_words(finding)
    if finding.size_in:
        return Say.of("{what}, about {size}", what=name, size=Inches(finding.size_in))
    if finding.worst_percent is not None:
        return Say.of("{what}, about {percent} percent of the pipe", what=name, percent=round(finding.worst_percent))
    return name


def tests(job: Job) -> tuple[Say, ...]:
    """What each water test showed."""
    return tuple(_test(test) for test in job.water_tests)


def _test(test: WaterTest) -> Say:
    section = test.section
    if test.result == "could not be sealed" or test.sealed is False:
        return Say.of("Water test, {section}: NO RESULT. The old pipe could not be sealed.", section=section)
    if not test.readings:
        if test.result == "passed":
            return Say.of("Water test, {section}: PASSED.", section=section)
        if test.result == "failed":
            return Say.of("Water test, {section}: FAILED. No level readings were noted.", section=section)
        return Say.of("Water test, {section}: no result and no readings were noted.", section=section)
    minutes, drop = test.readings[-1]
    if test.result == "passed" and drop > 0:
        return Say.of(
            "Water test, {section}: PASSED. The level settled by {drop} while air left the pipe, then held.",
            section=section,
            drop=Inches(drop),
        )
    if drop <= 0:
        return Say.of(
            "Water test, {section}: PASSED. The water level held for {minutes} minutes.",
            section=section,
            minutes=minutes,
        )
    return Say.of(
        "Water test, {section}: FAILED. The water dropped {drop} in {minutes} minutes.",
        section=section,
        drop=Inches(drop),
        minutes=minutes,
    )
