"""A word nobody knows and those that are known in, the one that is probably meant out."""

from estimator.model.say import Say


def nearest(word: str, known: tuple[str, ...]) -> Say | str:
    """A question for the word that is probably meant, or nothing.

    >>> str(nearest("rooots", ("roots", "hole")))
    'Did you mean “roots”?'
    """
    from difflib import get_close_matches

    close = get_close_matches(word, known, n=1, cutoff=0.6)
    return Say.of("Did you mean “{word}”?", word=close[0]) if close else ""
