"""Each reading of the findings fires on what it is about, and keeps still on its nearest neighbour. Common practice."""

from dataclasses import replace

import pytest

from estimator.diagnosis import diagnose
from estimator.diagnosis.diagnose import READINGS
from estimator.model.job import Foundation, Job, Sign
from estimator.model.line import Origin, Pass
from estimator.model.stretch import Stretch
from tests.diagnosis.making import job, line, mark
from tests.made_up.stretch import demo_tables, finding

CLEANED = replace(finding("20 hole 3in"), after_cleaning=True, history=(finding("20 hole 2in"),))
SLAB_FROM_10 = {"marks": (mark("slab", 10.0, holds=True),), "downstream": -1}


def tied(feet: float) -> Job:
    one = Pass(number=1, access="cleanout", flow="with flow", start_ft=0.0, sign=1, seen=Stretch(0.0, 60.0))
    return job(line(passes=(one, replace(one, number=2, ties=(("hall wye", feet),)))))


def named_twice(feet: float) -> Job:
    """A wye of one name on two passes, which nobody tied."""
    one = Pass(number=1, access="cleanout", flow="with flow", start_ft=0.0, sign=1, seen=Stretch(0.0, 60.0))
    first = mark("branch", 20.0, name="hall bath")
    later = replace(first, stretch=Stretch(20.0 + feet, 20.0 + feet), origin=Origin(pass_number=2))
    return job(line(passes=(one, replace(one, number=2)), marks=(first, later)))


FIRES: list[tuple[str, Job, Job]] = [
    # reading, a job where it fires, its neighbour where it does not
    ("roots-mean-an-opening", job(line("20 roots hair")), job(line("20 crack"))),
    ("standing-water-is-a-dip", job(line("20-24 sag 30%")), job(line("20-24 sag 30% never ends"))),
    ("standing-water-is-a-dip", job(line("20-24 backfall")), job(line("20-24 sag 30% only in use"))),
    ("water-that-never-ends", job(line("20-60 sag 30% never ends")), job(line("20-60 sag 30%"))),
    ("water-only-in-use", job(line("20-24 sag 30% only in use")), job(line("20-24 sag 30%"))),
    ("mud-in-the-pipe", job(line("20 mud")), job(line("20 grease 20%"))),
    ("grooved-most-of-the-way", job(line("0-30 channel", pipe="cast iron")), job(line("0-29.9 channel", pipe="cast iron"))),
    ("grooved-most-of-the-way", job(line("0-30 channel", pipe="cast iron")), job(line("0-30 channel", pipe="clay"))),
    ("scale-hides", job(line("0-20 scale 25%", pipe="cast iron")), job(line("0-20 scale 24%", pipe="cast iron"))),
    ("scale-was-the-pipe", job(line(CLEANED, pipe="cast iron")), job(line("20 hole 3in", pipe="cast iron"))),
    ("moved-at-the-slab-edge", job(line("5 offset 20%", **SLAB_FROM_10)), job(line("4.9 offset 20%", **SLAB_FROM_10))),
    ("joint-pulled-by-a-lift", job(line("20 gap", pipe="PVC", zone="slab"), foundation=Foundation(work="done")), job(line("20 gap", pipe="PVC", zone="slab"))),
    ("fiber-has-failed", job(line("20 crack hairline", pipe="fiber")), job(line("20 crack hairline", pipe="PVC"))),
    ("camera-cannot-pass", job(line("20 collapse no flow")), job(line("20 collapse still flows"))),
    ("camera-cannot-pass", job(line("20 blocked hard")), job(line("20 blocked soft"))),
    ("animals-in-the-pipe", job(line("20 insects")), job(line())),
    ("water-nobody-uses", job(line(), signs=(Sign(what="water meter turns"),)), job(line(), signs=(Sign(what="wet wall"),))),
    ("sewage-gets-out", job(line(), signs=(Sign(what="wet lawn"),)), job(line())),
    ("settled-and-broken", job(line("20-24 sag 30%", "14 roots", "34 offset 20%")), job(line("20-24 sag 30%", "14 roots", "34.1 offset 20%"))),
    ("passes-disagree", tied(3.1), tied(3.0)),
    ("passes-disagree", named_twice(3.1), named_twice(3.0)),
    ("dip-feeds-what-lies-below", job(line("20-24 sag 30%", "40 crack")), job(line("20-24 sag 30%", "10 crack"))),
    ("another-line-in-the-bore", job(line("20 utility")), job(line("20 intruding 20%"))),
    ("dip-feeds-what-lies-below", job(line("20-24 sag 30%", "23 crack")), job(line("20-24 sag 30%", "22 crack"))),
    ("judged-by-eye-near-a-limit", job(line("20 roots 34%")), job(line("20 roots 35%"))),  # limit 25, by eye to 10
    ("small-access-for-the-camera", job(line(marks=(mark("cleanout", 0.0, size_in=2.0),))), job(line(marks=(mark("cleanout", 0.0, size_in=3.0),)))),
    ("pumped-under-pressure", job(replace(line(), ends="ejector pit")), job(replace(line(), ends="city main"))),
    ("gas-smell", job(line(), signs=(Sign(what="gas smell"),)), job(line(), signs=(Sign(what="sewer gas"),))),
    ("sewer-smell", job(line(), signs=(Sign(what="sewer gas"),)), job(line(), signs=(Sign(what="gas smell"),))),
    ("backs-up", job(line(), signs=(Sign(what="backs up into the tub"),)), job(line(), signs=(Sign(what="wet lawn"),))),
    ("drains-slowly", job(line(), signs=(Sign(what="slow toilets"),)), job(line(), signs=(Sign(what="wet lawn"),))),
    ("animals-in-the-house", job(line(), signs=(Sign(what="rats"),)), job(line(), signs=(Sign(what="generator noise"),))),
]  # fmt: skip


def fired(one: Job) -> set[str]:
    return {e.rule for e in diagnose(one, demo_tables()).evidence}


@pytest.mark.parametrize("reading, seen, neighbour", FIRES, ids=[f[0] for f in FIRES])
def test_a_reading_fires_on_its_evidence_and_not_on_its_neighbour(reading: str, seen: Job, neighbour: Job) -> None:
    assert reading in fired(seen)
    assert reading not in fired(neighbour)


def test_every_reading_is_tried_here_or_with_the_water_tests() -> None:
    from estimator.diagnosis import water_test_readings

    tried = {f[0] for f in FIRES} | {"clay-at-its-end"} | {r.id for r in water_test_readings.READINGS}
    assert {r.id for r in READINGS} == tried


def test_a_reading_says_what_it_means_with_its_gaps_filled() -> None:
    for _, seen, _ in FIRES:
        for evidence in diagnose(seen, demo_tables()).evidence:
            assert str(evidence.meaning)
            assert evidence.confirm is None or str(evidence.confirm)


def test_a_clean_line_has_no_need_and_no_evidence() -> None:
    diagnosis = diagnose(job(line()), demo_tables())
    assert (diagnosis.needs, diagnosis.evidence) == ((), ())


def test_a_finding_of_the_house_is_said_once_however_many_lines_there_are() -> None:
    two = job(line(), replace(line(), name="kitchen"), signs=(Sign(what="wet lawn"),))
    assert [e.rule for e in diagnose(two, demo_tables()).evidence] == ["sewage-gets-out"]
