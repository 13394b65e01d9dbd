"""Options that were sold in; what to buy for all of them together, by supplier and in whole packs, out."""

import csv
import io
from collections.abc import Iterable, Iterator, Mapping, Sequence
from datetime import date
from decimal import Decimal
from pathlib import Path
from typing import Any

from estimator.model.agreed import agreed, side_recorded
from estimator.model.plain_cell import plain_cell
from estimator.model.problem import CannotGoOn, Place
from estimator.model.purchase import Purchase
from estimator.model.say import Say
from estimator.pricing.ledger import Entry
from estimator.pricing.materials import order_quantity
from estimator.records.accepted import accepted
from estimator.records.afterwards.lost import lost
from estimator.records.afterwards.money import ORDER, TAX_ON, entered
from estimator.records.afterwards.problems import NOTHING_TO_BILL
from estimator.records.afterwards.sold import Sold, sold
from estimator.records.finished import finished
from estimator.records.revisions import named
from estimator.records.same_option import recorded, same
from estimator.tables.rows import Material
from estimator.tables.tables import Tables
from estimator.wording.plain import UNITS, in_plain_words
from estimator.wording.say import say, shown


def to_buy_for(folders: Iterable[Path]) -> tuple[Sold, ...]:
    """Return what was sold in each folder and is neither done nor lost. Errors: CannotGoOn for a damaged record."""
    return tuple(sold(f) for f in folders if accepted(f) and not finished(f) and not lost(f))


def purchases(jobs: Sequence[Sold], tables: Tables) -> tuple[Purchase, ...]:
    """Return the list, by supplier, part number and item.

    The needs of all jobs are added up before packs are rounded, so that two half packs are one. Supplier, pack and price are
    those of the tables of today; of a material that has no row any more those of its job.
    """
    needs: dict[str, float] = {}
    rows: dict[str, Material] = {}
    wanted_by: dict[str, list[str]] = {}
    for job in jobs:
        for cost in _materials(job.option):
            item = cost["ref"]
            needs[item] = needs.get(item, 0.0) + float(cost["need"])
            rows[item] = _row(item, tables, job)
            wanted_by.setdefault(item, []).append(job.record.data["number"])
    found = (_purchase(rows[item], needs[item], tuple(dict.fromkeys(wanted_by[item]))) for item in needs)
    return tuple(sorted(found, key=lambda one: (one.supplier == "", one.supplier, one.part_no, one.item)))


def _materials(option: Mapping[str, Any]) -> Iterator[Mapping[str, Any]]:
    """The materials of the scope and of the add-ons chosen."""
    chosen = (cost for add_on in option.get("add_ons", ()) if add_on["chosen"] for cost in add_on["costs"])
    yield from (cost for cost in (*option["price"]["costs"], *chosen) if cost["part"] == "material")


def _row(item: str, tables: Tables, job: Sold) -> Material:
    try:
        return tables.material(item)
    except KeyError:
        return job.record.inputs.tables.material(item)


def _purchase(row: Material, need: float, jobs: tuple[str, ...]) -> Purchase:
    return Purchase(
        supplier=row.supplier,
        part_no=row.part_no,
        item=row.item,
        text=row.text,
        text_es=row.text_es,
        quantity=order_quantity(need, row),
        unit=row.unit,
        pack=row.pack,
        unit_cost=row.unit_cost,
        jobs=jobs,
    )


def purchase_csv(found: Sequence[Purchase], heads: Sequence[str], language: str) -> str:
    """Plain rows under these heads; no text can be taken for a formula."""
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow(heads)
    for one in found:
        words = [plain_cell(text) for text in (one.supplier, one.part_no, one.item, shown(one.words, language))]
        amounts = [
            f"{one.quantity:f}",
            plain_cell(say(in_plain_words(UNITS, one.unit), language)),
            f"{one.pack:f}",
            f"{one.unit_cost:f}",
        ]
        writer.writerow([*words, *amounts, plain_cell(", ".join(one.jobs))])
    return out.getvalue()


def order_entries(folder: Path, done: Sold, asked: str, day: date, later: Sequence[Entry]) -> tuple[Entry, ...]:
    """Return what a revision's option costs above (or below) what was signed and what earlier orders changed, tax apart.

    By the unit prices that were signed where those explain all of it, as the change order has it.

    Errors: CannotGoOn for a revision that does not exist, is no later one, does not offer what was signed, or moves nothing.
    """
    revision, place = named(folder, asked), Place(file=str(folder))
    if revision.number <= done.revision.number:
        raise CannotGoOn(
            NOTHING_TO_BILL(
                place, name=revision.name, why=Say.of("r{number} is what was signed", number=done.revision.number)
            )
        )
    options = revision.record().data["quote"]["options"]
    found = same(recorded(done.option), [recorded(option) for option in options])
    if found is None:
        raise CannotGoOn(NOTHING_TO_BILL(place, name=revision.name, why=Say.of("it does not offer what was signed")))
    was, now = side_recorded(done.option), side_recorded(options[found])
    new = agreed(was, now) or now
    total, tax = new.total - was.total - _ordered(later, "total"), new.tax - was.tax - _ordered(later, "tax")
    if not total:
        raise CannotGoOn(NOTHING_TO_BILL(place, name=revision.name, why=Say.of("the total stays as it was")))
    text = f"{ORDER}{revision.name}"
    if total > 0:
        return entered("change", text, total - tax, tax, day, revision.name)
    return entered("credit", text, tax - total, -tax, day, revision.name)


def _ordered(later: Sequence[Entry], key: str) -> Decimal:
    """What orders booked before moved the total or its tax by."""
    taxed = tuple(e for e in later if e.text.startswith(TAX_ON + ORDER))
    every = taxed if key == "tax" else (*taxed, *(e for e in later if e.text.startswith(ORDER) and e.kind != "payment"))
    return sum((-e.amount if e.kind == "credit" else e.amount for e in every), Decimal(0))
