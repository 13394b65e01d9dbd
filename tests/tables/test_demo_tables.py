"""The demo set itself: whole, invented, bilingual, and enough for everything the rest of the program asks for."""

import re
from pathlib import Path
from typing import get_args

import pytest

from estimator.model.opening import Opening, OpeningKind
from estimator.model.say import Say
from estimator.model.stretch import Stretch
from estimator.model.works import Works
from estimator.quote.terms import terms
from estimator.tables import demo_folder
from estimator.tables.rows import PlaceRow
from estimator.tables.table_owners import GROUPS
from estimator.takeoff.quantities import FACTS, QUANTITIES
from estimator.works.methods import names
from estimator.works.properties import properties_of
from tests.tables.workbench import DAY, demo, reading, with_edits

FACT_USERS = ("work_items", "recipes", "extras", "terms")
SHAPES = re.compile(
    r"_(cf|in|h|hours|minutes|gal|lb|psi)$|^(dig|pit|tunnel|safety|exit|fall|test|burst_entry|reroute_size)_"
)
"""Sizes, volumes in cubic feet, waits and test figures: steps on the way to a quantity."""

PRICED_UNITS = ("ft", "sq ft", "cy", "ton", "each", "bag", "gal", "day")

FOR_PEOPLE = {
    *("pipe_buy_ft", "couplings", "wyes", "pipe_ft", "glue_joints", "rooms_opened", "end_shields"),  # crew and pick list
    *("pile_sf", "spoil_lcy", "export_lcy", "native_ccy", "pipe_zone_ccy", "slab_cy", "slab_tons", "slab_haul_lcy", "flatwork_tons", "flatwork_haul_lcy", "lifts"),  # on the way to loads and fill
    *("floor_sf", "beam_crossings", "size_changes", "dig_to_reopen", "fixture_units"),  # others' work, questions
}  # fmt: skip
"""Quantities people read that cost nothing by themselves."""


def test_nothing_is_wrong_with_the_demo_tables() -> None:
    assert reading(demo_folder()).problems == ()


def test_the_readme_says_that_everything_is_invented() -> None:
    assert "invented" in (demo_folder() / "README.md").read_text("utf-8")


def test_every_quantity_that_costs_something_is_asked_for_by_a_row() -> None:
    used = {item.quantity for item in demo().work_items} | {recipe.quantity for recipe in demo().recipes}
    priced = {name for name, (unit, _) in QUANTITIES.items() if unit in PRICED_UNITS and not SHAPES.search(name)}
    assert priced - used - FOR_PEOPLE == set()


def test_every_work_item_has_a_recipe_and_names_a_method_only_where_not_all_that_have_its_quantity_need_it() -> None:
    assert {item.item for item in demo().work_items} <= {recipe.work_item for recipe in demo().recipes}
    named = {item.item: item.methods for item in demo().work_items if item.methods and "job" not in item.methods}
    assert set(named) == {"lining"}  # short liners are sold by the piece


@pytest.mark.parametrize("method", names())
def test_every_method_has_its_titles_in_both_languages(method: str) -> None:
    assert demo().method(method).title_en and demo().method(method).title_es


def said_of(kind: OpeningKind) -> set[str]:
    """Ids of the sentences printed for an opening of this kind that people enter, in a slab that may have tendons."""
    pit = Opening(kind=kind, line="main", along=Stretch(0, 4), depth_ft=4.0, name=Say.of("a hole"))
    known = properties_of(Works(line="main", openings=(pit,))) | {"slab_may_have_tendons"}
    return {term.id for term in terms(demo(), set(), known)}


@pytest.mark.parametrize("kind", [kind for kind in get_args(OpeningKind) if kind not in ("hole through", "pothole")])
def test_a_dig_near_people_always_carries_its_cautions(kind: OpeningKind) -> None:
    """29 CFR 1926.651 and 652 (entry, protection, inspection) and 811 before digging [common practice]."""
    always = {"cau-811", "cau-depth", "cau-keep-out", "cau-gas", "crw-protective", "crw-daily", "crw-type"}
    assert always <= said_of(kind)


def test_a_tunnel_carries_the_cautions_of_people_under_a_house() -> None:
    assert {"crw-air", "crw-lockout", "crw-which-rule", "cau-no-use-tunnel", "cau-cables"} <= said_of("tunnel")


def texts(tables: tuple[str, ...], columns: tuple[str, ...]) -> list[str]:
    """Every text of these columns that is not empty; there are many, or the demo tables were not read."""
    rows = [row for table in tables for row in demo().rows[table]]
    found = [text for row in rows for name in columns if (text := getattr(row, name, ""))]
    assert len(found) > 100
    return found


