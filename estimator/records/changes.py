"""Two records in, what moved between them and why out: prices, lines, findings, price tables, settings, versions."""

from collections import Counter
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import replace
from decimal import Decimal

from estimator.model.frozen import Frozen
from estimator.model.offer import Option
from estimator.model.say import Say, Typed
from estimator.records.change_source import moved, rules_of
from estimator.records.record import Record
from estimator.records.same_option import OptionWork, names, recorded
from estimator.tables.changes import changes as table_changes
from estimator.tables.tables import Tables


class Change(Frozen):
    """One thing that moved: where it belongs, what it is, before and after; empty where it was not there."""

    about: str  # "option", "line", "finding", "notes", "rule", "wish", "table", "day", "version"
    what: str
    before: str
    after: str
    option: str = ""  # of a line: the option it belongs to, by letter and title

    @property
    def because(self) -> str:
        """Whose doing it is: what was found, a rule, what somebody asked for, prices that moved, the program; "" for what
        came of it."""
        return BECAUSE.get(self.about, "")


FOUND, RULES, ASKED, PRICES, PROGRAM = "what was found", "a rule", "you asked", "prices moved", "the program"
BECAUSE: Mapping[str, str] = {
    "finding": FOUND, "notes": FOUND, "rule": RULES, "wish": ASKED, "table": PRICES, "day": PRICES, "version": PROGRAM,
}  # fmt: skip


class Parted(Frozen):
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
"""Totals by the name of the option, the same in both where it does the same."""


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


def totals(record: Record, names: Iterable[str]) -> dict[str, Decimal]:
    """Of each option under the name it has in `names`, which stand in the order of its options."""
    options = record.data["quote"]["options"]
    return {name: Decimal(o["price"]["total"]) for name, o in zip(names, options, strict=True)}


def does(record: Record) -> tuple[OptionWork, ...]:
    """What each option of a record does."""
    return tuple(recorded(option) for option in record.data["quote"]["options"])


def title(option: Option) -> Say:
    """An option of one and the same job: its letter may move with the prices, its title does not."""
    return Say.of("{name}", name=Typed(option.name)) if option.name else option.title


def totals_of(options: Iterable[tuple[Say, Decimal]]) -> dict[Say, Decimal]:
    """Totals by title; of several that are alike the second is told apart by its number.

    >>> list(map(str, totals_of([(Say.of("dig"), Decimal(1)), (Say.of("dig"), Decimal(2))])))
    ['dig', 'dig (2)']
    """
    found: dict[Say, Decimal] = {}
    seen: Counter[Say] = Counter()
    for name, total in options:
        seen[name] += 1
        again = Say.of("{title} ({number})", title=name, number=seen[name])
        found[name if seen[name] == 1 else again] = total
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
    before, after = (totals(*pair) for pair in zip((old, new), names(does(old), does(new)), strict=True))
    return _moved("option", {n: str(t) for n, t in before.items()}, {n: str(t) for n, t in after.items()})


def _lines(old: Record, new: Record) -> Iterator[Change]:
    """Of the options that both have, each named once for all its lines."""
    before, after = (_amounts(*pair) for pair in zip((old, new), names(does(old), does(new)), strict=True))
    for option in [name for name in before if name in after]:
        yield from (replace(c, option=option) for c in _moved("line", before[option], after[option]))


def _amounts(record: Record, named: Iterable[str]) -> dict[str, dict[str, str]]:
    """Of each option, what its lines of one text come to."""
    out: dict[str, dict[str, str]] = {}
    for name, option in zip(named, record.data["quote"]["options"], strict=True):
        sums: dict[str, Decimal] = {}
        for line in option["price"]["lines"]:
            sums[line["text_en"]] = sums.get(line["text_en"], Decimal(0)) + Decimal(line["amount"])
        out[name] = {text: str(amount) for text, amount in sums.items()}
    return out


def _findings(old: Record, new: Record) -> Iterator[Change]:
    """What was written at a place, told apart by line, kind and station; a remark after `;` is no finding."""

    def found(record: Record) -> dict[str, str]:
        return {
            f"{line['name']} {f['stretch']['from_ft']:.1f} ft, {f['kind']}": without_remark(f["origin"]["text"])
            for line in record.data["quote"]["job"]["lines"]
            for f in line["findings"]
        }

    return _moved("finding", found(old), found(new))


def without_remark(text: str) -> str:
    """Return what a log line says before its `;`."""
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
