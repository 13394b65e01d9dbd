"""What each number of a line stands for: reading, end, length, amount, size, depth, clock … Labelled ones first, then the rest
weighed."""

import itertools
from typing import TYPE_CHECKING

from estimator.fieldnotes.bare_figures import SIZES_IN
from estimator.model.say import Say

if TYPE_CHECKING:
    from estimator.fieldnotes.understand import Reader
from estimator.fieldnotes.figure_words import in_words
from estimator.fieldnotes.numbers_of_a_line import Numbers
from estimator.fieldnotes.tokens import Token

BEND_FRACTIONS = {0.25: 90.0, 0.125: 45.0, 0.0625: 22.5, 1 / 6: 60.0, 0.2: 72.0}
"""A quarter bend turns 90 degrees, an eighth 45, a sixteenth 22.5 (names of the trade)."""


OF_THE_PIPE = frozenset((
    "full", "pipe", "blocked", "plugged", "closed", "way", "of", "clogged", "lleno", "llena", "tubo", "the", "up", "filled",
    "obstructed", "tapado", "del", "covered", "choked", "open", "stopped", "restricted",
))  # fmt: skip
"""What a share is of: `1/3 of the pipe blocked` blocks nothing more than the roots it is said of."""


def _of_the_pipe(r: "Reader", n: int) -> None:
    for k in (n + 1, n + 2, n + 3):
        if r.text(k) not in OF_THE_PIPE or (k == n + 1 and r.text(k) == "up"):
            return
        r.used.add(k)
        r.denied.discard(k)
        if "finding" in r.atoms[k].means:
            r.amount_words.add(k)


PICTURES = ("photo", "pic", "img", "picture", "photos", "pics", "foto", "image")


def of_a_picture(r: "Reader", n: int) -> bool:
    """`pic 3`"""
    t = r.number(n)
    return r.text(n - 1) in PICTURES and t is not None and t.kind == "num" and not t.point


def labelled(r: "Reader") -> Numbers:
    """Numbers whose neighbours say what they are."""
    out = Numbers()
    for n, a in enumerate(r.atoms):
        if n in out.done or n in r.denied or a.token is None:
            continue
        if a.token.kind in ("time", "phone"):
            _time(r, n, a.token, out)
        elif a.token.number:
            _number(r, n, a.token, out)
    _flag(r, out)
    _shares(r, out)
    _shares_joined(r, out)
    out.done |= _hours_joined(r, out)
    out.done |= _sizes_joined(r, out)
    r.turned = bool(out.degrees)
    filled = {"depth": out.depth is not None, "away": out.lengths, "size": out.inches or out.sizes}
    r.filled |= {what for what, said in filled.items() if said}
    out.free = [n for n, _ in r.numbers() if n not in out.done]
    return out


VIDEOS = ("video", "vid", "vids", "clip", "see video", "vid at")


def _time(r: "Reader", n: int, t: Token, out: Numbers) -> None:
    """`video 12:30`, or an hour of the clock: `5:00`"""
    if r.text(n - 1) in VIDEOS or r.text(n - 2) in ("video", "vid"):
        out.video = t.text.strip()
        out.take(r, n, n - 1)
    elif t.kind == "time" and t.value:
        out.clocks.append((n, (int(t.value), int(t.value))))
        out.take(r, n)


def _number(r: "Reader", n: int, t: Token, out: Numbers) -> None:
    if of_a_picture(r, n):
        out.photo = t.text
        out.take(r, n, n - 1)
        return
    hour = r.text(n - 1) == "a las" and t.kind == "num" and 1 <= t.value <= 12 and not t.point
    if t.kind == "clock" or hour:
        out.clocks.append((n, (int(t.value), int(t.to or t.value))))
    elif t.kind == "pct":
        out.percents.append((n, (t.value, t.to if t.to is not None else t.value)))
        if any(k not in range(n + 1, n + 4) for k in r.where("finding")):
            _of_the_pipe(r, n)
    elif t.kind == "deg":
        out.degrees.append((n, t.value))
    elif t.kind == "frac":
        _fraction(r, n, out)
    elif t.kind == "cross":
        out.sizes.append((n, t.value, t.to or t.value))
    elif in_words(r, n, out) or t.kind != "in":
        return
    else:
        out.inches.append((n, t.value))
    out.take(r, n)


def _flag(r: "Reader", out: Numbers) -> None:
    """`flag A`, `marked B`, `flag 2`"""
    for n, a in enumerate(r.atoms[:-1]):
        named, t = r.text(n + 1), r.number(n + 1)
        number = t is not None and t.kind == "num" and not t.point
        flag = a.text in ("flag", "flags", "flagged", "bandera", "mark flag") and (len(named) == 1 or number)
        if flag or (_marks(a.text) and len(named) == 1 and named.isalpha() and not r.is_mark(n + 2, "/")):
            out.flag = named.upper()
            out.take(r, n + 1)
            if "place" not in a.means:
                out.take(r, n)


