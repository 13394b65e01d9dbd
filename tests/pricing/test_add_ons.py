"""What a homeowner may add: a price of its own that stands whatever else is chosen, and lines beside it that do not move."""

from collections.abc import Callable, Sequence
from dataclasses import replace
from datetime import date
from decimal import Decimal
from itertools import combinations
from pathlib import Path

import pytest

from estimator import demo
from estimator.fieldnotes import read_job
from estimator.model.add_on import AddOn
from estimator.model.job import Job
from estimator.model.offer import Option
from estimator.model.problem import CannotGoOn
from estimator.model.stretch import Stretch
from estimator.model.wanted import WantedAddOn
from estimator.model.work import Repair, Scope, Takeoff
from estimator.pipeline import run
from estimator.pricing.add_on_price import with_chosen
from estimator.pricing.add_ons import Wanted, add_ons, bound, wanted, ways_of
from estimator.pricing.build import price_scope
from estimator.tables.read import demo_folder, read_tables
from estimator.tables.rows import AddOnRow, PlaceRow, Recipe, TaxClass, WorkItem
from estimator.tables.rows_of_hours import Production
from estimator.tables.tables import Tables

D = Decimal
Takeoffs = tuple[Takeoff, ...]
Place = Callable[..., PlaceRow]
DAY = date(2026, 11, 18)
NOTHING_SAID = Wanted()


@pytest.fixture
def stocked(tables: Tables) -> Tables:
    """The tables of the worked examples with one add-on: a valve, 1.5 crew-hours and a part of $165."""
    item = WorkItem(item="valve", work_class="pipe", methods=("job",), when=(), quantity="add_ons", unit="each", billed="lump",
                    order=1, text_en="A {size}-inch valve", text_es="Una válvula de {size} pulgadas", tax_class="")  # fmt: skip
    recipes = [Recipe(work_item="valve", part=part, ref=ref, quantity="", per=1, crew="", when=()) for part, ref in
               (("labor", "set valve"), ("material", "valve"))]  # fmt: skip
    part = replace(tables.material("coupling-4"), item="valve", cost=D(165), waste_percent=D(0), pack=D(1))
    task = Production(task="set valve", unit="each", crew="plumbing", low=1, likely=1.5, high=2.5, covers="")
    row = AddOnRow(code="valve", work_item="valve", methods=("yard spot", "tunnel"), when=(), text_en="", text_es="")
    more = {"work_items": (item,), "recipes": tuple(recipes), "materials": (part,), "production": (task,)}
    held = {name: (*tables.rows[name], *rows) for name, rows in more.items()}
    return replace(tables, rows={**tables.rows, **held, "add_ons": (row,)})


def offered(
    scope: Sequence[Takeoff], tables: Tables, place: PlaceRow | None, wanted: Wanted = NOTHING_SAID
) -> tuple[AddOn, ...]:
    return add_ons(scope, price_scope(scope, tables, place), tables, place, wanted)


def test_its_price_is_its_exact_hours_and_parts_over_the_margin(
    maple: Takeoffs, stocked: Tables, place: PlaceRow
) -> None:
    (valve,) = offered(maple, stocked, place)
    # 1.5 h × 79.20 = 118.80; 165.00; small parts 5 % = 8.25; tax 8.25 % × 173.25 = 14.29; 306.34 ÷ 0.60 = 510.57 [by hand]
    assert valve.cost == D("306.34")
    assert [step.amount for step in valve.steps] == [D("510.57"), D("510.57"), D("525")]
    assert (valve.amount, valve.tax, valve.price) == (D(525), D(0), D(525))
    assert valve.text_en == "A 4-inch valve"


def test_where_the_whole_charge_is_taxed_the_tax_is_in_what_is_printed(
    maple: Takeoffs, stocked: Tables, make_place: Place
) -> None:
    (valve,) = offered(maple, stocked, make_place(tax_kind="whole charge"))
    assert valve.amount == D(500)  # 292.05 ÷ 0.60 = 486.75, up to 25 [by hand]
    assert (valve.tax, valve.price) == (D("41.25"), D("541.25"))


def test_on_separated_materials_its_materials_alone_are_taxed(
    maple: Takeoffs, stocked: Tables, make_place: Place
) -> None:
    (valve,) = offered(maple, stocked, make_place(tax_kind="separated"))
    assert valve.tax == D("23.82")  # 173.25 of 292.05, sold for 486.75: 288.75 × 8.25 % [by hand]


