"""What lies past the property line may be handed over there; the whole yard line may be new beside a repair under the house."""

import pytest

from estimator.model.job import Job
from estimator.model.offer import Option
from estimator.model.stretch import Stretch
from estimator.model.work import Repair, all_repairs
from estimator.pipeline import run
from tests.made_up.stretch import demo_tables
from tests.scopes.conftest import NotesOf

YARD = "pass front cleanout to street, with flow, surface\n0 cleanout, yard lawn\n0-66 joints every 3ft\n0-66 depth 3ft from lawn\n{more}\n66 end city main, stop reached main"


def options(job: Job) -> tuple[Option, ...]:
    quote = run(job, demo_tables(), job.day).quote
    assert quote is not None
    return quote.options


def handed(job: Job) -> list[tuple[Option, Repair]]:
    return [(o, r) for o in options(job) for r in o.scope.repairs if r.method == "hand over"]


@pytest.mark.parametrize(
    "log", ["44 property line\n54 crack open, soil seen", "44 property line\n40-48 crack open, soil seen"]
)
def test_a_defect_past_the_property_line_is_handed_over_at_it(notes: NotesOf, log: str) -> None:
    ((option, repair),) = handed(notes(YARD.format(more=log)))
    assert repair.stretch.to_ft < 44 < repair.stretch.to_ft + 3 and repair.answers
    assert all(o.at_top.to_ft <= 44 for o in option.works.openings)
    assert option.takeoffs[0].value("cleanouts") == option.takeoffs[0].value("films_before") == 1
    assert option.fixed and not any("permission" in str(p) for p in option.needs_papers)
    assert any("Ask the city in writing" in str(c) for c in option.cautions)
    assert any("bring" not in str(d) and "hand over to the city" in str(d) for d in option.does)


def test_new_pipe_reaches_back_past_what_is_bad_on_this_side(notes: NotesOf) -> None:
    ((_, repair),) = handed(notes(YARD.format(more="44 property line\n30-48 crack open, soil seen")))
    assert repair.stretch.from_ft < 30


@pytest.mark.parametrize("log", ["54 crack open, soil seen", "60 property line\n54 crack open, soil seen"])
def test_nothing_is_handed_over_on_ones_own_side(notes: NotesOf, log: str) -> None:
    assert not handed(notes(YARD.format(more=log)))


def test_against_the_flow_the_line_is_on_the_other_side(notes: NotesOf) -> None:
    log = "pass street main to house, against flow, surface\n0 street asphalt\n0-60 joints every 3ft\n0-60 depth 3ft from lawn\n8 crack open, soil seen\n20 property line\n20 yard lawn\n60 cleanout, stop reached access"
    ((_, repair),) = handed(notes(log))
    assert repair.stretch.from_ft > 20


HOUSE = "pass hall toilet to street, with flow, surface\n0 slab tile\n0-30 loc 28in under tile\n12-15 channel gone, soil seen\n30 yard lawn\n30-70 joints every 3ft\n31-70 depth 3ft from lawn\n50 crack broken, soil seen\n70 end city main, stop reached main"


def test_the_whole_yard_line_new_stands_beside_a_repair_under_the_house(notes: NotesOf) -> None:
    job = notes(HOUSE.replace("30 yard lawn\n", "30 yard lawn, pipe clay\n"), pipe="cast iron")
    yards = [[r.stretch for r in all_repairs(o.scope.repairs) if r.stretch.from_ft >= 29] for o in options(job)]
    assert any(s.covers(Stretch(31, 70)) for parts in yards for s in parts), yards
    assert any(s.length_ft < 15 for parts in yards for s in parts), "the spot alone stays an option"


def test_in_a_house_with_nothing_to_repair_under_it_the_yard_line_is_not_pushed(notes: NotesOf) -> None:
    job = notes(YARD.format(more="30 crack broken, soil seen"))
    assert not any(
        r.stretch.length_ft > 40 and not r.method.startswith("re") for o in options(job) for r in o.scope.repairs
    )
