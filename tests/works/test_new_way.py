"""A way nobody has invented yet: its own record alone, and the safety rules speak of its works."""

from dataclasses import replace

import pytest

from estimator.model.job import EdgeBeam, Site
from estimator.model.judgement import METHODS
from estimator.model.say import Say
from estimator.model.stretch import Stretch
from estimator.model.work import Repair
from estimator.model.works import Laid, Opening, Span, Works
from estimator.scopes.rules import facts_of, may
from estimator.scopes.rules.examples import demo_tables, mark
from estimator.works import works_of
from estimator.works.case import Case
from estimator.works.methods import RECORDS, Method
from tests.takeoff.houses import changed, house, maple_line, pecan_house

NAME = "side shaft"


def shaft(case: Case) -> Works:
    """Opens a shaft 6 ft deep over the middle of the stretch, through the floor where there is one."""
    at = case.stretch.middle_ft
    along = Stretch(at - 2, at + 2)
    indoors = case.profile.zone(at).value == "slab"
    opening = Opening(
        kind="floor opening" if indoors else "pit",
        line=case.line.name,
        along=along,
        depth_ft=6.0,
        bottom_width_ft=3.0,
        top_width_ft=3.0,
        spans=tuple(Span(part, zone or "yard") for part, zone in case.profile.zones(along)),
        name=Say.of("the shaft"),
    )
    laid = Laid(line=case.line.name, stretch=case.stretch, size_in=case.bore_in)
    return Works(line=case.line.name, openings=(opening,), laid=(laid,))


@pytest.fixture(autouse=True)
def _a_new_way(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(RECORDS, NAME, Method(name=NAME, plan=shaft, kind="spot"))


def said(job, stretch: Stretch) -> dict[str, str]:
    tables = demo_tables()
    line = job.lines[0]
    works = works_of(Repair(id="new", method=NAME, line=line.name, stretch=stretch), job, tables)
    facts = facts_of(job, line, stretch, (), tables, works=works)
    return {v.rule: v.effect.value for v in may(NAME, facts, tables)}


def test_an_opening_in_a_tendon_floor_waits_for_the_scan_whatever_it_is_called() -> None:
    job = pecan_house()
    job = replace(job, house=replace(job.house, floor="post-tensioned slab", tendons="", edge_beam=EdgeBeam(0, 0)))
    rules = said(job, Stretch(8, 12))
    assert rules["tendons-in-the-slab"] == "until approved"
    assert {"find-what-runs-in-the-slab", "concrete-dust", "treated-soil", "asbestos-before-cutting"} <= set(rules)


def test_people_below_five_feet_are_protected_whatever_it_is_called() -> None:
    rules = said(replace(house(maple_line()), site=Site()), Stretch(20, 24))
    assert rules["protect-from-five-feet"] == rules["ladder-from-four-feet"] == "requires first"
    assert rules["competent-person-is-named"] == rules["locate-utilities"] == "requires first"


def test_a_footing_a_tree_and_the_lot_line_near_it_are_named() -> None:
    near = changed(
        maple_line(),
        mark("footing", 24.5, lengths=(("away", 1.0), ("deep", 1.0))),
        mark("tree", 26.0, size_in=12.0, lengths=(("away", 3.0),)),
        mark("property line", 23.0),
    )
    rules = said(house(near), Stretch(20, 24))
    assert rules["footing-below-dig"] == "until approved"
    assert rules["trees"] == "caution"
    assert rules["over-the-property-line"] == "requires first"


def test_every_way_of_the_tables_has_one_record() -> None:
    assert tuple(name for name in RECORDS if name != NAME) == METHODS
