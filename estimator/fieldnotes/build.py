"""A checked form comes in; the Job, with every problem found on the way, goes out."""

import re
from dataclasses import replace
from datetime import date
from decimal import Decimal

from estimator.fieldnotes import wanted, watertests
from estimator.fieldnotes.contradictions import contradictions
from estimator.fieldnotes.forms import JobFileForm, JoinForm, RerouteForm
from estimator.fieldnotes.joins import LineTree, join_station, joined_lines, with_depth_at_join
from estimator.fieldnotes.limits import Limits
from estimator.fieldnotes.lines import LogFiles, ReadLine, read_line
from estimator.fieldnotes.nearest import nearest
from estimator.fieldnotes.syntax import Document
from estimator.fieldnotes.unlikely import thick_slab
from estimator.fieldnotes.wanted import UNKNOWN_LINE, WHERE, is_where, wanted_options
from estimator.fieldnotes.watertests import water_test
from estimator.model.job import Foundation, Job, Reroute, WaterTest, Wishes
from estimator.model.lengths import parse_quantity
from estimator.model.problem import Problem, error
from estimator.model.say import Say
from estimator.model.wanted import Override, WantedOption

NO_LINES = error("job/no-lines", "the job has no [[line]].", "Add one for each run of pipe that was filmed or matters.")
TWO_LINES = error("job/two-lines", "two lines are called {name}.", "Give each line a name of its own.")
COVERS = error(
    "test/covers",
    "the water test covers “{text}”, and no line or branch is called that. {nearest}",
    "Write names of lines or of branches in a log (`called hall bath`).",
)
NO_REASON = error(
    "job/no-reason", "an override gives no reason.", 'Add reason = "…"; it is printed on the office sheet.'
)
FOUNDATION = error(
    "job/foundation-work",
    "foundation_work = “{text}” is not understood.",
    "Write none, planned 2027-02 or done 2024-05.",
)
QUANTITY = error(
    "job/quantity",
    "quantity = “{text}” is no amount this program prices.",
    'Write a number of at most {most} and its unit, such as quantity = "31 ft".',
    "A slip in the owner's own number goes straight into the price.",
)
MOST_QUANTITY = 100_000
PROBLEMS = (QUANTITY, NO_LINES, TWO_LINES, COVERS, NO_REASON, FOUNDATION, *wanted.PROBLEMS, *watertests.PROBLEMS)


