"""A rule's name in, what it says with the firm's own numbers out; without one, every reading and every rule."""

import inspect
import re
import sys
from difflib import get_close_matches
from doctest import DocTestParser
from types import ModuleType

from estimator.cli.problems import NO_RULE
from estimator.diagnosis.diagnose import READINGS
from estimator.diagnosis.reading import Reading
from estimator.model.frozen import Frozen
from estimator.model.judgement import Effect
from estimator.model.problem import CannotGoOn, Place
from estimator.model.say import Say
from estimator.scopes.rules import RULES, Rule
from estimator.scopes.rules.rule import Row
from estimator.tables.tables import Tables


class Entry(Frozen, kw_only=True):
    """One reading or rule as printed. `settings` are (key, value, unit); `examples` lines of code with what they give."""

    id: str
    kind: str
    statement: str
    reason: str
    source: str
    effects: tuple[str, ...]
    methods: tuple[str, ...] = ()
    settings: tuple[tuple[str, str, str], ...] = ()
    guards_people: bool = False
    worse: str = ""
    examples: tuple[tuple[str, str], ...] = ()
    meaning: str = ""  # of a reading, as it stands before its gaps are filled

    @property
    def parts(self) -> tuple[str, ...]:
        """The sentences of which the statement is put together."""
        seen = self.statement.removesuffix(f": {self.meaning}")
        return (seen, self.meaning) if self.meaning else (self.statement,)


def looked_up(asked: str, tables: Tables) -> tuple[Entry, ...]:
    """All entries, or those of this name. Errors: CannotGoOn naming the nearest ids for one nobody knows."""
    every = (*(_reading(r, tables) for r in READINGS), *(_rule(r, tables) for r in RULES))
    if not asked:
        return every
    word = asked.strip().lower()
    found = tuple(e for e in every if e.id == word)
    if not found:
        near = get_close_matches(word, [e.id for e in every], 3) or [e.id for e in every if word in e.id][:3]
        hint = Say.of("Did you mean {words}?", words=", ".join(near)) if near else ""
        raise CannotGoOn(NO_RULE(Place(), asked=asked, near=hint))
    return found


def _rule(rule: Rule, tables: Tables) -> Entry:
    return Entry(
        id=rule.id,
        kind="rule",
        statement=rule.statement,
        reason=rule.reason,
        source=rule.source,
        effects=_effects(rule),
        methods=rule.asked_of,
        settings=_settings(rule.reads, tables),
        guards_people=rule.guards_people,
        worse=rule.worse,
        examples=_examples(rule),
    )


def _reading(reading: Reading, tables: Tables) -> Entry:
    return Entry(
        id=reading.id,
        kind="reading",
        statement=f"{reading.evidence}: {reading.meaning.text}",
        meaning=reading.meaning.text,
        reason=reading.confirm.text if reading.confirm else "",
        source=reading.source,
        effects=(reading.effect,),
        settings=_settings(reading.reads, tables),
    )


def _settings(keys: tuple[str, ...], tables: Tables) -> tuple[tuple[str, str, str], ...]:
    rows = (tables.setting(key) for key in dict.fromkeys(keys))
    return tuple((row.key, row.value, row.unit) for row in rows)


def _effects(rule: Rule) -> tuple[str, ...]:
    """What the rule may answer, in the order of Effect: a row's one answer, else as its own file names them."""
    if isinstance(rule, Row):
        return (str(rule.effect),)
    home = _home(rule)
    named = set(re.findall(r"Effect\.([A-Z_]+)", inspect.getsource(home) if home else ""))
    return tuple(str(effect) for effect in Effect if effect.name in named)


def _examples(rule: Rule) -> tuple[tuple[str, str], ...]:
    """Facts it fires on and facts it just misses, each with the answer: a row's own, else those on top of its file."""
    if isinstance(rule, Row):
        return (*((facts, str(rule.effect)) for facts in rule.fires), *((facts, "None") for facts in rule.misses))
    home = _home(rule)
    parts = DocTestParser().get_examples((home and home.__doc__) or "")
    return tuple((e.source.strip(), e.want.strip()) for e in parts if e.want)


def _home(rule: Rule) -> ModuleType | None:
    """The file of a rule that has one of its own; None for one that takeoff finds."""
    function = rule.applies or rule.measures or rule.rests
    return sys.modules[function.__module__] if function else None
