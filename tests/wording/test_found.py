"""A worn bottom has a phrase of its own for each degree, in both languages."""

import pytest

from estimator.model.line import Finding, Line
from estimator.model.stretch import Stretch
from estimator.wording.finding_words import in_words
from estimator.wording.say import say

DEGREES = ((), ("sharp",), ("gone",), ("soil seen",), ("void",))


def worn(*signs: str) -> Finding:
    return Finding(id="f", kind="channel", stretch=Stretch(8.0, 21.0), signs=signs)


@pytest.mark.parametrize("language", ["en_US", "es_US"])
def test_groove_sharp_gone_soil_and_hollow_read_differently(language: str) -> None:
    texts = [say(in_words(worn(*signs)), language) for signs in DEGREES]
    assert len(set(texts)) == len(DEGREES)


def test_the_worst_sign_is_the_one_that_is_said() -> None:
    assert in_words(worn("sharp", "gone", "void")) == in_words(worn("void"))
    assert in_words(worn("gone", "soil seen")) == in_words(worn("soil seen"))


def test_a_pipe_whose_bottom_is_gone_is_never_said_to_be_rusting_through() -> None:
    for signs in DEGREES[2:]:
        assert "rusting" not in str(in_words(worn(*signs))) and "gone" in str(in_words(worn(*signs)))


@pytest.mark.parametrize(("pipe", "rust"), [("cast iron", True), ("galvanized steel", True), ("PVC", False), ("clay", False), ("fiber", False), ("", False)])  # fmt: skip
def test_rust_is_said_of_iron_and_steel_alone(pipe: str, rust: bool) -> None:
    """Plastic, clay and fiber do not rust: what narrows them is mineral [common practice]."""
    scale = Finding(id="s", kind="scale", stretch=Stretch(8.0, 21.0), percent=(30.0, 30.0))
    assert ("rust" in str(in_words(scale, line(pipe)))) == rust


def line(pipe: str) -> Line:
    return Line(name="main", pipe=pipe, size_in=4.0)


def test_water_that_runs_in_is_not_said_to_run_out() -> None:
    leak = Finding(id="l", kind="leak", stretch=Stretch(8.0, 8.0), signs=("running in",))
    assert "into the pipe" in str(in_words(leak)) and "out" not in str(in_words(leak))
