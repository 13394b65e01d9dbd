"""What each number of a line stands for: reading, end, length, amount, size, depth, clock … Labelled ones first, then the rest
weighed."""

import itertools
from collections.abc import Iterable
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from estimator.fieldnotes.tokens import Token

if TYPE_CHECKING:
    from estimator.fieldnotes.drafts import Draft
    from estimator.fieldnotes.understand import Reader

SIZES_IN = (1.25, 1.5, 2.0, 3.0, 4.0, 5.0, 6.0, 8.0)
"""Drain sizes sold for houses, in (common practice)."""
DEGREES = {90.0, 45.0, 22.5, 22.0, 30.0, 60.0, 11.25, 11.0, 88.0, 72.0}
BEND_FRACTIONS = {0.25: 90.0, 0.125: 45.0, 0.0625: 22.5, 1 / 6: 60.0, 0.2: 72.0}
"""A quarter bend turns 90 degrees, an eighth 45, a sixteenth 22.5 (names of the trade)."""
FARTHEST_LEAP_FT = 150.0
"""A reading this far past all before it is doubted: push cables are mostly 100 to 325 ft (common practice)."""
MOST_READING_FT = 400.0
MOST_BARE_DEPTH = 12.0
"""A bare depth above this may be inches as well as feet."""


@dataclass(slots=True)
class Numbers:
    """Labelled numbers, by what they are; `free` are atoms whose number is still open."""

    inches: list[tuple[int, float]] = field(default_factory=list)
    percents: list[tuple[int, tuple[float, float]]] = field(default_factory=list)
    bare_fractions: list[tuple[int, float]] = field(default_factory=list)
    clocks: list[tuple[int, tuple[int, int]]] = field(default_factory=list)
    degrees: list[tuple[int, float]] = field(default_factory=list)
    depth: tuple[int, float] | None = None
    tapes: list[tuple[float, str]] = field(default_factory=list)
    lengths: list[tuple[str, float]] = field(default_factory=list)
    long_ft: float | None = None
    every_ft: float | None = None
    count: int | None = None
    riser_ft: float | None = None
    flag: str = ""
    photo: str = ""
    video: str = ""
    sizes: list[tuple[int, float, float]] = field(default_factory=list)  # 4x6
    free: list[int] = field(default_factory=list)
    tool: bool = False


def _ft(t: Token, bare_in: bool = False) -> float:
    if t.kind == "in" or (bare_in and t.kind == "num"):
        return t.value / 12
    return t.value


def labelled(r: "Reader") -> Numbers:
    """Numbers whose neighbours say what they are."""
    out = Numbers()
    last = len(r.atoms)
    n = 0
    done: set[int] = set()

    def word(k: int) -> str:
        return r.atoms[k].text if 0 <= k < last else ""

    def take(*ks: int) -> None:
        for k in ks:
            done.add(k)
            r.used.add(k)

    for n, a in enumerate(r.atoms):
        t = a.token
        if n in done or t is None:
            continue
        before, _after = word(n - 1), word(n + 1)
        if t.kind in ("time", "phone"):
            if before in ("video", "vid", "vids", "clip", "see video", "vid at") or word(n - 2) in ("video", "vid"):
                out.video = t.text.strip()
                take(n, n - 1)
            elif t.kind == "time" and t.value:
                out.clocks.append((n, (int(t.value), int(t.value))))
                take(n)
            continue
        if not t.number:
            continue
        if (
            before in ("photo", "pic", "img", "picture", "photos", "pics", "foto", "image", "still")
            and t.kind == "num"
            and not t.point
        ):
            out.photo = t.text
            take(n, n - 1)
        elif t.kind == "clock":
            out.clocks.append((n, (int(t.value), int(t.to or t.value))))
            take(n)
        elif t.kind == "pct":
            out.percents.append((n, (t.value, t.to if t.to is not None else t.value)))
            take(n)
        elif t.kind == "deg":
            out.degrees.append((n, t.value))
            take(n)
        elif t.kind == "frac":
            _fraction(r, n, out, take)
        elif t.kind == "cross":
            out.sizes.append((n, t.value, t.to or t.value))
            take(n)
        elif _in_words(r, n, out, take):
            continue
        elif t.kind == "in":
            out.inches.append((n, t.value))
            take(n)
    for n, a in enumerate(r.atoms):
        if (
            a.text in ("flag", "bandera", "mark flag")
            and n + 1 < last
            and (len(word(n + 1)) == 1 or r.number(n + 1) is not None)
        ):
            out.flag = word(n + 1).upper()
            take(n, n + 1)
    for n, a in enumerate(r.atoms):
        if n in r.denied:
            continue
        if share := a.means.get("fraction"):
            if share == "full":
                continue
            low, _, high = share.partition("..")
            out.percents.append((n, (float(low), float(high or low))))
            r.used.add(n)
        elif size := a.means.get("coin"):
            out.inches.append((n, float(size)))
            r.used.add(n)
    r.turned = bool(out.degrees)
    if out.depth is not None:
        r.filled.add("depth")
    if out.inches or out.sizes:
        r.filled.add("size")
    out.free = [n for n, a in enumerate(r.atoms) if n not in done and r.number(n) is not None]
    return out


