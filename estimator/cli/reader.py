"""The language of whoever reads the terminal: that of the command, else of the settings file; problems and last words are said in it."""

from contextvars import ContextVar

from estimator.model.languages import LANGUAGES
from estimator.model.problem import CannotGoOn
from estimator.model.say import Say

_asked: ContextVar[str] = ContextVar("asked", default="")


def reads(language: str) -> None:
    """From here on the terminal speaks this language; "" is the one of the settings file."""
    _asked.set(language)


def reader() -> str:
    """Return the reader's language; English where the settings file cannot be read."""
    from estimator.cli.own_settings import own_settings

    try:
        return _asked.get() or own_settings().language
    except CannotGoOn:
        return LANGUAGES[0]


def for_reader(text: Say | str) -> str:
    """Return a sentence in the reader's language; what is text already stands as it is."""
    if not isinstance(text, Say):
        return text
    language = reader()
    if language == LANGUAGES[0] and not text.words:
        return text.text  # as the source says it: the overview of the commands loads no catalog
    from estimator.wording.say import say

    return say(text, language)
