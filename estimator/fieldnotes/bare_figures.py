"""Numbers that stand alone in; the footages and amounts they may be, the likeliest first, out."""

from typing import TYPE_CHECKING

from estimator.fieldnotes.deep import MOST_BARE_DEPTH
from estimator.fieldnotes.drafts import DEEP
from estimator.fieldnotes.limits import FARTHEST_LEAP_FT
from estimator.fieldnotes.numbers_of_a_line import CLOCKED, Way, several
from estimator.fieldnotes.numbers_of_a_line import DEGREES as DEGREES
from estimator.fieldnotes.numbers_of_a_line import SIZES_IN as SIZES_IN

if TYPE_CHECKING:
    from estimator.fieldnotes.drafts import Draft
    from estimator.fieldnotes.understand import Reader


MOST_READING_FT = 400.0
LONGEST_BARE_FT = 20.0
"""`roots 30 5ft` runs on for 5 ft; a longer one is rather a second reading."""
FARTHEST_TREE_FT = 20.0
"""`33 oak 8ft` stands 8 ft away; a bare number above this is rather a reading."""
BEFORE_A_READING = ("at", "till", "starts", "ends", "rises", "out of water", "change")
BEFORE_AN_END = ("till", "ends", "out of water")
"""Classes of the lexicon: a number after such a word is a footage, or the footage where a stretch ends."""


def ways(r: "Reader", free: list[int], drafts: "list[Draft]") -> list[Way]:
    """All ways, best first."""
    kinds = {d.word for d in drafts}
    begins = {t.value for n in free if (t := r.number(n)) is not None and t.kind == "range"}
    clauses = {r.clause[n] for n in free}
    one = [d for d in drafts if {d.clause} == clauses]  # `52 crack runs long 52-55 with roots`
    if (len(kinds) == 1 or len(one) == 1) and not (r.has("zone") or r.has("room")):  # else it may be of the other
        free = [
            n for n in free if (t := r.number(n)) is None or t.kind == "range" or t.value not in begins
        ]  # said twice
    filled = [d.word == "sag" and bool(d.percent or d.inch) for d in drafts]
    bare = all((t := r.number(n)) is not None and t.kind == "num" for n in free)
    held = free[-1] if filled == [True] and len(free) == 2 and bare else None  # `38 standing water 1/2 pipe 41`
    found: list[Way] = []
    if not free:
        return [Way(0.0, None)]
    many = several(r, free, drafts)
    if many is not None:
        found.append(many)
    for first in (*free, None):
        rest = [n for n in free if n != first]
        bases = _as_reading(r, first, kinds) if first is not None else [(-3.0, None, None, False)]
        for score, at, to, about in bases:
            for end in (None, *rest):
                if end is not None and (at is None or to is not None or not (held == end or _to_before(r, end, first))):
                    continue
                t = r.atoms[end].token if end is not None else None
                if t is not None and (t.kind not in ("num", "ft") or t.value <= (at or 0)):
                    continue
                others = [n for n in rest if n != end]
                roles = [_best_role(r, n, kinds, first) for n in others]
                total = score + sum(s for s, _ in roles) + (3.0 if end is not None else 0.0)
                found.append(
                    Way(
                        total,
                        at,
                        t.value if t is not None else to,
                        (),
                        about,
                        tuple((n, role) for n, (_, role) in zip(others, roles, strict=True)),
                    )
                )
    return sorted(found, key=lambda w: -w.score)


def _as_reading(r: "Reader", n: int, kinds: set[str]) -> list[tuple[float, float | None, float | None, bool]]:
    t = r.atoms[n].token
    assert t is not None
    score = 0.0
    if n == 0 or all(r.is_mark(k, "~@#") or "at" in r.text(k).split() for k in range(n)):
        score += 3
    before = r.atoms[n - 1] if n else None
    only = not ("till" in before.means and any(r.number(k) for k in range(n))) if before else True
    if _so_long(r, n):
        score -= 3
    elif before and only and (r.is_mark(n - 1, "@~") or any(c in before.means for c in BEFORE_A_READING)):
        score += 4
    if t.point:
        score += 3
    if t.about:
        score += 2
    if all(a.means.keys() == {"plain"} or "here" in a.text for a in r.atoms[n + 1 :]):
        score += 2
    if t.kind == "num" and "/" in t.text and t.value < 7 and "branch" in kinds:
        score -= 4  # 1-1/2 is a size
    if r.is_mark(n + 1, ":"):
        score += 4
    if r.text(n + 1) in ("on", "onward", "on out", "onwards", "en adelante"):
        score += 2
    if t.kind == "in":
        return []
    if t.kind == "ft":
        score += 3 if not t.plain else 0.5
        if r.text(n + 1) in ("deep", "down", "long") or (r.has("place", "loc") and n > 0):
            score -= 3
    beside = {r.atoms[k].means.get("place") for k in (n - 1, n + 1) if 0 <= k < len(r.atoms)}
    sides = any("side" in r.atoms[k].means for k in (n - 1, n + 1) if 0 <= k < len(r.atoms))
    if t.value in SIZES_IN and "branch" in kinds and not t.point:
        score -= 2.5 if n else 0.5
        if "branch" in beside or sides:
            score -= 1 if n else 0
    if t.value in DEGREES and "bend" in kinds and not r.turned:
        score -= 2.5 if t.value in (45.0, 90.0, 22.5) else 1.0
    if "loc" in kinds and n and "loc" in beside:
        score -= 2
    if t.kind == "range":
        low, high = t.value, t.to or t.value
        out: list[tuple[float, float | None, float | None, bool]] = []
        if low < high:
            tight = t.tight and high < 12 and low < 12
            clocklike = t.tight and low <= 12 and high <= 12 and bool(CLOCKED & kinds)
            behind = t.tight and high <= 12 and n > 0 and r.number(0) is not None  # `41 broken pipe 5-7`
            out.append((score + 4 - (2 if clocklike else 0) - (4 if behind else 0), low, high, t.about))
            if tight and 0 < high < 12:
                point = bool(kinds & {"branch", "cleanout", "bend", "joint", "stop", "end", "tree"})
                out.append(
                    (score + (4 if point else 1.5) - (4 if behind else 0), round(low + high / 12, 4), None, t.about)
                )
        elif high < 12:
            if t.tight:
                out.append((score + 4, round(low + high / 12, 4), None, t.about))
            out.append((score - 2, high, low, t.about))
        else:
            out.append((score + 3, high, low, t.about))
        return out
    if t.value > max(r.context.furthest_ft, 0) + FARTHEST_LEAP_FT or t.value > MOST_READING_FT:
        score -= 1
    return [(score, t.value, None, t.about)]


