"""A word of the lexicon in; the thing it may begin, out."""

from typing import TYPE_CHECKING

from estimator.fieldnotes.drafts import Draft
from estimator.fieldnotes.lexicon import lexicon
from estimator.fieldnotes.words import ALL_SIGNS, GRADE_WORDS, SIDES, standard_word

if TYPE_CHECKING:
    from estimator.fieldnotes.understand import Reader


def _draft(r: "Reader", n: int, words: str) -> Draft:
    """A draft of standard words such as `roots severe` or `sag, lens under`."""
    text, word = words.replace(",", " ").split(), standard_word(words)
    draft = Draft(word, n, r.clause[n] if n < len(r.clause) else 0)
    rest = " ".join(text[len(word.split()) :])
    for sign in sorted(ALL_SIGNS, key=len, reverse=True):
        if sign in rest:
            draft.signs.append(sign)
            rest = rest.replace(sign, " ")
    for token in rest.split():
        if token in GRADE_WORDS:
            draft.grade = token
        elif token in SIDES:
            draft.direction = token
        elif token == "suspected":
            draft.doubt = True
        else:
            draft.choice = f"{draft.choice} {token}".strip()
    return draft


def _asked(r: "Reader", name: str) -> None:
    ask = lexicon().asks[name]
    r.ask.append((ask.question, ask.choices))


EITHER = ("room", "side", "zone", "surface", "place", "utility")


def either(r: "Reader") -> tuple[str, str] | None:
    """`kitchen or laundry`: two of a kind with an or between."""
    for n in r.where("or"):
        if 0 < n < len(r.atoms) - 1:
            one, other = r.atoms[n - 1], r.atoms[n + 1]
            if any(c in one.means and c in other.means and one.means[c] != other.means[c] for c in EITHER):
                return one.text, other.text
    return None
