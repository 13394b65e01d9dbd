"""A question and what was typed at it in; the cells written in the firm's tables, or what is wrong with the answer, out."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from datetime import date
from decimal import Decimal
from pathlib import Path

from estimator.cli.price_tables import readable_tables, tables_for
from estimator.cli.priced_job import priced
from estimator.cli.views.words import AS_NOTED
from estimator.model.frozen import Frozen
from estimator.model.offer import Option
from estimator.model.problem import Level, Problem
from estimator.model.say import FromTable, Say, Typed
from estimator.quote.invented import figures_of
from estimator.tables.first_answers import (
    BURDEN_TYPED,
    TYPED,
    answered,
    members_of,
    own_place,
    typed_columns,
    written_values,
)
from estimator.tables.first_questions import CITY, OF_THE_MARGIN, Question, figure, first_questions
from estimator.tables.invented_rows import own_rows
from estimator.tables.overhead import CrewDayCost, crew_day_cost
from estimator.tables.own_csv import OwnTables
from estimator.tables.rows import Equipment, Material, SubOrFee
from estimator.tables.tables import Tables
from estimator.wording.say import say

number = AS_NOTED.number
LANGUAGES = ("en_US", "es_US")
MEASURED = ("ft", "sq ft")
A_HUNDRED, PLAIN = 100, Decimal("0.2")
NOTHING = "—"
UNREADABLE = Say.of("Write how many and who, such as: 1 lead plumber, 1 helper")


@dataclass(slots=True)
class Written:
    """The folder that is being filled, in the reader's language."""

    own: OwnTables
    language: str
    before: dict[str, str] = field(default_factory=dict)

    @property
    def tables(self) -> Tables:
        """As they stand. Errors: CannotGoOn."""
        return readable_tables(self.own.day, self.own.folder)

    @property
    def city(self) -> str:
        """The firm's own place; "" where there is none yet."""
        place = own_place(self.tables)
        return place.place if place else ""

    def standing(self, question: Question) -> str:
        """What stands in the tables now, as the reader's language has it; "—" where nothing does."""
        if question.table == "crews":
            members = [m for m in self.tables.crew_members if m.crew == question.row]
            return ", ".join(f"{number(m.count)} {say(Say.of(m.role), self.language)}" for m in members)
        if question.row == CITY:
            city = self.city
            return (self.own.value("places", city, question.column) if city else "") or NOTHING
        row = question.row or next(iter(self._paid_roles()), "lead plumber")
        value = self.own.value(question.table, row, question.column)
        if question.row in OF_THE_MARGIN and ("settings", question.row) not in own_rows(self.tables):
            return NOTHING
        if question.table == "equipment" and self.own.value("equipment", row, "unit") == "day":
            return f"{value} {say(self._whose(row), self.language)}"
        return say(self._everyday(question, value), self.language) if question.table == "production" else value

    def said_back(self, question: Question, typed: str) -> Iterator[Say]:
        """What an answer filled in beyond what was typed."""
        table, row = question.table, question.row
        if table == "production":
            low, high = (self.own.value(table, row, column) for column in ("low", "high"))
            likely = self._everyday(question, self.own.value(table, row, "likely"))
            text = "Kept: {likely}. In proportion: {low} on a good day, {high} on a bad one."
            yield Say.of(text, likely=likely, low=low, high=high)
        elif table == "equipment" and self.own.value(table, row, "unit") == "day":
            amount, own = self.own.value(table, row, "cost"), self.own.value(table, row, "own") == "yes"
            yield Say.of("Kept: {amount} a day, {whose}.", amount=amount, whose=self._whose(row))
            if "own" not in written_values(question, typed, {}):
                other = Say.of("rented") if own else Say.of("own")
                yield Say.of("If not, go back and type: {amount} {whose}", amount=amount, whose=other)

    def _whose(self, row: str) -> Say:
        return Say.of("own") if self.own.value("equipment", row, "own") == "yes" else Say.of("rented")

    def _everyday(self, question: Question, value: str) -> Say:
        """A small part of an hour for a foot beside the hours for a hundred feet, which people know."""
        unit = self.own.value("production", question.row, "unit")
        try:
            hours = Decimal(value) * A_HUNDRED
        except ArithmeticError:
            hours = Decimal(0)
        if unit not in MEASURED or not 0 < hours < PLAIN * A_HUNDRED:
            return Say.of(value)
        text = "{value} (for 100 {unit}: {hours} crew-hours)"
        return Say.of(text, value=Typed(value), unit=unit, hours=number(hours))

    def take(self, question: Question, typed: str) -> tuple[tuple[Problem, ...], bool]:
        """The problems that the answer, now written, has brought, and whether the tables can no longer be read with them.

        Errors: ValueError where it cannot be read at all, and nothing is written.
        """
        known = set(map(str, tables_for(self.own.day, self.own.folder)[1]))
        self.before = {question.table: self.own.text(question.table)}
        self._write(question, typed)
        tables, problems = tables_for(self.own.day, self.own.folder)
        new = [p for p in problems if str(p) not in known and (tables is None) == (p.level is Level.ERROR)]
        return tuple(new), tables is None

    def take_back(self) -> None:
        """The table as it was before the last answer."""
        for table, text in self.before.items():
            self.own.put(table, text)

    def checked(self, question: Question, notes: tuple[str, ...]) -> None:
        """In the row's note: the figure was asked about and is right."""
        if notes and question.row and question.table not in ("crews", "settings") and question.row != CITY:
            note = self.own.value(question.table, question.row, "note")
            kept = [BURDEN_TYPED] if BURDEN_TYPED in note else []
            self.own.set(question.table, question.row, {"note": "; ".join([*kept, *notes])})

    def _write(self, question: Question, typed: str) -> None:
        if question.table == "crews":
            self.own.crew(question.row, members_of(typed, self._role_names()))
        elif question.row == CITY:
            self._write_city(question.column, typed)
        elif question.column == "burden_percent":
            for role in self._paid_roles():
                note = self.own.value("roles", role, "note")
                noted = note if BURDEN_TYPED in note else "; ".join(filter(None, (BURDEN_TYPED, note)))
                self.own.set("roles", role, {"burden_percent": typed, "note": noted})
        else:
            self.own.set(question.table, question.row, self._values(question, typed))

    def _write_city(self, column: str, typed: str) -> None:
        before = self.city
        source = self.own.value("places", before, "source") if before else TYPED
        columns = dict.fromkeys((*filter(None, typed_columns(source)), column))
        said = f"{TYPED}{', '.join(columns)}; write who said so" if source.startswith(TYPED) else source
        name = " ".join(typed.lower().replace(",", " ").split()) if column == "text" else before or CITY
        self.own.copy("places", before or "unknown", name or CITY, {column: typed, "source": said})

    def _role_names(self) -> Mapping[str, str]:
        """Every role by its name in each language."""
        return {say(Say.of(row.role), language): row.role for language in LANGUAGES for row in self.tables.roles}

    def _paid_roles(self) -> list[str]:
        """Roles whose wage is the firm's: only those take its burden, so that no invented wage passes for its own."""
        return sorted(row for table, row in own_rows(self.tables) if table == "roles")

    def _values(self, question: Question, typed: str) -> Mapping[str, str]:
        if question.column == "wage" and (others := self._paid_roles()):
            return {"wage": typed, "burden_percent": self.own.value("roles", others[0], "burden_percent")}
        standing = {c: self.own.value(question.table, question.row, c) for c in ("low", "likely", "high")}
        return written_values(question, typed, standing)

    def margin(self) -> CrewDayCost | None:
        """Written from overhead, crew-days and profit; None where one of them is not the firm's own yet."""
        tables = self.tables
        if not {("settings", key) for key in OF_THE_MARGIN} <= own_rows(tables):
            return None
        overhead, days, profit = (tables.amount(key) for key in OF_THE_MARGIN)
        if not days:
            return None
        day = crew_day_cost(overhead, days, profit, tables)
        floor = min(Decimal(self.own.value("pricing", "own", "floor_margin_percent")), day.margin_percent)
        shown = {"margin_percent": f"{day.margin_percent:f}", "floor_margin_percent": f"{floor:f}", "note": ""}
        self.own.set("pricing", "own", shown)
        return day


