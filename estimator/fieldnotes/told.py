"""A word of a line and the standard words it was read as, in; whether these tell it, out."""

import re

from estimator.fieldnotes.atoms import Atom
from estimator.fieldnotes.words import standard_word

TOLD = {
    "grade": r"^(?!.*(?:light|moderate|severe)).*(?:%|\din\b|hair)",
    "rises": "sag|water", "out of water": "sag|water", "fraction": "%|full", "coin": r"\din\b",
    "reach": r"\b(?:end|stop|pipe)\b", "cable end": r"\b(?:end|stop|cannot pass)\b", "stop": r"\b(?:end|stop|cannot pass)\b",
    "end": r"\b(?:end|stop)\b", "cleaned": "clean", "danger": "utility", "sign": r"\b(?:end|stop)\b",
    "flow": r"\b(?:end|stop|reverse|sag|backfall)\b",
}  # fmt: skip
"""How the rows tell a word of a class, where not by its own meaning."""
LIVE_TOLD = {"live": "live|proven", "dead": "dead|capped", "proven": "proven|live", "not proven": "proven"}
PARTS_TOLD = {
    "top": r"\bup\b|at (?:1[0-2]|[12])\b|sag.*grease|grease.*sag",
    "bottom": r"\bdown\b|at [4-8]\b|sag|channel|mud|fall|invert",
}
SIDES_TOLD = {
    "left": r"\bleft\b|at (?:[789]|1[01])\b", "right": r"\bright\b|at [1-5]\b", "up": r"\bup\b|at (?:1[0-2]|[12])\b",
    "down": r"\bdown\b|at [4-8]\b|sag|channel|mud|reverse fall",
}  # fmt: skip
WATER_TOLD = re.compile(r"sag|leak|water|flows|live|proven|blocked|fall")
BROUGHT = re.compile(r"\b(?:hole|gap|crack|offset|channel|collapse|broken|gone|down)\b")
WHOLE_TOLD = {
    ("part", "pipe"): re.compile(""), ("part", "joint"): re.compile(r"\b(?:offset|gap|joint|broken)\b"), ("part", "bottom"): WATER_TOLD,
    ("part", "piece"): re.compile(r"\bhole\b"), ("unclear", "gravel"): re.compile("soil seen|washing|mud"),
    ("place", "depth"): re.compile(r"\b(?:loc|depth|pothole|invert|deep)\b|in\b"), ("place", "branch"): re.compile("intruding"),
    ("zone", "edge"): re.compile(r"\b(?:slab|yard|basement|crawl)\b"), ("surface", "floor"): re.compile(r"\bslab\b"),
    ("unclear", "footing"): re.compile(r"\b(?:slab|yard)\b"), ("surface", "slab top"): re.compile("from slab"),
}  # fmt: skip
"""How the rows tell a meaning that has another word in them."""


def told_whole(a: Atom, told: str) -> bool:
    """Return whether the rows tell a meaning of a word that has another word in them, or by its own."""
    brought = "state" in a.means and bool(BROUGHT.search(told))
    return (
        brought
        or told_by(a, told)
        or any(way.search(told) for pair, way in WHOLE_TOLD.items() if pair in a.means.items())
    )


def told_by(a: Atom, told: str) -> bool:
    """Whether the rows tell one of the meanings of a word."""
    if "side" in a.means and not {"grade", "place", "part"} & a.means.keys():
        return bool(re.search(SIDES_TOLD.get(a.means["side"], a.means["side"]), told))
    if a.means.get("part") in PARTS_TOLD and re.search(PARTS_TOLD[a.means["part"]], told):
        return True
    if "live" in a.means and re.search(LIVE_TOLD[a.means["live"]], told):
        return True
    own = any(m in told or standard_word(m) in told for m in a.means.values())
    return own or any(re.search(TOLD[c], told) for c in TOLD.keys() & a.means.keys())
