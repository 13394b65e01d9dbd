"""A water test as written in; what it proves out: passed, failed or inconclusive with the reasons; two tests compared; what one part's own tests proved."""

from itertools import pairwise

from estimator.diagnosis.leak_rate import leak_rate, settled
from estimator.knowledge.pipe_family import family
from estimator.model.frozen import Frozen
from estimator.model.job import Job, WaterTest
from estimator.model.say import Say
from estimator.model.stretch import Stretch
from estimator.model.test_read import Outcome, TestRead
from estimator.tables.tables import Tables


def read_test(test: WaterTest, job: Job, tables: Tables) -> TestRead:
    """The verdict written down stands, unless the section could not be sealed; without one the readings decide.

    A section that would not seal is inconclusive, never a pass. Water that rose at another fixture is a cross level and no
    fail by itself.
    """
    rate = leak_rate(test, tables.number("test_settle_min"))
    doubts = doubts_of(test, job, tables)
    if test.result == "could not be sealed" or test.sealed is False:
        return TestRead(test, "inconclusive", rate, doubts)
    if test.result in ("passed", "failed"):
        return TestRead(test, "passed" if test.result == "passed" else "failed", rate, doubts)
    return TestRead(test, _by_readings(test, tables), rate, doubts)


def _by_readings(test: WaterTest, tables: Tables) -> Outcome:
    readings = settled(test, tables.number("test_settle_min"))
    if len(readings) < 2:
        return "inconclusive"
    fell = readings[-1][1] - readings[0][1] > tables.number("test_allowed_drop_in")
    if fell and test.rose_at:
        return "inconclusive"
    long_enough = readings[-1][0] >= tables.number("test_minutes")
    return "failed" if fell else "passed" if long_enough else "inconclusive"


def doubts_of(test: WaterTest, job: Job, tables: Tables) -> tuple[Say, ...]:
    """Why a test may prove less than it seems."""
    out = []
    if test.result == "could not be sealed" or test.sealed is False:
        out.append(Say.of("the test plug did not seal in the pipe"))
    if test.rose_at:
        out.append(Say.of("the water rose at {where}: the levels evened out", where=test.rose_at))
    if test.not_in_test:
        out.append(Say.of("not in the test: {parts}", parts=", ".join(test.not_in_test)))
    if job.house.exits > 1 and test.kind == "whole":
        out.append(
            Say.of("{count} drains leave the house, and one test plug closes only one of them", count=job.house.exits)
        )
    if test.readings and test.readings[-1][0] < tables.number("test_minutes"):
        out.append(
            Say.of(
                "short test, {minutes} minutes: air leaves the pipe in the first ten",
                minutes=f"{test.readings[-1][0]:g}",
            )
        )
    if test.sealed is None and not test.result and _has_iron(job):
        out.append(Say.of("the notes do not say whether the plug sealed; in rough iron it often does not"))
    if test.sealed is not True and "cleanout" in test.plug and _two_way(job):
        out.append(Say.of("a plug often cannot pass the tee of a two-way cleanout"))
    if "drip" in test.note or "condensate" in test.note or "ice" in test.note:
        out.append(Say.of("water dripped into the drains during the test"))
    return tuple(out)


def _has_iron(job: Job) -> bool:
    return any(family(line.pipe) == "iron" for line in job.lines)


def _two_way(job: Job) -> bool:
    marks = (m for line in job.lines for m in line.marks if m.word in ("cleanout", "access"))
    return any("two-way" in m.signs or "two-way" in (m.choice or "") for m in marks)


class Pair(Frozen):
    """The same section tested twice, such as before and after a lift."""

    before: TestRead
    after: TestRead

    @property
    def change_gallons_a_day(self) -> float | None:
        if self.before.gallons_a_day is None or self.after.gallons_a_day is None:
            return None
        return self.after.gallons_a_day - self.before.gallons_a_day

    @property
    def says(self) -> Say:
        """What the pair shows, in one sentence."""
        was, now = self.before.outcome, self.after.outcome
        if "inconclusive" in (was, now):
            return Say.of(
                "One of the two tests of {section} is inconclusive. They cannot be compared.",
                section=self.before.test.section,
            )
        if (was, now) == ("passed", "failed"):
            return Say.of(
                "{section} passed before and fails now. It opened in between.", section=self.before.test.section
            )
        if (was, now) == ("failed", "passed"):
            return Say.of("{section} failed before and passes now.", section=self.before.test.section)
        if now == "passed":
            return Say.of("{section} passed both times.", section=self.before.test.section)
        change = self.change_gallons_a_day
        if change is None:
            return Say.of(
                "{section} failed both times. The leak rate was not measured both times.",
                section=self.before.test.section,
            )
        return Say.of(
            "{section} failed both times: {before} gallons per day before, {after} after.",
            section=self.before.test.section,
            before=f"{self.before.gallons_a_day or 0:.0f}",
            after=f"{self.after.gallons_a_day or 0:.0f}",
        )


ORDER = ("before lift", "routine", "after lift", "after repair")


def pairs(job: Job, tables: Tables) -> tuple[Pair, ...]:
    """Tests of one section put side by side: each with the next one of the same section, by date, else by when it was made."""
    out = []
    for section in dict.fromkeys(t.section for t in job.water_tests):
        same = [t for t in job.water_tests if t.section == section]
        same.sort(key=lambda t: (t.date.toordinal() if t.date else 0, ORDER.index(t.when)))
        reads = [read_test(t, job, tables) for t in same]
        out += [Pair(a, b) for a, b in pairwise(reads)]
    return tuple(out)


PROVED, SAME_FT = {"passed": "tight", "failed": "leaks"}, 0.5


def proved(name: str, job: Job, tables: Tables, piece: Stretch | None = None) -> str:
    """What isolated tests of this part alone proved, the last one counting; the readings speak where no result was written.

    A test of a part of a line speaks for the pieces in it, before any of the whole line; where one failed, a whole line that
    failed says nothing more of the other pieces.
    """
    mine = [
        (t, read_test(t, job, tables).outcome) for t in job.water_tests if t.kind == "isolated" and name in t.covers
    ]
    parts = [(t.part, outcome) for t, outcome in reversed(mine) if t.part is not None]
    for part, outcome in parts:
        if piece is not None and outcome in PROVED and part.padded(SAME_FT, SAME_FT).covers(piece):
            return PROVED[outcome]
    for test, outcome in reversed(mine):
        if test.part is None and (outcome == "passed" or (outcome == "failed" and len(test.covers) == 1)):
            return "" if outcome == "failed" and any(o == "failed" for _, o in parts) else PROVED[outcome]
    return ""