def test_work_taxed_in_its_own_way_is_so_as_an_add_on_too(maple: Takeoffs, stocked: Tables, make_place: Place) -> None:
    where = make_place(tax_kind="whole charge")
    items = [replace(i, tax_class="apart") if isinstance(i, WorkItem) and i.item == "valve" else i for i in stocked.rows["work_items"]]  # fmt: skip
    untaxed = TaxClass(place=where.place, tax_class="apart", tax_kind="none", tax_percent=None, source="test", asked_whom="", checked_on=None)  # fmt: skip
    tables = replace(stocked, rows={**stocked.rows, "work_items": tuple(items), "tax_classes": (untaxed,)})
    (valve,) = offered(maple, tables, where)
    assert valve.tax == 0


def test_it_is_offered_only_with_the_ways_it_names(maple: Takeoffs, stocked: Tables, place: PlaceRow) -> None:
    for methods, there in ((("yard spot",), True), (("reline",), False), ((), True)):
        row = replace(stocked.add_ons[0], methods=methods)
        tables = replace(stocked, rows={**stocked.rows, "add_ons": (row,)})
        assert bool(offered(maple, tables, place)) is there


def test_what_is_in_the_price_anyway_is_not_offered(maple: Takeoffs, stocked: Tables, place: PlaceRow) -> None:
    sold = next(line.work_item for line in price_scope(maple, stocked, place).lines)
    row = replace(stocked.add_ons[0], work_item=sold)
    assert offered(maple, replace(stocked, rows={**stocked.rows, "add_ons": (row,)}), place) == ()


def test_the_estimator_changes_number_words_and_price_and_leaves_out(
    maple: Takeoffs, stocked: Tables, place: PlaceRow
) -> None:
    def valve(**said: object) -> tuple[AddOn, ...]:
        return offered(maple, stocked, place, Wanted((WantedAddOn(code="valve", **said),), (), {"a"}))  # type: ignore[arg-type]

    assert valve(quantity=2)[0].cost == D("612.69")  # 237.60 + 330 + 16.50 + 28.59 [by hand]
    assert (valve(price=D(540))[0].amount, valve(text="Our valve")[0].text_en) == (D(540), "Our valve")
    assert valve(quantity=0) == ()
    assert valve(options=("B",)) == ()
    assert len(valve(options=("a",))) == 1


def test_one_of_his_own_stands_at_his_price_and_costs_it_less_an_allowances_margin(
    maple: Takeoffs, stocked: Tables, place: PlaceRow
) -> None:
    word = WantedAddOn(code="bath line", text="The second bath's line as well", price=D(1850))
    _, own = offered(maple, stocked, place, Wanted((word,), ("bath line",), frozenset()))
    margin = stocked.price_class("allowance").margin_percent
    assert (own.amount, own.chosen, own.text_es) == (D(1850), True, "The second bath's line as well")
    assert own.cost == (D(1850) * (1 - margin / 100)).quantize(D("0.01"))


def test_below_the_floor_margin_or_for_nothing_it_is_not_sold(
    maple: Takeoffs, stocked: Tables, place: PlaceRow
) -> None:
    """306.34 at the floor margin is the least; the owner may go below it with a reason, to nothing nobody may."""
    floor = stocked.price_class("own").floor_margin_percent
    least = (D("306.34") / (1 - floor / 100)).quantize(D("0.01"))

    def sold(price: Decimal, overruled: bool = False) -> Decimal:
        word = WantedAddOn(code="valve", price=price)
        return offered(maple, stocked, place, Wanted((word,), (), frozenset(), overruled))[0].amount

    assert sold(least) == least
    for price in (least - D("0.01"), D(1), D(0)):
        with pytest.raises(CannotGoOn, match="the floor margin asks for"):
            sold(price)
    assert sold(least - D("0.01"), overruled=True) == least - D("0.01")
    with pytest.raises(CannotGoOn, match="Nothing is sold for nothing"):
        sold(D(0), overruled=True)


def test_what_is_passed_on_and_not_taxed_by_its_class_takes_no_tax_off(
    maple: Takeoffs, stocked: Tables, make_place: Place
) -> None:
    where = make_place(tax_kind="whole charge")
    permit = next(r for r in stocked.rows["subs_and_fees"] if getattr(r, "price_class", "") == "pass-through")
    recipe = Recipe(work_item="valve", part="fee", ref=getattr(permit, "item"), quantity="", per=1, crew="", when=())  # noqa: B009
    recipes = (*(r for r in stocked.recipes if r.work_item != "valve"), recipe)
    items = [replace(i, tax_class="apart") if i.item == "valve" else i for i in stocked.work_items]
    untaxed = TaxClass(place=where.place, tax_class="apart", tax_kind="none", tax_percent=None, source="test", asked_whom="", checked_on=None)  # fmt: skip
    tables = replace(
        stocked, rows={**stocked.rows, "recipes": recipes, "work_items": tuple(items), "tax_classes": (untaxed,)}
    )
    (fee,) = offered(maple, tables, where)
    assert (fee.tax, fee.cost) == (D(0), getattr(permit, "cost"))  # noqa: B009


