"""Answers about what lies in a slab and along its edge come in: proof of no tendons, the edge beam. Values go out."""

import re

from estimator.fieldnotes.answers import Got, Known, Unread, length_words, text, words_like
from estimator.fieldnotes.tendon_proof import why_no_proof
from estimator.model.lengths import parse_length, plain_marks
from estimator.model.say import Say

IN_SLAB = ("nothing", "ducts", "conduit", "unknown")
NOBODY_KNOWS = (
    "unknown", "?", "not sure", "no idea", "nothing", "no", "none", "nobody knows", "n", "dont know", "don't know",
)  # fmt: skip
_RUNS_IN_SLAB = re.compile(
    r"\b(?:air|cables?|conduits?|copper|drains?|ducts?|electric\w*|gas|heat\w*|hoses?|hydronic|irrigation|lines?|mesh|pex|"
    r"phone|pipes?|piping|plumbing|post.?tension\w*|power|radiant|rebar|refrigerant|sewer|speakers?|sprinklers?|steel|tendons?|"
    r"tub(?:e|es|ing)|vacuum|vents?|water|wir(?:e|es|ing))\b",
    re.IGNORECASE,
)
_in_slab = words_like(IN_SLAB)
_NONE_BY = re.compile(r"none\s*[,:;]\s*(?=\S)", re.IGNORECASE)
_SIZE = r"(.+?)\s*{}\b"
_DEEP_WIDE, _WIDE_DEEP = (
    re.compile(_SIZE.format(first) + r"[\s,]*(?:and\s+|by\s+|x\s*)?" + _SIZE.format(second), re.IGNORECASE)
    for first, second in (("deep", "wide"), ("wide", "deep"))
)
_BARE_PAIR = re.compile(
    r"(\d{1,3}(?:\.\d+)?)\s*(?:in|\")?\s*(?:x|by)\s*(\d{1,3}(?:\.\d+)?)\s*(?:in|\")?", re.IGNORECASE
)


def proof_of_no_tendons(answer: str, key: str, known: Known) -> Got | Unread:
    """The paper that shows it; where nobody knows, the slab stays one that may have them. Anything else is asked back.

    >>> from datetime import date
    >>> today = Known(today=date(2026, 11, 18))
    >>> proof_of_no_tendons("engineer's drawing", "tendons", today).values
    {'tendons': "none, engineer's drawing"}
    >>> proof_of_no_tendons("nothing", "tendons", today).values
    {'tendons': 'unknown'}
    >>> proof_of_no_tendons("scan ordered", "tendons", today).wrong.text
    'that leaves it open; write only which paper shows that it has none, once you have it'
    """
    low = answer.lower().strip(" .!")
    if low in NOBODY_KNOWS:
        return Got(
            {key: "unknown"}, Say.of("then it may have tendons: no floor is cut before a scan and an engineer's letter")
        )
    proof = _NONE_BY.sub("", answer).strip()
    if wrong := why_no_proof(proof):
        return Unread(wrong)
    return Got({key: f"none, {proof}"}, Say.typed("no tendons, by {proof}", proof=proof))


def edge_beam(answer: str, key: str, known: Known) -> Got | Unread:
    """`24in deep 12in wide`, `none` where the edge was uncovered; a bare pair of numbers is asked back."""
    low = answer.lower().strip(" .!")
    if low == "none":
        return Got({key: "none"}, Say.of("no beam along the edge, as somebody saw it uncovered"))
    if low in NOBODY_KNOWS:
        return Got({key: None}, Say.of("left open: an engineer first, and no fixed price, for digging under the edge"))
    plain = plain_marks(answer).strip()
    if pair := _BARE_PAIR.fullmatch(plain):
        return Unread.of("which is the depth below the slab's top", offer=f"{pair[1]}in deep {pair[2]}in wide")
    deep_wide, wide_deep = _DEEP_WIDE.fullmatch(plain), _WIDE_DEEP.fullmatch(plain)
    parts = deep_wide.groups() if deep_wide else wide_deep.groups()[::-1] if wide_deep else ()
    feet = [size for part in parts if isinstance(size := parse_length(part, "in"), float) and size > 0]
    if len(feet) != 2:
        return Unread.of(
            "write how deep below the slab's top and how wide: 24in deep 12in wide; or none, where you saw that there is none"
        )
    said = " ".join(
        f"{length_words(part, size, 'in')} {way}" for part, size, way in zip(parts, feet, ("deep", "wide"), strict=True)
    )
    return Got({key: said}, said)


def runs_in_slab(answer: str, key: str, known: Known) -> Got | Unread:
    """One of the known things, or words that name something that runs in a slab; other words are asked back once.

    After a slip `nothing` is never offered: Enter would say what nobody saw.
    """
    got = _in_slab(answer, key, known)
    if isinstance(got, Got) and got.values[key] in IN_SLAB:
        return got
    if known.insists or _RUNS_IN_SLAB.search(answer):
        return text(answer, key, known)
    if isinstance(got, Unread) and got.offer not in ("nothing", ""):
        return got
    return Unread.of(
        "does “{answer}” run in the slab? Such as ducts, conduit, gas, heating; or nothing, only where somebody looked. The same again keeps it",
        answer=answer,
    )