def _shares(r: "Reader", out: Numbers) -> None:
    """`half`, `a third`: of the pipe or of an inch; and coins, which are holes of their size."""
    for n, a in enumerate(r.atoms):
        share, size = a.means.get("fraction"), a.means.get("coin")
        if n in r.denied or share == "full" or not (share or size):
            continue
        low, _, high = (share or size or "").partition("..")
        if share and a.text in BARE_SHARES and r.text(n + 1) not in OF_THE_PIPE and _opened_by(r):
            out.bare_fractions.append((n, float(share) / 100))
        elif share:
            out.percents.append((n, (float(low), float(high or low))))
        elif high:  # a fist is no measure
            question = Say.of("how big is it? {low} to {high} in is a guess", low=low, high=high)
            r.ask.append((question, (f"hole {low}in", f"hole {high}in")))
        else:
            out.inches.append((n, float(low)))
        r.used.add(n)


BARE_SHARES = (
    "half", "a half", "1 half", "quarter", "a quarter", "1 quarter", "one quarter", "three quarters", "3 quarters",
)  # fmt: skip
"""Of an inch as well as of the pipe, where a thing is measured by inches: `joint is off about a quarter`."""


def _opened_by(r: "Reader") -> bool:
    kinds = [r.atoms[n].means["finding"].split()[0] for n in r.where("finding")]
    return bool(kinds or r.has("part", "joint")) and all(kind in ("offset", "gap", "intruding") for kind in kinds)


def _marks(text: str) -> bool:
    """`28 marked A`"""
    return text in ("mark", "marked", "marked it", "marcado", "marca")


def _shares_joined(r: "Reader", out: Numbers) -> None:
    """`half to three quarters`: one amount from one share to the other."""
    said = sorted(out.percents)
    for (a, low), (b, high) in itertools.pairwise(said):
        between = [r.atoms[k] for k in range(a + 1, b)]
        joined = between and all(
            "till" in x.means or "or" in x.means or x.text in ("full", "-", "pipe", "of", "the") for x in between
        )
        if joined and low[1] < high[0]:
            out.percents = [p for p in said if p not in ((a, low), (b, high))] + [(b, (low[0], high[1]))]
            return


def _hours_joined(r: "Reader", out: Numbers) -> set[int]:
    """`from 10:00 to 2:00`: one stretch of the clock. Return where a bare hour stands."""
    if len(out.clocks) == 1:  # `10 oclock to 2`
        n, (begin, end) = out.clocks[0]
        t = r.number(n + 2)
        bare = t is not None and t.kind == "num" and not t.point and t.value <= 12 and begin == end
        if t is not None and bare and n + 1 < len(r.atoms) and "till" in r.atoms[n + 1].means:
            out.clocks = [(n + 2, (begin, int(t.value)))]
            return {n + 2}
    if len(out.clocks) == 2 and all("till" in r.atoms[k].means for k in range(out.clocks[0][0] + 1, out.clocks[1][0])):
        (_, (begin, _)), (n, (_, end)) = out.clocks
        out.clocks = [(n, (begin, end))]
    return set()


def _sizes_joined(r: "Reader", out: Numbers) -> set[int]:
    """`4in down to 3in`: one size of pipe, then another. Return where the two stand."""
    bare = [(n, t.value) for n, t in r.numbers() if t.kind == "num" and n and t.value in SIZES_IN]  # `4 to 3 in`
    for (a, before), (b, after) in itertools.pairwise(sorted((*out.inches, *bare))):
        if (
            b == a + 2
            and "change" in r.atoms[a + 1].means
            and {before, after} <= set(SIZES_IN)
            and not r.has("finding")
        ):
            out.sizes.append((b, before, after))
            out.inches = [x for x in out.inches if x[0] not in (a, b)]
            r.used.add(a + 1)
            r.aside.add(a)
            return {a, b}
    return set()


def _fraction(r: "Reader", n: int, out: Numbers) -> None:
    t = r.atoms[n].token
    assert t is not None
    if t.value in BEND_FRACTIONS and any(
        "place" in r.atoms[k].means and r.atoms[k].means["place"] == "bend" for k in (n + 1, n + 2) if k < len(r.atoms)
    ):
        out.degrees.append((n, BEND_FRACTIONS[t.value]))
        return
    way = r.text(n + 1) == "up" and r.text(n + 2) not in OF_THE_PIPE and _opened_by(r)  # `joint off 1/2 up`
    if r.text(n + 1) in OF_THE_PIPE and r.text(n + 1) != "open" and not way:
        out.percents.append((n, (round(t.value * 100), round(t.value * 100))))
        _of_the_pipe(r, n)
        return
    if r.text(n + 1) in ("thick", "deep", "wide", "high", "tall"):  # `scale 1/4 thick`: inches
        out.inches.append((n, t.value))
        r.aside.add(n + 1)
        out.take(r, n + 1)
        return
    if round(t.value * 3, 6).is_integer():  # no rule has thirds of an inch
        out.percents.append((n, (round(t.value * 100), round(t.value * 100))))
        return
    out.bare_fractions.append((n, t.value))