class _Builder:
    def __init__(self, form: JobFileForm, document: Document, logs: LogFiles, limits: Limits) -> None:
        self.form, self.document, self.logs, self.limits = form, document, logs, limits
        self.problems: list[Problem] = []

    def job(self) -> Job:
        tree = self._lines()
        form = self.form
        self.problems += thick_slab(form.house.slab_thickness_ft, self.document.place("house", "slab_thickness"))
        self.known = tuple(read.line.name for read in tree.read)
        return Job(
            number=form.job.number,
            day=form.job.date,
            inspected_on=form.job.inspected_on,
            prepared_by=form.job.prepared_by,
            languages=form.job.languages or form.job.language or ("en_US",),
            demo=form.job.demo,
            notes=form.job.notes,
            customer=form.customer,
            house=form.house,
            lines=with_depth_at_join([read.line for read in tree.read]),
            site=form.site,
            wishes=self._wishes(),
            foundation=self._foundation(),
            water_tests=self._tests(tree),
            reroutes=tuple(self._reroute(r, n, tree) for n, r in enumerate(form.reroute)),
            signs=form.sign,
            approvals=form.approval,
            overrides=self._overrides(),
            options=self._options(tree),
            allowances=form.allowance,
            discounts=form.discount,
            add_ons=form.add_on,
            settings=tuple((key, _setting(value)) for key, value in form.settings.items()),
        )

    def _lines(self) -> LineTree:
        words = self.form.words
        read: list[ReadLine] = []
        for number, form in enumerate(self.form.line):
            line, problems = read_line(form, number, self.document, self.logs, words, self.limits)
            if any(line.line.name.lower() == other.line.name.lower() for other in read):
                self.problems.append(TWO_LINES(line.place, name=line.line.name))
            read.append(line)
            self.problems += problems
        if not read:
            self.problems.append(NO_LINES(self.document.place()))
        tree, problems = joined_lines(read)
        self.problems += problems
        for this in tree.read:
            self.problems += contradictions(this, self.limits)
        return tree

    def _wishes(self) -> Wishes:
        keep = self.document.data["house"].get("keep_floors")
        return self.form.wishes if keep is None else replace(self.form.wishes, keep_floors=keep)

    def _foundation(self) -> Foundation:
        word = self.document.data["house"].get("foundation_work")
        return (
            self._foundation_word(str(word)) if word and self.form.foundation.work == "none" else self.form.foundation
        )

    def _foundation_word(self, text: str) -> Foundation:
        """`planned 2027-02` or `done 2024-05`; a month counts from its first day."""
        match = re.fullmatch(r"(none|planned|done)(?:\s+(\d{4})-(\d{2})(?:-(\d{2}))?)?", text.strip(), re.ASCII)
        try:
            if match:
                day = date(int(match[2]), int(match[3]), int(match[4] or 1)) if match[2] else None
                return Foundation(work=match[1], lift_date=day)  # type: ignore[arg-type]
        except ValueError:
            pass
        self.problems.append(FOUNDATION(self.document.place("house", "foundation_work"), text=text))
        return Foundation()

    def _tests(self, tree: LineTree) -> tuple[WaterTest, ...]:
        tests = []
        for number, form in enumerate(self.form.water_test):
            test, problems = water_test(form, self.document.place("water_test", number))
            tests.append(test)
            self.problems += problems
            for name in test.covers:
                known = tree.names()
                if name.lower() not in {k.lower() for k in known}:
                    place = self.document.place("water_test", number, "covers")
                    self.problems.append(COVERS(place, text=name, nearest=nearest(name, known)))
        return tuple(tests)

    def _line_name(self, name: str, *path: str | int) -> None:
        if name and name not in self.known:
            self.problems.append(
                UNKNOWN_LINE(
                    self.document.place(*path), name=name, known=", ".join(self.known) or Say.of("no line yet")
                )
            )

    def _reroute(self, form: RerouteForm, number: int, tree: LineTree) -> Reroute:
        self._line_name(form.replaces.line, "reroute", number, "replaces", "line")
        into = form.ties_into
        if isinstance(into, JoinForm):
            self._line_name(into.line, "reroute", number, "ties_into", "line")
        target = tree.named(into.line) if into else None
        return Reroute(
            name=form.name,
            replaces_line=form.replaces.line,
            replaces_from_ft=form.replaces.from_,
            replaces_to_ft=form.replaces.to,
            legs=form.legs,
            fall_available_ft=form.fall_available,
            ties_into_line=into.line if into else "",
            ties_into_ft=join_station(target, into) if target and into else None,
            size_in=round(form.size * 12, 6) if form.size is not None else None,
            serves=form.serves,
            penetrations=form.penetrations,
            turns=form.turns,
            vents=form.vents,
        )

    def _overrides(self) -> tuple[Override, ...]:
        for number, mine in enumerate(self.form.override):
            if not mine.reason.strip():
                self.problems.append(NO_REASON(self.document.place("override", number)))
            if mine.where and not is_where(mine.where):
                self.problems.append(WHERE(self.document.place("override", number, "where"), text=mine.where))
            if mine.quantity and not _can_be_priced(mine.quantity):
                place = self.document.place("override", number, "quantity")
                self.problems.append(QUANTITY(place, text=mine.quantity, most=f"{MOST_QUANTITY:,}"))
        return self.form.override

    def _options(self, tree: LineTree) -> tuple[WantedOption, ...]:
        options, problems = wanted_options(self.form, self.document, [read.line for read in tree.read], self.limits)
        self.problems += problems
        return options


def _can_be_priced(quantity: str) -> bool:
    read = parse_quantity(quantity)
    return not isinstance(read, Say) and 0 < read[0] <= MOST_QUANTITY


def _setting(value: str | bool | int | Decimal) -> str:
    return ("yes" if value else "no") if isinstance(value, bool) else str(value)


def build(form: JobFileForm, document: Document, logs: LogFiles, limits: Limits) -> tuple[Job, list[Problem]]:
    """The whole job, and every problem found while building it."""
    builder = _Builder(form, document, logs, limits)
    return builder.job(), builder.problems
