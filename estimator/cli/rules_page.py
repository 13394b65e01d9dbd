"""The page of readings and rules: what the findings mean, which ways of repair are left, by which limits; printed from the program."""

from estimator.diagnosis.diagnose import READINGS
from estimator.diagnosis.reading import Reading
from estimator.scopes.rules import RULES, Rule

HEAD = """# What the findings mean, and which repair may be offered

Printed from the program by `python -m estimator.cli.rules_page > docs/rules.md`; a test sees that it is fresh.

Every limit is a setting of the firm (named beside the rule), a place's row, or a published number with its source. The
owner may overrule a rule for one job with a reason (`[[override]]`); a rule that **guards people** gives way only to an
`[[approval]]` on file that names it. None of this is legal or engineering advice: local codes, licensed practice and the
competent person on site stand over it.

What a rule may answer: **blocks** (not offered) · **no fixed price** (until confirmed) · **until approved** · **does not
fix** (that place stays as it is) · **requires first** · **adds work** · **caution** · **prefers** (orders the columns, never
the price).
"""
READINGS_HEAD = """## Readings: what is seen together, and what it means

| reading | seen | meaning | confirm | what follows | settings | source |
|---|---|---|---|---|---|---|"""
RULES_HEAD = """## Rules: which way of repair may be offered over a stretch

| rule | asked of | statement | why | settings | guards people | worse mistake | source |
|---|---|---|---|---|---|---|---|"""
NONE = "–"


def page() -> str:
    """The whole page."""
    readings = [_reading(r) for r in READINGS]
    rules = [_rule(r) for r in RULES]
    return "\n".join([HEAD, READINGS_HEAD, *readings, "", RULES_HEAD, *rules, ""])


def _reading(it: Reading) -> str:
    confirm = it.confirm.text if it.confirm else NONE
    return _row(f"`{it.id}`", it.evidence, it.meaning.text, confirm, it.effect, _keys(it.reads), it.source)


def _rule(it: Rule) -> str:
    guards = "yes" if it.guards_people else ""
    ways = _list(it.asked_of)
    return _row(f"`{it.id}`", ways, it.statement, it.reason, _keys(it.reads), guards, it.worse, it.source)


def _list(words: tuple[str, ...]) -> str:
    return ", ".join(words) or NONE


def _keys(keys: tuple[str, ...]) -> str:
    return ", ".join(f"`{key}`" for key in dict.fromkeys(keys)) or NONE


def _row(*cells: str) -> str:
    return "| " + " | ".join(cell.replace("|", "\\|").replace("\n", " ") for cell in cells) + " |"


if __name__ == "__main__":
    print(page(), end="")
