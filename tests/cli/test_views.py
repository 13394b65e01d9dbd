"""Options, reasons and explanations as text: right at 60, 80 and 120 columns, every figure from the quote itself."""

import re
from dataclasses import replace
from decimal import Decimal
from pathlib import Path

import pytest

from estimator import demo
from estimator.cli.comparing import compared_with
from estimator.cli.views import check, compare, each_way, explain, needs, options, what_if, why
from estimator.cli.views.lines_of_quote import find
from estimator.cli.views.table import cells_wide, folded, table
from estimator.cli.views.words import dollars, finding, number
from estimator.model.judgement import Effect
from estimator.model.line import Finding
from estimator.model.problem import CannotGoOn
from estimator.model.stretch import Stretch
from estimator.quote.recommend import recommended
from estimator.records.plain import dumped, plain
from estimator.scopes.each_way import NeedWays, WayThere
from tests.made_up.quote import example_quote

QUOTE = example_quote()
WAYS = tuple(
    NeedWays(need, tuple(WayThere(v.method, offered, v) for v in QUOTE.blocked for offered in (True, False)))
    for need in QUOTE.diagnosis.needs
)


def _text(rows) -> str:
    return "\n".join(row.text for row in rows)


@pytest.mark.parametrize("columns", [60, 80, 120])
def test_no_view_is_wider_than_the_window(columns):
    views = [
        options.rows(QUOTE, columns),
        why.rows(QUOTE, columns),
        each_way.rows(WAYS, columns),
        check.rows(QUOTE.job, QUOTE.diagnosis, columns),
        *(explain.rows(QUOTE, line.id, columns) for option in QUOTE.options for line in option.price.lines),
    ]
    for rows in views:
        assert max(cells_wide(row.text) for row in rows) <= columns


def test_every_option_shows_its_price_its_most_and_its_days():
    text = _text(options.rows(QUOTE, 80))
    for option in QUOTE.options:
        assert f"${option.price.total:,.0f}" in text
        assert f"${option.most:,.0f}" in text
        assert options.days(option.days_on_site) in text


def test_a_price_that_is_not_fixed_says_so():
    loose = replace(QUOTE.options[0], fixed=False)
    text = _text(options.rows(replace(QUOTE, options=(loose,)), 80))
    assert "not fixed" in text
    assert "never above     to be confirmed" in text


def test_what_is_not_offered_is_named_with_its_reason():
    assert re.search(r"Not offered\nreline +Lining from inside", _text(options.rows(QUOTE, 80)))


def test_many_options_in_a_narrow_window_become_blocks():
    many = tuple(replace(QUOTE.options[i % 2], letter="ABCDEFGHIJKL"[i]) for i in range(12))
    text = _text(options.rows(replace(QUOTE, options=many), 60))
    assert re.search(r"^L  Replace the whole line$", text, re.M)


def test_no_option_at_all_is_said_in_words():
    assert "No way of repair can be offered" in _text(options.rows(replace(QUOTE, options=()), 80))


def test_the_caution_stands_under_every_list_of_options():
    assert "competent person" in _text(options.rows(QUOTE, 80))


@pytest.mark.parametrize("item", ["A2", "a2", " A2 "])
def test_a_line_is_found_by_its_id_in_any_case(item):
    assert find(QUOTE, item)[1].id == "A2"


def test_an_unknown_line_names_those_there_are():
    with pytest.raises(CannotGoOn, match="A1 to A6, B1 to B5"):
        find(QUOTE, "Z9")


def test_the_explanation_shows_the_amount_the_hours_and_the_steps_to_the_price():
    text = _text(explain.rows(QUOTE, "A3", 80))
    line = find(QUOTE, "A3")[1]
    assert f"{dollars(line.unit_price)} = {dollars(line.amount)}" in text
    for step in QUOTE.options[0].price.steps:
        assert dollars(step.amount) in text


def test_what_if_puts_both_prices_and_the_difference_side_by_side():
    option = QUOTE.options[0]
    dearer = replace(QUOTE, options=(replace(option, price=replace(option.price, total=Decimal("17000.00"))),))
    text = _text(what_if.rows(QUOTE, dearer, ["soil=rock"], 80))
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
    assert finding(found) == words


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
    assert [number(v) for v in (10, 10.04, 0.05, 1234.5, -3)] == ["10", "10", "0.1", "1,234.5", "-3"]


@pytest.fixture(scope="module", name="compared")
def _compared():
    job = Path(demo.__file__).parent / "job.toml"
    return compared_with(job, None, None, None, "main", None)


@pytest.mark.parametrize("columns", [60, 80, 120])
def test_a_comparison_fits_the_window_and_never_shows_a_price_without_the_all_in_one(compared, columns):
    found, job, even = compared
    rows = compare.rows(found, job, columns, even=even)
    text = _text(rows)
    assert max(cells_wide(row.text) for row in rows) <= columns
    for column in found.open:
        assert dollars(column.option.all_in, whole=True) in text
        assert dollars(column.option.price.total, whole=True) in text
    assert text.index("all in") < text.index("our price")


def test_a_comparison_says_what_decides_and_where_it_turns(compared):
    found, job, even = compared
    text = _text(compare.rows(found, job, 120, even=even))
    assert "What decides" in text
    assert "tunnel and break-through break even" in text
    for along in even.along:
        for turn in along.turns:
            assert f"{number(turn.at)} {along.axis.unit}" in text


def test_a_comparison_as_data_holds_no_function(compared):
    found, _, even = compared
    assert dumped(plain(compare.as_data(found, even)))


def test_why_shows_the_reasons_that_came_of_measuring():
    option = QUOTE.options[0]
    found = replace(QUOTE.blocked[0], effect=Effect.CAUTION, method="tunnel", rule="pipe-clears-the-beam")
    first, *rest = option.takeoffs
    measured = replace(option, takeoffs=(replace(first, finds=(found,)), *rest))
    assert "pipe-clears-the-beam" not in _text(why.rows(QUOTE, 80))
    assert "pipe-clears-the-beam" in _text(why.rows(replace(QUOTE, options=(measured,)), 80))


def test_what_may_stay_does_not_stand_under_what_must_be_put_right():
    need = QUOTE.diagnosis.needs[0]
    text = _text(needs.needs_rows([replace(need, must=False), need], 80))
    must, may = text.split("What may stay for now")
    assert "must be repaired" in must and "may stay;" not in must
    assert "may stay;" in may and "must be repaired" not in may
    alone = _text(needs.needs_rows([replace(need, must=False)], 80))
    assert "Nothing seen that must be repaired." in alone


@pytest.mark.parametrize("columns", [40, 80, 120])
def test_every_option_shows_its_warranty_the_papers_it_needs_and_that_years_are_typical(columns):
    text = " ".join(_text(options.rows(QUOTE, columns)).split())
    assert text.count("typical") == len(QUOTE.options)
    for option in QUOTE.options:
        assert option.warranty_en.split()[0] in text
    assert "papers needed" in text.lower()


def test_options_begin_with_what_the_quote_recommends():
    said = [row.text for row in options.rows(QUOTE, 120) if row.text]
    assert said[2].startswith(f"We recommend {recommended(QUOTE).letter}: ")
    no_wish = replace(QUOTE.job, wishes=replace(QUOTE.job.wishes, recommend=""))
    loose = replace(QUOTE, job=no_wish, options=tuple(replace(option, fixed=False) for option in QUOTE.options))
    assert "No price is firm yet" in [row.text for row in options.rows(loose, 120) if row.text][2]
