"""Places that people typed, said in the other language where their words are known; nothing typed is ever lost."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from estimator.wording.typed_words import as_typed


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ("front cleanout", "el registro del frente"),
        ("at the kitchen wye", "la conexión en Y (cocina)"),
        ("hall bath branch", "el drenaje del baño del pasillo"),
        ("kitchen along the east wall", "cocina, por la pared este"),
        ("main, kitchen", "línea principal, línea de la cocina"),
        ("front cleanout, with balls", "el registro del frente, “with balls”"),
        ("Tunnel the main, kitchen later", "“Tunnel the main, kitchen later”"),
        ("", ""),
    ],
)
def test_known_words_are_said_and_unknown_ones_quoted(typed: str, said: str) -> None:
    assert as_typed(typed, "es_US") == said


@given(st.text(max_size=60))
def test_in_the_language_of_the_notes_all_stands_as_typed(text: str) -> None:
    assert as_typed(text, "en_US") == text


@given(st.text(alphabet="xyz, ", min_size=1, max_size=40))
def test_what_is_unknown_is_quoted_whole(text: str) -> None:
    assert as_typed(text, "es_US") == f"“{text}”"
