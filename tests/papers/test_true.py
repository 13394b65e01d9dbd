"""Statements of the homeowner's papers are facts of works, schedule and diagnosis, over every house of tests/jobs and tests/cases."""

import re
from collections import defaultdict
from dataclasses import replace
from functools import cache
from pathlib import Path

import pytest

from estimator.cli.priced_job import priced
from estimator.model.offer import Option, Quote
from estimator.model.problem import CannotGoOn
from estimator.model.stretch import Stretch
from estimator.model.work import all_repairs
from estimator.papers import option_words
from estimator.papers.compare_bids import feet_by_line, questions
from estimator.papers.crew import crew
from estimator.papers.homeowner import homeowner
from estimator.papers.letter import Letter
from estimator.papers.line_items import as_told, by_class
from estimator.papers.option_sheet import option_sheets
from estimator.papers.option_terms import received, terms_of
from estimator.quote import where
from estimator.quote.recommend import cured, cures_all_now, only_prepares, recommended, treated
from estimator.quote.where import on_paper
from estimator.sheets.book import Book, Formula
from estimator.wording.numbers import feet
from estimator.wording.say import capital
from estimator.works.properties import properties_of
from tests.printed_pages import printed_pages
from tests.wording.plain_english import LONGEST, MEAN, sentences, words

TESTS = Path(__file__).parents[1]
JOBS = {
    path.parent.name: path for folder in ("jobs", "cases/houses") for path in sorted(TESTS.glob(f"{folder}/*/job.toml"))
}
NAMES = tuple(JOBS)


@cache
def quote_of(name: str) -> Quote | None:
    """The quote; None where the notes leave nothing to price."""
    try:
        return priced(JOBS[name], None).quote
    except CannotGoOn:
        return None


@cache
def book_of(name: str) -> Book | None:
    quote = quote_of(name)
    return homeowner(quote, "en_US") if quote and quote.options else None


def offered(name: str) -> tuple[Letter, tuple[Option, ...]]:
    quote = quote_of(name)
    if quote is None or not quote.options:
        pytest.skip("nothing is offered")
    return Letter(quote, "en_US"), quote.options


def texts(book: Book) -> list[str]:
    return [str(c.value) for sheet in book.sheets for row in sheet.rows for c in row.cells if isinstance(c.value, str)]


@pytest.mark.parametrize("name", NAMES)
def test_a_floor_is_said_to_be_cut_exactly_where_the_works_cut_one(name: str) -> None:
    letter, options = offered(name)
    for option in options:
        cut = bool(option.works.floors or option.floor_sf)
        assert (option_words.floors(letter, option) == "none") == (not cut), option.letter
        alone = Letter(replace(letter.quote, options=(option,)), "en_US")
        page = [str(c.value) for sheet in option_sheets(alone) for row in sheet.rows for c in row.cells]
        assert ("No floor is cut." in page) == (bool(option.works.openings) and not cut), option.letter
        assert any(text.startswith("Floors cut: ") for text in page) == cut, option.letter


@pytest.mark.parametrize("name", NAMES)
def test_days_on_the_papers_are_those_of_the_schedule(name: str) -> None:
    _, options = offered(name)
    for option in options:
        assert option.days_on_site == option.schedule.days_on_site
        assert option.days_without_drains == option.schedule.days_without_drains


@pytest.mark.parametrize("name", NAMES)
def test_each_defect_is_repaired_or_left_in_each_option_as_its_scope_says(name: str) -> None:
    letter, options = offered(name)
    for option in options:
        left = {need.id for need in option.scope.leaves}
        for found in letter.quote.found:
            if left & set(found.needs):
                assert not cured(found, option), (option.letter, found.letter)
            answered = {n for r in option.scope.repairs for one in (*r.first, r) for n in one.answers} - left
            if found.needs and set(found.needs) <= answered:
                assert treated(found, option) != "left", (option.letter, found.letter)


@pytest.mark.parametrize("name", NAMES)
def test_feet_in_the_scope_are_those_of_the_repairs(name: str) -> None:
    letter, options = offered(name)
    for option in options:
        repairs = list(all_repairs(option.scope.repairs))
        for repair, said in zip(repairs, option.does[-len(repairs) :], strict=True):
            if repair.method in ("reroute", "isolation test", "visit", "look and see"):
                continue
            line = letter.quote.job.line(repair.line)
            parts = dict(said.words)
            feet = [value for gap, value in parts["work"].words if gap == "length"]
            assert feet and feet[0].ft == pytest.approx(on_paper(line, where.worked_on(line, repair).length_ft))


BILLED = {
    "clean": "cleaning", "reline": "lining", "burst": "bursting", "trench": "new pipe", "yard spot": "new pipe",
    "slab spot": "new pipe", "break-through": "new pipe", "tunnel": "new pipe in tunnel", "crawl replace": "new pipe in crawl space",
}  # fmt: skip
"""The work item that bills the feet a way of repair works on."""


