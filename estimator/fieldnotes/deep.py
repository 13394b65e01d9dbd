"""A number with the words around it in; whether it says how deep the pipe lies or how far a located point is from a wall, out."""

import re
from typing import TYPE_CHECKING

from estimator.fieldnotes.numbers_of_a_line import Numbers

if TYPE_CHECKING:
    from estimator.fieldnotes.understand import Reader

TURNS = (22.5, 45.0, 90.0)
MOST_BARE_DEPTH = 12.0
MOST_BARE_DEPTH_INSIDE = 6.0
"""A bare depth above this may be inches as well as feet; under a floor few drains lie deeper than 6 ft (common practice)."""


def most_bare_depth(zone: str) -> float:
    """Return up to which depth a bare number is taken for feet where the line lies in this zone, ft."""
    return MOST_BARE_DEPTH_INSIDE if zone == "slab" else MOST_BARE_DEPTH


def is_depth(r: "Reader", n: int) -> bool:
    t = r.atoms[n].token
    assert t is not None
    if r.has("place", "beam") or (r.has("finding") and not (r.has("place", "loc") or r.has("place", "depth"))):
        return False
    if t.kind == "in" and r.has("part", "joint") and r.has("state") and not r.has("place", "loc"):
        return False  # `jt off a quarter inch down`
    watery = r.has("rises") or r.has("out of water") or any({"water", "agua"} & set(a.text.split()) for a in r.atoms)
    if (r.has("finding") or watery) and not r.has("place", "loc") and t.kind == "in":
        return False  # `belly 2in deep`
    if t.kind == "in" and r.text(n + 1).startswith("down") and (r.has("zone") or r.has("surface")):
        return True  # `27in down at 43 under the floor`
    nexts = [r.atoms[k].means for k in range(n + 1, min(n + 3, len(r.atoms)))]
    near = nexts[0] if nexts else {}
    heads = (
        r.has("place", "loc")
        or r.has("place", "depth")
        or r.has("place", "pothole")
        or r.has("place", "invert")
        or r.has("part", "bottom")
    )
    if "side" in near and t.kind == "num" and t.value in TURNS and not r.has("place", "loc"):
        return False  # `90 down`
    if near.get("place") == "depth" and not r.text(n + 1).startswith(("depth", "dep", "dp", "prof")):
        others = [(k, o) for k, o in r.numbers() if k != n]
        bare = t.kind == "num" and not t.point and t.value > MOST_BARE_DEPTH
        if bare and any(o.kind in ("ft", "in") for _, o in others):
            return False  # `29 dpth 22in`
        if not r.surface_follows(n) and any(o.kind != "num" and r.surface_follows(k) for k, o in others):
            return False  # `28.5 cover 2'6" below floor`
        return t.kind != "num" or heads or t.point or t.value <= MOST_BARE_DEPTH
    first = t.kind == "ft" and n == r.numbers()[0][0]
    if t.kind in ("ft", "in") and r.surface_follows(n) and not (first and t.value > MOST_BARE_DEPTH):
        return True
    if t.kind in ("ft", "in") and heads and not (first and (n == 0 or t.value > MOST_BARE_DEPTH)):
        return True
    return bool(t.kind == "num" and heads and r.surface_follows(n) and n > 0 and t.value <= 30)


def located(r: "Reader") -> bool:
    """The line before marks a point above the ground, whose tapes may follow."""
    return any(re.search(r"\bloc\b", row) for row in r.context.before)


ALONG = ("in", "over", "back", "out", "away")
"""`8 ft in from the sidewalk` is measured along the ground."""


def beside(r: "Reader", n: int, end: int, out: Numbers) -> bool:
    """`44in lawn 5 off drive`, `11 from curb 5 from driveway`: a tape to the edge of what a depth may be counted from."""
    after, t = r.text(n + 1), r.number(n)
    if after in ALONG:
        return True
    if after not in ("off", "from") or t is None or t.kind == "in":
        return False
    paved = "zone" in r.atoms[end].means
    second = bool(out.tapes) or any("anchor" in a.means and not {"zone", "surface"} & a.means.keys() for a in r.atoms)
    taped = second and not r.has("place", "loc")
    deep = any(k != n and r.text(k + 1) == "deep" for k, _ in r.numbers())  # `8ft from walk 3ft deep`
    back = after == "off" and located(r) and t.value < (r.context.last_ft or 0.0)  # no reel runs back
    return taped or deep or back or out.depth is not None or (after == "off" and (r.has("surface") or not paved))


def anchor(r: "Reader", n: int) -> tuple[int, str] | None:
    """`14 off back wall`: the atom that ends it, and its name."""
    k = n + 1
    said = False
    while k < len(r.atoms) and k <= n + 4:
        a = r.atoms[k]
        if "anchor" in a.means and "surface" not in a.means:
            name = a.text
            if "zone" in a.means and any("material" in b.means for b in r.atoms[n + 1 : k]):
                return None  # `26 to clay drive`: a change of pipe, and what lies over it
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
