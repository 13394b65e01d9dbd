"""The demo's papers, whole: whose dig a depth is, a way round by its legs, no talk of prices for the crew, tests promised where they are."""

import io
import re
from collections import Counter
from dataclasses import replace
from pathlib import Path

import pytest
from openpyxl import load_workbook

from estimator import demo
from estimator.cli.price_tables import readable_tables
from estimator.cli.priced_job import priced
from estimator.model.job import Wishes
from estimator.papers import option_words
from estimator.papers.crew import crew, worked_on
from estimator.papers.homeowner import homeowner
from estimator.papers.letter import Letter
from estimator.papers.office import office, workings
from estimator.papers.office_sums import sums_of
from estimator.pipeline import with_ranges
from estimator.pipeline.costing import with_job_settings
from estimator.quote.recommend import is_visit
from estimator.sheets.write import write
from tests.printed_pages import printed_pages
from tests.wording.plain_english import sentences

JOB = Path(demo.__file__).parent / "job.toml"


@pytest.fixture(scope="module", name="quote")
def _quote():
    return priced(JOB, None).quote


def pages_of(book):
    return sum(printed_pages(book).values())


@pytest.mark.parametrize(("language", "most"), [("en_US", 2999), ("es_US", 2999)])
def test_the_homeowner_reads_ten_pages_few_words_and_no_long_sentence_twice(quote, language, most):
    """Four repairs, and the visit before one of them on its page: eight pages, the law's form and the page on care. The law's own
    words and an option's title are not counted."""
    book = homeowner(quote, language)
    assert pages_of(book) <= 10
    ours = [
        text
        for sheet, texts in zip(book.sheets, texts_by_sheet(book), strict=True)
        for text in texts
        if not by_law(sheet)
    ]
    assert sum(any(letter.isalpha() for letter in word) for text in ours for word in text.split()) <= most
    titles = {option_words.title(Letter(quote, language), option) for option in quote.options}
    said = [one for text in ours if text not in titles for part in text.split("\n") for one in sentences(part)]
    assert [one for one, times in Counter(said).items() if times > 1 and len(one) > 60] == []


def by_law(sheet):
    """The form of the right to cancel, told by its style; no other sheet has it."""
    return any(cell.style == "law" for row in sheet.rows for cell in row.cells)


def texts_by_sheet(book):
    """The texts of each sheet, the sentence of the law beside the signatures left out."""
    return [
        [c.value for row in sheet.rows for c in row.cells if isinstance(c.value, str) and c.style != "cancel"]
        for sheet in book.sheets
    ]


def lines_of(book):
    read = load_workbook(io.BytesIO(write(book)), data_only=True)
    return {s.title: [str(c.value) for row in s.iter_rows() for c in row if c.value is not None] for s in read}


def test_what_a_depth_asks_for_names_its_dig_and_no_option(quote):
    said = [
        t for t in lines_of(crew(quote, "en_US", with_way(quote, "tunnel")))["Safety"] if "Ladder or ramp within" in t
    ]
    digs = "! The tunnel's pit, 4 ft with tolerance; The pit from 15 ft 10 in to 24 ft, 4 ft 3 in with tolerance:"
    assert any(t.startswith(digs) for t in said)
    assert [t for t in said if "option" in t] == []


def with_way(quote, method):
    """The letter of an option with this way of repair."""
    return next(o.letter for o in quote.options if method in {r.method for r in o.scope.repairs})


def test_a_way_round_is_told_by_its_legs_and_not_by_stations_of_the_old_line(quote):
    letter = with_way(quote, "reroute")
    drawing = lines_of(crew(quote, "en_US", letter))[f"Drawing {letter}"]
    assert "New way “kitchen along the east wall”" in drawing
    told = next(t for t in drawing if t.startswith("34 ft 6 in of new 2 inch pipe, turns and uprights counted"))
    assert "Leg 1: 9 ft, along a wall; Leg 2: 24 ft, under the yard; Ties into: yard line, at 4 ft" in told
    assert [t for t in drawing if t.lower().startswith("kitchen line: from")] == []


