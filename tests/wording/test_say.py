"""Lengths, money, days and sentences as people of each language write them."""

from datetime import date
from decimal import Decimal

import pytest

from estimator.model.say import Days, Dollars, Feet, FromTable, Inches, Say
from estimator.wording.numbers import days, feet, halves, inches, money, number
from estimator.wording.say import say, shown
from estimator.wording.sweep import texts


@pytest.mark.parametrize(
    ("ft", "english", "spanish"),
    [
        (0.0, "0 ft", "0 pies"),
        (1.0, "1 ft", "1 pie"),
        (14 + 2 / 12, "14 ft 2 in", "14 pies 2 pulg"),
        (19.99, "20 ft", "20 pies"),
        (20.2, "20 ft", "20 pies"),
        (20.5, "20 ft 6 in", "20 pies 6 pulg"),
        (20.75, "21 ft", "21 pies"),
        (1234.0, "1,234 ft", "1,234 pies"),
        (-2.5, "-2 ft 6 in", "-2 pies 6 pulg"),
        (11.96, "12 ft", "12 pies"),
    ],
)
def test_a_length_reads_as_people_write_it(ft: float, english: str, spanish: str) -> None:
    assert (feet(ft, "en_US"), feet(ft, "es_US")) == (english, spanish)


@pytest.mark.parametrize(
    ("amount", "text"),
    [("0.005", "$0.01"), ("2.675", "$2.68"), ("16525.00", "$16,525"), ("0", "$0"), ("1234567.8", "$1,234,567.80")],
)
def test_money_is_rounded_half_up_before_it_is_shown(amount: str, text: str) -> None:
    assert money(Decimal(amount), "en_US") == money(Decimal(amount), "es_US") == text


@pytest.mark.parametrize(
    ("value", "text"), [("0.5", "½ day"), ("1", "1 day"), ("1.5", "1½ days"), ("2", "2 days"), ("0", "0 days")]
)
def test_days_carry_their_word(value: str, text: str) -> None:
    assert days(Decimal(value), "en_US") == text


def test_small_things() -> None:
    assert (halves(Decimal("0.24")), halves(Decimal("0.25"))) == ("0", "½")
    assert (inches(3.0), inches(0.375), inches(1.75)) == ("3", "⅜", "1¾")
    assert (number(Decimal("1234.50"), "es_US"), number(2.0, "en_US", 0)) == ("1,234.5", "2")


def test_every_kind_of_gap_is_filled_in_the_reader_s_manner() -> None:
    assert shown(Feet(2.5), "es_US") == "2 pies 6 pulg"
    assert shown(Inches(1.5), "en_US") == "1½ in"
    assert shown(Dollars(Decimal(150)), "es_US") == "$150"
    assert shown(Days(Decimal(2)), "es_US") == "2 días"
    assert shown(FromTable("pipe", "tubo"), "es_US") == "tubo"
    assert shown(FromTable("pipe", ""), "es_US") == "pipe"
    assert shown(date(2026, 12, 18), "es_US") == "18 de diciembre de 2026"
    assert shown(("a", "b", "c"), "en_US") == "a, b, and c"
    assert shown(Say.of("yes"), "es_US") == shown(True, "es_US") == "sí"


def test_a_text_without_a_translation_is_said_in_english_rather_than_lost() -> None:
    assert say(Say("Nobody has written this {what}.", (("what", "down"),)), "es_US") == "Nobody has written this down."


def test_a_text_that_is_put_together_is_refused_by_the_sweep(tmp_path: object) -> None:
    from pathlib import Path

    folder = Path(str(tmp_path))
    (folder / "bad.py").write_text('speak(f"{a} costs")', encoding="utf-8")
    with pytest.raises(ValueError, match="put together"):
        texts(folder)
