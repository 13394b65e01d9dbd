"""Options, reasons and explanations as text: right at 60, 80 and 120 columns, every figure from the quote itself."""

import re
from dataclasses import replace
from decimal import Decimal
from pathlib import Path

import pytest

from estimator import demo
from estimator.cli.commands.compare import compared_with
from estimator.cli.views.check import write_check, write_needs
from estimator.cli.views.compare import as_data, write_comparison
from estimator.cli.views.explain import find, write_line
from estimator.cli.views.layout import Layout
from estimator.cli.views.likely_range import write_each_way, write_what_if
from estimator.cli.views.options import on_site, write_options
from estimator.cli.views.table import cells_wide, folded, table
from estimator.cli.views.why import write_reasons
from estimator.cli.views.words import Words
from estimator.model.judgement import Effect
from estimator.model.line import Finding
from estimator.model.problem import CannotGoOn
from estimator.model.stretch import Stretch
from estimator.quote.recommend import recommended
from estimator.records.recorded_text import dumped, plain
from estimator.scopes.each_way import NeedWays, WayThere
from tests.made_up.quote import example_quote

QUOTE = example_quote()
WAYS = tuple(
    NeedWays(need, tuple(WayThere(v.method, offered, v) for v in QUOTE.blocked for offered in (True, False)))
    for need in QUOTE.diagnosis.needs
)


WORDS = Words()


def _rows(write, *what, columns=80) -> list[str]:
    out = Layout(columns=columns)
    write(out, *what)
    return [row.text for row in out.rows]


def _text(write, *what, columns=80) -> str:
    return "\n".join(_rows(write, *what, columns=columns))


@pytest.mark.parametrize("columns", [60, 80, 120])
def test_no_view_is_wider_than_the_window(columns):
    views = [
        (write_options, QUOTE),
        (write_reasons, QUOTE),
        (write_each_way, WAYS),
        (write_check, QUOTE.job, QUOTE.diagnosis),
        *((write_line, QUOTE, line.id) for option in QUOTE.options for line in option.price.lines),
    ]
    for view in views:
        assert max(map(cells_wide, _rows(*view, columns=columns))) <= columns


def test_every_option_shows_its_price_its_most_and_its_days():
    text = _text(write_options, QUOTE)
    for option in QUOTE.options:
        assert f"${option.price.total:,.0f}" in text
        assert f"${option.most:,.0f}" in text
        assert on_site(option, WORDS) in text


def test_a_price_that_is_not_fixed_says_so():
    loose = replace(QUOTE.options[0], fixed=False)
    text = _text(write_options, replace(QUOTE, options=(loose,)))
    assert "not fixed" in text
    assert "never above     to be confirmed" in text


def test_what_is_not_offered_is_named_with_its_reason():
    assert re.search(r"Not offered\nreline +Lining from inside", _text(write_options, QUOTE))


def test_many_options_in_a_narrow_window_become_blocks():
    many = tuple(replace(QUOTE.options[i % 2], letter="ABCDEFGHIJKL"[i]) for i in range(12))
    text = _text(write_options, replace(QUOTE, options=many), columns=60)
    assert re.search(r"^L  Replace the whole line$", text, re.M)


def test_no_option_at_all_is_said_in_words():
    assert "No way of repair can be offered" in _text(write_options, replace(QUOTE, options=()))


def test_the_caution_stands_under_every_list_of_options():
    assert "competent person" in _text(write_options, QUOTE)


@pytest.mark.parametrize("item", ["A2", "a2", " A2 "])
def test_a_line_is_found_by_its_id_in_any_case(item):
    assert find(QUOTE, item)[1].id == "A2"


def test_an_unknown_line_names_those_there_are():
    with pytest.raises(CannotGoOn, match="A1 to A6, B1 to B5"):
        find(QUOTE, "Z9")


def test_the_explanation_shows_the_amount_the_hours_and_the_steps_to_the_price():
    text = _text(write_line, QUOTE, "A3")
    line = find(QUOTE, "A3")[1]
    assert f"{WORDS.dollars(line.unit_price)} = {WORDS.dollars(line.amount)}" in text
    for step in QUOTE.options[0].price.steps:
        assert WORDS.dollars(step.amount) in text


def test_what_if_puts_both_prices_and_the_difference_side_by_side():
    option = QUOTE.options[0]
    dearer = replace(QUOTE, options=(replace(option, price=replace(option.price, total=Decimal("17000.00"))),))
    text = _text(write_what_if, QUOTE, dearer, ["soil=rock"])
    assert re.search(r"tunnel main +\$16,525 +\$17,000 +\+\$475", text)
    assert re.search(r"break-through main +\$9,875 +not offered", text)


