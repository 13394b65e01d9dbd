"""Everything the program can say has a Spanish text with the same gaps, and the compiled catalogs are fresh."""

import io
import re

import pytest
from babel.messages.catalog import Catalog
from babel.messages.mofile import read_mo, write_mo
from babel.messages.pofile import read_po

from estimator.model.languages import LANGUAGES
from estimator.wording.say import LOCALES
from estimator.wording.sweep import texts

TRANSLATED = [language for language in LANGUAGES if language != "en_US"]
"""The texts stand in the source in English."""


def po(language: str) -> Catalog:
    with (LOCALES / language / "LC_MESSAGES" / "estimator.po").open("rb") as file:
        return read_po(file, locale=language)


@pytest.mark.parametrize("language", TRANSLATED)
def test_the_catalog_holds_what_the_program_says_and_nothing_else(language: str) -> None:
    held = {m.id for m in po(language) if m.id}
    assert held == set(texts()), "run: python -m estimator.wording.sweep"


def test_every_text_has_a_spanish_one() -> None:
    assert [m.id for m in po("es_US") if m.id and not m.string] == []
    assert [m.id for m in po("es_US") if m.id and m.fuzzy] == []


def test_every_translation_has_the_same_gaps() -> None:
    gap = re.compile(r"\{(\w+)[^}]*\}")
    wrong = [
        m.id for m in po("es_US") if m.id and m.string and sorted(gap.findall(m.id)) != sorted(gap.findall(m.string))
    ]
    assert wrong == []


@pytest.mark.parametrize("language", TRANSLATED)
def test_the_compiled_catalog_is_made_from_the_one_people_edit(language: str) -> None:
    fresh = io.BytesIO()
    write_mo(fresh, po(language))
    with (LOCALES / language / "LC_MESSAGES" / "estimator.mo").open("rb") as file:
        compiled = {m.id: m.string for m in read_mo(file) if m.id}
    fresh.seek(0)
    assert compiled == {m.id: m.string for m in read_mo(fresh) if m.id}


def test_no_homeowner_text_uses_a_word_of_the_trade_only() -> None:
    jargon = re.compile(r"\b(static|invert|lateral|haunching|scope|zone|belly)\b", re.IGNORECASE)
    rooms = (
        "quote/",
        "papers/first",
        "papers/option",
        "papers/side",
        "papers/compare",
        "papers/agreement",
        "papers/pipe",
    )
    assert [t for t, where in texts().items() if where.startswith(rooms) and jargon.search(t)] == []


def test_what_a_homeowner_reads_of_the_takeoff_has_no_word_of_the_trade_only() -> None:
    jargon = re.compile(r"\b(inverts?|static|lateral|scope|zone|belly|crown|sonde)\b", re.IGNORECASE)
    assumed = {
        t
        for t, where in texts().items()
        if where in ("takeoff/grade.py", "takeoff/depth.py", "takeoff/ground.py", "takeoff/approach.py")
    }
    assert [text for text in assumed if jargon.search(text)] == []
