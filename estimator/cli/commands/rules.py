"""`estimator rules`: a rule's name in, the rule with its settings out; without one, all of them in a line each."""

from collections.abc import Sequence
from typing import Annotated

import typer

from estimator.cli.arguments import AS_SET, AsJson, Language, OnDay, TablesFrom
from estimator.cli.rule_book import Entry
from estimator.cli.views.layout import Layout
from estimator.cli.views.table import folded
from estimator.cli.views.words import Words

Asked = Annotated[str, typer.Argument(metavar="NAME", help="A rule's name, such as lining-keeps-the-grade.")]


def command(
    rule: Asked = "",
    tables: TablesFrom = None,
    on: OnDay = None,
    language: Language = AS_SET,
    as_json: AsJson = False,
) -> None:
    from estimator.cli.clock import today
    from estimator.cli.price_tables import readable_tables
    from estimator.cli.rule_book import looked_up
    from estimator.cli.views.layout import in_window
    from estimator.cli.views.screen import answer

    found = looked_up(rule, readable_tables(on or today(), tables))
    out = in_window(language)
    if not rule:
        write_rules(out, found)
    for entry in found if rule else ():
        write_rule(out, entry)
    answer(found, as_json, out.rows)


TABLE_FROM = 80  # columns: in a narrower window what a rule says stands under its name


def write_rules(out: Layout, found: Sequence[Entry]) -> None:
    """Every rule in a line, then an example of what to type for one of them whole."""
    cells = [(entry.id, _says(entry, out)) for entry in found]
    if out.columns >= TABLE_FROM:
        out.table((out.speak("rule"), out.speak("what it says")), cells)
    else:
        for name, text in cells:
            out.lines(folded(name, out.columns))
            out.paragraph(text, by=2)
    out.line()
    example = out.speak("One of them whole: {example}", example="estimator rules lining-keeps-the-grade")
    out.lines(folded(example, out.columns), "dim")


def _says(entry: Entry, words: Words) -> str:
    """A rule's statement; of a reading what is seen, and what it means."""
    return ": ".join(map(words.spoken, entry.parts))


def write_rule(out: Layout, entry: Entry) -> None:
    """One told whole, with its settings and examples."""
    speak, rule = out.speak, entry.kind == "rule"
    parts = (
        (speak("says"), _says(entry, out)),
        (speak("why") if rule else speak("confirm"), out.spoken(entry.reason)),
        (speak("asked of"), out.terms(entry.methods)),
        (speak("may answer") if rule else speak("what follows"), out.terms(entry.effects)),
        (speak("settings"), "; ".join(f"{key} = {value} {unit}".rstrip() for key, value, unit in entry.settings)),
        (speak("worse mistake"), out.spoken(entry.worse)),
        (speak("source"), out.spoken(entry.source)),
    )
    out.line(entry.id, "head")
    for head, text in parts:
        if text:
            out.paragraph(f"{head}: {text}", by=2, hanging=2)
    if entry.guards_people:
        guards = speak("It guards people: it gives way only to an approval on file that names it.")
        out.paragraph(guards, by=2, hanging=2)
    if entry.examples:
        out.line("  " + speak("examples"))
    for code, gives in entry.examples:
        out.paragraph(f"{code} → {gives}", by=4, hanging=2, look="dim")
    out.line()
