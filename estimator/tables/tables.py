"""A set of tables as of one day: the newest row begun by that day, by id."""

from collections.abc import Mapping
from dataclasses import replace
from datetime import date
from decimal import Decimal
from typing import Any, TypeVar, cast

from estimator.model.frozen import Frozen
from estimator.model.money import cents
from estimator.tables.following_rows import in_force
from estimator.tables.rows import (
    TABLE_OF,
    AddOnRow,
    Contingency,
    Equipment,
    Event,
    ExtraRow,
    Material,
    MethodRow,
    PlaceRow,
    PriceClass,
    Recipe,
    Setting,
    Soil,
    SubOrFee,
    TableRow,
    TaxClass,
    TermRow,
    WorkItem,
    id_of,
)
from estimator.tables.rows_of_hours import CrewMember, Factor, Production, Role

Row = TypeVar("Row", bound=TableRow)


def _in_order(counting: tuple[TableRow, ...], rows: tuple[TableRow, ...]) -> list[TableRow]:
    """As the file has them."""
    at = {id(row): place for place, row in enumerate(rows)}
    return sorted(counting, key=lambda row: at[id(row)])


class Tables(Frozen, dict=True):
    """All rows read, and the day they are looked at. Look-ups raise KeyError for an unknown id."""

    rows: Mapping[str, tuple[TableRow, ...]]
    day: date
    fingerprint: str = ""
    source: str = ""

    def on(self, day: date) -> "Tables":
        """The same tables looked at on another day."""
        return self if day == self.day else replace(self, day=day)

    def current(self, table: str) -> tuple[TableRow, ...]:
        """Active rows, one for each id: the newest begun by the day, in the order of the file."""
        cache = self.__dict__.setdefault("_current", {})
        if table not in cache:
            rows = self.rows.get(table, ())
            counting, _ = in_force(table, rows, self.day)
            cache[table] = tuple(row for row in _in_order(counting, rows) if row.active)
        return cast(tuple[TableRow, ...], cache[table])

    def every(self, kind: type[Row]) -> tuple[Row, ...]:
        """The same, by the kind of row."""
        return cast(tuple[Row, ...], self.current(TABLE_OF[kind]))

    def _by_id(self, kind: type[Row]) -> Mapping[str, Row]:
        index: dict[type[TableRow], Any] = self.__dict__.setdefault("_index", {})
        if kind not in index:
            table = TABLE_OF[kind]
            index[kind] = {id_of(table, row): row for row in self.current(table)}
        found: Mapping[str, Row] = index[kind]
        return found

    def to_data(self) -> dict[str, Any]:
        """Everything in plain data, for the record; see tables/data.py."""
        from estimator.tables.data import to_data

        return to_data(self)

    @classmethod
    def from_data(cls, data: Mapping[str, Any]) -> "Tables":
        """The tables of a record. Errors: KeyError or ValueError for data that to_data did not make."""
        from estimator.tables.data import from_data

        return from_data(data)

    # ── look-ups ──────────────────────────────────────────────────────────────────────────────

    def setting(self, key: str) -> Setting:
        return self._by_id(Setting)[key]

    def number(self, key: str) -> float:
        """A setting as a float."""
        known: dict[str, float] = self.__dict__.setdefault("_numbers", {})
        if key not in known:
            known[key] = float(self.setting(key).value)
        return known[key]

    def amount(self, key: str) -> Decimal:
        """A setting as a Decimal."""
        return Decimal(self.setting(key).value)

    def text(self, key: str) -> str:
        return self.setting(key).value

    def yes(self, key: str) -> bool:
        return self.setting(key).value == "yes"

    @property
    def own_facts(self) -> tuple[str, ...]:
        """Facts that the firm thought of itself, which a job file tells; none where the tables are older than the setting."""
        try:
            return tuple(word.strip() for word in self.text("own_facts").split(",") if word.strip())
        except KeyError:
            return ()

    def with_settings(self, changes: Mapping[str, str]) -> "Tables":
        """The same tables with some settings changed, for one job or a what-if. Errors: KeyError for an unknown key."""
        for key in changes:
            self.setting(key)
        rows = tuple(
            replace(row, value=changes[row.key]) if isinstance(row, Setting) and row.key in changes else row
            for row in self.rows["settings"]
        )
        return replace(self, rows={**self.rows, "settings": rows})

    def material(self, item: str) -> Material:
        return self._by_id(Material)[item]

    def equipment(self, item: str) -> Equipment:
        return self._by_id(Equipment)[item]

    def sub(self, item: str) -> SubOrFee:
        return self._by_id(SubOrFee)[item]

    def production(self, task: str) -> Production:
        return self._by_id(Production)[task]

    def method(self, method: str) -> MethodRow:
        return self._by_id(MethodRow)[method]

    @property
    def methods_off(self) -> frozenset[str]:
        """Ways of repair that the firm does not sell: their row says active no, or has not begun."""
        sold = {row.method for row in self.every(MethodRow)}
        return frozenset(id_of("methods", row) for row in self.rows.get("methods", ())) - sold

    def price_class(self, name: str) -> PriceClass:
        return self._by_id(PriceClass)[name]

    def soil(self, soil: str) -> Soil:
        return self._by_id(Soil)[soil]

    def place(self, place: str) -> PlaceRow:
        return self._by_id(PlaceRow)[place]

    def known_place(self, place: str) -> PlaceRow | None:
        """The place's row; None where the tables have none, so that nothing about it is answered."""
        try:
            return self.place(place)
        except KeyError:
            return None

    def tax_class(self, place: str, word: str) -> TaxClass | None:
        """How a place taxes work of this class, or None where it is taxed like all else."""
        return next((row for row in self.every(TaxClass) if word and (row.place, row.tax_class) == (place, word)), None)

    def work_item(self, item: str) -> WorkItem:
        return self._by_id(WorkItem)[item]

    def role(self, role: str) -> Role:
        return self._by_id(Role)[role]

    def rate(self, crew: str) -> Decimal:
        """Dollars for one hour of a whole crew: the sum of count × wage × (1 + burden), to the cent.

        Errors: KeyError for a crew nobody is in.
        """
        members = [m for m in self.crew_members if m.crew == crew]
        if not members:
            raise KeyError(crew)
        hour = Decimal(0)
        for member in members:
            role = self.role(member.role)
            hour += member.count * role.hour
        return cents(hour)

    # ── whole tables ──────────────────────────────────────────────────────────────────────────

    @property
    def settings(self) -> tuple[Setting, ...]:
        return self.every(Setting)

    @property
    def work_items(self) -> tuple[WorkItem, ...]:
        return self.every(WorkItem)

    @property
    def recipes(self) -> tuple[Recipe, ...]:
        return self.every(Recipe)

    @property
    def factors(self) -> tuple[Factor, ...]:
        return self.every(Factor)

    @property
    def crew_members(self) -> tuple[CrewMember, ...]:
        return self.every(CrewMember)

    @property
    def roles(self) -> tuple[Role, ...]:
        return self.every(Role)

    @property
    def contingencies(self) -> tuple[Contingency, ...]:
        return self.every(Contingency)

    @property
    def events(self) -> tuple[Event, ...]:
        return self.every(Event)

    @property
    def extras(self) -> tuple[ExtraRow, ...]:
        return self.every(ExtraRow)

    @property
    def add_ons(self) -> tuple[AddOnRow, ...]:
        return self.every(AddOnRow)

    @property
    def terms(self) -> tuple[TermRow, ...]:
        return self.every(TermRow)