@pytest.mark.parametrize("name", NAMES)
def test_scope_agreement_and_line_items_say_the_same_feet(name: str) -> None:
    """An item that another repair of the same line shares, such as cleaning, is billed once for both."""
    letter, options = offered(name)
    for option in options:
        for repair in (r for r in all_repairs(option.scope.repairs) if r.method in BILLED):
            line = letter.quote.job.line(repair.line)
            worked = where.worked_on(line, repair)
            said = capital(f"{letter.say(where.line_name(line))}: {letter.say(where.ends(line, worked))}")
            assert said in option_words.reach(letter, option), (option.letter, said)
            billed = [
                x.size
                for x in as_told(letter, option)
                if x.repair == repair.id and x.work_item == BILLED[repair.method]
            ]
            others = [r for r in all_repairs(option.scope.repairs) if r.line == repair.line and r is not repair]
            if repair.method == "clean" and others:
                assert sum(billed) <= worked.length_ft + 0.05
                continue
            assert [feet(size, "en_US") for size in billed] == [feet(on_paper(line, worked.length_ft), "en_US")], (
                option.letter
            )


SHARES = {
    "exc-asbestos-lead": ("removal",), "exc-landscape": ("landscap", "sprinkler", "fence"), "exc-trees": ("tree",),
    "exc-city-main": ("city sewer", "tap"), "exc-hotel": ("hotel", "meal", "storage"), "exc-upgrade": ("upgrade",),
    "exc-mold": ("mold", "foundation"), "exc-hidden": ("groundwater", "rock"), "exc-asbestos-pipe": ("landfill", "monitoring"),
    "oth-floor": ("flooring",), "oth-paint": ("paint", "drywall", "cabinet"),
    "oth-pest": ("termite",), "oth-trees": ("arborist", "sprinkler"), "oth-hotel": ("hotel",),
}  # fmt: skip
"""What a sentence of the terms leaves to others or out, by the words a line item for it would have."""
NOT_LISTED = "not listed"
"""So a term says that it excludes only what no line item has."""
TESTED = frozenset({"asbestos test"})
"""Work items that name what is excluded because they look for it."""


@pytest.mark.parametrize("name", NAMES)
def test_what_is_excluded_or_left_to_others_is_in_no_line(name: str) -> None:
    letter, options = offered(name)
    for option in options:
        lines = [letter.text(x).lower() for x in option.price.lines if x.work_item not in TESTED]
        for term in (t for t in option.terms if t.kind in ("excludes", "to others") and NOT_LISTED not in t.text_en):
            words = SHARES.get(term.id, ())
            assert not [x for x in lines for word in words if re.search(rf"\b{word}", x.split(";")[0])], term.id


@pytest.mark.parametrize("name", NAMES)
def test_nothing_is_opened_is_said_only_where_no_work_opens_anything(name: str) -> None:
    letter, options = offered(name)
    for option in options:
        answer = dict(questions(letter, option)).get("What is restored?")
        if answer == "Nothing is opened.":
            assert not option.works.openings and not option.floor_sf, option.letter


@pytest.mark.parametrize("name", NAMES)
def test_feet_of_pipe_are_told_to_bidders_only_where_pipe_is_laid_lined_or_cleaned(name: str) -> None:
    letter, options = offered(name)
    for option in options:
        touched, renewed = defaultdict[str, set[int]](set), defaultdict[str, set[int]](set)
        for repair in (r for r in all_repairs(option.scope.repairs) if r.line):
            done = properties_of(next(t.works for t in option.takeoffs if t.repair == repair))
            for which in [touched] * bool(done & {"cleaning", "pipe_renewed"}) + [renewed] * ("pipe_renewed" in done):
                which[repair.line] |= hundredths(where.worked_on(letter.quote.job.line(repair.line), repair))
        told = feet_by_line(letter, option)
        lengths = {name: len(renewed.get(name) or touched[name]) / 100 for name in touched}
        assert sum(map(in_feet, told.split(", ") if told else ())) == pytest.approx(
            sum(lengths.values()), abs=0.3 * sum(len(r.first) + 1 for r in option.scope.repairs)
        ), (option.letter, told)
        assert len(told.split(", ") if told else ()) == len(lengths), option.letter


def hundredths(stretch: Stretch) -> set[int]:
    """Each hundredth of a foot of it by its number, so that a foot named twice is one."""
    return set(range(round(stretch.from_ft * 100), round(stretch.to_ft * 100)))


def in_feet(text: str) -> float:
    """The feet at the end of "Main line 12 ft 8 in"."""
    found = re.search(r"(?:(\d+) ft)?(?: ?(\d+)(½)? in)?$", text)
    assert found and found[0], text
    return int(found[1] or 0) + (int(found[2] or 0) + 0.5 * bool(found[3])) / 12


