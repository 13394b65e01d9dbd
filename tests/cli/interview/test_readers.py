"""Answers as people write them. Lengths and counts: [computed]; the words of the trade: common practice."""

from dataclasses import replace
from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from estimator.fieldnotes.answers import Got, Known, Unread, cleaned
from estimator.fieldnotes.questions import SECTIONS
from estimator.model.languages import LANGUAGES
from estimator.model.say import Say
from estimator.wording.say import say

QUESTIONS = {(section.table, question.key): question for section in SECTIONS for question in section.questions}
ASKED = Known(
    today=date(2026, 11, 18),
    soils=("sand", "firm clay", "soft clay", "hard clay", "rock"),
    places={"demo": "Demo County (invented)"},
    own_facts=("steep yard",),
    data={"line": [{"name": "main"}, {"name": "kitchen"}]},
    branches=("hall bath",),
)


def read(table: str, key: str, answer: str, known: Known = ASKED) -> Got | Unread:
    return QUESTIONS[table, key].read(cleaned(answer), key, known)


@pytest.mark.parametrize(
    ("table", "key", "answer", "value"),
    [
        ("job", "date", "11/16", date(2026, 11, 16)),
        ("job", "date", "Nov 16", date(2026, 11, 16)),
        ("job", "date", "yesterday", date(2026, 11, 17)),
        ("job", "language", "both", ["en_US", "es_US"]),
        ("house", "built", "about 1962", 1962),
        ("house", "built", "1970s", 1970),
        ("house", "floor", "PT", "post-tensioned slab"),
        ("house", "floor", "not sure", "slab, tendons unknown"),
        ("house", "floor", "pier and beam", "crawl space"),
        ("house", "slab_thickness", "4", "4 in"),
        ("house", "slab_thickness", "4½”", "4 1/2 in"),
        ("house", "soil", "rock", "rock"),
        ("house", "lived_in", "nope", False),
        ("house", "fixtures", "2 baths, kitchen, washer", {"bathroom_groups": 2, "kitchen_sink": 1, "clothes_washer": 1}),
        ("house", "fixtures", "two bathrooms + a kitchen sink", {"bathroom_groups": 2, "kitchen_sink": 1}),
        ("house", "fixtures", "1½ ba", {"toilet": 1, "lavatory": 1, "bathroom_groups": 1}),
        ("house", "water_lines", "copper", "copper under slab"),
        ("site", "gate", "3’6", "3 ft 6 in"),
        ("site", "carry", "35", "35 ft"),
        ("line", "pipe", "ci", "cast iron"),
        ("line", "pipe", "VCP", "clay"),
        ("line", "size", "4", "4 in"),
        ("water_test", "covers", "main and hall bath", ["main", "hall bath"]),
        ("water_test", "covers", "all", ["main", "kitchen", "hall bath"]),
        ("water_test", "open_risers", "2x4, 2, 1.5", ["4 in", "4 in", "2 in", "1 1/2 in"]),
        ("water_test", "readings", "5:3/8, 10:3/4", "0:0 in, 5:3/8 in, 10:3/4 in"),
        ("water_test", "readings", "fell 1 1/2 in in 20 min", "0:0 in, 20:1 1/2 in"),
        ("water_test", "readings", "held 30 min", "0:0 in, 30:0 in"),
        ("water_test", "result", "leaks", "failed"),
        ("reroute", "replaces", "main 6 to 15", {"line": "main", "from": 6.0, "to": 15.0}),
        ("reroute", "replaces", "kitchen line", {"line": "kitchen"}),
        ("reroute", "ties_into", "main @ 6.2", {"line": "main", "at": 6.2}),
        ("foundation", "work", "planned jan 2027", "planned"),
    ],
)  # fmt: skip
def test_answers_are_taken_as_people_write_them(table, key, answer, value):
    got = read(table, key, answer)
    assert isinstance(got, Got), got
    assert got.values[key] == value


@pytest.mark.parametrize(
    ("answer", "joins", "ends"),
    [
        ("main at 21", {"line": "main", "at": 21.0}, None),
        ("into the main at 21 ft", {"line": "main", "at": 21.0}, None),
        ("hall bath branch", "hall bath", None),
        ("city", None, "city main"),
        ("manhole in the alley", None, "manhole in the alley"),
    ],
)
def test_a_line_ends_at_another_or_at_a_place(answer, joins, ends):
    got = read("line", "joins", answer)
    assert isinstance(got, Got)
    assert (got.values["joins"], got.values["ends"]) == (joins, ends)


