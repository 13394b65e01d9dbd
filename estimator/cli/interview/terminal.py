"""Words to say in, lines typed out: a terminal with its history, or a pipe, which is answered just the same."""

import contextlib
import sys
from collections.abc import Iterable

from estimator.cli.reader import for_reader
from estimator.cli.views.screen import Row, drawable, show, width
from estimator.cli.views.table import cells_wide, folded
from estimator.model.say import Say


class Terminal:
    """Asks on stdin, says on stdout."""

    def __init__(self) -> None:
        self.live = sys.stdin.isatty() and sys.stdout.isatty()
        with contextlib.suppress(AttributeError, ValueError):
            sys.stdin.reconfigure(errors="replace")  # type: ignore[union-attr]
        if self.live:
            with contextlib.suppress(ImportError):
                import readline  # noqa: F401  history and editing for input(), where the system has it

    @property
    def columns(self) -> int:
        return width()

    def ask(self, prompt: Say | str) -> str | None:
        """The line typed, without its end; None when there is no more. Errors: KeyboardInterrupt for Ctrl-C."""
        prompt = drawable(for_reader(prompt), sys.stdout)
        if self.live:
            try:
                return input(prompt)
            except EOFError:
                print()
                return None
        sys.stdout.write(prompt)
        line = sys.stdin.readline()
        sys.stdout.write(drawable(line.rstrip("\r\n"), sys.stdout) + "\n")
        sys.stdout.flush()
        return line.rstrip("\r\n") if line else None

    def say(self, rows: Iterable[Row | str]) -> None:
        show(rows)
        sys.stdout.flush()

    def tell(self, text: Say | str, look: str = "") -> None:
        """A sentence, set in by two, folded where it is too long."""
        self.say(Row("  " + line, look) for line in folded(for_reader(text), self.columns - 2))

    def question(self, text: Say | str, default: str) -> str | None:
        """A question on one line with its answer where that fits, else above it."""
        text = for_reader(text)
        prompt = f"{text} [{default}]: " if default else f"{text} " if text.endswith("?") else f"{text}: "
        if cells_wide(prompt) <= self.columns * 2 // 3:
            return self.ask(prompt)
        self.say(folded(text, self.columns))
        return self.ask(f"  [{default}]: " if default else "  : ")