@pytest.mark.parametrize(("chosen", "taken"), [("valve", True), ("VALVE", True), ("a:valve", True), ("A:Valve", True), ("B:valve", False), ("valves", False)])  # fmt: skip
def test_it_is_chosen_by_its_short_name_for_all_options_or_for_one(
    maple: Takeoffs, stocked: Tables, place: PlaceRow, chosen: str, taken: bool
) -> None:
    (valve,) = offered(maple, stocked, place, Wanted((), (chosen,), {"", "a", "the dig"}))
    assert valve.chosen is taken


# ── chosen, on the whole demo ─────────────────────────────────────────────────────────────────


@pytest.fixture(scope="module")
def demo_job() -> Job:
    job = read_job(Path(demo.__file__).parent / "job.toml").job
    assert job is not None
    return job


@pytest.fixture(scope="module")
def demo_tables() -> Tables:
    tables = read_tables(demo_folder(), DAY).tables
    assert tables is not None
    return tables


def options(job: Job, tables: Tables) -> tuple[Option, ...]:
    quote = run(job, tables, DAY).quote
    assert quote is not None
    return quote.options


def test_several_chosen_cost_the_sum_of_what_was_printed_and_no_other_line_moves(
    demo_job: Job, demo_tables: Tables
) -> None:
    option = max(options(demo_job, demo_tables), key=lambda o: len(o.add_ons))
    assert len(option.add_ons) >= 3
    for count in range(len(option.add_ons) + 1):
        for some in combinations(option.add_ons, count):
            marked = [replace(a, chosen=a in some) for a in option.add_ons]
            price = with_chosen(option.price, marked)
            assert price.total == option.price.total + sum(a.price for a in some)
            assert sum(line.amount for line in price.lines) + price.tax == price.total
            assert [line for line in price.lines if not line.repair.startswith("add-on")] == list(option.price.lines)
            assert price.steps[-1].amount == price.total


def test_chosen_in_the_job_they_are_in_lines_payments_and_margin(demo_job: Job, demo_tables: Tables) -> None:
    before, after = (
        {o.letter: o for o in options(job, demo_tables)}
        for job in (demo_job, demo_job.with_add_ons(("cleanout", "drain-plan")))
    )
    for letter, option in after.items():
        added = sum((a.price for a in option.chosen_add_ons), D(0))
        assert added > 0
        assert option.price.total == before[letter].price.total + added
        assert sum(p.amount for p in option.payments) == option.price.total
        assert option.most == before[letter].most + added
        assert {a.code for a in option.open_add_ons}.isdisjoint({"cleanout", "drain-plan"})
        spent = sum(c.amount for c in option.price.costs) + sum((a.cost for a in option.chosen_add_ons), D(0))
        net = option.price.total - option.price.tax
        assert abs(option.price.margin - (net - spent) / net) < D("0.0001")
        assert len(option.all_tasks) > len(option.price.tasks)


def test_with_nothing_chosen_no_price_moves(demo_job: Job, demo_tables: Tables) -> None:
    option = options(demo_job, demo_tables)[0]
    assert with_chosen(option.price, option.add_ons) is option.price


def test_what_was_chosen_for_one_option_stays_with_it_when_its_letter_moves(demo_job: Job, demo_tables: Tables) -> None:
    scopes = [option.scope for option in options(demo_job, demo_tables)]
    ways = ways_of(scopes)
    assert len(set(ways)) == len(ways)
    first = bound(demo_job.with_add_ons(("b:cleanout", "drain-plan")), scopes)
    assert first.chosen == (f"{ways[1]}:cleanout", "drain-plan")
    again = bound(first, scopes[1:])  # what was B is A now
    assert again.chosen == first.chosen
    taken = [wanted(again, {"", "x", way.lower()}).takes("cleanout") for way in ways_of(scopes[1:])]
    assert taken == [True] + [False] * (len(scopes) - 2)


def test_what_the_job_file_wishes_for_a_letter_stays_with_the_letter(demo_job: Job, demo_tables: Tables) -> None:
    """As every number of the owner's does that names an option."""
    scopes = [option.scope for option in options(demo_job, demo_tables)]
    wished = replace(demo_job, wishes=replace(demo_job.wishes, add_ons=("B:cleanout",)))
    assert bound(wished, scopes) is wished


def test_options_that_do_alike_are_counted() -> None:
    one = Scope(repairs=(Repair(id="r", method="reline", line="main", stretch=Stretch(0.0, 9.0)),), needs=())
    assert ways_of([one, one, one]) == ("reline main", "reline main no. 2", "reline main no. 3")
