"""A number with the words around it in; whether it says how deep the pipe lies, out."""

from typing import TYPE_CHECKING

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