def _so_long(r: "Reader", n: int) -> bool:
    """`40 under water about 6 ft`: how far it goes on, behind a reading without a unit."""
    t, first = r.number(n), r.number(0)
    about = r.text(n - 1) in ("about", "bout", "abt", "approx", "roughly", "like", "maybe")
    return about and n > 1 and t is not None and t.kind == "ft" and first is not None and first.kind == "num"


def _to_before(r: "Reader", n: int, first: int | None) -> bool:
    """The number ends a stretch: a `to` stands before it and no other number between; or the water rose at the first."""
    if first is not None and n > first and r.has("rises") and not r.has("place"):
        return True
    k = n - 1
    steps = 0
    while k >= 0 and steps < 3:
        if r.is_mark(k, ">-") or any(c in r.atoms[k].means for c in BEFORE_AN_END):
            return r.text(k) != "a" or r.number(k - 1) is not None  # `a 45 to the left`
        if r.number(k) is not None:
            return False
        if "plain" not in r.atoms[k].means and "part" not in r.atoms[k].means:
            return False
        k -= 1
        steps += 1
    return False


def _best_role(r: "Reader", n: int, kinds: set[str], first: int | None) -> tuple[float, str]:
    t = r.atoms[n].token
    assert t is not None
    near = [r.atoms[k].means for k in (n - 1, n + 1) if 0 <= k < len(r.atoms)]
    best = (-5.0, "unknown")

    def offer(score: float, role: str) -> None:
        nonlocal best
        if score > best[0]:
            best = (score, role)

    if "branch" in kinds and t.kind == "num" and t.value in SIZES_IN and "size" not in r.filled:
        offer(2.0 + any(m.get("place") == "branch" or "side" in m for m in near), "size")
    if "bend" in kinds and t.kind == "num" and t.value in DEGREES and not r.turned:
        offer(3.0, "degrees")
    if kinds & set(DEEP) and t.kind in ("num", "ft") and "depth" not in r.filled:
        after_head = n > 0 and r.atoms[n - 1].means.get("place") in DEEP
        base = 2.0 + 2 * after_head + (1.0 if t.point else 0.0)
        offer(base if t.kind == "ft" or t.value <= MOST_BARE_DEPTH else base - 2, "depth")
    if (
        t.kind == "range"
        and t.value <= 12
        and (t.to or 0) <= 12
        and first is not None
        and bool((CLOCKED | {"branch"}) & kinds)
    ):
        offer(2.5, "clock")
    if (
        t.kind == "num"
        and 1 <= t.value <= 12
        and not t.point
        and r.text(n - 1) in ("at", "@")
        and first is not None
        and n > first
        and bool((CLOCKED - {"collapse", "channel"}) & kinds)
    ):
        offer(1.5, "clock")
    reading = r.number(first) if first is not None else None
    inside = reading is not None and reading.kind == "range" and reading.value < t.value < (reading.to or 0.0)
    if inside and kinds == {"sag"} and "at" in r.atoms[n - 1].means:  # `31-37 belly, half at 34`
        offer(2.5, "inside")
    if (
        t.kind == "ft"
        and reading is not None
        and reading.kind != "ft"  # `12' 15'` are two readings
        and first is not None
        and r.clause[n] == r.clause[first]
        and t.value <= LONGEST_BARE_FT
        and (_so_long(r, n) or not (r.is_mark(n - 1, "@~") or "at" in r.atoms[n - 1].means))
        and any(
            k in kinds
            for k in ("sag", "roots", "scale", "channel", "reverse fall", "grease", "crack", "mud", "oval", "collapse")
        )
    ):
        offer(0.5, "length")
    if "joint" in kinds and t.kind in ("ft", "num") and t.value <= 12 and len(kinds) == 1:
        offer(1.0, "every")
    if "tree" in kinds and t.kind in ("ft", "num") and "away" not in r.filled and t.value <= FARTHEST_TREE_FT:
        offer(0.5, "away")
    return best
