"""The demo's answers in, pictures of a terminal 80 columns wide out: `python -m estimator.cli.pictures docs/pictures`."""

import io
import sys
from collections.abc import Iterable
from html import escape
from importlib.resources import as_file, files
from pathlib import Path

from rich.console import Console
from rich.terminal_theme import TerminalTheme
from rich.text import Text

from estimator import demo
from estimator.cli.commands.compare import compared_with
from estimator.cli.diagnosed_job import diagnosed
from estimator.cli.priced_job import priced
from estimator.cli.views.check import write_check
from estimator.cli.views.compare import write_comparison
from estimator.cli.views.explain import write_line
from estimator.cli.views.layout import Layout
from estimator.cli.views.options import write_options
from estimator.cli.views.screen import STYLES, Row

COLUMNS = 80
PAPER = TerminalTheme((255, 255, 255), (32, 33, 36), [(32, 33, 36), (176, 0, 32), (0, 110, 50), *[(32, 33, 36)] * 5])
"""Dark on white, as a page is printed; red and green are dark enough to be read on it."""
FRAME = """<svg viewBox="-12 0 1018 {height}" xmlns="http://www.w3.org/2000/svg">
    <style>
    .{unique_id}-matrix {{ font-family: ui-monospace, monospace; font-size: {char_height}px; }}
    {styles}
    </style>
    <defs><clipPath id="{unique_id}-clip-terminal">
    <rect x="0" y="0" width="{terminal_width}" height="{terminal_height}"/>
    </clipPath>{lines}</defs>
    <rect x="-11" y="1" width="1016" height="99.8%" rx="6" fill="#ffffff" stroke="#9aa0a6"/>
    <text class="{unique_id}-matrix" x="9" y="26" fill="#5f6368">$ TITLE</text>
    <g transform="translate({terminal_x}, {terminal_y})" clip-path="url(#{unique_id}-clip-terminal)">
    {backgrounds}
    <g class="{unique_id}-matrix">
    {matrix}
    </g></g>
</svg>
"""
"""A sheet with the words typed on top and the answer under them."""


def pictures() -> dict[str, str]:
    """An SVG for each of check, options, compare and explain on the demo's notes, by name."""
    with as_file(files(demo) / demo.FILES[0]) as job:
        looked = diagnosed(job, None)
        if looked.job is None:
            return {}
        run = priced(job, None)
        found, read, even = compared_with(job, None, None, None, "main", None)
        shown = {words: Layout(columns=COLUMNS) for words in ("check", "options", "compare --line main", "explain A5")}
        check, options, compare, explain = shown.values()
        write_check(check, looked.job, looked.diagnosis)
        write_options(options, run.quote)
        write_comparison(compare, found, read, even)
        write_line(explain, run.quote, "A5", run.tables)
    return {words.split()[0]: picture(f"estimator {words}", out.rows) for words, out in shown.items()}


def picture(title: str, rows: Iterable[Row]) -> str:
    """The rows as a terminal would show them; fonts are the reader's own, nothing is fetched."""
    console = Console(
        record=True, width=COLUMNS, file=io.StringIO(), force_terminal=True, markup=False, highlight=False
    )
    for row in rows:
        console.print(Text(row.text, style=STYLES.get(row.look, "")))
    svg = console.export_svg(unique_id="terminal", code_format=FRAME.replace("TITLE", escape(title)), theme=PAPER)
    return svg.replace("<text ", '<text xml:space="preserve" ')  # or some viewers drop the blanks a row begins with


if __name__ == "__main__":
    folder = Path(sys.argv[1])
    folder.mkdir(parents=True, exist_ok=True)
    for name, svg in pictures().items():
        (folder / f"{name}.svg").write_text(svg, encoding="utf-8")
