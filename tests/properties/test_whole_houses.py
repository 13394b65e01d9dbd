"""What must hold for any house, drawn anew on every run. A failed test names the seed that draws the same house again."""

import random
from dataclasses import replace
from math import inf

import pytest

from estimator.model.gas import GAS_SMELL
from estimator.model.job import Job, Sign
from estimator.model.offer import Quote
from estimator.model.stretch import Stretch
from estimator.model.wanted import Approval
from estimator.model.work import all_repairs
from tests.properties.drawn_houses import DAY, Drawn, drawn, quoted, read, seeds, sound, tables, trouble, with_rows


def least(quote: Quote) -> float:
    """The cheapest price that leaves nothing open that must be put right: 0 in a sound house, infinite where no option does."""
    return min((float(o.price.total) for o in sound(quote)), default=inf if quote.diagnosis.needs else 0.0)


def told(quote: Quote) -> list[tuple[object, ...]]:
    """What a homeowner decides on, without the names of lines."""
    return [
        (
            o.price.total,
            o.fixed,
            o.floor_sf,
            o.days_on_site,
            [(r.method, r.stretch) for r in all_repairs(o.scope.repairs)],
            sorted({(v.rule, v.effect) for r in all_repairs(o.scope.repairs) for v in r.verdicts}),
        )
        for o in quote.options
    ]


def house_of(seed: int) -> tuple[Drawn, Job]:
    house = drawn(seed)
    job = read(house)
    assert job is not None, house.log()
    return house, job


@pytest.mark.parametrize("seed", seeds(5))
def test_another_defect_never_lowers_the_cheapest_sound_price(seed: int) -> None:
    house, job = house_of(seed)
    rng = random.Random(seed + 1)
    more = read(with_rows(house, trouble(rng, 8, house.seen_ft - 8)))
    if more is not None:
        assert least(quoted(more)) >= least(quoted(job)), house.log()


@pytest.mark.parametrize("seed", seeds(4))
def test_another_name_changes_no_decision(seed: int) -> None:
    house, job = house_of(seed)
    other = read(replace(house, line="old drain"))
    assert other is not None
    assert told(quoted(other)) == told(quoted(job)), house.log()


@pytest.mark.parametrize("seed", seeds(4))
def test_other_units_change_nothing(seed: int) -> None:
    """12.5 or 12'6", 34in or 2ft 10in."""
    house, job = house_of(seed)
    in_other_units = replace(
        house,
        feet=lambda ft: f"{int(ft)}'{round((ft - int(ft)) * 12, 6):g}\"",
        inches=lambda inches: f"{inches // 12}ft {inches % 12}in",
    )
    other = read(in_other_units)
    assert other is not None, in_other_units.log()
    assert told(quoted(other)) == told(quoted(job)), house.log()


@pytest.mark.parametrize("seed", seeds(4))
def test_the_order_of_notes_at_one_place_changes_nothing(seed: int) -> None:
    """Two of a kind too: the nearer of two footings and trees decides, whichever was written first."""
    house, _ = house_of(seed)
    at = house.rows[0][0]
    under = "tile" if house.slab else "lawn"
    noted = [
        (at, None, "tree 12in 4ft away"),
        (at, None, "tree 30in 30ft away"),
        (at, None, "footing 3ft away 18in deep"),
        (at, None, "footing 20ft away 18in deep"),
        (at, None, "crossing water 3ft above"),
        (at, None, f"depth 52in from {under}"),
    ]
    logs = []
    for rows in (noted, noted[::-1]):
        job = read(replace(house, rows=(*rows, *house.rows)))
        assert job is not None, house.log()
        logs.append(told(quoted(job)))
    assert logs[0] == logs[1], house.log()


@pytest.mark.parametrize("seed", seeds(6))
def test_what_was_not_filmed_is_never_firm(seed: int) -> None:
    """Works and the run-out to sound pipe at both ends: filmed, or a place where the line was seen to begin or end."""
    house, _ = house_of(seed)
    house = replace(house, seen_ft=max(r[1] or r[0] for r in house.rows) + random.Random(seed).choice((0.5, 2, 4)))
    job = read(house)
    assert job is not None, house.log()
    run_out = tables().number("run_out_ft")
    for option in quoted(job).options:
        for stretch in (s for t in option.takeoffs for s in t.works.renewed if option.fixed):
            assert Stretch(-run_out, house.seen_ft).covers(stretch.padded(0, run_out)), (option.letter, house.log())


@pytest.mark.parametrize("seed", seeds(6))
def test_no_house_is_left_without_something_to_sign(seed: int) -> None:
    """A firm price, or a visit that makes one firm; nothing only where nothing is wrong or gas stops everything."""
    house, job = house_of(seed)
    assert any(o.fixed for o in quoted(job).options), house.log()


@pytest.mark.parametrize("seed", seeds(6))
def test_a_price_that_is_not_firm_names_the_visit_that_makes_it_so(seed: int) -> None:
    """Beside firm options too: a visit whose own price is firm, to be signed today."""
    house, job = house_of(seed)
    options = {o.letter: o for o in quoted(job).options}
    for option in options.values():
        assert option.fixed or options[option.firm_after].fixed, (option.letter, house.log())


@pytest.mark.parametrize("words", ["gas smell in the kitchen", "it smells like gas by the water heater"])
def test_where_gas_is_smelled_nothing_is_sold(words: str) -> None:
    _, job = house_of(seeds(1)[0])
    smelled = replace(job, signs=(Sign(what=words),))
    assert not any(o.fixed for o in quoted(smelled).options)
    word = Approval(what="gas company: safe", by="R. Example", on=DAY, covers=(GAS_SMELL,))
    assert told(quoted(replace(smelled, approvals=(word,)))) == told(quoted(job))


@pytest.mark.parametrize("seed", seeds(6))
def test_a_firm_price_rests_on_pipe_that_was_seen_and_cannot_rise_past_the_limit(seed: int) -> None:
    house, job = house_of(seed)
    limit = tables().number("firm_swing_percent")
    for option in quoted(job).options:
        if option.fixed:
            assert option.basis.rises_percent <= limit, house.log()
            assert all(f.how == "seen" for f in option.basis.facts if f.subject in ("pipe", "run-out")), house.log()
            assert not any(f.subject == "access point" for f in option.basis.facts), house.log()
