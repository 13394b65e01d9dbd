"""Levels read at one station give no fall, and never stop the price."""

from conftest import NotesOf, demo_tables, one_need_a_finding

from estimator.scopes.candidates import repairs


def trench(notes: NotesOf, levels: str) -> list[tuple[float, float]]:
    log = f"pass front cleanout to street, surface\n0 yard\n0-60 depth 3ft from lawn\n{levels}20-29 sag 40%\n60 stop"
    job = notes(log, pipe="pvc")
    found = repairs(job, one_need_a_finding(job), demo_tables()).repairs
    return [(r.stretch.from_ft, r.stretch.to_ft) for r in found if r.method == "trench"]


def test_two_levels_at_one_station_are_one_station_and_the_allowance_stands(notes: NotesOf) -> None:
    # no fall can be had from one place [computed], so the dip is relaid as where nobody read a level
    twice = "50 level 36in below slab\n50 invert 37in below slab\n"
    assert trench(notes, twice) == trench(notes, "") != []


def test_a_second_station_gives_the_fall_again(notes: NotesOf) -> None:
    two = "2 level 24in below slab\n50 level 36in below slab\n50 invert 36in below slab\n"
    assert trench(notes, two) != trench(notes, "")
