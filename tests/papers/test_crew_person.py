"""No crew goes into a tunnel, a pit at a wall, or a dig of 4 ft and more before a competent person is named."""

import io
from dataclasses import replace

import pytest
from openpyxl import load_workbook

from estimator.model.offer import Quote
from estimator.model.work import Quantity
from estimator.papers.compare_bids import crew_safety
from estimator.papers.crew import crew
from estimator.papers.hazards import SAFETY, TOPICS, hazards
from estimator.papers.hazards_of_a_dig import of_each_dig
from estimator.papers.letter import Letter
from estimator.scopes.rules import RULES
from estimator.sheets.write import write
from tests.made_up.quote import example_quote


def with_quantity(name: str, value: float, person: str = "") -> Quote:
    """The example's first option with one more quantity, and whoever answers for the dig."""
    quote = example_quote()
    option = quote.options[0]
    first, *rest = option.takeoffs
    more = (*first.quantities, Quantity(name=name, value=value, unit="ft"))
    dug = replace(option, takeoffs=(replace(first, quantities=more), *rest))
    site = replace(quote.job.site, competent_person=person)
    return replace(quote, options=(dug,), job=replace(quote.job, site=site))


def names(quote: Quote) -> list[str]:
    return [sheet.name for sheet in crew(quote).sheets]


# 29 CFR 1926.651(k): a competent person inspects; 4 ft as in 1926.651(c)(2) and (g).
@pytest.mark.parametrize(
    ("name", "value", "refused"),
    [
        ("safety_depth_ft", 4.0, True),
        ("safety_depth_ft", 3.99, False),
        ("dig_depth_ft", 4.0, True),
        ("tunnel_ft", 2.0, True),
        ("pits", 1.0, True),
        ("pit_depth_ft", 3.99, False),
    ],
)
def test_a_crew_sheet_waits_for_a_name_from_four_feet_and_at_any_tunnel_or_pit(
    name: str, value: float, refused: bool
) -> None:
    assert ("Hours A" not in names(with_quantity(name, value))) is refused
    assert "Hours A" in names(with_quantity(name, value, person="Teo Marlow"))
    assert ("Hours A" not in names(with_quantity(name, value, person="  "))) is refused


@pytest.mark.parametrize(("language", "words"), [("en_US", "competent person"), ("es_US", "persona competente")])
def test_the_notice_says_who_must_be_named_and_where_and_gives_no_work(language: str, words: str) -> None:
    book = load_workbook(io.BytesIO(write(crew(with_quantity("tunnel_ft", 29.0), language))))
    assert len(book.sheetnames) == 1
    text = "\n".join(str(c.value) for row in book.worksheets[0].iter_rows() for c in row if c.value is not None)
    assert words in text.lower() and "competent_person" in text
    assert "29 CFR 1926.32(f), 1926.651(k)" in text


def test_an_option_that_is_ready_has_its_sheets_though_another_waits() -> None:
    waiting = with_quantity("tunnel_ft", 29.0)
    both = replace(waiting, options=(waiting.options[0], example_quote().options[1]))
    assert names(both) == ["Work A"]
    assert [sheet.name for sheet in crew(both, letter="B").sheets] == [
        "Safety",
        "Work B",
        "Drawing B",
        "Hours B",
    ]


def test_nobody_is_promised_on_site_who_is_not_named() -> None:
    unnamed = with_quantity("tunnel_ft", 29.0)
    assert "is on site" not in crew_safety(Letter(unnamed, "en_US"), unnamed.options[0])
    assert "before work starts" in crew_safety(Letter(unnamed, "en_US"), unnamed.options[0])
    named = with_quantity("tunnel_ft", 29.0, person="Teo Marlow")
    assert "Teo Marlow" in crew_safety(Letter(named, "en_US"), named.options[0])


def test_every_rule_that_guards_people_has_its_place_on_the_safety_page() -> None:
    missing = {rule.id for rule in RULES if rule.guards_people} - SAFETY
    assert not missing
    assert len(SAFETY) == sum(map(len, TOPICS.values()))


def test_the_crew_reads_no_sentence_twice() -> None:
    quote = example_quote()
    letter = Letter(quote, "en_US")
    for option in quote.options:
        texts = [*(text for texts in hazards(letter, option).values() for text in texts), *of_each_dig(letter, option)]
        assert len(texts) == len(set(texts))
