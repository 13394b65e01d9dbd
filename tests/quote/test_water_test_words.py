"""What the water test covers, in words that name what is really set elsewhere; the Spanish in one word for one thing."""

from dataclasses import replace

import pytest

from estimator.model.work import Quantity, Takeoff
from estimator.quote.pipe_remaining import water_test
from estimator.tables import Tables
from estimator.wording.say import catalog, say
from tests.made_up.quote import example_quote

OPTION = example_quote().options[0]
PIPE = OPTION.scope.repairs[0]


def of(method: str, line: str, tests: float) -> Takeoff:
    repair = replace(PIPE, id=f"{method}-{line}", method=method, line=line)
    tested = Quantity(name="tests", value=tests, unit="each", formula="the new pipe, before it is covered")
    return Takeoff(repair=repair, quantities=(tested,), facts=frozenset())


@pytest.mark.parametrize(
    ("elsewhere", "said"),
    [
        (("sectional liner",), "The lining elsewhere has no water test"),
        (("yard spot",), "New pipe elsewhere has no water test"),
        (("yard spot", "reline"), "What is new elsewhere has no water test"),
    ],
)
def test_only_what_is_set_elsewhere_is_said_to_have_no_test(elsewhere: tuple[str, ...], said: str) -> None:
    takeoffs = (of("tunnel", "main", 1), *(of(method, "yard", 0) for method in elsewhere))
    scope = replace(OPTION.scope, repairs=tuple(t.repair for t in takeoffs))
    promise, words = water_test(scope, takeoffs, 12.0)
    assert promise == "only this part"
    assert said in say(words, "en_US")
    assert "Probamos con agua solo la parte nueva (línea principal)." in say(words, "es_US")


def test_a_warranty_has_one_word_in_spanish() -> None:
    """Garantía, not promesa: both in one document read as two things."""
    messages = catalog("es_US")._catalog  # type: ignore[attr-defined]
    assert [text for text in messages.values() if "promesa" in text] == []


def test_the_spanish_titles_say_how_and_do_not_exchange_the_line_for_the_floor(tables: Tables) -> None:
    titles = {tables.method(m).title_es for m in ("tunnel", "break-through", "trench")}
    assert titles == {
        "Cambiar tubería por túnel",
        "Cambiar tubería por el piso",
        "Cambiar la línea por zanja abierta",
    }
