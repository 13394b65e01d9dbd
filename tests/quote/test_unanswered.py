"""What must be put right and is in no price: every option says so and none is fixed."""

from dataclasses import replace

import pytest

from estimator.model.judgement import Effect, Need, Verdict
from estimator.model.line import Finding
from estimator.model.say import Say
from estimator.model.stretch import Stretch
from estimator.papers.answer import answer_sheet
from estimator.papers.letter import Letter
from estimator.quote import Chosen, build_quote
from estimator.tables import Tables
from tests.made_up.quote import example_quote

QUOTE = example_quote()
HOLE = Finding(id="h", kind="hole", stretch=Stretch(3, 3))
MUST = Need(
    id="main@3", line="main", stretch=Stretch(3, 3), kinds=("hole",), findings=(HOLE,),
    severity=3, urgency=3, grade="seen", must=True,
)  # fmt: skip
WHY = Say.of("A grade beam is over that spot. We do not cut a beam.")
AGAINST = Verdict(
    rule="strip-stops-at-a-beam", effect=Effect.BLOCKS, method="slab spot", line="main", stretch=Stretch(2, 4),
    homeowner=WHY, estimator=WHY,
)  # fmt: skip


def built(chosen: tuple[Chosen, ...], tables: Tables, need: Need, *blocked: Verdict, unanswered: tuple[Need, ...] = ()):
    leaves = tuple(replace(c, scope=replace(c.scope, leaves=(need,))) for c in chosen)
    return build_quote(QUOTE.job, QUOTE.diagnosis, leaves, tables, QUOTE.day, 1, blocked, unanswered)


def test_no_option_is_fixed_where_all_leave_what_must_be_put_right(chosen, tables) -> None:
    quote = built(chosen, tables, MUST, AGAINST)
    assert [o.fixed for o in quote.options] == [False] * len(chosen)
    for option in quote.options:
        said = str(option.not_fixed_because[0])
        assert said.startswith("Not complete: a hole, under the kitchen, also needs repair")
        assert said.endswith(" A grade beam is over that spot. We do not cut a beam.")


def test_why_a_new_pipe_is_not_possible_says_more_than_why_a_spot_is_too_little(chosen, tables) -> None:
    beam = Say.of("A new pipe with the slope it needs would run into a concrete beam under the floor.")
    blocked = replace(AGAINST, method="tunnel", homeowner=beam)
    said = built(chosen, tables, MUST, AGAINST, blocked).options[0].not_fixed_because[0]
    assert str(said).endswith(str(beam))


def test_what_may_stay_is_left_at_a_fixed_price(chosen, tables) -> None:
    before = [o.fixed for o in QUOTE.options]
    assert [o.fixed for o in built(chosen, tables, replace(MUST, must=False)).options] == before


def test_without_a_rule_against_it_the_notes_are_told_to_leave_no_way(chosen, tables) -> None:
    quote = built(chosen, tables, MUST, replace(AGAINST, stretch=Stretch(9, 12)))
    assert str(quote.options[0].not_fixed_because[0]).endswith("No repair method is open there with today's notes.")


def test_an_option_that_does_it_is_complete_beside_one_that_does_not(chosen, tables) -> None:
    """The estimator's own option may do what no allowed repair does; then only the others lack it."""
    own = replace(chosen[0], scope=replace(chosen[0].scope, leaves=()))
    other = replace(chosen[1], scope=replace(chosen[1].scope, leaves=(MUST,)))
    quote = build_quote(QUOTE.job, QUOTE.diagnosis, (own, other), tables, QUOTE.day, 1, (), (MUST,))
    lacks = [any("Not complete" in str(why) for why in o.not_fixed_because) for o in quote.options]
    assert lacks == [False, True]


@pytest.mark.parametrize(("language", "words"), [("en_US", "Not complete"), ("es_US", "Incompleto")])
def test_the_first_sheet_says_it_in_the_reader_s_language(chosen, tables, language: str, words: str) -> None:
    sheet = answer_sheet(Letter(built(chosen, tables, MUST, AGAINST), language))
    assert any(words in str(cell.value) for row in sheet.rows for cell in row.cells)
