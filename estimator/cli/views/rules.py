"""Rules looked up in, the lines of a terminal out: all in a line each, or one told whole."""

from collections.abc import Sequence

from estimator.cli.rule_book import Entry
from estimator.cli.views.screen import Row
from estimator.cli.views.table import folded, indented, table
from estimator.cli.views.vocabulary import term
from estimator.cli.views.words import ENGLISH
from estimator.wording.say import speaker, spoken

TABLE_FROM = 80  # columns: in a narrower window what a rule says stands under its name


def rows(found: Sequence[Entry], whole: bool, columns: int, language: str = ENGLISH) -> list[Row]:
    if whole:
        return [row for entry in found for row in _whole(entry, columns, language)]
    speak = speaker(language)
    cells = [(entry.id, says(entry, language)) for entry in found]
    lines = (
        table((speak("rule"), speak("what it says")), cells, columns)
        if columns >= TABLE_FROM
        else [line for name, text in cells for line in (*folded(name, columns), *indented(text, columns))]
    )
    example = speak("One of them whole: {example}", example="estimator rules lining-keeps-the-grade")
    return [*map(Row, lines), Row(""), *(Row(line, "dim") for line in folded(example, columns))]


def says(entry: Entry, language: str) -> str:
    """A rule's statement; of a reading what is seen, and what it means."""
    return ": ".join(spoken(part, language) for part in entry.parts)


def _whole(entry: Entry, columns: int, language: str) -> list[Row]:
    speak = speaker(language)
    guards = (
        speak("It guards people: it gives way only to an approval on file that names it.")
        if entry.guards_people
        else ""
    )
    settings = [f"{key} = {value} {unit}".rstrip() for key, value, unit in entry.settings]
    rule = entry.kind == "rule"
    parts: tuple[tuple[str, str], ...] = (
        (speak("says"), says(entry, language)),
        (speak("why") if rule else speak("confirm"), spoken(entry.reason, language)),
        (speak("asked of"), ", ".join(term(method, language) for method in entry.methods)),
        (speak("may answer") if rule else speak("what follows"), ", ".join(term(e, language) for e in entry.effects)),
        (speak("settings"), "; ".join(settings)),
        (speak("worse mistake"), spoken(entry.worse, language)),
        (speak("source"), spoken(entry.source, language)),
        ("", guards),
    )
    out = [Row(entry.id, "head")]
    out += [Row(line) for head, text in parts if text for line in _part(head, text, columns)]
    if entry.examples:
        out.append(Row("  " + speak("examples")))
    for code, gives in entry.examples:
        out += [Row(line, "dim") for line in indented(f"{code} → {gives}", columns, by=4, hanging=2)]
    return [*out, Row("")]


def _part(head: str, text: str, columns: int) -> list[str]:
    return indented(f"{head}: {text}" if head else text, columns, by=2, hanging=2)
