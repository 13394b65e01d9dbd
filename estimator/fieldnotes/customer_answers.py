"""Answers about people come in: who it is for, who wrote it, an e-mail address. What looks like a slip is asked back once."""

import re

from estimator.fieldnotes.answers import NO, OTHER_ANSWERS, Got, Known, Unread, text
from estimator.model.say import Say

NOT_NAMED = frozenset((
    "me", "myself", "i", "yo", "él", "ella", "nosotros", "el dueño", "nadie", "alguien", "la cuadrilla", "us", "we", "him", "her", "them", "he", "she", "they", "owner", "the owner", "boss", "the boss",
    "crew", "the crew", "somebody", "someone", "anybody", "nobody", "same", "ditto", "tbd", "tba", "homeowner",
))  # fmt: skip
"""Words for a person that name nobody."""
_ADDRESS = re.compile(r"[^@\s,;]+@[^@\s,;]+\.[^@\s,;.]{2,}")
_BETWEEN = re.compile(r"\s*[,;]\s*|\s+(?:and\s+)?")


def person(answer: str, key: str, known: Known) -> Got | Unread:
    """A name; a word that answers another question, an address, or no letter at all is asked back once.

    >>> from datetime import date
    >>> str(person("both", "name", Known(today=date(2026, 11, 18))).wrong)
    'is “both” a name? Write the name; the same again keeps it'
    """
    low = answer.lower().strip(' ."!')
    if (
        low in OTHER_ANSWERS or low in NOT_NAMED or not re.search(r"[^\W\d_]", low) or low[0].isdigit()
    ) and not known.insists:
        return Unread.of("is “{answer}” a name? Write the name; the same again keeps it", answer=answer)
    return text(answer, key, known)


def competent(answer: str, key: str, known: Known) -> Got | Unread:
    """Who looks after the excavation, by name; a no leaves it open, for a sheet that names nobody is no sheet."""
    if answer.lower().strip(" .!") in (*NO, "nobody"):
        return Got({key: None}, Say.of("left open: no trench or tunnel begins before a competent person is named"))
    return person(answer, key, known)


def phone(answer: str, key: str, known: Known) -> Got | Unread:
    """A number with digits in it; a no is none."""
    if answer.lower().strip(" .!") in NO:
        return Got({key: None})
    if not re.search(r"\d", answer) and not known.insists:
        return Unread.of("“{answer}” has no digits: write it like 555-0147; the same again keeps it", answer=answer)
    return text(answer, key, known)


def email(answer: str, key: str, known: Known) -> Got | Unread:
    """One address or several; what has no `@` and no dot behind it is asked back once. A no is none."""
    if answer.lower().strip(" .!") in NO:
        return Got({key: None})
    parts = [part for part in _BETWEEN.split(answer.strip(' "')) if part]
    if not known.insists and not (parts and all(map(_ADDRESS.fullmatch, parts))):
        return Unread.of(
            "“{answer}” is no e-mail address: write it like wren@example.com; the same again keeps it", answer=answer
        )
    return text(answer, key, known)
