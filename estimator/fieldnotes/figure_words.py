"""A number with the words around it in; what it measures, out."""

import re
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from estimator.fieldnotes.understand import Reader
from estimator.fieldnotes.deep import is_depth
from estimator.fieldnotes.numbers_of_a_line import SIZES_IN, Numbers, _ft

TOOLS = frozenset((
    "reel", "cable", "hose", "blade", "cutter", "head", "nozzle", "bit", "knife", "cutters", "blades", "chain", "jet head",
    "root saw", "c cutter",
))  # fmt: skip
COUNTED_OTHERWISE = frozenset((
    "men", "guys", "hrs", "hours", "hour", "min", "mins", "minutes", "psi", "gpm", "am", "pm", "days", "day",
    "years", "yrs", "yr", "year", "x", "times", "man", "techs", "gal", "gallon", "gallons", "lb", "lbs", "volt",
    "volts", "amp", "amps", "dollars", "bucks", "sqft", "watts", "rpm", "mph", "miles", "mi", "people", "story",
    "stories", "units", "cars", "trips", "anos", "horas", "oclock am",
))  # fmt: skip
"""What a number before it counts that is neither a place nor an amount in the pipe."""


def _in_words(r: "Reader", n: int, out: Numbers, take) -> bool:  # type: ignore[no-untyped-def]
    """Numbers with a word beside them that says what they are."""
    t = r.atoms[n].token
    assert t is not None
    before, before2, after, _after2 = r.text(n - 1), r.text(n - 2), r.text(n + 1), r.text(n + 2)
    a1 = r.atoms[n + 1].means if n + 1 < len(r.atoms) else {}
    b1 = r.atoms[n - 1].means if n > 0 else {}
    length = t.kind in ("ft", "in", "num")

    def aside() -> bool:
        r.aside.add(n)
        take(n, n + 1)
        return True

    every2 = n > 1 and r.atoms[n - 2].means.get("place") == "every"
    if length and (b1.get("place") == "every" or (every2 and before in ("about", "bout", "abt"))):
        out.every_ft = t.value if t.kind != "in" else t.value / 12
        take(n, n - 1)
        if "part" in a1:
            r.used.add(n + 1)
        return True
    others = any(k != n for k, _ in r.readings())
    if (
        others
        and t.kind == "ft"
        and a1.get("part") in ("joint", "piece", "pipe")
        and after not in ("pipe", "line", "wall")
    ) or (t.kind == "ft" and after in ("lengths", "sections", "sticks")):
        out.every_ft = t.value
        take(n)
        return True
    if (
        length
        and (
            before in ("for", "next", "por", "another", "runs", "about a")
            or (before in ("about", "bout", "abt", "approx", "the next", "roughly") and before2 in ("for", "next"))
        )
        and t.kind in ("ft", "num")
    ):
        out.long_ft = t.value
        r.aside.add(n)
        take(n, n - 1)
        return True
    if (
        length
        and (
            after in ("long", "in length", "de largo", "length", "largo", "run of", "stretch", "worth")
            or (after in ("of", "section", "de", "stretch of", "run of") and t.kind == "ft" and not t.point and n > 0)
            or (after == "run")
        )
        and t.kind in ("ft", "num")
    ):
        out.long_ft = t.value
        return aside()
    if t.kind == "in" and after in ("long", "in length", "de largo") and r.has("finding", "crack"):
        return aside()  # not how far it is open
    if (t.kind == "in" or after in ("reel", "cable", "hose") or (others and t.kind == "num")) and after in TOOLS:
        out.tool = after not in ("reel", "cable", "hose")
        return aside()
    if a1.get("part") == "coupling" and t.kind == "num" and t.value <= 4 and not t.point and n > 0:
        return aside()
    if (
        "material" in a1
        and t.kind == "num"
        and not t.point
        and t.value in SIZES_IN
        and n
        and others
        and r.has("change")
    ):
        out.inches.append((n, t.value))  # `8 transition 4 pvc to 4 ci`
        take(n)
        return True
    if _counts(r, n):
        out.count = (n, int(t.value))
        take(n)
        return True
    if after in COUNTED_OTHERWISE:
        return aside()
    if "riser" in a1.get("run", "") or "riser" in b1.get("run", "") or (before in ("is", "of") and before2 == "riser"):
        r.aside.add(n)
        out.riser_ft = t.value / 12 if t.kind == "in" else t.value
        take(n, n + 1 if "run" in a1 else n - 1)
        return True
    utility = r.has("utility") or r.has("unclear", "water line")
    if r.has("place", "tree") or r.has("place", "crossing") or utility or r.has("unclear", "footing"):
        passing = (utility or r.has("place", "crossing")) and not r.has("place", "tree")
        if length and ("away" in a1 or after in ("away", "off", "from")) and not (passing and "above" in a1):
            out.lengths.append(("away", _ft(t)))
            take(n, n + 1)
            return True
        told = t.kind in ("in", "ft") or (t.kind == "num" and bool({"above", "below"} & a1.keys()))
        if (utility or r.has("place", "crossing")) and told:
            label = next((lab for lab in ("above", "below") if any(lab in a.means for a in r.atoms)), "")
            if any(
                w in r.words().split() for w in ("above", "over", "encima", "sobre", "up", "top", "overhead", "arriba")
            ):
                label = "above"
            elif any(w in r.words().split() for w in ("below", "under", "underneath", "beneath", "debajo")):
                label = "below"
            if label:
                out.lengths.append((label, _ft(t, bare_in=t.value >= 4)))
                take(n)
                return True
    if (r.has("place", "beam") or r.has("unclear", "footing")) and length:
        labels = ("deep", "d", "tall", "high", "hondo", "dp"), ("wide", "w", "ancho", "thick", "across")
        if after in labels[0] or (before in ("deep", "depth") and t.kind != "num" and after not in labels[1]):
            out.lengths.append(("deep", _ft(t, bare_in=t.value >= 4)))
            take(n, n + 1)
            return True
        if after in labels[1]:
            out.lengths.append(("wide", _ft(t, bare_in=t.value >= 4)))
            take(n, n + 1)
            return True
    if (
        r.has("zone", "crawl")
        and length
        and after in ("clearance", "high", "tall", "clear", "headroom", "height", "of clearance")
    ):
        out.lengths.append(("", _ft(t)))
        take(n, n + 1)
        return True
    feet_inches = t.kind == "range" and t.tight and (t.to or 12.0) < 12
    if (
        (length or feet_inches)
        and (t.kind != "in" or r.has("place", "loc"))
        and (anchor := _anchor(r, n))
        and (_beside(r, n, anchor[0], out) or not r.surface_follows(n))
    ):
        k, name = anchor
        out.tapes.append((t.value + (t.to or 0.0) / 12 if feet_inches else _ft(t), name))
        take(*range(n, k + 1))
        return True
    if length and out.depth is None and is_depth(r, n):
        out.depth = (n, t.value / 12 if t.kind == "in" else t.value)
        take(n)
        for k in range(n + 1, min(n + 4, len(r.atoms))):
            means = r.atoms[k].means
            if r.number(k) or means.get("place") == "loc":
                break
            if means.get("place") == "depth" or "from surface" in means or "surface" in means or "plain" in means:
                r.used.add(k)
            else:
                break
        return True
    return False