@pytest.mark.parametrize(
    ("table", "key", "answer", "offer"),
    [
        ("house", "floor", "psot tensioned slab", "post-tensioned slab"),
        ("house", "soil", "frim clay", "firm clay"),
        ("house", "fixtures", "2 baths, kitchn, washer", "2 baths, 1 kitchen, washer"),
        ("line", "pipe", "cast irn", "cast iron"),
        ("line", "joins", "hall bth", "hall bath"),
        ("water_test", "covers", "main, kichen", "main, kitchen"),
        ("water_test", "result", "pased", "passed"),
        ("reroute", "name", "hall: wal 12, yard 26", "hall: wall 12, yard 26"),
        ("house", "lived_in", "yse", "yes"),
        ("site", "gate", "wide", ""),
    ],
)
def test_a_wrong_word_gets_the_nearest_known_one(table, key, answer, offer):
    got = read(table, key, answer)
    assert isinstance(got, Unread)
    assert got.offer == offer
    if offer:
        assert isinstance(read(table, key, offer), Got)


def test_clay_alone_is_not_taken_for_the_firm_kind():
    """Firm clay stands steeper than soft clay: 29 CFR 1926 subpart P app. A (types B and C)."""
    got = read("house", "soil", "clay")
    assert isinstance(got, Unread)
    assert got.offer == ""
    assert "soft clay" in str(got.wrong)


def test_a_slab_without_tendons_is_said_back():
    got = read("house", "floor", "slab")
    assert isinstance(got, Got)
    assert "without steel tendons" in str(got.said)


def test_a_way_round_is_one_line():
    got = read("reroute", "name", "hall: wall 12, yard 26, fall 6.6in, size 3, 3 turns, vents 1, holes 2")
    assert isinstance(got, Got)
    assert got.values == {
        "name": "hall",
        "legs": [{"zone": "wall", "length": "12 ft"}, {"zone": "yard", "length": "26 ft"}],
        "fall_available": "6.6in",  # as it was written: 6.6 is no whole sixteenth
        "size": "3 in",
        "turns": 3,
        "vents": 1,
        "penetrations": {"wall": 2},
    }


def test_water_that_rises_is_not_taken():
    assert isinstance(read("water_test", "readings", "5:3/4, 10:3/8"), Unread)


def test_one_bathroom_is_counted_with_its_half():
    """A half bath has a toilet of its own: two places to go [computed]."""
    assert read("house", "fixtures", "1 1/2 baths").values["bathrooms"] == 2
    assert read("house", "fixtures", "1 bath").values["bathrooms"] == 1


def test_words_in_quotes_are_no_command():
    assert read("customer", "name", '"list"') == Got({"name": "list"})


SEVERAL = {
    ("line", "joins"): ("main at 21", "city main"),
    ("job", "date"): ("2026-11-18", "11/18", "today", "hoy"),
    ("reroute", "replaces"): ("kitchen", "main 6 to 15"),
}
"""Examples that are more than one answer."""


@pytest.mark.parametrize("language", LANGUAGES)
@pytest.mark.parametrize("which", QUESTIONS, ids=".".join)
def test_every_example_is_read_by_its_own_question(which, language):
    known = replace(ASKED, data={"line": [{"name": "main"}, {"name": "kitchen"}, {"name": "yard"}]})
    for example in SEVERAL.get(which, (say(QUESTIONS[which].example, language),)):
        assert isinstance(read(*which, example, known), Got), example


@pytest.mark.parametrize(
    ("which", "spanish", "english"),
    [
        ("house.floor", "losa", "slab"),
        ("house.floor", "losa postensada", "post-tensioned slab"),
        ("house.sewer", "fosa séptica", "septic"),
        ("house.expansive_soil", "sí", "yes"),
        ("house.water_lines", "por arriba", "overhead"),
        ("house.in_slab", "nada", "nothing"),
        ("job.language", "los dos", "both"),
        ("job.date", "ayer", "yesterday"),
        ("line.pipe", "hierro", "cast iron"),
        ("water_test.kind", "aislada", "isolated"),
        ("water_test.when", "antes de levantar", "before lift"),
        ("water_test.result", "no pasó", "failed"),
        ("foundation.work", "ninguno", "none"),
        ("foundation.work", "planeado 2027-01", "planned 2027-01"),
    ],
)
def test_a_spanish_answer_means_what_the_english_one_means(which, spanish, english):
    """What the Spanish questions offer is taken; the file holds the same word in either language."""
    got, same = (read(*which.split("."), answer) for answer in (spanish, english))
    assert isinstance(got, Got)
    assert isinstance(same, Got)
    assert got.values == same.values


