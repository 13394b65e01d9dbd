"""A way nobody has invented yet: its own record alone, and the safety rules speak of its works."""

import ast
import csv
import shutil
from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest

import estimator
from estimator.model.job import EdgeBeam, Job, Site
from estimator.model.opening import Opening, Span
from estimator.model.say import Say
from estimator.model.stretch import Stretch
from estimator.model.wanted import WantedOption, WantedRepair
from estimator.model.work import Repair
from estimator.model.works import Laid, Works
from estimator.pipeline import run
from estimator.quote.refuse import facts
from estimator.quote.terms import terms, to_others
from estimator.scopes.rules import facts_of, may
from estimator.tables.read import demo_folder, read_tables
from estimator.tables.tables import Tables
from estimator.takeoff import take_off
from estimator.takeoff.quantities import FACTS, QUANTITIES
from estimator.works import plans, works_of
from estimator.works.case import Case
from estimator.works.methods import RECORDS, Method, Plan, names
from tests.made_up.stretch import demo_tables, finding, mark
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


RECORD = Method(
    name=NAME,
    plan=shaft,
    kind="spot",
    shape="spot",
    ground="outside",
    longest="yard_spot_max_ft",
    label=Say.of("side shaft"),
    short=Say.of("a side shaft"),
    does=Say.of("Sink a shaft over {length} of the {line} ({place}) and replace the pipe."),
)


