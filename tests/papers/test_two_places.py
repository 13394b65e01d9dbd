"""What two places of the papers say of one thing is the same, over every whole house of tests/jobs and the demo's."""

from decimal import Decimal
from functools import cache
from pathlib import Path

import pytest

from estimator import demo
from estimator.cli.priced_job import priced
from estimator.model.line import CLEANABLE
from estimator.model.offer import Option
from estimator.model.work import all_repairs
from estimator.papers import option_words
from estimator.papers.answer import answer_sheet
from estimator.papers.crew import crew
from estimator.papers.crew_where import where_it_is
from estimator.papers.if_not_lined import before_the_liner, if_not_lined
from estimator.papers.letter import Letter
from estimator.papers.lift import comes_back, release, steps
from estimator.quote.recommend import treated
from estimator.works.methods import prepares
from tests.papers.test_true import NAMES, offered, texts

HERE = "the demo's"


@cache
def _demo() -> Letter:
    return Letter(priced(Path(demo.__file__).parent / "job.toml", None).quote, "en_US")


def given(name: str) -> tuple[Letter, tuple[Option, ...]]:
    return (_demo(), _demo().quote.options) if name == HERE else offered(name)


pytestmark = pytest.mark.parametrize("name", [*NAMES, HERE])


def test_no_work_starts_while_the_owner_may_cancel(name: str) -> None:
    """16 CFR 429.1(a): until midnight of the third business day; a working day is one, Saturday apart."""
    letter, options = given(name)
    days = letter.quote.cancel_business_days
    for option in options:
        assert not days or not option.schedule.tasks or option.schedule.lead_days > days, option.letter


def test_a_limit_in_dollars_is_the_unit_price_times_the_limit_as_printed(name: str) -> None:
    """Feet print to the inch: so many whole inches. [the printed limit read back]"""
    _, options = given(name)
    for extra in (extra for option in options for extra in option.extras):
        assert extra.cap_amount == extra.price * extra.cap_quantity, extra.code
        if extra.unit == "ft":
            assert extra.cap_quantity * 12 == int(extra.cap_quantity * 12), extra.code


def test_one_option_is_signed_and_of_several_one_is_marked(name: str) -> None:
    letter, options = given(name)
    said = " ".join(str(c.value) for row in answer_sheet(letter).rows for c in row.cells)
    firm = sum(option.fixed for option in options)
    assert ("Mark one option on" in said) == (firm > 1)
    assert ("Sign the page" in said) == (firm == 1)


def test_what_a_cleaning_tool_goes_through_is_not_left_as_it_is(name: str) -> None:
    letter, options = given(name)
    for option in options:
        for found in (f for f in letter.quote.found if f.places and {x.kind for x in f.findings} <= CLEANABLE):
            cleaned = [s for t in option.takeoffs if t.repair.line == found.line for s in t.works.cleans]
            through = all(any(s.covers(place) for s in cleaned) for place in found.places)
            assert not through or treated(found, option) != "left", (option.letter, found.letter)


def test_the_feet_cleaned_are_those_the_works_clean(name: str) -> None:
    """A line that two repairs clean is billed once: never more than all they clean."""
    _, options = given(name)
    for option in options:
        billed = sum(t.value("clean_ft") for t in option.takeoffs)
        assert billed <= sum(s.length_ft for t in option.takeoffs for s in t.works.cleans) + 0.05, option.letter


def test_days_on_site_name_the_second_visit(name: str) -> None:
    letter, options = given(name)
    for option in options:
        said = option_words.length_of_work(letter, option)
        assert (" + " in said) == bool(option.schedule.days_later) == (" + " in option_words.on_site(option))
        assert bool(option.schedule.days_later) == comes_back(option)


def test_an_option_that_lines_says_what_it_comes_to_where_the_pipe_holds_no_liner(name: str) -> None:
    letter, options = given(name)
    for option in options:
        said = if_not_lined(letter, option)
        assert bool(said) == (option.fixed and bool(option.works.lined)), option.letter
        if not said:
            continue
        assert Decimal(0) <= before_the_liner(option) < option.price.total
        lining = [x for x in option.price.lines if x.work_item in ("lining", "sectional lining")]
        assert before_the_liner(option) <= option.price.total - option.price.tax - sum(x.amount for x in lining)


def test_the_house_is_released_for_the_lift_by_steps_that_come_before_it(name: str) -> None:
    letter, _ = given(name)
    if letter.quote.job.foundation.work != "planned":
        pytest.skip("no lift is planned")
    told = steps(letter)
    lift = next(n for n, text in enumerate(told, start=1) if "lifts the house" in text)
    assert release(letter).endswith(f"We give it after steps 1–{lift - 1}.")
    assert "named above" not in release(letter)


def test_the_crew_is_told_why_worn_pipe_is_lined_beside_the_code_s_sentence(name: str) -> None:
    """Where the crew reads that lost wall is not lined, it reads what counts as lost and what was judged."""
    letter, options = given(name)
    for option in options:
        said = " ".join(texts(crew(letter.quote, letter=option.letter)))
        assert said.count("no liner over lost wall") == said.count("was judged less. More after cleaning")


def test_the_crew_reads_the_stations_the_customer_signed(name: str) -> None:
    letter, options = given(name)
    for option in options:
        signed_for = option_words.reach(letter, option)
        for repair in (r for r in all_repairs(option.scope.repairs) if not r.reroute and not prepares(r.method)):
            end = where_it_is(letter, repair).rsplit(" to ", 1)[1]
            assert f"to {end}" in signed_for or end.startswith("−"), (option.letter, end)


def test_a_visit_after_the_lift_is_paid_for_when_it_is_made(name: str) -> None:
    """What falls due at completion is the rest of the work before the lift; the visit's own price is the last payment."""
    _, options = given(name)
    for option in options:
        *_, last = option.payments
        visits = [line.amount for line in option.price.lines if line.work_item == "test after lift"]
        assert (str(last.text) == "Second visit") == bool(visits), option.letter
        assert not visits or last.amount == sum(visits)
        assert sum(p.amount for p in option.payments) == option.price.total