def test_line_and_grade_stand_at_the_places_of_the_new_pipe(quote):
    """30 in at the slab edge; 2 ft outside it 1/4 in a foot adds 1/2 in, and the cleanout's riser says an eighth more. [by hand]"""
    tables = with_job_settings(quote.job, readable_tables(quote.day, None))
    letter = with_way(quote, "tunnel")
    sheet = next(s for s in crew(quote, "en_US", letter, tables=tables).sheets if s.name == f"Drawing {letter}")
    rows = {str(r.cells[0].value): [str(c.value) for c in r.cells[1:]] for r in sheet.rows if len(r.cells) == 4}
    assert rows["20 ft 6 in"][:2] == ["upper tie-in", "26¾ in"] and rows["−2 ft"][:2] == ["lower tie-in", "30⅝ in"]
    assert any("BRANCH kitchen, 2 in, left, live; tie in kitchen" in cells[0] for cells in rows.values())
    assert any("beam: top of the pipe" in cells[0] for cells in rows.values())
    text = " ".join(str(c.value) for r in sheet.rows for c in r.cells)
    assert "Hangers: one every 4 ft, 7 on this run" in text  # 22.3 / 4 is 5.6: six and one more [by hand]
    assert "stop and call at" in text


@pytest.mark.parametrize("language", ["en_US", "es_US"])
def test_the_crews_book_is_five_printed_pages_whichever_option_was_sold(quote, language):
    tables = with_job_settings(quote.job, readable_tables(quote.day, None))
    for option in quote.options:
        book = crew(quote, language, option.letter, tables=tables)
        assert pages_of(book) <= 5, option.letter


def test_the_office_prints_a_page_that_answers_and_one_an_option(quote):
    drawn = with_ranges(quote, readable_tables(quote.day, None), 1)
    book = office(drawn, readable_tables(quote.day, None))
    assert pages_of(book) <= 6
    assert [sheet.name for sheet in book.sheets] == ["INTERNAL", *(f"Option {o.letter}" for o in quote.options)]
    front = " ".join(lines_of(book)["INTERNAL"])
    for said in (
        "Look at before sending",
        "what to buy, from whom",
        "Who works when",
        "What falls due when",
        "Gross profit",
    ):
        assert said in front, said
    assert "[DEMO-" in " ".join(lines_of(book)[f"Option {with_way(quote, 'tunnel')}"])


def test_what_is_left_is_counted_from_the_cost_in_the_middle(quote):
    """Gross profit is the price less the 50th percent of our own cost and what others are paid; none of it is rounded away."""
    for option in with_ranges(quote, readable_tables(quote.day, None), 1).options:
        sums = sums_of(option)
        middle = {percent: cost for percent, cost, _ in option.likely_range.curve}[50]
        others = (
            sum(float(c.amount) for c in option.price.costs)
            - float(option.price.direct)
            + float(option.price.cost_beside)
        )
        assert float(sums.middle) == pytest.approx(middle + others, abs=0.01)
        assert float(sums.profit) == pytest.approx(
            float(option.price.total - option.price.tax) - middle - others, abs=0.01
        )
        assert sums.middle < sums.sure or (is_visit(option) and sums.middle == sums.sure)  # a visit pays its least day
        assert float(sums.per_day) == pytest.approx(
            float(sums.profit / sum(map(option.schedule.crew_days_of, option.schedule.crews))), abs=0.01
        )


def test_the_front_pages_profit_and_share_agree_with_the_range_on_its_own_sheet(quote):
    """Read from the papers as written: share = profit / price without tax; likely and bad case less subs and fees are the
    range's rows of 50 and of the firm's confidence."""
    tables = readable_tables(quote.day, None)
    drawn = with_ranges(quote, tables, 1)
    fronts = [[c.value for c in row.cells] for row in office(drawn, tables).sheets[0].rows]
    behind = [[c.value for c in row.cells] for sheet in workings(drawn, tables).sheets for row in sheet.rows]
    for option in drawn.options:
        (front,) = [f for f in fronts if f and str(f[0]).startswith(f"{option.letter}  ")]
        price, cost, likely, bad, profit, share, a_day = map(float, front[1:8])
        assert profit == pytest.approx(price - float(option.price.tax) - likely, abs=0.01)
        assert share == pytest.approx(profit / (price - float(option.price.tax)))
        assert a_day * float(sums_of(option).days) == pytest.approx(profit, abs=0.1)
        others = cost - float(option.price.direct)
        confidence = f"{option.likely_range.confidence_percent:g}"
        for percent, told in (("50", likely), (confidence, bad)):
            rows = [float(b[1]) for b in behind if b and b[0] == f"{percent} of 100 such jobs stay within"]
            assert any(row == pytest.approx(told - others, abs=0.01) for row in rows), (option.letter, percent)


