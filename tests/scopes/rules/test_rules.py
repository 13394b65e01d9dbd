"""Every rule keeps the form: named settings, examples that fire and just miss, plain words, known facts, none missing."""

import ast
import inspect
import re
import sys
from collections import Counter
from itertools import chain
from pathlib import Path
from types import ModuleType

import pytest

from estimator.cli.rules_page import page
from estimator.diagnosis.diagnose import READINGS
from estimator.model import edge_beam, job
from estimator.model.judgement import Effect
from estimator.model.visit import KINDS
from estimator.scopes.rules import BY_ID, RULES, Rule
from estimator.scopes.rules.rule import Row, asked
from estimator.scopes.rules.verdicts import each
from estimator.takeoff import quantities
from estimator.takeoff.quantities import FACTS
from estimator.works.methods import names
from tests.made_up import stretch as made_up
from tests.made_up.stretch import demo_tables, limits, measured, need, stretch

DOCS = Path(__file__).parents[3] / "docs" / "rules.md"
R_NUMBERS = {f"R{n:02d}" for n in range(1, 51)}
D_NUMBERS = {f"D{n:02d}" for n in range(1, 27)}


def module_of(rule: Rule) -> ModuleType:
    function = rule.when if isinstance(rule, Row) else rule.applies or rule.measures or rule.rests
    assert function is not None
    return sys.modules[function.__module__]


def source_of(rule: Rule) -> str:
    """What is written of a rule: its row with the short functions beside the table, or its own file."""
    source = inspect.getsource(module_of(rule))
    if not isinstance(rule, Row):
        return source
    tree = ast.parse(source)
    rows = [n for n in ast.walk(tree) if isinstance(n, ast.Call) and ast.unparse(n.func) == "Row"]
    mine = next(n for n in rows if any(k.arg == "id" and ast.literal_eval(k.value) == rule.id for k in n.keywords))
    named = {n.id for n in ast.walk(mine) if isinstance(n, ast.Name)}
    beside = [n for n in tree.body if isinstance(n, ast.FunctionDef) and n.name in named]
    return "\n".join(map(ast.unparse, (*beside, mine)))


ASKED_HERE = [rule for rule in RULES if not rule.found_by_takeoff]
BY_NAME = [pytest.param(rule, id=rule.id) for rule in ASKED_HERE]


def test_every_number_from_r01_to_r50_is_carried_by_a_rule() -> None:
    carried = {number for rule in RULES for number in rule.numbers}
    assert carried >= R_NUMBERS, sorted(R_NUMBERS - carried)
    assert carried <= R_NUMBERS | D_NUMBERS


def test_every_number_from_d01_to_d26_is_carried_by_a_reading() -> None:
    carried = {number for reading in READINGS for number in reading.numbers}
    assert carried == D_NUMBERS, sorted(D_NUMBERS ^ carried)


def test_ids_are_short_phrases_and_each_stands_once() -> None:
    ids = [rule.id for rule in RULES] + [reading.id for reading in READINGS]
    assert [i for i, n in Counter(ids).items() if n > 1] == []
    assert [i for i in ids if not re.fullmatch(r"[a-z]+(-[a-z]+){1,8}|headroom|cleanouts|trees|bends", i)] == []


def test_a_rule_that_says_a_way_is_no_cure_is_marked_so_that_it_is_asked_about_cures() -> None:
    says = {rule.id for rule in ASKED_HERE if "Effect.DOES_NOT_FIX" in source_of(rule)}
    assert says == {rule.id for rule in RULES if rule.judges_the_cure}
    assert len(says) > 2


def test_every_rule_the_takeoff_finds_can_be_looked_up() -> None:
    takeoff = Path(inspect.getfile(quantities)).parent
    found = {i for p in takeoff.glob("*.py") for i in re.findall(r'case\.find\(\s*"([a-z-]+)"', p.read_text("utf-8"))}
    assert found
    assert found <= set(BY_ID)


def test_a_rule_can_be_looked_up_by_its_id() -> None:
    assert BY_ID["lining-keeps-the-grade"].numbers[0] == "R07"


def test_the_page_is_fresh() -> None:
    assert DOCS.read_text(encoding="utf-8") == page(), "python -m estimator.cli.rules_page > docs/rules.md"


@pytest.mark.parametrize("rule", BY_NAME)
def test_a_rule_names_its_methods_source_and_reason(rule: Rule) -> None:
    assert rule.asked_of and rule.settled_by in {"", *KINDS}
    assert rule.statement and rule.reason and rule.source and rule.worse
    assert sum(asked is not None for asked in (rule.applies, rule.measures, rule.rests)) == 1


def answer_to(rule: Row, facts: str) -> Effect | None:
    """What a row answers to an example, asked as the program asks it."""
    here = eval(facts, {**vars(job), **vars(edge_beam), **vars(made_up)})
    return rule.effect if list(asked((rule,), here)) and rule.applies and rule.applies(here, limits()) else None


