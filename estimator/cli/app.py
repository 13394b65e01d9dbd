"""The words typed in, the program out: only the command that was asked for is imported, the others are named."""

import os
from collections.abc import Callable, Sequence
from importlib import import_module

import typer

from estimator.cli.command_list import COMMANDS, GROUPS, Entry
from estimator.cli.guard import guarded
from estimator.cli.help_text import TranslatedCommand, TranslatedGroup, in_words, set_language
from estimator.model.say import Say

ABOUT = Say.of("From a filmed drain to a quote that can be signed.")
MORE = Say.of(
    "Exit codes: 0 done; 1 something to mend in the inputs; 2 wrong command line; 3 a fault of the program. "
    "`estimator --version` says which program this is; "
    "`estimator --install-completion` teaches your shell its words."
)


def build(words: Sequence[str]) -> typer.Typer:
    """The program for these words; with no words, or for shell completion, every command is there by name."""
    asked = _completed() or words
    set_language(words)
    app = _new(in_words(ABOUT.text) + "\n\n" + in_words(MORE.text), completion=asked is not words or _teaches(words))
    groups = {name: _new(in_words(about.text)) for name, about in GROUPS.items()}
    for entry in COMMANDS:
        owner = groups.get(entry.group, app)
        owner.command(entry.name, cls=TranslatedCommand, help=_help(entry), short_help=in_words(entry.line))(
            _function(entry, asked)
        )
    for name, group in groups.items():
        app.add_typer(group, name=name, help=in_words(GROUPS[name].text))
    return app


def _completed() -> Sequence[str]:
    """The words that a shell wants to go on with; none when it only runs the program."""
    if not any(name.endswith("_COMPLETE") for name in os.environ):
        return ()
    typed = os.environ.get("COMP_WORDS") or os.environ.get("_TYPER_COMPLETE_ARGS") or " "
    return [*typed.split(), " "]


def _teaches(words: Sequence[str]) -> bool:
    return any(word.endswith("-completion") for word in words)


def build_whole() -> typer.Typer:
    """The program with every command imported, for the printed page of commands."""
    return build([word for entry in COMMANDS for word in (entry.group, entry.name)])


def _new(about: str, completion: bool = False) -> typer.Typer:
    return typer.Typer(
        cls=TranslatedGroup,
        help=about,
        no_args_is_help=True,
        rich_markup_mode=None,
        pretty_exceptions_enable=False,
        add_completion=completion,
    )


def _help(entry: Entry) -> str:
    return f"{in_words(entry.line)}\n\n\b\nExample:\n  {entry.example}"


def _function(entry: Entry, words: Sequence[str]) -> Callable[..., None]:
    """The command itself when it is asked for, else a stand-in that only has a name."""
    asked = entry.name in words and (not entry.group or entry.group in words)
    if asked:
        return guarded(import_module(entry.module).command)
    return lambda: None
