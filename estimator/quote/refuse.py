"""A job, the firm's papers and a day in, the reasons why no quote may leave the house out."""

from collections.abc import Iterable, Sequence, Set
from datetime import date

from estimator.knowledge.tendons import may_have_tendons
from estimator.model.job import Job
from estimator.model.problem import Place, Problem, error
from estimator.model.say import Say
from estimator.model.work import Takeoff
from estimator.tables.tables import Tables

DEMO_PLACE = error("quote/demo-place", "the place “{name}” is invented, and this job is not marked as a demo.", "Write the house's real jurisdiction, a row of the table places; or demo = true under [job] for a trial.", "Invented limits and taxes must never reach a real customer.")  # fmt: skip
LAPSED = error("quote/paper-lapsed", "the firm's {paper} ended on {until}, before the quote's day {day}.", "Renew it and write the new last day at {key} in the table settings.", "A firm may not offer work it is not licensed and insured for.")  # fmt: skip
NO_DAY = error("quote/paper-day", "the last day of the firm's {paper} is “{until}”, which is no day.", "Write a day such as 2027-12-31 at {key} in the table settings.", "Without its last day nobody knows whether a paper still holds.")  # fmt: skip
NOTHING_TO_OFFER = error("quote/nothing-to-offer", "no way of repair is left to put on the quote.", "See why with: estimator options JOB --why. `estimator quote JOB` writes the inspection report all the same.", "A quote without an option is no quote.")  # fmt: skip
NOTHING_SEEN = error("quote/nothing-seen", "no camera footage was read, so it is not known whether anything has to be repaired.", "Write the footage in front of the lines of the log; estimator check names them.", "A report of a clean line needs footage that was seen.")  # fmt: skip
ASKED_BACK = error("quote/asked-back", "“{text}” in the log of {line} may mean more than one thing and is not answered, so nobody can say that nothing has to be repaired.", "Answer it: estimator check lists it with its choices.", "A finding that was not understood is no clean line.")  # fmt: skip
CANNOT_BE_SHOWN = error("quote/cannot-be-shown", "{what} holds a character that cannot be printed ({character}).", "Type it again without that character.", "Control characters and halves of characters break a workbook.")  # fmt: skip

PROBLEMS = (DEMO_PLACE, LAPSED, NO_DAY, NOTHING_TO_OFFER, NOTHING_SEEN, ASKED_BACK, CANNOT_BE_SHOWN)

DEMO = "demo"
BOND = "firm_bond_until"
PAPERS = (
    (Say.of("license"), "firm_licence_until"),
    (Say.of("insurance"), "firm_insurance_until"),
    (Say.of("bond"), BOND),
)


def reasons(job: Job, options: int, tables: Tables, day: date) -> tuple[Problem, ...]:
    """All of them, in one go."""
    out: list[Problem] = list(demo_place(job))
    for paper, key in PAPERS:
        out += _paper(paper, key, tables, day)
    if not options:
        out.append(NOTHING_TO_OFFER(Place(file=job.number)))
    return (*out, *_unprintable(job))


def not_known_to_be_clean(job: Job) -> tuple[Problem, ...]:
    """Why a house without a need may not be reported as clean: nothing was seen, or a log line waits for its answer."""
    filmed = [line for line in job.lines if line.filmed]
    if filmed and not any(p.seen for line in filmed for p in line.passes) and not job.water_tests:
        return (NOTHING_SEEN(Place(file=job.number)),)
    waiting = ((line, u) for line in filmed for u in line.unclear)
    return tuple(
        ASKED_BACK(Place(file=u.origin.file, line=u.origin.row), text=u.text[:60], line=line.name)
        for line, u in waiting
    )


def demo_place(job: Job) -> Sequence[Problem]:
    """A real customer at the invented place."""
    if job.house.jurisdiction != DEMO or job.demo:
        return ()
    return (DEMO_PLACE(Place(table="places"), name=job.house.jurisdiction),)


def _paper(paper: Say, key: str, tables: Tables, day: date) -> Sequence[Problem]:
    try:
        written = tables.text(key).strip()
    except KeyError:
        written = ""
    if not written and key == BOND:
        return ()
    place = Place(table="settings", cell=key)
    try:
        until = date.fromisoformat(written)
    except ValueError:
        return (NO_DAY(place, paper=paper, until=written, key=key),)
    return (LAPSED(place, paper=paper, until=until, day=day, key=key),) if until < day else ()


def _unprintable(job: Job) -> Sequence[Problem]:
    from estimator.sheets.fault import first_unprintable

    texts = {
        Say.of("the customer's name"): job.customer.name,
        Say.of("the address"): job.customer.site,
        Say.of("the name of who prepared it"): job.prepared_by,
        Say.of("the reason of the recommendation"): job.wishes.because,
    }
    found = ((what, first_unprintable(text)) for what, text in texts.items())
    return [CANNOT_BE_SHOWN(Place(file=job.number), what=what, character=bad) for what, bad in found if bad]


LEAD_PAINT_BANNED = 1978  # 16 CFR 1303: lead paint for homes was banned that year
BATHROOM_WORDS = ("bathroom group", "bathroom groups", "bathroom_groups", "bathroom")


def facts(job: Job, takeoffs: Iterable[Takeoff]) -> frozenset[str]:
    """What the takeoffs found, and what the house is."""
    house = job.house
    own = {
        "septic": house.sewer == "septic",
        "lived_in": house.lived_in,
        "one_bathroom": bathrooms(job) == 1,
        "built_before_1978": house.built is not None and house.built < LEAD_PAINT_BANNED,
        "slab_may_have_tendons": may_have_tendons(house),
        "foundation_planned": job.foundation.work == "planned",
        "insurance_claim": bool(job.customer.claim),
        "soil_unknown": house.soil is None,
    }
    found = (fact for takeoff in takeoffs for fact in takeoff.facts)
    place = f"place {house.jurisdiction}"  # so that a notice can be for one place alone
    return frozenset({place, *(name for name, holds in own.items() if holds), *found})


def bathrooms(job: Job) -> int | None:
    """How many bathrooms, as said or as counted among the fixtures; None where nobody said."""
    if job.house.bathrooms is not None:
        return job.house.bathrooms
    return next((count for word, count in job.house.fixtures if word in BATHROOM_WORDS), None)


def holds(when: Iterable[str], known: Set[str]) -> bool:
    """Every name holds; a name after `not` must not.

    >>> holds(("septic", "not tunnel"), {"septic"}), holds((), set())
    (True, True)
    """
    return all((word.removeprefix("not ").strip() in known) != word.startswith("not ") for word in when)
