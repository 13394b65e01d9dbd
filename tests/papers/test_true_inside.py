"""Statements of the crew's and the office's papers are facts of schedule and works, over every whole house of tests/jobs."""

from decimal import Decimal

import pytest

from estimator.model.offer import Option
from estimator.model.schedule import Schedule
from estimator.papers import option_words
from estimator.papers.crew import crew
from estimator.papers.crew_plan import when, without_drains
from estimator.papers.letter import Letter
from estimator.papers.office import office
from estimator.sheets.book import Book
from tests.papers.test_true import NAMES, offered, texts

HALF = Decimal("0.5")


def crew_book(letter: Letter, option: Option) -> Book | None:
    """The crew's sheets; None where nobody is named who may lead a dig."""
    book = crew(letter.quote, letter=option.letter)
    return book if len(book.sheets) > 1 else None


@pytest.mark.parametrize("name", NAMES)
def test_the_last_bar_of_the_crews_ends_with_the_days_on_site(name: str) -> None:
    _, options = offered(name)
    for option in options:
        plan = option.schedule
        last = max(n for crew_name in plan.crews for n in plan.half_days_of(crew_name))
        assert HALF * (last + 1) == plan.days_on_site, option.letter


@pytest.mark.parametrize("name", NAMES)
def test_crew_days_of_the_office_are_the_squares_of_the_day_plan(name: str) -> None:
    letter, options = offered(name)
    book = office(letter.quote)
    for option in options:
        page = next(s for s in book.sheets if s.name == f"Option {option.letter}")
        shown = {str(row.cells[0].value): row.cells for row in page.rows if len(row.cells) == 5}
        for crew_name in option.schedule.crews:
            squares = HALF * len(option.schedule.half_days_of(crew_name)) * option.schedule.gangs_of(crew_name)
            later = option.schedule.later_days_of(crew_name)
            assert shown[crew_name][2].value == squares + later, (option.letter, crew_name)
            assert ("second visit" in str(shown[crew_name][1].value)) == bool(later)


def off_until_seen(plan: Schedule) -> bool:
    """Whether no drain may be used between the water test and the end of the inspector's visit, in working hours."""
    tested = [t.end for t in plan.tasks if t.step == "test" and t.drains_off]
    seen = [t.end for t in plan.tasks if t.step == "inspect"]
    if not tested or not seen:
        return True
    halves = plan.half_days_off
    half = plan.day_hours / 2
    return int((max(seen) - plan.tolerance_hours - 1e-6) // half) in halves


@pytest.mark.parametrize("name", NAMES)
def test_nobody_gets_the_drains_back_before_the_inspector_has_seen_the_test(name: str) -> None:
    _, options = offered(name)
    for option in options:
        assert off_until_seen(option.schedule), option.letter


@pytest.mark.parametrize("name", NAMES)
def test_the_crew_is_told_the_half_days_without_drains_of_the_schedule(name: str) -> None:
    letter, options = offered(name)
    for option in options:
        book, plan = crew_book(letter, option), option.schedule
        if book is None:
            continue
        spans = without_drains(plan.calendar)
        assert (
            sum((span.length for span in spans), Decimal(0)) == plan.days_without_drains == option.days_without_drains
        )
        said = [text for text in texts(book) if text.startswith("Drains out of service")]
        expected = ", ".join(when(letter, span) for span in spans)
        assert said == ([f"Drains out of service: {expected}."] if spans else []), option.letter


@pytest.mark.parametrize("name", NAMES)
def test_as_many_costs_of_others_are_named_as_are_counted(name: str) -> None:
    letter, options = offered(name)
    for option in options:
        named = [line.partition(": ")[2] for line in option_words.others(letter, option) if "no price yet" in line]
        count = sum(1 for other in option.to_others if other.amount is None)
        assert len({other.text_en for other in option.to_others}) == len(option.to_others)
        assert (
            sum(
                len([o for o in option.to_others if o.amount is None and o.who == who]) for who in option_words.ARRANGES
            )
            == count
        )
        assert bool(named) == bool(count), option.letter
        assert (f"{count} without a price yet" in option_words.to_others(letter, option)) == bool(count)


@pytest.mark.parametrize("name", NAMES)
def test_water_is_asked_for_while_somebody_works_in_a_tunnel_under_drains_in_use(name: str) -> None:
    _, options = offered(name)
    for option in options:
        plan, half = option.schedule, option.schedule.day_hours / 2
        tunnels = {t.repair.id for t in option.takeoffs if t.works.tunnels}
        inside = [t for t in plan.tasks if t.repair in tunnels and t.step == "dig"]
        shown = {*plan.half_days_asked, *plan.half_days_off}
        assert all(int((t.start + 0.26) // half) in shown for t in inside if t.end - t.start > 1), option.letter
        assert bool(plan.half_days_asked) <= bool(inside)
