"""A job and the takeoffs of an option in, the yes/no facts that its sentences and extras hang on out."""

from collections.abc import Iterable, Set

from estimator.knowledge.tendons import may_have_tendons
from estimator.model.job import Job
from estimator.model.work import Takeoff

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