@pytest.mark.parametrize(
    ("found", "words"),
    [
        (Finding(id="1", kind="hole", stretch=Stretch(1, 1), size_in=3.0, clock=(5, 7)), "hole 3 in, at 5–7 o'clock"),
        (Finding(id="2", kind="sag", stretch=Stretch(1, 2), percent=(20, 25)), "belly 20–25 %"),
        (Finding(id="3", kind="crack", stretch=Stretch(1, 1), grade="suspected", photo=4), "crack, suspected, photo 4"),
        (Finding(id="4", kind="roots", stretch=Stretch(1, 1), grade_word="light"), "roots light"),
    ],
)
def test_a_finding_in_words(found, words):
    assert WORDS.finding(found) == words


def test_a_table_keeps_every_word_of_a_long_cell():
    text = " ".join(f"word{i}" for i in range(40))
    lines = table(("a", "b"), [("x", text)], 40)
    assert " ".join(" ".join(line.split()) for line in lines[2:]).replace("x ", "", 1) == text
    assert max(map(len, lines)) <= 40


def test_wide_letters_and_accents_take_the_room_they_take():
    assert cells_wide("漏水") == 4
    assert cells_wide("e\u0301") == 1
    first, second = table(("", "n"), [("漏水", "1"), ("ab", "2")], 40)[2:]
    assert cells_wide(first.split("1")[0]) == cells_wide(second.split("2")[0])


def test_a_word_longer_than_the_column_is_cut_not_lost():
    assert "".join(folded("x" * 30, 8)) == "x" * 30


def test_a_number_has_no_noughts_too_many():
    assert [WORDS.number(v) for v in (10, 10.04, 0.05, 1234.5, -3)] == ["10", "10", "0.1", "1,234.5", "-3"]


@pytest.fixture(scope="module", name="compared")
def _compared():
    job = Path(demo.__file__).parent / "job.toml"
    return compared_with(job, None, None, None, "main", None)


@pytest.mark.parametrize("columns", [60, 80, 120])
def test_a_comparison_fits_the_window_and_never_shows_a_price_without_the_all_in_one(compared, columns):
    found, job, even = compared
    rows = _rows(write_comparison, found, job, even, columns=columns)
    text = "\n".join(rows)
    assert max(map(cells_wide, rows)) <= columns
    for column in found.open:
        assert WORDS.dollars(column.option.all_in, whole=True) in text
        assert WORDS.dollars(column.option.price.total, whole=True) in text
    assert text.index("all in") < text.index("our price")


def test_a_comparison_says_what_decides_and_where_it_turns(compared):
    found, job, even = compared
    text = _text(write_comparison, found, job, even, columns=120)
    assert "What decides" in text
    assert "tunnel and break-through break even" in text
    for along in even.along:
        for turn in along.turns:
            assert f"{WORDS.number(turn.at)} {along.axis.unit}" in text


def test_a_comparison_as_data_holds_no_function(compared):
    found, _, even = compared
    assert dumped(plain(as_data(found, even)))


def test_why_shows_the_reasons_that_came_of_measuring():
    option = QUOTE.options[0]
    found = replace(QUOTE.blocked[0], effect=Effect.CAUTION, method="tunnel", rule="pipe-clears-the-beam")
    first, *rest = option.takeoffs
    measured = replace(option, takeoffs=(replace(first, finds=(found,)), *rest))
    assert "pipe-clears-the-beam" not in _text(write_reasons, QUOTE)
    assert "pipe-clears-the-beam" in _text(write_reasons, replace(QUOTE, options=(measured,)))


def test_what_may_stay_does_not_stand_under_what_must_be_put_right():
    need = QUOTE.diagnosis.needs[0]
    text = _text(write_needs, [replace(need, must=False), need])
    must, may = text.split("What may stay for now")
    assert "must be repaired" in must and "may stay;" not in must
    assert "may stay;" in may and "must be repaired" not in may
    alone = _text(write_needs, [replace(need, must=False)])
    assert "Nothing seen that must be repaired." in alone


@pytest.mark.parametrize("columns", [40, 80, 120])
def test_every_option_shows_its_warranty_the_papers_it_needs_and_that_years_are_typical(columns):
    text = " ".join(_text(write_options, QUOTE, columns=columns).split())
    assert text.count("typical") == len(QUOTE.options)
    for option in QUOTE.options:
        assert option.warranty_en.split()[0] in text
    assert "papers needed" in text.lower()


def test_options_begin_with_what_the_quote_recommends():
    said = [text for text in _rows(write_options, QUOTE, columns=120) if text]
    assert said[2].startswith(f"We recommend {recommended(QUOTE).letter}: ")
    no_wish = replace(QUOTE.job, wishes=replace(QUOTE.job.wishes, recommend=""))
    loose = replace(QUOTE, job=no_wish, options=tuple(replace(option, fixed=False) for option in QUOTE.options))
    assert "No price is firm yet" in [text for text in _rows(write_options, loose, columns=120) if text][2]