def test_no_text_tells_anybody_that_nothing_is_required() -> None:
    said = texts(("terms", "work_items", "extras", "methods"), ("text_en", "text_es", "warranty_en", "risk_en"))
    assert [t for t in said if re.search(r"none required|not required|no se requiere", t, re.I)] == []


def test_homeowners_texts_are_free_of_shop_words() -> None:
    """Words a homeowner does not use for the house drain, in either language [common practice]."""
    shop = re.compile(r"\b(station|invert|lateral|zone|scope|static|haunching|alcantarillado|tubería lateral)\b", re.I)
    columns = ("text_en", "text_es", "title_en", "title_es", "under_en", "under_es", "risk_en", "risk_es")
    assert [t for t in texts(("work_items", "extras", "methods"), columns) if shop.search(t)] == []


def test_spanish_says_usted() -> None:
    told = re.compile(r"\b(tú|tu|tus|te|puedes|debes|tienes|vas|usa|llama)\b", re.I)
    columns = ("text_es", "title_es", "under_es", "risk_es", "warranty_es")
    assert [t for t in texts(("work_items", "extras", "methods", "terms"), columns) if told.search(t)] == []


def test_soils_swell_as_published() -> None:
    """Dagostino/Peterson fig. 9.1: sand and gravel 10–18 %, loam 15–25, dense clay 20–35, solid rock 40–70 (read)."""
    for soil, low, high in (("sand", 10, 18), ("gravel", 10, 18), ("loam", 15, 25), ("firm clay", 20, 35), ("hard clay", 20, 35), ("rock", 40, 70)):  # fmt: skip
        assert low <= demo().soil(soil).swell_percent <= high


def test_places_hold_what_consumer_law_says() -> None:
    """16 CFR 429: three business days; California B&P 7159.5(a)(3): the lesser of $1,000 and 10 % (read).

    California gives buyers of 65 and over five days, Maryland seven (from memory): the longer stands for all.
    """
    california = demo().place("california home")
    assert (california.deposit_cap_amount, california.deposit_cap_percent) == (1000, 10)
    days = {
        place.place: place.cancel_business_days for place in demo().current("places") if isinstance(place, PlaceRow)
    }
    longer = {"california home": 5, "maryland home": 7}
    assert days == {name: longer.get(name, 3) for name in days}
    assert demo().place("unknown").tax_percent is None
    sources = [getattr(place, "source", "") for place in demo().current("places")]
    assert len(sources) > 5
    assert all(sources)


def test_every_price_carries_the_day_it_was_learned() -> None:
    rows = [row for table in ("materials", "equipment", "subs_and_fees") for row in demo().current(table)]
    days = [getattr(row, "price_day", None) for row in rows]
    assert len(days) > 50
    assert all(day is not None and day <= DAY for day in days)


def test_every_setting_is_asked_for_somewhere_in_the_code() -> None:
    code = "\n".join(p.read_text("utf-8") for p in Path(demo_folder().parent / "estimator").rglob("*.py"))
    levels = re.compile(r"_[123]_(percent|in)$|^account_")  # asked for by level, by kind of entry
    asked = [row.key for row in demo().rows["settings"] if not levels.search(row.key)]  # type: ignore[attr-defined]
    assert [key for key in asked if f'"{key}"' not in code] == []


def test_a_factor_never_speeds_work_up() -> None:
    assert all(factor.multiplier >= 1 for factor in demo().factors)
    assert {factor.fact for factor in demo().factors} <= set(FACTS)


def test_a_recipe_may_follow_the_days_of_a_crew_there_is(tmp_path: Path) -> None:
    """`days.tunnel` is known since that crew is; `days.Z` is not."""
    good = with_edits(tmp_path, ["recipes | tunnel | quantity | days.tunnel"])
    assert reading(good).problems == ()
    (tmp_path / "other").mkdir()
    bad = with_edits(tmp_path / "other", ["recipes | tunnel | quantity | days.Z"])
    assert [problem.code for problem in reading(bad).problems] == ["tables/unknown-quantity"]


def test_a_notice_of_one_place_stands_on_no_other_places_quote() -> None:
    """22 TAC 367.10(b) asks Texas plumbers for a block on the first page (read); nobody else."""
    board = {term.when for term in demo().terms if term.id.startswith("not-texas-board")}
    assert board == {("place texas lump sum",), ("place texas separated",)}


def test_a_sentence_for_a_place_nobody_has_is_a_problem(tmp_path: Path) -> None:
    target = with_edits(tmp_path, ["terms | not-maryland-home | when | place mariland home"])
    assert [str(problem.write) for problem in reading(target).problems] == [
        "Perhaps “place maryland home” or “place california home” is meant."
    ]


def test_every_setting_stands_in_a_group_that_tells_what_it_decides() -> None:
    groups = [row.decides for row in demo().settings]
    assert set(groups) == set(GROUPS)
    assert groups == sorted(groups, key=list(GROUPS).index)