def _fraction(r: "Reader", n: int, out: Numbers, take) -> None:  # type: ignore[no-untyped-def]
    t = r.atoms[n].token
    assert t is not None
    after = [r.text(n + 1), r.text(n + 2), r.text(n + 3)]
    if t.value in BEND_FRACTIONS and any(
        "place" in r.atoms[k].means and r.atoms[k].means["place"] == "bend" for k in (n + 1, n + 2) if k < len(r.atoms)
    ):
        out.degrees.append((n, BEND_FRACTIONS[t.value]))
        take(n)
        return
    full = (
        "full",
        "pipe",
        "blocked",
        "plugged",
        "closed",
        "way",
        "of",
        "clogged",
        "lleno",
        "llena",
        "tubo",
        "the",
        "up",
        "filled",
        "obstructed",
        "tapado",
        "del",
        "covered",
        "choked",
        "open",
    )
    if after[0] in full and after[0] != "open":
        out.percents.append((n, (round(t.value * 100), round(t.value * 100))))
        take(n)
        for k in (n + 1, n + 2, n + 3):
            if r.text(k) in full:
                r.used.add(k)
                r.denied.discard(k)
                if "finding" in r.atoms[k].means:
                    r.amount_words.add(k)
            else:
                break
        return
    out.bare_fractions.append((n, t.value))
    take(n)


def _in_words(r: "Reader", n: int, out: Numbers, take) -> bool:  # type: ignore[no-untyped-def]
    """Numbers with a word beside them that says what they are."""
    t = r.atoms[n].token
    assert t is not None
    before, before2, after, _after2 = r.text(n - 1), r.text(n - 2), r.text(n + 1), r.text(n + 2)
    a1 = r.atoms[n + 1].means if n + 1 < len(r.atoms) else {}
    b1 = r.atoms[n - 1].means if n > 0 else {}
    length = t.kind in ("ft", "in", "num")
    if (length and before in ("every", "each", "cada", "about every", "o.c.")) or (
        before2 in ("every", "cada") and before in ("about", "bout", "abt") and length
    ):
        out.every_ft = t.value if t.kind != "in" else t.value / 12
        take(n, n - 1)
        if "part" in a1:
            r.used.add(n + 1)
        return True
    others = any(
        k != n and (o := r.number(k)) is not None and o.kind in ("num", "ft", "range") for k in range(len(r.atoms))
    )
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
        take(n, n + 1)
        return True
    if after in (
        "blade",
        "cutter",
        "head",
        "nozzle",
        "bit",
        "knife",
        "cutters",
        "blades",
        "chain",
        "jet head",
        "root saw",
        "saw",
        "c cutter",
    ):
        out.tool = True
        take(n, n + 1)
        return True
    if after in (
        "men",
        "guys",
        "hrs",
        "hours",
        "hour",
        "min",
        "mins",
        "minutes",
        "psi",
        "gpm",
        "oclock am",
        "am",
        "pm",
        "days",
        "day",
        "years",
        "yrs",
        "yr",
        "year",
        "x",
        "times",
        "man",
        "techs",
        "anos",
        "horas",
    ):
        take(n, n + 1)
        return True
    if "riser" in a1.get("run", "") or "riser" in b1.get("run", "") or (before in ("is", "of") and before2 == "riser"):
        out.riser_ft = t.value / 12 if t.kind == "in" else t.value
        take(n, n + 1 if "run" in a1 else n - 1)
        return True
    if (
        t.kind == "num"
        and after in ("joints", "jts", "places", "spots", "juntas", "lugares", "jt s")
        and not t.point
        and n > 0
    ) and len([k for k in range(len(r.atoms)) if r.number(k)]) > 1:
        out.count = int(t.value)
        take(n, n + 1)
        return True
    if r.has("place", "tree") or r.has("place", "crossing") or r.has("utility") or r.has("unclear", "footing"):
        if length and ("away" in a1 or after in ("away", "off", "from")):
            out.lengths.append(("away", _ft(t)))
            take(n, n + 1)
            return True
        if (r.has("utility") or r.has("place", "crossing")) and t.kind in ("in", "ft"):
            label = next((lab for lab in ("above", "below") if any(lab in a.means for a in r.atoms)), "")
            if any(w in r.words().split() for w in ("above", "over", "encima", "sobre")):
                label = "above"
            elif any(w in r.words().split() for w in ("below", "under", "underneath", "debajo")):
                label = "below"
            if label:
                out.lengths.append((label, _ft(t)))
                take(n)
                return True
    if r.has("place", "beam") and length:
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
    if (length or feet_inches) and (anchor := _anchor(r, n)) and not r.surface_follows(n):
        k, name = anchor
        out.tapes.append((t.value + (t.to or 0.0) / 12 if feet_inches else _ft(t), name))
        take(*range(n, k + 1))
        return True
    if length and out.depth is None and _is_depth(r, n):
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
            strong = said or (token is not None and token.kind == "ft" and r.has("place", "loc"))
            return (k, name) if strong else None
        if "from surface" in a.means or "away" in a.means or a.text in ("off", "from", "to", "de", "of"):
            said = True
        elif not ("plain" in a.means or "whose" in a.means or "side" in a.means):
            return None
        k += 1
    return None