def begun(folder: Path, by: str, day: date, language: str) -> Written:
    """The folder, whose rows are signed by who types."""
    return Written(OwnTables(folder, by, day), language)


NAMED = 3
"""So many of the figures that are left are named."""


class Left(Frozen, kw_only=True):
    """How much of an option's cost still rests on the demo's figures, percent, and the largest of them, in words."""

    letter: str
    percent: Decimal
    largest: tuple[Say, ...]


def questions_of(job: Path, folder: Path) -> tuple[Question, ...]:
    """Return what is asked for this job: who the firm is and its margin where they are not its own, then wages, prices and
    hours in the order of their share. Hours stand at the share they have once their wages are the firm's.

    Errors: CannotGoOn where the job or the tables cannot be read.
    """
    tables, options = _priced(job, folder)
    fifty = first_questions(tables)
    first = [q for q in fifty if q.table == "settings" and not answered(q, tables)]
    moved: dict[tuple[str, str], Decimal] = {}
    for option in options:
        for found in (figures_of(option, tables), figures_of(option, tables, paid=True)):
            for key, share in found.items():
                moved[key] = max(share, moved.get(key, Decimal(0)))
    asked = {(q.table, q.row): q for q in fifty}
    figures = []
    for (table, row), share in sorted(moved.items(), key=lambda one: (-one[1], one[0])):
        question = asked.get((table, row)) or figure(table, row, 0.0, tables)
        if question is not None and round(share, 1):
            figures.append(replace(question, share=float(round(share, 1))))
    after = max((at for at, q in enumerate(figures, start=1) if q.table == "roles"), default=0)
    burden = [q for q in fifty if q.column == "burden_percent" and not answered(q, tables)]
    return (*first, *figures[:after], *burden, *figures[after:])


def left(job: Path, folder: Path) -> Sequence[Left]:
    """Return what of each option still rests on the demo's figures."""
    tables, options = _priced(job, folder)
    out = []
    for option in options:
        held = figures_of(option, tables)
        largest = sorted((key for key, share in held.items() if round(share, 1)), key=lambda key: -held[key])
        named = tuple(_called(*key, tables) for key in largest[:NAMED])
        out.append(Left(letter=option.letter, percent=sum(held.values(), Decimal(0)), largest=named))
    return out


def _called(table: str, row: str, tables: Tables) -> Say:
    """What people call it: the text of a thing that is bought, the name of a task or of who is paid."""
    found = next((r for r in tables.current(table) if getattr(r, "item", None) == row), None)
    if isinstance(found, Material | Equipment | SubOrFee):
        return Say.of("{what}", what=FromTable(found.text, found.text_es))
    return Say.of(row)


def _priced(job: Path, folder: Path) -> tuple[Tables, Sequence[Option]]:
    found = priced(job, folder)
    return found.tables, found.quote.options if found.quote else ()
