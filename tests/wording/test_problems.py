"""Every problem speaks Spanish: the same named gaps, short sentences, none of the words with two meanings."""

import ast
from collections.abc import Iterator
from pathlib import Path

import pytest

from estimator.cli.problem_page import EVERY_PROBLEM
from estimator.model.problem import Kind, Place
from estimator.model.say import GAP, Say
from estimator.wording.say import catalog, say
from estimator.wording.sweep import DECLARING, PACKAGE
from tests.wording.plain_english import LONGEST, NEVER_IN_SPANISH, sentences, words

BY_CODE = {kind.code: kind for kind in EVERY_PROBLEM}


def texts(kind: Kind) -> Iterator[str]:
    """Return what the problem says of its own: a text that is a gap and nothing else is said by what fills it."""
    return (text for text in (kind.wrong, kind.write) if any(c.isalpha() for c in GAP.sub("", text)))


def spanish(text: str) -> str:
    return catalog("es_US").gettext(text)


@pytest.mark.parametrize("kind", EVERY_PROBLEM, ids=lambda kind: kind.code)
def test_every_problem_has_spanish_with_the_same_gaps(kind: Kind) -> None:
    for text in texts(kind):
        assert spanish(text) != text
        assert sorted(GAP.findall(spanish(text))) == sorted(GAP.findall(text))


@pytest.mark.parametrize("kind", EVERY_PROBLEM, ids=lambda kind: kind.code)
def test_no_spanish_sentence_of_a_problem_is_long_or_uses_a_word_of_two_meanings(kind: Kind) -> None:
    said = [spanish(text) for text in texts(kind)]
    assert [one for text in said for one in sentences(text) if words(one) > LONGEST] == []
    assert [text for text in said if NEVER_IN_SPANISH.search(text)] == []


def test_every_problem_that_is_declared_is_on_the_list() -> None:
    declared = {
        node.args[0].value
        for path in PACKAGE.rglob("*.py")
        for node in ast.walk(ast.parse(Path(path).read_text("utf-8")))
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id in DECLARING and node.args
        if isinstance(node.args[0], ast.Constant) and "/" in str(node.args[0].value)
    }
    assert declared - set(BY_CODE) == set()


def test_what_somebody_typed_stands_as_typed_and_a_sentence_is_said() -> None:
    unknown = BY_CODE["job/unknown-line"](Place(), name="hole", known="main, kitchen")
    assert say(unknown.wrong, "es_US") == "no existe la línea hole."
    length = BY_CODE["log/too-long"](Place(), feet=900.0, what=Say.of("the whole of line {line}", line="sag"))
    assert say(length.wrong, "es_US") == "900 pies no es toda la línea sag de un drenaje de casa."


def test_a_gap_that_nothing_fills_is_a_fault_of_the_program() -> None:
    with pytest.raises(KeyError):
        BY_CODE["job/unknown-line"](Place(), known="main")