def _is_depth(r: "Reader", n: int) -> bool:
    t = r.atoms[n].token
    assert t is not None
    if r.has("place", "beam") or (r.has("finding") and not (r.has("place", "loc") or r.has("place", "depth"))):
        return False
    if r.has("finding") and not r.has("place", "loc") and t.kind == "in":
        return False  # `belly 2in deep`
    nexts = [r.atoms[k].means for k in range(n + 1, min(n + 3, len(r.atoms)))]
    near = nexts[0] if nexts else {}
    heads = (
        r.has("place", "loc")
        or r.has("place", "depth")
        or r.has("place", "pothole")
        or r.has("place", "invert")
        or r.has("part", "bottom")
    )
    if near.get("place") == "depth" and r.text(n + 1) not in ("depth", "depht", "dep"):
        return t.kind != "num" or heads or t.point or t.value <= MOST_BARE_DEPTH
    if t.kind in ("ft", "in") and r.surface_follows(n):
        return True
    if t.kind in ("ft", "in") and heads and not (t.kind == "ft" and t.plain and n == 0):
        return True
    return bool(t.kind == "num" and heads and r.surface_follows(n) and n > 0 and t.value <= 30)


# ── numbers that stand alone ──────────────────────────────────────────────────────────────────────


@dataclass(frozen=True, slots=True)
class Way:
    """One way to take the open numbers. `roles`: atom -> what it is."""

    score: float
    at: float | None
    to: float | None = None
    more: tuple[float, ...] = ()
    about: bool = False
    roles: tuple[tuple[int, str], ...] = ()

    @property
    def meaning(self) -> tuple[object, ...]:
        return (self.at, self.to, self.more, tuple(sorted(role for _, role in self.roles)))


