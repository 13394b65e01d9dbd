"""A quote and the firm's tables in; what in them is still the demo's invention, in words, out."""

from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from decimal import Decimal

from estimator.model.job import Job
from estimator.model.offer import Option, Quote
from estimator.model.say import Say
from estimator.tables.invented_rows import invented
from estimator.tables.lookups import SETUP_TASK
from estimator.tables.tables import Tables

MOST_PERCENT = 20
"""More of a price than this may not rest on figures that nobody of the firm has looked at."""
IDENTITY = ("firm_name", "firm_licence", "firm_licence_until", "firm_insurance", "firm_insurance_until")
TABLE_OF = {"material": "materials", "equipment": "equipment", "sub": "subs_and_fees", "fee": "subs_and_fees"}


def with_invented(quote: Quote, tables: Tables) -> Quote:
    """The quote with what makes it a demo's, for a job that is not one; the office reads each option's share."""
    if quote.job.demo:
        return quote
    warnings = (*quote.paper_warnings, *_shares(quote.options, tables))
    return replace(quote, invented=tuple(reasons(quote.job, quote.options, tables)), paper_warnings=warnings)


def _shares(options: Sequence[Option], tables: Tables) -> Iterator[Say]:
    """How much of each option rests on figures that are not the firm's yet."""
    for option in options:
        if share := share_of(option, tables):
            text = "{letter}: {percent}% of the cost comes from demo figures. Replace them: estimator tables start FOLDER --job JOB"
            yield Say.of(text, letter=option.letter, percent=f"{share:.0f}")


def reasons(job: Job, options: Sequence[Option], tables: Tables) -> Iterator[Say]:
    """Who the firm is, what its people earn, its margins, and where too much of a price is nobody's figure."""
    for key in IDENTITY:
        if key in invented(tables, "settings"):
            yield Say.of("{key} in the table settings is the demo's invention", key=key)
    if options and (roles := sorted({m.role for m in tables.crew_members} & invented(tables, "roles"))):
        yield Say.of("the wages of {roles} are the demo's invention", roles=", ".join(roles))
    if options and "own" in invented(tables, "pricing"):
        yield Say.of("the margin on the firm's own work is the demo's invention")
    share = max((share_of(option, tables) for option in options), default=Decimal(0))
    if share > MOST_PERCENT:
        yield Say.of("{percent}% of the cost comes from demo figures", percent=f"{share:.0f}")


def share_of(option: Option, tables: Tables) -> Decimal:
    """How much of an option's cost rests on the demo's rows, percent."""
    return sum(figures_of(option, tables).values(), Decimal(0))


def figures_of(option: Option, tables: Tables, paid: bool = False) -> Mapping[tuple[str, str], Decimal]:
    """Return the percent of an option's cost that rests on each row, (table, id), of the demo: wages and hours for labor, prices for all else.

    Labor rests on its wages while one of them is the demo's, then on the hours of its tasks; `paid`: on those hours at once.
    """
    total = sum((cost.amount for cost in option.price.costs), Decimal(0))
    out: dict[tuple[str, str], Decimal] = defaultdict(Decimal)
    for cost in option.price.costs if total else ():
        share = 100 * cost.amount / total
        if cost.part == "labor":
            for row, part in _labor(option, cost.ref, tables, paid).items():
                out[row] += share * part
        elif cost.part in TABLE_OF and cost.ref in invented(tables, TABLE_OF[cost.part]):
            out[TABLE_OF[cost.part], cost.ref] += share
    return out


def _labor(option: Option, crew: str, tables: Tables, paid: bool) -> Mapping[tuple[str, str], Decimal]:
    """Of a crew's cost: all of it on its wages where one is the demo's, else each task's hours that are, setting up among them."""
    members = [m.role for m in tables.crew_members if m.crew == crew]
    wages = [role for role in dict.fromkeys(members) if role in invented(tables, "roles")]
    if wages and not paid:
        return {("roles", role): Decimal(1) / len(wages) for role in wages}
    hours: dict[str, float] = defaultdict(float)
    for task in (t for t in option.price.tasks if t.crew == crew):
        hours[task.task] += task.hours
    hours[SETUP_TASK] += sum(c.setup_hours for c in option.price.crews if c.crew == crew)
    whole, theirs = sum(hours.values()), invented(tables, "production")
    return {("production", t): Decimal(repr(round(h / whole, 6))) for t, h in hours.items() if h and t in theirs}