def test_a_foot_that_is_cleaned_and_lined_is_told_once() -> None:
    """By hand: juniper B cleans 27 ft of the main line, 23 ft of which it lines; 50 ft would be more than the line has."""
    letter, options = offered("juniper")
    told = feet_by_line(letter, next(o for o in options if o.letter == "B"))
    assert told == "Main line 23 ft, yard line 8 ft"


@pytest.mark.parametrize("name", NAMES)
def test_the_crew_is_asked_for_the_video_the_reading_and_the_sketch_that_are_promised(name: str) -> None:
    letter, options = offered(name)
    for option in options:
        book = crew(letter.quote, letter=option.letter)
        if len(book.sheets) == 1:
            continue  # nobody is named who may lead the dig
        asked, promised = " ".join(texts(book)), received(letter, option)
        assert ("Camera video after" in promised) == ("☐ Camera run" in asked), option.letter
        assert ("Water test reading" in promised) == ("☐ Water test: start level" in asked), option.letter
        if "As-built sketch" in promised:
            assert "As built" in asked, option.letter


@pytest.mark.parametrize("name", NAMES)
def test_what_is_included_is_never_excluded_and_what_is_promised_is_in_the_work(name: str) -> None:
    letter, options = offered(name)
    for option in options:
        terms = terms_of(letter, option)
        assert not set(terms["Included"]) & set(terms["Not included"])
        has = {n: any(t.value(n) for t in option.takeoffs) for n in ("films_before", "films_after", "permits")}
        promised = " ".join(received(letter, option))
        assert ("video before" in promised, "video after" in promised) == (has["films_before"], has["films_after"])
        assert ("permit card" in promised) == has["permits"]
        if option.water_test != "not promised":
            assert "Water test reading" in promised


@pytest.mark.parametrize("name", NAMES)
def test_line_items_are_few_and_add_up(name: str) -> None:
    letter, options = offered(name)
    for option in options:
        items = [line for part in by_class(letter, option) for line, _ in part]
        assert sum(line.amount for line in items) + option.price.tax == option.price.total
        assert len(items) <= 18


@pytest.mark.parametrize("name", NAMES)
def test_we_recommend_only_a_firm_price_that_repairs_all_that_must_be(name: str) -> None:
    letter, options = offered(name)
    best = recommended(letter.quote)
    if best is None:
        assert not any(o.fixed and (only_prepares(o) or cures_all_now(letter.quote, o)) for o in options)
    elif not letter.quote.job.wishes.recommend:
        assert best.fixed and (only_prepares(best) or cures_all_now(letter.quote, best))


@pytest.mark.parametrize("name", NAMES)
def test_a_price_that_is_not_firm_can_be_signed_and_paid_nowhere(name: str) -> None:
    _, options = offered(name)
    book = book_of(name)
    assert book is not None
    page = next(s for s in book.sheets if s.name == "Agreement")
    cells = [c for row in page.rows for c in row.cells]
    for option in options:
        amounts = [c for c in cells if c.value == option.price.total and not isinstance(c.value, Formula)]
        same = any(o.fixed and o.price.total == option.price.total for o in options)
        assert bool(amounts) == (option.fixed or same), option.letter
    if not any(o.fixed for o in options):
        assert not [c for c in cells if "Payments" in str(c.value)]


@pytest.mark.parametrize("name", NAMES)
def test_nothing_to_repair_is_never_said_of_a_house_with_a_defect(name: str) -> None:
    quote, book = quote_of(name), book_of(name)
    if book is None or quote is None:
        pytest.skip("nothing is offered")
    said = "We found no damage in the pipe we inspected." in texts(book)
    assert said == (not quote.found)


@pytest.mark.parametrize("name", NAMES)
def test_a_visit_shares_the_page_of_an_option_only_where_both_fit_on_it(name: str) -> None:
    book = book_of(name)
    if book is None:
        pytest.skip("nothing is offered")
    assert {pages for sheet, pages in printed_pages(book).items() if re.match("Option ., .", sheet)} <= {1}


LAW = "Notice of Cancellation"
BY_LAW = re.compile(r"^You, the buyer, may cancel")


@pytest.mark.parametrize("name", NAMES)
def test_sentences_are_short(name: str) -> None:
    """At most 25 words and 15 in the mean: as the tables' own test; the law's words are the law's."""
    book = book_of(name)
    if book is None:
        pytest.skip("nothing is offered")
    said = [
        t
        for sheet in book.sheets
        if sheet.name != LAW
        for row in sheet.rows
        for c in row.cells
        if isinstance(t := c.value, str)
    ]
    every = [
        one
        for text in said
        if not BY_LAW.match(text)
        for part in re.split(r"[;:] |\n| · ", text)
        for one in sentences(part)
    ]
    counts = [words(one) for one in every if words(one) > 3]
    assert [one for one in every if words(one) > LONGEST] == []
    assert sum(counts) / len(counts) <= MEAN
