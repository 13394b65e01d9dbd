"""A command's help in; the same in the reader's language out. The command line library's own words among them."""

import re
from collections.abc import Sequence
from itertools import pairwise
from typing import Any

from typer.core import TyperCommand, TyperGroup

from estimator.cli.reader import for_reader, reads
from estimator.model.languages import LANGUAGES
from estimator.model.say import Say

OF_THE_LIBRARY: tuple[tuple[re.Pattern[str], Say], ...] = (
    (re.compile(r"^Usage:", re.MULTILINE), Say.of("Usage:")),
    (re.compile(r"^Options:$", re.MULTILINE), Say.of("Options:")),
    (re.compile(r"^Arguments:$", re.MULTILINE), Say.of("Arguments:")),
    (re.compile(r"^Commands:$", re.MULTILINE), Say.of("Commands:")),
    (re.compile(r"^Example:$|^  Example:$", re.MULTILINE), Say.of("Example:")),
    (re.compile(r"\[required\]"), Say.of("[required]")),
    (re.compile(r"\[default: "), Say.of("[default:")),
)
"""Words the library puts between ours."""
OPTION_WORDS = (
    Say.of("Show this message and exit."),
    Say.of("Install completion for the current shell."),
    Say.of("Show completion for the current shell, to copy it or customize the installation."),
)
"""Helps of the library's own options."""


def set_language(words: Sequence[str]) -> None:
    """The language named among the words of the command line, for help, which comes before a command reads them."""
    named = next((after for word, after in pairwise(words) if word == "--language"), "")
    named = next((word.partition("=")[2] for word in words if word.startswith("--language=")), named)
    reads(named if named in LANGUAGES else "")


def in_words(text: str) -> str:
    """A help text in the reader's language."""
    return for_reader(Say(text=text)) if text else text


class _Translated:
    """A command whose help is told in the reader's language."""

    def get_help(self, ctx: Any) -> str:
        for taken in self.get_params(ctx):  # type: ignore[attr-defined]
            if getattr(taken, "help", None):
                taken.help = in_words(taken.help)
        text: str = super().get_help(ctx)  # type: ignore[misc]
        for pattern, word in OF_THE_LIBRARY:
            text = pattern.sub(lambda m, word=word: m[0].replace(m[0].strip(), in_words(word.text)), text)  # type: ignore[misc]
        return text


class TranslatedCommand(_Translated, TyperCommand):
    """One command."""


class TranslatedGroup(_Translated, TyperGroup):
    """Several commands."""