@given(st.sampled_from(sorted(QUESTIONS)), st.text(max_size=60))
def test_any_text_is_read_or_answered_with_what_to_write(which, answer):
    got = read(*which, answer)
    assert isinstance(got, Got) or got.wrong


PIECES = st.lists(
    st.sampled_from(
        ["2", "1/2", "½", "baths", "kitchen", ",", "wall", "12", "ft", "in", "'", '"', "main", "at", "5", ":", "min", "-", "to", "x", "0/0",
         "fell", "held", "planned", "2027", "13", "and", "a", "half", "size", "fall", "turns", "99999999"]
    ),
    max_size=8,
)  # fmt: skip


@given(st.sampled_from(sorted(QUESTIONS)), PIECES, st.sampled_from(["", " "]))
def test_any_mixture_of_its_words_is_read_or_answered(which, pieces, between):
    got = read(*which, between.join(pieces))
    assert isinstance(got, Got) or got.wrong


def test_a_slip_of_the_finger_never_offers_a_slab_without_tendons() -> None:
    """Enter would then say what nobody proved; other floors are offered."""
    slip = read("house", "floor", "slba")
    assert isinstance(slip, Unread)
    assert slip.offer == ""
    assert read("house", "floor", "basment").offer == "basement"  # type: ignore[union-attr]
    assert read("house", "floor", "slab") == Got(
        {"floor": "slab"},
        Say.of("slab without steel tendons, which must be proven; if nobody knows, write `tendons unknown`"),
    )
    assert "proven to have no tendons" in QUESTIONS["house", "floor"].text.text


def test_no_trial_at_an_invented_place_is_told_what_it_leads_to() -> None:
    no, yes = read("job", "demo", "no"), read("job", "demo", "yes")
    assert isinstance(no, Got)
    assert no.values == {"demo": False}
    assert "no quote is made here" in str(no.said)
    assert isinstance(yes, Got)
    assert "no quote" not in str(yes.said)


@pytest.mark.parametrize(
    "part",
    ["slab (proven to have no tendons)", "post-tensioned slab", "slab with tendons unknown", "crawl space", "basement"],
)
def test_the_floor_takes_every_word_of_its_own_question(part) -> None:
    assert part in QUESTIONS["house", "floor"].text.text
    assert isinstance(read("house", "floor", part), Got)


def test_unknown_tendons_are_never_read_as_none() -> None:
    assert read("house", "floor", "slab with tendons unknown").values == {"floor": "slab, tendons unknown"}  # type: ignore[union-attr]


@pytest.mark.parametrize("answer", ["fat clay", "lean clay", "sandy clay", "wet clay", "sift clay"])
def test_a_soil_that_may_be_firm_or_soft_is_asked_and_never_guessed(answer) -> None:
    """Fat and lean clay name how much it swells, not how firm it stands: ASTM D2487 (the names, from memory)."""
    soils = ("soft clay", "firm clay", "stiff clay", "hard clay", "sand", "rock")
    got = read("house", "soil", answer, replace(ASKED, soils=soils))
    assert isinstance(got, Unread)
    assert got.offer == ""
    assert "soft clay, firm clay" in str(got.wrong)


@pytest.mark.parametrize(
    ("table", "key", "odd", "plain"),
    [
        ("house", "in_slab", "tile in hall", ["nothing", "radiant heating", "old gas pipe to the range", "2 conduits"]),
        ("customer", "email", "ana at mail", ["ana@example.com", "ana@example.com, b.c@example.org", "no"]),
        ("customer", "name", "both", ["Wren Castellane", "Both Family Trust", "Ng"]),
        ("job", "prepared_by", "11/16", ["Ines Calloway"]),
    ],
)
def test_an_odd_answer_is_asked_back_once_and_then_kept(table, key, odd, plain) -> None:
    got = read(table, key, odd)
    assert isinstance(got, Unread)
    assert got.offer == ""
    assert "same again" in str(got.wrong)
    assert read(table, key, odd, replace(ASKED, insists=True)) == Got({key: odd})
    assert all(isinstance(read(table, key, answer), Got) for answer in plain)


@pytest.mark.parametrize(
    ("which", "answer"),
    [
        ("customer.name", "417 Larkspur Court"),
        ("job.prepared_by", "555-0147"),
        ("house.water_lines", "2 baths, kitchn, washer"),
        ("house.in_slab", "2 baths"),
    ],
)
def test_an_answer_to_another_question_is_asked_back_once(which, answer):
    assert isinstance(read(*which.split("."), answer), Unread)
    assert isinstance(read(*which.split("."), answer, replace(ASKED, insists=True)), Got)
