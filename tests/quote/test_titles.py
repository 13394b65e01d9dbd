"""Titles: the firm's own for the weightiest way, a word for each other one, and no two options under the same title."""

from collections.abc import Sequence
from dataclasses import replace

import pytest

from estimator.model.offer import Option
from estimator.model.say import Say
from estimator.model.work import Repair
from estimator.quote.titles import title, told_apart
from estimator.tables import Tables
from estimator.wording.say import say
from estimator.works.methods import names, record_of
from tests.made_up.quote import example_quote

LINES = example_quote().job.lines


def titled(tables: Tables, *methods: str) -> str:
    return str(title([tables.method(m) for m in methods]))


def test_every_way_has_a_word_for_titles() -> None:
    assert all(str(record_of(name).short) for name in names())


def test_one_way_alone_carries_the_firms_own_title(tables: Tables) -> None:
    assert titled(tables, "trench") == tables.method("trench").title_en


def test_a_mix_names_every_way_in_it(tables: Tables) -> None:
    assert titled(tables, "trench", "reline") == f"{tables.method('trench').title_en}, plus lining"
    assert titled(tables, "tunnel", "reroute", "yard spot").endswith(", plus a reroute, a yard repair")


def test_ways_that_come_to_the_same_are_not_named_twice(tables: Tables) -> None:
    assert titled(tables, "reline", "sectional liner") == tables.method("reline").title_en
    assert titled(tables, "trench", "reline", "sectional liner").endswith(", plus lining")


def test_the_spanish_title_is_spanish(tables: Tables) -> None:
    said = say(title([tables.method("trench"), tables.method("reline")]), "es_US")
    assert said == f"{tables.method('trench').title_es}, más recubrimiento"


def options(*repairs: Sequence[Repair]) -> tuple[Option, ...]:
    one = example_quote().options[0]
    return tuple(
        replace(one, letter=x, scope=replace(one.scope, repairs=tuple(rs))) for x, rs in zip("AB", repairs, strict=True)
    )


def of(option: Option, method: str, line: str, longer_ft: float = 0.0) -> Repair:
    repair = option.scope.repairs[0]
    return replace(repair, method=method, line=line, stretch=repair.stretch.padded(0, longer_ft), first=())


@pytest.mark.parametrize(
    "first, second, said",
    [
        ([("tunnel", "main"), ("reline", "kitchen")], [("tunnel", "kitchen"), ("reline", "main")], "new pipe by tunnel on the main line and lining on the kitchen line"),
        ([("tunnel", "main", 0.0)], [("tunnel", "main", 4.0)], "29 ft of new pipe"),
        ([("tunnel", "main")], [("tunnel", "main")], "(1)"),
    ],
)  # fmt: skip
def test_options_under_one_title_say_what_differs(first: list, second: list, said: str) -> None:
    one = example_quote().options[0]
    pair = told_apart(options([of(one, *r) for r in first], [of(one, *r) for r in second]), LINES)
    assert pair[0].title != pair[1].title
    assert said in say(pair[0].title, "en_US")


def test_titles_that_differ_stay_as_they_are() -> None:
    one = example_quote().options[0]
    both = (one, replace(one, title=Say.of("Another way")))
    assert [o.title for o in told_apart(both, LINES)] == [o.title for o in both]


def test_a_name_of_the_estimators_own_needs_nothing_after_the_title() -> None:
    one = example_quote().options[0]
    assert [o.title for o in told_apart((one, replace(one, name="Mine")), LINES)] == [one.title, one.title]


def test_new_pipe_and_lining_are_counted_apart() -> None:
    one = example_quote().options[0]
    both = [of(one, "tunnel", "main"), of(one, "sectional liner", "main", -25.0)]
    more = [of(one, "tunnel", "main", 4.0), both[1]]
    assert [say(o.title, "en_US").partition(" (")[2] for o in told_apart(options(both, more), LINES)] == [
        "29 ft of new pipe and 4 ft lined)",
        "33 ft of new pipe and 4 ft lined)",
    ]
