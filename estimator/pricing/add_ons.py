"""An option's takeoffs and price in; what may be added to it, each at a price that stands by itself, out."""

from collections.abc import Iterable, Sequence, Set
from dataclasses import replace
from decimal import Decimal

from estimator.model.add_on import AddOn
from estimator.model.frozen import Frozen
from estimator.model.job import Job
from estimator.model.judgement import FLOOR_RULE
from estimator.model.money import cents
from estimator.model.price import Price
from estimator.model.problem import Place, Problem
from estimator.model.wanted import WantedAddOn
from estimator.model.work import LETTERS, Scope, Takeoff
from estimator.pricing.add_on_price import priced, taxed
from estimator.pricing.markup import class_rows
from estimator.pricing.parts import holds
from estimator.pricing.problems import ADD_ON_TOO_LOW, stop
from estimator.tables.rows import AddOnRow, PlaceRow
from estimator.tables.tables import Tables


class Wanted(Frozen):
    """What a job says of add-ons for one option, which is `called` by its letter and its name, in small letters."""

    words: Sequence[WantedAddOn] = ()
    chosen: Sequence[str] = ()
    called: Set[str] = frozenset()
    floor_overruled: bool = False

    def word(self, code: str) -> WantedAddOn | None:
        """The estimator's word on this add-on for this option."""
        return next((w for w in self.words if w.code == code and self._here(w)), None)

    def left_out(self, code: str) -> bool:
        """It stands in the job file for other options only, or with a quantity of 0."""
        here = self.word(code)
        return here.quantity == 0 if here else any(w.code == code for w in self.words)

    def takes(self, code: str) -> bool:
        """It was chosen for every option, or for this one: `cleanout`, `B:cleanout`."""
        asked = {c.lower() for c in self.chosen}
        return bool(asked & {code.lower(), *(f"{name}:{code}".lower() for name in self.called)})

    def _here(self, word: WantedAddOn) -> bool:
        return not word.options or any(o.lower() in self.called for o in word.options)


def ways_of(scopes: Sequence[Scope]) -> tuple[str, ...]:
    """Each option by what it does, which stays when its letter moves: `clean main, reline main`; several alike are counted."""
    said: list[str] = []
    for scope in scopes:
        repairs = [r for repair in scope.repairs for r in (repair, *repair.first)]
        way = ", ".join(sorted({f"{r.method} {r.reroute or r.line}" for r in repairs}))
        again = sum(known.partition(" no. ")[0] == way for known in said)
        said.append(f"{way} no. {again + 1}" if again else way)
    return tuple(said)


def bound(job: Job, scopes: Sequence[Scope]) -> Job:
    """The add-ons chosen at the writing of a quote hang on what an option does from then on, not on its letter."""
    if job.chosen is None:
        return job
    letters = {letter.lower(): way for letter, way in zip(LETTERS, ways_of(scopes), strict=False)}

    def to_way(code: str) -> str:
        option, colon, name = code.rpartition(":")
        return f"{letters.get(option.strip().lower(), option)}{colon}{name}"

    return replace(job, chosen=tuple(dict.fromkeys(map(to_way, job.chosen))))


def wanted(job: Job, called: Set[str]) -> Wanted:
    """What the job says for the option of these names."""
    overruled = any(o.rule == FLOOR_RULE and o.reason and o.option.lower() in {"", *called} for o in job.overrides)
    return Wanted(job.add_ons, job.chosen_add_ons, called, overruled)


def add_ons(
    takeoffs: Sequence[Takeoff], price: Price, tables: Tables, place: PlaceRow | None, said: Wanted
) -> tuple[AddOn, ...]:
    """Those of the table that fit and are not in the price anyway, then the estimator's own.

    Errors: CannotGoOn for a recipe with a missing row or without any cost, and for one that is sold below the floor margin.
    """
    listed = [_from_table(row, said, takeoffs, tables, place) for row in _fitting(takeoffs, price, tables, said)]
    own = [_own(word, tables, place) for word in _own_words(tables, said)]
    return tuple(replace(a, chosen=said.takes(a.code)) for a in (*listed, *own))


def _fitting(takeoffs: Sequence[Takeoff], price: Price, tables: Tables, said: Wanted) -> list[AddOnRow]:
    sold = {line.work_item for line in price.lines}
    rows = (row for row in tables.add_ons if row.work_item not in sold and not said.left_out(row.code))
    return [row for row in rows if _fits(row, takeoffs)]


def _fits(row: AddOnRow, takeoffs: Sequence[Takeoff]) -> bool:
    methods = {t.repair.method for t in takeoffs}
    facts = frozenset[str]().union(*(t.facts for t in takeoffs))
    return (not row.methods or bool(methods & set(row.methods))) and holds(row.when, facts)


def _from_table(
    row: AddOnRow, said: Wanted, takeoffs: Sequence[Takeoff], tables: Tables, place: PlaceRow | None
) -> AddOn:
    """As the table has it, or with the number, words and price of the estimator."""
    word = said.word(row.code) or WantedAddOn(code=row.code)
    size = row.quantity if word.quantity is None else word.quantity
    by_hand = None if word.price is None else cents(word.price)
    made, least = priced(row, size, by_hand, takeoffs, tables, place)
    if made.amount <= 0 or (made.amount < least and not said.floor_overruled):
        stop([_too_low(made, least)])
    return replace(made, text_en=word.text or made.text_en, text_es=word.text_es or made.text_es)


def _too_low(made: AddOn, least: Decimal) -> Problem:
    place = Place("the job file", table="add_on", cell=made.code)
    return ADD_ON_TOO_LOW(place, code=made.code, amount=f"{made.amount:,.2f}", least=f"{least:,.2f}")


# ── the estimator's own ───────────────────────────────────────────────────────────────────────


def _own_words(tables: Tables, said: Wanted) -> Iterable[WantedAddOn]:
    listed = {row.code for row in tables.add_ons}
    return (w for w in said.words if w.code not in listed and w is said.word(w.code) and w.quantity != 0)


def _own(word: WantedAddOn, tables: Tables, place: PlaceRow | None) -> AddOn:
    """In his words and at his price; its cost is the price less the margin of an allowance, as long as nobody knows better."""
    amount = cents(word.price or Decimal(0))
    left = class_rows(("allowance",), tables)["allowance"].margin_percent
    made = AddOn(
        code=word.code,
        text_en=word.text,
        text_es=word.text_es or word.text,
        work_item="",
        work_class="pipe",
        size=1.0 if word.quantity is None else word.quantity,
        unit="",
        amount=amount,
        cost=cents(amount * (1 - left / 100)),
    )
    return taxed(made, {}, {}, tables, place)