@pytest.fixture(autouse=True)
def _a_new_way(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(RECORDS, NAME, RECORD)


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


def told(monkeypatch: pytest.MonkeyPatch, plan: Plan, job: Job, stretch: Stretch) -> set[str]:
    """Ids of the firm's sentences that are printed where the new way does this."""
    monkeypatch.setitem(RECORDS, NAME, replace(RECORD, plan=plan))
    tables = demo_tables()
    repair = Repair(id="new", method=NAME, line=job.lines[0].name, stretch=stretch)
    known = facts(job, (take_off(repair, job, tables),))
    others = to_others(tables, {NAME}, known, 0.0, None)
    return {term.id for term in terms(tables, {NAME}, known)} | {other.text_en for other in others}


OF_A_DIG = {"cau-811", "cau-keep-out", "crw-spoil", "crw-type", "crw-footing", "crw-night", "exc-hidden", "inc-refill"}
OF_PEOPLE_BELOW = {"cau-depth", "crw-protective", "crw-daily"}
OF_OPEN_GROUND = {"crw-overhead", "cau-settle", "cau-trees", "ass-dry", "exc-trees"}
OF_A_FLOOR = {"cau-dust", "cau-in-slab", "crw-silica", "crw-beam", "crw-soil-gas", "cau-soil-gas", "ass-empty-rooms"}
OF_THE_HOUSE = {"crw-co", "cau-carbon-monoxide", "exc-asbestos-lead"}
UNDER_THE_HOUSE = {"cau-no-use-tunnel", "crw-lockout", "crw-vapor", "crw-gas-numbers"}
OF_A_TUNNEL = {"crw-air", "crw-which-rule"}
OF_CUT_IRON = {"crw-stray-current", "crw-lead-joint"}
OF_NEW_PIPE = {"ass-sound-ends", "crw-film-twice", "inc-transfer"}
OF_A_CLEANED_PIPE = {"crw-jetter", "crw-cable-machine", "crw-blow-back", "cau-blow-back", "cau-chemicals"}
OF_A_LINING = {"cau-odor", "cau-cure", "ass-lines", "inc-transfer", "exc-sag-stays"}
OF_BURSTING = {"crw-line-of-pull", "crw-heave"}


def test_a_new_way_that_opens_the_yard_says_what_a_yard_dig_says(monkeypatch: pytest.MonkeyPatch) -> None:
    said = told(monkeypatch, shaft, house(maple_line()), Stretch(20, 24))
    assert OF_A_DIG | OF_PEOPLE_BELOW | OF_OPEN_GROUND | OF_NEW_PIPE | {"An arborist; sprinkler repair"} <= said
    assert not said & (OF_A_FLOOR | OF_THE_HOUSE | UNDER_THE_HOUSE | OF_A_TUNNEL | OF_A_CLEANED_PIPE | OF_BURSTING)


def test_a_new_way_that_opens_a_floor_says_what_an_opened_floor_says(monkeypatch: pytest.MonkeyPatch) -> None:
    said = told(monkeypatch, shaft, pecan_house(), Stretch(8, 12))
    assert OF_A_DIG | OF_PEOPLE_BELOW | OF_A_FLOOR | OF_THE_HOUSE | {"cau-asbestos", "Termite treatment"} <= said
    assert not said & (OF_OPEN_GROUND | UNDER_THE_HOUSE | OF_A_TUNNEL)


def test_a_new_way_under_the_house_says_what_people_under_a_house_need(monkeypatch: pytest.MonkeyPatch) -> None:
    said = told(monkeypatch, plans.tunnel, pecan_house(), Stretch(8, 12))
    assert UNDER_THE_HOUSE | OF_A_TUNNEL | OF_PEOPLE_BELOW | OF_THE_HOUSE | {"crw-silica", "crw-beam"} <= said
    assert "crw-permit-space" not in said
    said = told(monkeypatch, plans.crawl_replace, house(maple_line()), Stretch(8, 12))
    assert UNDER_THE_HOUSE | OF_THE_HOUSE | {"crw-permit-space"} <= said
    assert not said & (OF_A_TUNNEL | OF_A_DIG)


def test_a_new_way_that_cuts_iron_says_what_cut_iron_needs(monkeypatch: pytest.MonkeyPatch) -> None:
    assert told(monkeypatch, shaft, pecan_house(), Stretch(8, 12)) >= OF_CUT_IRON
    assert told(monkeypatch, plans.abandon, pecan_house(), Stretch(8, 12)) >= OF_CUT_IRON
    assert not told(monkeypatch, plans.reline, pecan_house(), Stretch(8, 12)) & OF_CUT_IRON


def test_a_new_way_that_lines_or_breaks_the_old_pipe_says_so(monkeypatch: pytest.MonkeyPatch) -> None:
    said = told(monkeypatch, plans.reline, pecan_house(), Stretch(8, 12))
    assert said >= OF_A_LINING | OF_A_CLEANED_PIPE and not said & (OF_A_DIG | OF_BURSTING)
    said = told(monkeypatch, plans.burst, house(maple_line()), Stretch(20, 40))
    assert OF_BURSTING | OF_OPEN_GROUND | {"exc-sag-stays"} <= said and not said & OF_A_CLEANED_PIPE
    assert "cau-test-water" in told(monkeypatch, plans.isolation_test, pecan_house(), Stretch(8, 12))


def test_no_sentence_of_the_firm_lists_ways() -> None:
    """What depends on the work hangs on the works; a list of ways would leave the next way silent."""
    assert not [row.id for row in demo_tables().terms if row.methods]


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


@pytest.fixture
def tables_with_it(tmp_path: Path) -> Tables:
    """The demo tables, and a row or a word for the new way wherever they name the dig that is most like it."""
    folder = tmp_path / "tables"
    shutil.copytree(demo_folder(), folder)
    for file in folder.glob("*.csv"):
        with file.open(encoding="utf-8", newline="") as read:
            rows = list(csv.reader(read))
        own = [[NAME, *row[1:]] for row in rows if file.name in ("methods.csv", "contingency.csv") and row[0] == LIKE]
        named = [[_with_it(cell) for cell in row] for row in rows]
        with file.open("w", encoding="utf-8", newline="") as written:
            csv.writer(written).writerows([*(named if not own else rows), *own])
    units = {name: unit for name, (unit, _) in QUANTITIES.items()}
    read_ = read_tables(folder, date(2026, 11, 28), units, FACTS, (*names(), "job"))
    assert read_.tables is not None, [str(p) for p in read_.problems]
    return read_.tables


LIKE = "yard spot"


def _with_it(cell: str) -> str:
    """A list of ways that names the like one names the new one too."""
    words = [word.strip() for word in cell.split(",")]
    return f"{cell}, {NAME}" if LIKE in words else cell


def test_a_price_comes_out_of_its_record_and_its_rows(tables_with_it: Tables) -> None:
    """Its shaft is 4 ft long, 3 ft wide and 6 ft deep, 72 cu ft upright [computed]; type C counted, so its sides slope or are
    held: never less earth than that."""
    job = house(replace(maple_line(), findings=(finding("22 crack broken"),)), site=Site(located=True))
    job = replace(job, demo=True)
    plain = run(job, tables_with_it, job.day)
    assert plain.quote is not None
    options = {r.method: o for o in plain.quote.options for r in o.scope.repairs}
    assert NAME in options or NAME in {r.method for r in plain.offers.repairs}
    wish = WantedOption(
        do="pin", name="mine", repairs=(WantedRepair(method=NAME, line="main", from_ft=20.0, to_ft=24.0),)
    )
    quote = run(replace(job, options=(wish,)), tables_with_it, job.day).quote
    assert quote is not None
    mine = quote.options[0]
    assert [r.method for r in mine.scope.repairs] == [NAME]
    assert mine.takeoffs[0].value("dig_cf") >= 4 * 3 * 6
    assert mine.takeoffs[0].value("safety_depth_ft") == 6.0 and mine.takeoffs[0].value("pipe_ft") == 4.0
    assert mine.price.total > 1000 and mine.days_on_site > 0
    assert str(mine.does[0]).startswith("Sink a shaft over 4 ft of the")
    assert any(f.subject == "depth" for f in mine.basis.facts)


SAMPLES = ("example.py", "examples.py")


def test_no_module_but_the_records_names_a_way_of_repair() -> None:
    """A name that is a word of the trade besides (clean, burst, visit ...) counts where it stands for the way: in a list, a
    comparison with `method`, or a table by ways."""
    ways = set(names()) - {NAME}
    guilty = []
    for module in sorted(Path(estimator.__file__).parent.rglob("*.py")):
        if module.name in SAMPLES or module.name == "methods.py":
            continue
        tree = ast.parse(module.read_text(encoding="utf-8"))
        for node in ast.walk(tree):
            told = [n.value for n in ast.walk(node) if isinstance(n, ast.Constant)] if _of_a_way(node) else []
            guilty += [f"{module.name}: {word}" for word in told if word in ways]
    assert not guilty


def _of_a_way(node: ast.AST) -> bool:
    """It compares, maps or lists ways of repair."""
    if isinstance(node, ast.Compare):
        return ast.unparse(node.left).endswith("method")
    if isinstance(node, ast.keyword):
        return node.arg in ("method", "methods")
    if isinstance(node, ast.Dict):
        return sum(isinstance(k, ast.Constant) and k.value in UNMISTAKABLE for k in node.keys) > 0
    if isinstance(node, ast.Tuple | ast.Set | ast.List):
        return any(isinstance(e, ast.Constant) and e.value in UNMISTAKABLE for e in node.elts)
    return False


UNMISTAKABLE = frozenset(
    {
        "sectional liner", "reline", "yard spot", "slab spot", "break-through", "isolation test", "crawl replace",
    }
)  # fmt: skip
