"""Two records in, what moved between them and why out: prices, lines, findings, price tables, settings, versions."""

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass
from decimal import Decimal
from typing import Any

from estimator.model.offer import Option
from estimator.model.say import Say
from estimator.records.record import Record
from estimator.records.whose import moved, rules_of
from estimator.tables.changes import changes as table_changes
from estimator.tables.tables import Tables


@dataclass(frozen=True, slots=True)
class Change:
    """One thing that moved: where it belongs, what it is, before and after; empty where it was not there."""

    about: str  # "option", "line", "finding", "notes", "rule", "wish", "table", "day", "version"
    what: str
    before: str
    after: str

    @property
    def because(self) -> str:
        """Whose doing it is: what was found, a rule, what somebody asked for, prices that moved, the program; "" for what
        came of it."""
        return BECAUSE.get(self.about, "")


FOUND, RULES, ASKED, PRICES, PROGRAM = "what was found", "a rule", "you asked", "prices moved", "the program"
BECAUSE: Mapping[str, str] = {
    "finding": FOUND, "notes": FOUND, "rule": RULES, "wish": ASKED, "table": PRICES, "day": PRICES, "version": PROGRAM,
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class Parted:
    """An option's total before and after, and how the way between parts; None where it is not offered on one of the three.

    `prices` is what the new prices alone do to the old notes, `found` what the new findings do at the new prices,
    `asked` what new wishes and decisions do on top.
    """

    option: str
    before: Decimal | None
    prices: Decimal | None
    found: Decimal | None
    asked: Decimal | None
    after: Decimal | None


Totals = Mapping[str, Decimal]
"""Totals by what the option does."""


def parted(before: Totals, at_new_prices: Totals, as_found: Totals, after: Totals) -> tuple[Parted, ...]:
    """Each option's move parted; the parts sum to the move to the cent, where the option is offered all along.

    >>> old, dearer, dug, new = ({"dig": Decimal(n)} for n in (4200, 4300, 4500, 4350))
    >>> moved, = parted(old, dearer, dug, new)
    >>> moved.prices, moved.found, moved.asked
    (Decimal('100'), Decimal('200'), Decimal('-150'))
    """
    return tuple(
        Parted(
            name,
            before.get(name),
            _less(at_new_prices, before, name),
            _less(as_found, at_new_prices, name),
            _less(after, as_found, name),
            after.get(name),
        )
        for name in dict.fromkeys([*before, *after])
    )


def _less(more: Totals, less: Totals, name: str) -> Decimal | None:
    return more[name] - less[name] if name in more and name in less else None


def totals(record: Record) -> dict[str, Decimal]:
    """Of each option by what it does."""
    options = record.data["quote"]["options"]
    return totals_of((title_of(o), Decimal(o["price"]["total"])) for o in options)


def totals_of(options: Iterable[tuple[str, Decimal]]) -> dict[str, Decimal]:
    """Totals by what each option does; of several that do the same the second is told apart by its number.

    >>> list(totals_of([("dig", Decimal(1)), ("dig", Decimal(2))]))
    ['dig', 'dig (2)']
    """
    found: dict[str, Decimal] = {}
    for name, total in options:
        again = sum(known == name or known.startswith(f"{name} (") for known in found)
        found[f"{name} ({again + 1})" if again else name] = total
    return found


def prices_moved(old: Record, new: Record) -> bool:
    """The tables say otherwise, each set on its own day."""
    return next(_tables(old, new), None) is not None


def changes(old: Record, new: Record) -> tuple[Change, ...]:
    """Everything that differs, results first, then the reasons."""
    return tuple(change for compare in COMPARED for change in compare(old, new))


def _moved(about: str, before: Mapping[str, str], after: Mapping[str, str]) -> Iterator[Change]:
    for key in dict.fromkeys([*before, *after]):
        if before.get(key, "") != after.get(key, ""):
            yield Change(about, key, before.get(key, ""), after.get(key, ""))


def _options(old: Record, new: Record) -> Iterator[Change]:
    def shown(record: Record) -> dict[str, str]:
        return {name: str(total) for name, total in totals(record).items()}

    return _moved("option", shown(old), shown(new))


def _lines(old: Record, new: Record) -> Iterator[Change]:
    def amounts(record: Record) -> dict[str, str]:
        return {
            f"{title_of(option)}: {line['text_en']}": line["amount"]
            for option in record.data["quote"]["options"]
            for line in option["price"]["lines"]
        }

    both = tuple(f"{title}: " for title in _titles(old) & _titles(new))
    return (c for c in _moved("line", amounts(old), amounts(new)) if c.what.startswith(both))


def title_of(option: Mapping[str, Any]) -> str:
    """An option by what it does; its letter may move."""
    return option["name"] or told(option["title"])


def title(option: Option) -> str:
    """The same of an option that is no record yet."""
    return option.name or str(option.title)


def _titles(record: Record) -> set[str]:
    return {title_of(option) for option in record.data["quote"]["options"]}


def told(said: Mapping[str, Any]) -> str:
    """A sentence of a record in plain English.

    >>> told({"text": "{n} in the yard", "words": [["n", {"ft": 12.5}]]})
    '12.5 ft in the yard'
    """
    return str(Say(said["text"], tuple((name, _word(value)) for name, value in said["words"])))


def _word(value: Any) -> Any:
    if isinstance(value, list):
        return ", ".join(str(_word(part)) for part in value)
    match value:
        case {"en": english, "es": _}:
            return english
        case {"text": _, "words": _}:
            return told(value)
        case {"ft": ft}:
            return f"{ft:g} ft"
        case {"inches": inches}:
            return f"{inches:g} in"
        case {"amount": amount}:
            return f"${amount}"
        case {"days": days}:
            return f"{days} days"
    return value


def _findings(old: Record, new: Record) -> Iterator[Change]:
    """What was written at a place, told apart by line, kind and station; a remark after `;` is no finding."""

    def found(record: Record) -> dict[str, str]:
        return {
            f"{line['name']} {f['stretch']['from_ft']:.1f} ft, {f['kind']}": _written(f["origin"]["text"])
            for line in record.data["quote"]["job"]["lines"]
            for f in line["findings"]
        }

    return _moved("finding", found(old), found(new))


def _written(text: str) -> str:
    return " ".join(text.split(";")[0].split())


def _tables(old: Record, new: Record) -> Iterator[Change]:
    return iter(of_tables(old.inputs.tables, new.inputs.tables))


def of_tables(old: Tables, new: Tables) -> tuple[Change, ...]:
    """What moved between two sets of price tables, each on its own day."""
    return tuple(
        Change("table", f"{m.table}, {m.name}: {m.column}", m.old, m.new)
        if m.what == "moved"
        else Change("table", f"{m.table}, {m.name}", *(("", "a row") if m.what == "new" else ("a row", "")))
        for m in table_changes(old, new)
    )


def _notes(old: Record, new: Record) -> Iterator[Change]:
    """Word for word, each line by whose doing it is."""
    before, after = old.data["texts"], new.data["texts"]
    for name in dict.fromkeys([*before, *after]):
        for about, was, now in moved(before.get(name, ""), after.get(name, "")):
            yield Change(about, name, was, now)


def _rules(old: Record, new: Record) -> Iterator[Change]:
    """Rules that say something else of a way of repair that both quotes speak of."""
    before, after = rules_of(old.data["quote"]), rules_of(new.data["quote"])
    both = {name.split(": ")[0] for name in before} & {name.split(": ")[0] for name in after}
    return (c for c in _moved("rule", before, after) if c.what.split(": ")[0] in both)


def _versions(old: Record, new: Record) -> Iterator[Change]:
    return _moved("version", old.data["versions"], new.data["versions"])


def _days(old: Record, new: Record) -> Iterator[Change]:
    return _moved("day", {"priced on": old.data["day"]}, {"priced on": new.data["day"]})


def _chosen(old: Record, new: Record) -> Iterator[Change]:
    def said(record: Record) -> dict[str, str]:
        job = record.data["quote"]["job"]
        codes = job["wishes"]["add_ons"] if job["chosen"] is None else job["chosen"]
        return {"add-ons chosen": ", ".join(codes)}

    return _moved("wish", said(old), said(new))


COMPARED: tuple[Callable[[Record, Record], Iterator[Change]], ...] = (
    _options,
    _lines,
    _findings,
    _chosen,
    _notes,
    _rules,
    _tables,
    _days,
    _versions,
)
