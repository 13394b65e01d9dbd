"""Rules looked up in, the lines of a terminal out: all in a line each, or one told whole."""

from collections.abc import Sequence

from estimator.cli.rule_book import Entry
from estimator.cli.views.screen import Row
from estimator.cli.views.table import indented, table


def rows(found: Sequence[Entry], whole: bool, columns: int) -> list[Row]:
    if whole:
        return [row for entry in found for row in _whole(entry, columns)]
    cells = [(entry.id, ", ".join(entry.numbers), entry.statement) for entry in found]
    lines = table(("rule", "no.", "what it says"), cells, columns)
    return [*map(Row, lines), Row(""), Row("One of them whole: estimator rules lining-keeps-the-grade", "dim")]


def _whole(entry: Entry, columns: int) -> list[Row]:
    guards = "It guards people: it gives way only to an approval on file that names it." if entry.guards_people else ""
    settings = [f"{key} = {value} {unit}".rstrip() for key, value, unit in entry.settings]
    parts: tuple[tuple[str, str], ...] = (
        ("says", entry.statement),
        ("why" if entry.kind == "rule" else "confirm", entry.reason),
        ("asked of", ", ".join(entry.methods)),
        ("may answer" if entry.kind == "rule" else "what follows", ", ".join(entry.effects)),
        ("settings", "; ".join(settings)),
        ("worse mistake", entry.worse),
        ("source", entry.source),
        ("", guards),
    )
    out = [Row(" ".join((entry.id, *entry.numbers)), "head")]
    out += [Row(line) for head, text in parts if text for line in _part(head, text, columns)]
    if entry.examples:
        out.append(Row("  examples"))
    for code, gives in entry.examples:
        out += [Row(line, "dim") for line in indented(f"{code} → {gives}", columns, by=4, hanging=2)]
    return [*out, Row("")]


def _part(head: str, text: str, columns: int) -> list[str]:
    return indented(f"{head}: {text}" if head else text, columns, by=2, hanging=2)
