"""Short ways to declare a problem beside the code that raises it."""

from estimator.model.problem import Kind, Level


def error(code: str, wrong: str, write: str, why: str = "") -> Kind:
    return Kind(code, Level.ERROR, wrong, write, why)


def warning(code: str, wrong: str, write: str, why: str = "") -> Kind:
    return Kind(code, Level.WARNING, wrong, write, why)


def question(code: str, wrong: str, write: str, why: str = "") -> Kind:
    return Kind(code, Level.QUESTION, wrong, write, why)


def nearest(word: str, known: tuple[str, ...]) -> str:
    """` Nearest known: x.` or nothing, to hang on a sentence.

    >>> nearest("rooots", ("roots", "hole"))
    ' Did you mean “roots”?'
    """
    from difflib import get_close_matches

    close = get_close_matches(word, known, n=1, cutoff=0.6)
    return f" Did you mean “{close[0]}”?" if close else ""