@pytest.mark.parametrize("rule", BY_NAME)
def test_a_rule_shows_an_example_that_fires_and_one_that_just_misses(rule: Rule) -> None:
    if isinstance(rule, Row):
        assert {answer_to(rule, facts) for facts in rule.fires} == {rule.effect}
        assert {answer_to(rule, facts) for facts in rule.misses} == {None}
        return
    shown = module_of(rule).__doc__ or ""
    answers = re.findall(r"^('.+'|\[.*\]|\(\)|True|False|\d)$", shown, flags=re.MULTILINE)
    assert len(set(answers)) >= 2, "its examples all answer alike"


@pytest.mark.parametrize("reading", [pytest.param(r, id=r.id) for r in READINGS])
def test_the_settings_a_reading_names_stand_in_the_table(reading: object) -> None:
    for key in reading.reads:  # type: ignore[attr-defined]
        assert demo_tables().setting(key).why


@pytest.mark.parametrize("rule", BY_NAME)
def test_a_rule_reads_only_the_settings_it_names_and_they_stand_in_the_table(rule: Rule) -> None:
    source = source_of(rule)
    asked = set(re.findall(r'limits\("([a-z_0-9]+)"\)', source))
    assert asked <= set(rule.reads), sorted(asked - set(rule.reads))
    for key in rule.reads:
        assert demo_tables().setting(key).why


PLAIN = {0, 1, 2, 12, 100, 6}
"""Nothing, one, half of a thing, inches in a foot or hours on a clock, percent of a whole, places kept when comparing."""


@pytest.mark.parametrize("rule", BY_NAME)
def test_no_limit_stands_in_the_code_of_a_rule(rule: Rule) -> None:
    tree = ast.parse(source_of(rule))
    numbers = {n.value for n in ast.walk(tree) if isinstance(n, ast.Constant) and type(n.value) in (int, float)}
    assert numbers <= PLAIN


JARGON = re.compile(
    r"\b(invert|host|static|coupling|APF|R\d\d|CFR|reinstate|annul|shot|void|spoil|APF|PT)\b", re.IGNORECASE
)


@pytest.mark.parametrize("rule", BY_NAME)
def test_every_sentence_fills_its_gaps_and_the_homeowners_is_plain(rule: Rule) -> None:
    tree = ast.parse(source_of(rule))
    says = [n for n in ast.walk(tree) if isinstance(n, ast.Call) and ast.unparse(n.func) == "Say.of"]
    assert says
    for call in says:
        text = call.args[0]
        assert isinstance(text, ast.Constant) and isinstance(text.value, str)
        gaps = set(re.findall(r"{(\w+)}", text.value))
        assert gaps == {keyword.arg for keyword in call.keywords}
        assert text.value.rstrip().endswith((".", ")", "?"))
    homeowner = [k.value for n in ast.walk(tree) if isinstance(n, ast.Call) for k in n.keywords if k.arg == "homeowner"]
    for sentence in homeowner:
        assert not JARGON.search(ast.unparse(sentence)), ast.unparse(sentence)


def test_every_fact_a_rule_adds_has_a_meaning_for_the_tables() -> None:
    added = set()
    for rule in ASKED_HERE:
        for node in ast.walk(ast.parse(source_of(rule))):
            if isinstance(node, ast.keyword) and node.arg == "facts":
                added |= {
                    c.value for c in ast.walk(node.value) if isinstance(c, ast.Constant) and isinstance(c.value, str)
                }
    assert added - set(FACTS) == set()


GUARDS = {
    "tendons-in-the-slab", "footing-below-dig", "protect-from-five-feet", "ladder-from-four-feet", "utility-in-the-bore",
    "engineer-past-twenty-feet", "people-in-a-tunnel", "second-way-out", "soil-that-runs", "headroom", "tunnel-under-a-beam",
    "strip-stops-at-a-beam", "find-what-runs-in-the-slab", "locate-utilities", "burst-near-utilities", "soil-over-an-old-pipe",
    "asbestos-before-cutting", "competent-person-is-named", "water-in-the-ground", "void-needs-an-engineer",
}  # fmt: skip


def test_the_rules_that_guard_people_are_marked_so() -> None:
    assert {rule.id for rule in RULES if rule.guards_people} >= GUARDS


@pytest.mark.parametrize("rule", BY_NAME)
def test_a_rule_answers_any_works_it_is_asked_of_without_a_fault(rule: Rule) -> None:
    for method in names():
        here = stretch(
            "8-20 channel gone, soil seen", "sag 40%", method=method, zones=("slab",), needs=(need("channel"),)
        )
        found = rule.applies(here, limits()) if rule.applies and list(asked((rule,), here)) else None
        later = (
            rule.measures(measured(6.0, method=method), limits())
            if rule.measures and list(asked((rule,), here))
            else None
        )
        for ruling in chain(each(found), each(later)):
            assert str(ruling.homeowner) and str(ruling.estimator)