COUNTED = ("joints", "jts", "places", "spots", "juntas", "lugares", "jt s")
MOST_COUNTED = 12


def _counts(r: "Reader", n: int) -> bool:
    """`2 holes 33 1in each`, `roots 6 joints 20%`: how many of them there are."""
    t, after, near = r.number(n), r.text(n + 1), r.atoms[n + 1].means if n + 1 < len(r.atoms) else {}
    if t is None or t.kind != "num" or t.point or not r.readings()[1:]:
        return False
    if n and {"at", "starts", "till"} & set(r.atoms[n - 1].means):
        return False
    if after in COUNTED:
        return True
    of_many = near.get("finding") in ("hole", "crack", "gap", "sag", "offset") or near.get("place") in (
        "branch",
        "bend",
    )
    return of_many and after.endswith("s") and 2 <= t.value <= MOST_COUNTED


def located(r: "Reader") -> bool:
    """The line before marks a point above the ground, whose tapes may follow."""
    return any(re.search(r"\bloc\b", row) for row in r.context.before)


ALONG = ("in", "over", "back", "out", "away")
"""`8 ft in from the sidewalk` is measured along the ground."""


def _beside(r: "Reader", n: int, anchor: int, out: Numbers) -> bool:
    """`44in lawn 5 off drive`, `11 from curb 5 from driveway`: a tape to the edge of what a depth may be counted from."""
    after, t = r.text(n + 1), r.number(n)
    if after in ALONG:
        return True
    if after not in ("off", "from") or t is None or t.kind == "in":
        return False
    paved = "zone" in r.atoms[anchor].means
    second = bool(out.tapes) or any("anchor" in a.means and not {"zone", "surface"} & a.means.keys() for a in r.atoms)
    taped = second and not r.has("place", "loc")
    return taped or out.depth is not None or (after == "off" and (r.has("surface") or not paved))


def _anchor(r: "Reader", n: int) -> tuple[int, str] | None:
    """`14 off back wall`: the atom that ends it, and its name."""
    k = n + 1
    said = False
    while k < len(r.atoms) and k <= n + 4:
        a = r.atoms[k]
        if "anchor" in a.means and "surface" not in a.means:
            name = a.text
            if k > n + 1 and "whose" in r.atoms[k - 1].means and r.atoms[k - 1].text not in name:
                name = f"{r.atoms[k - 1].means['whose']} {name}"
            token = r.atoms[n].token
            strong = said or (token is not None and token.kind == "ft" and (r.has("place", "loc") or located(r)))
            return (k, name) if strong else None
        if "from surface" in a.means or "away" in a.means or a.text in ("off", "from", "to", "de", "of"):
            said = True
        elif not {"plain", "whose", "side", "surface", "material"} & a.means.keys():
            return None
        k += 1
    return None
