"""A function of frozen records in, or a method of one; the same, which works out each answer once, out."""

from collections.abc import Callable, Hashable
from functools import wraps
from typing import Concatenate, ParamSpec, TypeVar, cast

P = ParamSpec("P")
R = TypeVar("R")
S = TypeVar("S")
MOST = 2000
"""So many answers are kept; then all are let go, so that a run over thousands of jobs holds no more."""


def remembered(function: Callable[P, R]) -> Callable[P, R]:
    """Return the function with its answers kept by which records it was given, not by what they hold: records never change.

    >>> asked = []
    >>> double = remembered(lambda word: asked.append(word) or word * 2)
    >>> word = "drain"
    >>> double(word), double(word), asked
    ('draindrain', 'draindrain', ['drain'])
    """

    def which(*records: P.args, **none: P.kwargs) -> Hashable:
        return tuple(map(id, records))

    return remembered_by(which)(function)


def remembered_by(by: Callable[P, Hashable]) -> Callable[[Callable[P, R]], Callable[P, R]]:
    """Return what makes a function keep its answers under what `by` says of its records: all that they hang on.

    >>> @remembered_by(lambda word: word.lower())
    ... def length(word): print("counted"); return len(word)
    >>> length("Drain"), length("drain")
    counted
    (5, 5)
    """

    def keeping(function: Callable[P, R]) -> Callable[P, R]:
        known: dict[Hashable, tuple[object, R]] = {}  # with the records, so that no id in a key is given again

        @wraps(function)
        def ask(*records: P.args, **none: P.kwargs) -> R:
            key = by(*records, **none)
            answered = known.get(key)
            if answered is None:
                if len(known) >= MOST:
                    known.clear()
                answered = known[key] = records, function(*records, **none)
            return answered[1]

        return ask

    return keeping


def answered_once(method: Callable[Concatenate[S, P], R]) -> Callable[Concatenate[S, P], R]:
    """Return a method of what never changes with its answers kept beside it, by what it was asked.

    >>> class Line:
    ...     @answered_once
    ...     def zone(self, at): print("looked"); return "yard"
    >>> line = Line()
    >>> line.zone(3.0), line.zone(3.0)
    looked
    ('yard', 'yard')
    """
    name = method.__name__

    @wraps(method)
    def ask(self: S, *words: P.args, **none: P.kwargs) -> R:
        known: dict[tuple[object, ...], R] = self.__dict__.setdefault("answered", {}).setdefault(name, {})
        if words not in known:
            known[words] = method(self, *words, **none)
        return known[words]

    return cast(Callable[Concatenate[S, P], R], ask)
