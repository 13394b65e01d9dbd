"""Every sentence of the tables that somebody reads is short, and says things in the words of the trade, in both languages."""

from statistics import mean

import pytest

from estimator.model.problem import Place
from estimator.tables import cell_problems
from estimator.tables import problems as p
from estimator.wording.say import say
from tests.tables.workbench import demo
from tests.wording.plain_english import LONGEST, MEAN, NEVER, NEVER_IN_SPANISH, sentences, words

READ = {
    "terms": ("text",),
    "work_items": ("text",),
    "extras": ("text",),
    "add_ons": ("text",),
    "methods": ("warranty", "title", "under", "risk"),
    "materials": ("text",),
    "equipment": ("text",),
    "subs_and_fees": ("text",),
}
"""The columns people read, without their language."""
COUNTED = ("terms", "work_items", "extras", "add_ons", "methods")
"""Tables with sentences; the others hold names."""


def said(language: str, tables: tuple[str, ...] = tuple(READ)) -> dict[str, str]:
    """Return each text with the place it stands in."""
    found = {}
    for table in tables:
        for row in demo().rows[table]:
            key = next(str(getattr(row, name)) for name in ("id", "item", "code", "method") if hasattr(row, name))
            for name in READ[table]:
                english = f"{name}_en" if hasattr(row, f"{name}_en") else name
                found[f"{table} {key} {name}"] = getattr(row, f"{name}_es" if language == "es" else english)
    assert len(found) > 150
    return {place: text for place, text in found.items() if text}


@pytest.mark.parametrize("language", ["en", "es"])
def test_no_sentence_of_the_tables_is_long(language: str) -> None:
    every = {f"{place}: {one}": words(one) for place, text in said(language).items() for one in sentences(text)}
    allowed = LONGEST if language == "en" else LONGEST + 8
    assert {one: length for one, length in every.items() if length > allowed} == {}
    assert mean(every.values()) <= MEAN


def test_no_text_of_the_tables_has_a_word_of_no_contractor() -> None:
    assert {place: hit[0] for place, text in said("en").items() if (hit := NEVER.search(text))} == {}


def test_one_spanish_word_for_one_thing() -> None:
    assert {place: hit[0] for place, text in said("es").items() if (hit := NEVER_IN_SPANISH.search(text))} == {}


def test_what_is_read_in_english_is_read_in_spanish() -> None:
    assert set(said("en")) == set(said("es"))


def test_no_spanish_text_is_the_english_one() -> None:
    english, spanish = said("en"), said("es")
    assert [place for place, text in english.items() if spanish[place] == text and text != "sod"] == []


def test_a_sentence_that_is_read_begins_with_a_capital_and_a_caution_ends_with_a_stop() -> None:
    """Lists of work are phrases without a stop; cautions, assumptions, notices and warranties are sentences."""
    whole = [row for row in demo().terms if row.kind in ("assumption", "caution", "crew caution", "notice")]
    assert len(whole) > 60
    open_ended = [row.id for row in whole if not row.text_en.endswith((".", "______"))]
    assert open_ended == []
    assert [
        p for p, text in said("en", COUNTED).items() if not (text[0].isupper() or text[0].isdigit() or text[0] == "{")
    ] == []


def test_every_problem_of_the_tables_can_be_said_in_spanish() -> None:
    """Each sentence has a Spanish one of its own, and what somebody typed stands in it as it was typed."""
    said = Place(file="t", table="roles", cell="row 2")
    (problem,) = (
        k(said, column="cost", text="call supplier", example="24.50", or_off=p.OR_OFF)
        for k in [cell_problems.NOT_A_NUMBER]
    )
    assert say(problem.wrong, "es_US") == "cost es “call supplier”."
    assert say(problem.write, "es_US") == "Escriba un número como 24.50, o ponga active en no si la fila no se usa."
