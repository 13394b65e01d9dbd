"""Step 2: hours of each crew in; days to the half, with set-up, and what they cost, out."""

import math
from collections.abc import Mapping, Sequence
from decimal import Decimal

from estimator.model.money import cents, exact, plain
from estimator.model.paid_days import paid_steps
from estimator.model.price import CostLine, CrewDays, TaskHours
from estimator.pricing.crews import Crew
from estimator.pricing.hours import by_crew
from estimator.pricing.house_rules import HouseRules

OVERHEAD = "overhead"
"""The price class that overhead by the crew-day is sold in."""


def days_needed(work_hours: float, set_up_hours: float, rules: HouseRules) -> Decimal:
    """The least half-day d with 8 d + tolerance ≥ work + set-up × ceil(d); 0 for no work.

    A set-up is shorter than a day: `crews_of` sees to it.
    """
    steps = paid_steps(
        work_hours,
        set_up_hours,
        day_hours=rules.day_hours,
        step_days=float(rules.day_step),
        tolerance_hours=rules.tolerance_hours,
    )
    return steps * rules.day_step


def crew_days(tasks: Sequence[TaskHours], crews: Mapping[str, Crew], rules: HouseRules) -> tuple[CrewDays, ...]:
    """Each crew over the whole scope."""
    return tuple(_days(crews[name], hours, rules) for name, hours in by_crew(tasks).items() if hours > 0)


def _days(crew: Crew, work: float, rules: HouseRules) -> CrewDays:
    days = days_needed(work, crew.set_up_hours, rules)
    hours = days * exact(rules.day_hours)
    return CrewDays(
        crew=crew.name,
        work_hours=work,
        setup_hours=round(crew.set_up_hours * math.ceil(days), 6),
        days=days,
        hours=hours,
        rate=crew.rate,
        amount=cents(hours * crew.rate),
        cell=crew.cell,
    )


def labor_lines(crews: Sequence[CrewDays]) -> tuple[CostLine, ...]:
    """A line a crew."""
    return tuple(map(_labor, crews))


def _labor(crew: CrewDays) -> CostLine:
    return CostLine(
        part="labor",
        ref=crew.crew,
        text=f"crew {crew.crew}",
        quantity=plain(crew.hours),
        unit="h",
        rate=crew.rate,
        amount=crew.amount,
        price_class="own",
        formula=(
            f"{crew.work_hours:.2f} h of work + {crew.setup_hours:g} h of set-up "
            f"→ {plain(crew.days)} days = {plain(crew.hours)} h × {crew.rate}"
        ),
        cell=crew.cell,
    )


def overhead_line(days: Decimal, amount: Decimal, a_day: Decimal) -> tuple[CostLine, ...]:
    """So many dollars for each crew-day, for a firm that counts its overhead so and not in its margin; nothing at 0."""
    if not amount:
        return ()
    line = CostLine(
        part="overhead",
        ref=OVERHEAD,
        text="overhead of the firm",
        quantity=plain(days),
        unit="crew-day",
        rate=a_day,
        amount=amount,
        price_class=OVERHEAD,
        formula=f"{plain(days)} crew-days × {plain(a_day)}",
        cell="settings, overhead_per_crew_day",
    )
    return (line,)
