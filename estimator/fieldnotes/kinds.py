"""Short ways to declare a problem beside the code that raises it."""

from estimator.model.problem import Kind, Level
from estimator.model.say import Say


def error(code: str, wrong: str, write: str, why: str = "") -> Kind:
    return Kind(code, Level.ERROR, wrong, write, why)


def warning(code: str, wrong: str, write: str, why: str = "") -> Kind:
    return Kind(code, Level.WARNING, wrong, write, why)


def question(code: str, wrong: str, write: str, why: str = "") -> Kind:
    return Kind(code, Level.QUESTION, wrong, write, why)


def nearest(word: str, known: tuple[str, ...]) -> Say | str:
    """A question for the word that is probably meant, or nothing.

    >>> str(nearest("rooots", ("roots", "hole")))
    'Did you mean “roots”?'
    """
    from difflib import get_close_matches

    close = get_close_matches(word, known, n=1, cutoff=0.6)
    return Say.of("Did you mean “{word}”?", word=close[0]) if close else ""
