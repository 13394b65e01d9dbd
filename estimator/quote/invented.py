"""A quote and the firm's tables in; what in them is still the demo's invention, in words, out."""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from decimal import Decimal

from estimator.model.job import Job
from estimator.model.offer import Option, Quote
from estimator.model.say import Say
from estimator.tables.tables import Tables
from estimator.tables.whose import invented

MOST_PERCENT = 20
"""More of a price than this may not rest on figures that nobody of the firm has looked at."""
IDENTITY = ("firm_name", "firm_licence", "firm_insurance")
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
            text = "{letter}: {percent} % of the cost rests on figures that are not yours yet: estimator tables start"
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
        yield Say.of("{percent} % of the cost rests on figures of the demo", percent=f"{share:.0f}")


def share_of(option: Option, tables: Tables) -> Decimal:
    """How much of an option's cost rests on the demo's rows, percent: wages and hours for labor, prices for all else."""
    total = sum((cost.amount for cost in option.price.costs), Decimal(0))
    theirs = Decimal(0)
    for cost in option.price.costs:
        if cost.part == "labor":
            theirs += cost.amount * _labor(option, cost.ref, tables)
        elif cost.part in TABLE_OF and cost.ref in invented(tables, TABLE_OF[cost.part]):
            theirs += cost.amount
    return 100 * theirs / total if total else Decimal(0)


def _labor(option: Option, crew: str, tables: Tables) -> Decimal:
    """The share of a crew's hours whose wage or task time is nobody's figure."""
    if any(m.role in invented(tables, "roles") for m in tables.crew_members if m.crew == crew):
        return Decimal(1)
    tasks = [t for t in option.price.tasks if t.crew == crew]
    hours = sum(t.hours for t in tasks)
    theirs = sum(t.hours for t in tasks if t.task in invented(tables, "production"))
    return Decimal(repr(round(theirs / hours, 6))) if hours else Decimal(0)