def test_no_figure_of_the_office_has_six_decimals(quote):
    tables = readable_tables(quote.day, None)
    drawn = with_ranges(quote, tables, 1)
    for book in (office(drawn, tables), workings(drawn, tables)):
        for sheet in load_workbook(io.BytesIO(write(book)), data_only=True):
            for cell in (c for row in sheet.iter_rows() for c in row if c.value is not None):
                text = str(cell.value) if isinstance(cell.value, str) or cell.number_format == "General" else ""
                assert not re.search(r"\d\.\d{5,}", text), f"{sheet.title} {cell.coordinate}: {text}"


def test_the_load_list_holds_things_and_no_charges(quote):
    for option in quote.options:
        sheets = lines_of(crew(quote, "en_US", option.letter))
        sheet = sheets.get(f"Load {option.letter}", sheets[f"Work {option.letter}"])
        assert "On the truck" in sheet
        assert [t for t in sheet if "bringing" in t or "each film" in t or "by the day" in t or "fee" in t] == []


def test_the_crew_works_on_what_was_sold_else_on_what_is_recommended_else_on_the_first(quote):
    assert worked_on(quote, "c").letter == "C"
    job = replace(quote.job, wishes=replace(quote.job.wishes, recommend="B"))
    assert worked_on(replace(quote, job=job)).letter == "B"
    assert worked_on(replace(quote, job=replace(quote.job, wishes=Wishes()))).letter == quote.options[0].letter


@pytest.mark.parametrize(
    ("language", "words"),
    [("en_US", ("price", "cost", "$", "allowance", "offer")), ("es_US", ("precio", "$", "costo"))],
)
def test_the_crew_reads_nothing_about_prices(quote, language, words):
    books = [lines_of(crew(quote, language, option.letter)) for option in quote.options]
    texts = [text for book in books for sheet in book.values() for text in sheet]
    assert [t for t in texts for word in words if word in t.lower()] == []


NOT_TESTED = {"yard spot", "sectional liner", "clean"}
"""A piece is seen by the inspector with water running; a short liner and a cleaned pipe are filmed (common practice)."""


def test_a_water_test_is_promised_for_the_lines_that_have_one_in_the_price(quote):
    spot = next(option for option in quote.options if option.letter == with_way(quote, "yard spot"))
    assert {o.line for o in spot.scope.repairs} == {"kitchen", "main", "yard"}
    for option in quote.options:
        lines = sorted({r.line for r in option.scope.repairs if r.method not in NOT_TESTED})
        if is_visit(option):  # it repairs nothing, so it has nothing new to test
            assert not any(t.value("tests") for t in option.takeoffs)
            continue
        assert sum(t.value("tests") for t in option.takeoffs) == (1 if option.works.laid else len(lines))
        promised = f"We water-test the new part of the {' and '.join(f'{line} line' for line in lines)} only."
        assert Letter(quote, "en_US").say(option.water_test_text).startswith(promised), option.letter


def test_a_cut_floor_excludes_flooring_and_termites_and_a_liner_keeps_the_drains_shut(quote):
    """What a contract leaves out stands among what it excludes, not only among the costs of others."""
    floors = [o for o in quote.options if any(opening.cuts_floor for opening in o.works.openings)]
    lined = [o for o in quote.options if o.works.lined]
    assert floors and lined and len(floors) < len(quote.options)
    for option in quote.options:
        excluded = {t.text_en for t in option.terms if t.kind == "excludes"}
        told = {t.text_en for t in option.terms if t.kind == "caution"}
        assert ({"Flooring beyond the patch", "Termite treatment"} <= excluded) is (option in floors), option.letter
        assert ("Use no drain while a liner cures." in told) is (option in lined), option.letter


def test_a_leak_test_names_what_it_tests_and_fills_old_pipe_only_to_the_lowest_opening():
    quote = priced(Path(__file__).parents[1] / "jobs" / "hidden-leak" / "job.toml", None).quote
    said = " ".join(text for texts in lines_of(homeowner(quote, "en_US")).values() for text in texts)
    assert "What is water-tested? each section of the old pipe" in said
    assert "We fill only to the lowest opening and drain it right away." in said
    safety = [text for text in lines_of(crew(quote, "en_US"))["Safety"] if "lowest opening" in text]
    assert len(safety) == 1 and safety[0].startswith("☐ Fill only to the lowest opening")
