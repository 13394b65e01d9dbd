"""A job, the firm's papers and a day in, the reasons why no quote may leave the house out."""

from collections.abc import Sequence
from datetime import date

from estimator.model.job import Job
from estimator.model.problem import Kind, Level, Place, Problem
from estimator.tables.tables import Tables

DEMO_PLACE = Kind(
    "quote/demo-place", Level.ERROR,
    "the place “{name}” is invented, and this job is not marked as a demo.",
    "Write the house's real jurisdiction, a row of the table places; or demo = true under [job] for a trial.",
    "Invented limits and taxes must never reach a real customer.",
)  # fmt: skip
LAPSED = Kind(
    "quote/paper-lapsed", Level.ERROR,
    "the firm's {paper} ended on {until}, before the quote's day {day}.",
    "Renew it and write the new last day at {key} in the table settings.",
    "A firm may not offer work it is not licensed and insured for.",
)  # fmt: skip
NO_DAY = Kind(
    "quote/paper-day", Level.ERROR,
    "the last day of the firm's {paper} is “{until}”, which is no day.",
    "Write a day such as 2027-12-31 at {key} in the table settings.",
    "Without its last day nobody knows whether a paper still holds.",
)  # fmt: skip
NOTHING_TO_OFFER = Kind(
    "quote/nothing-to-offer", Level.ERROR,
    "no way of repair is left to put on the quote.",
    "See why with: estimator options JOB --why. `estimator quote JOB` writes the inspection report all the same.",
    "A quote without an option is no quote.",
)  # fmt: skip
CANNOT_BE_SHOWN = Kind(
    "quote/cannot-be-shown", Level.ERROR,
    "{what} holds a character that cannot be printed ({character}).",
    "Type it again without that character.",
    "Control characters and halves of characters break a workbook.",
)  # fmt: skip

PROBLEMS = (DEMO_PLACE, LAPSED, NO_DAY, NOTHING_TO_OFFER, CANNOT_BE_SHOWN)

DEMO = "demo"
PAPERS = (("licence", "firm_licence_until"), ("insurance", "firm_insurance_until"), ("bond", "firm_bond_until"))
MAY_BE_EMPTY = ("bond",)


def reasons(job: Job, options: int, tables: Tables, day: date) -> tuple[Problem, ...]:
    """All of them, in one go."""
    out: list[Problem] = list(demo_place(job))
    for paper, key in PAPERS:
        out += _paper(paper, key, tables, day)
    if not options:
        out.append(NOTHING_TO_OFFER(Place(file=job.number)))
    return (*out, *_unprintable(job))


def demo_place(job: Job) -> Sequence[Problem]:
    """A real customer at the invented place."""
    if job.house.jurisdiction != DEMO or job.demo:
        return ()
    return (DEMO_PLACE(Place(table="places"), name=job.house.jurisdiction),)


def _paper(paper: str, key: str, tables: Tables, day: date) -> Sequence[Problem]:
    try:
        written = tables.text(key).strip()
    except KeyError:
        written = ""
    if not written and paper in MAY_BE_EMPTY:
        return ()
    place = Place(table="settings", cell=key)
    try:
        until = date.fromisoformat(written)
    except ValueError:
        return (NO_DAY(place, paper=paper, until=written, key=key),)
    return (LAPSED(place, paper=paper, until=until, day=day, key=key),) if until < day else ()


def _unprintable(job: Job) -> Sequence[Problem]:
    from estimator.sheets.plain import first_unprintable

    texts = {
        "the customer's name": job.customer.name,
        "the address": job.customer.site,
        "the name of who prepared it": job.prepared_by,
        "the reason of the recommendation": job.wishes.because,
    }
    found = ((what, first_unprintable(text)) for what, text in texts.items())
    return [CANNOT_BE_SHOWN(Place(file=job.number), what=what, character=bad) for what, bad in found if bad]