def ways(r: "Reader", free: list[int], drafts: "Iterable[Draft]") -> list[Way]:
    """All ways, best first."""
    kinds = {d.word for d in drafts}
    found: list[Way] = []
    if not free:
        return [Way(0.0, None)]
    many = _several(r, free, kinds)
    if many is not None:
        found.append(many)
    for first in (*free, None):
        rest = [n for n in free if n != first]
        bases = _as_reading(r, first, kinds) if first is not None else [(-3.0, None, None, False)]
        for score, at, to, about in bases:
            for end in (None, *rest):
                if end is not None and (at is None or to is not None or not _to_before(r, end, first)):
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
    before = r.text(n - 1)
    if before in (
        "at",
        "@",
        "from",
        "on",
        "past",
        "en",
        "starts at",
        "de",
        "desde",
        "is at",
        "ends at",
        "stopped at",
        "a",
        "sta",
        "station",
        "@ ",
        "around",
        "near",
        "about",
        "out at",
        "beyond",
        "after",
        "starting at",
        "here",
        "till",
        "located at",
    ) or r.is_mark(n - 1, "@~"):
        score += 4
    if t.point:
        score += 3
    if t.about:
        score += 2
    if n == len(r.atoms) - 1:
        score += 2
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
        score -= 2.5
    if "loc" in kinds and n and "loc" in beside:
        score -= 2
    if t.kind == "range":
        low, high = t.value, t.to or t.value
        out: list[tuple[float, float | None, float | None, bool]] = []
        if low < high:
            tight = t.tight and high < 12 and low < 12
            clocklike = (
                t.tight
                and low <= 12
                and high <= 12
                and bool({"hole", "crack", "gap", "roots", "collapse", "leak", "intruding", "channel"} & kinds)
            )
            out.append((score + 4 - (2 if clocklike else 0), low, high, t.about))
            if tight and 0 < high < 12:
                point = bool(kinds & {"branch", "cleanout", "bend", "joint", "stop", "end", "tree"})
                out.append((score + (4 if point else 1.5), round(low + high / 12, 4), None, t.about))
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


def _to_before(r: "Reader", n: int, first: int | None) -> bool:
    """The number ends a stretch: a `to` stands before it and no other number between."""
    k = n - 1
    steps = 0
    while k >= 0 and steps < 3:
        text = r.text(k)
        if text in (
            "to",
            "thru",
            "til",
            "till",
            "hasta",
            "until",
            "through",
            "clear to",
            "a",
            "ends at",
            "out to",
            "all the way to",
            "ends",
            "on to",
            "up to",
            "down to",
            "stops at",
        ) or r.is_mark(k, ">-"):
            return True
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
    if ({"loc", "depth", "pothole", "invert"} & kinds) and t.kind in ("num", "ft") and "depth" not in r.filled:
        after_head = n > 0 and r.atoms[n - 1].means.get("place") in ("loc", "depth", "pothole", "invert")
        base = 2.0 + 2 * after_head + (1.0 if t.point else 0.0)
        offer(base if t.kind == "ft" or t.value <= MOST_BARE_DEPTH else base - 2, "depth")
    if (
        t.kind == "range"
        and t.value <= 12
        and (t.to or 0) <= 12
        and first is not None
        and bool({"hole", "crack", "gap", "roots", "collapse", "leak", "intruding", "channel", "branch"} & kinds)
    ):
        offer(2.5, "clock")
    if (
        t.kind == "num"
        and 1 <= t.value <= 12
        and not t.point
        and r.text(n - 1) in ("at", "@")
        and first is not None
        and n > first
        and bool({"hole", "crack", "gap", "leak", "intruding"} & kinds)
    ):
        offer(1.5, "clock")
    if (
        t.kind == "ft"
        and first is not None
        and any(
            k in kinds
            for k in ("sag", "roots", "scale", "channel", "reverse fall", "grease", "crack", "mud", "oval", "collapse")
        )
    ):
        offer(0.5, "length")
    if "joint" in kinds and t.kind in ("ft", "num") and t.value <= 12 and len(kinds) == 1:
        offer(1.0, "every")
    if "tree" in kinds and t.kind in ("ft", "num"):
        offer(0.5, "away")
    return best


def _several(r: "Reader", free: list[int], kinds: set[str]) -> Way | None:
    """`roots @28.5 33 36.5`: one finding at several places."""
    tokens = [r.atoms[n].token for n in free]
    plain = [t for t in tokens if t is not None and t.kind == "num"]
    values = [t.value for t in plain]
    if len(plain) < 2 or len(plain) != len(free) or values != sorted(set(values)) or not kinds:
        return None
    joined = all(
        all(
            r.is_mark(k, ",&+")
            or (r.text(k) in ("and", "y", "also", "then", "at", "again", "plus", "to") and r.text(k) != "to")
            for k in range(a + 1, b)
        )
        for a, b in itertools.pairwise(free)
    )
    linked = any(b - a > 1 for a, b in itertools.pairwise(free))
    if not joined or not (linked or len(plain) > 2) or values[0] < 1:
        return None
    if kinds & {"branch", "bend"} and any(v in SIZES_IN or v in DEGREES for v in values):
        return None
    return Way(6.0, values[0], None, tuple(values[1:]))
