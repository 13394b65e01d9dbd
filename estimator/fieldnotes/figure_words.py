"""A number with the words around it in; what it measures, out."""

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from estimator.fieldnotes.understand import Reader
from estimator.fieldnotes.deep import anchor, beside, is_depth
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


ABOUT = ("about", "bout", "abt")
CABLE = ("reel", "cable", "hose")
LONG = ("long", "in length", "de largo")
DEEP_SAID = ("deep", "d", "tall", "high", "hondo", "dp")
WIDE_SAID = ("wide", "w", "ancho", "thick", "across")
ABOVE = frozenset(("above", "over", "encima", "sobre", "up", "top", "overhead", "arriba"))
BELOW = frozenset(("below", "under", "underneath", "beneath", "debajo"))
HEADROOM = ("clearance", "high", "tall", "clear", "headroom", "height", "of clearance")


def in_words(r: "Reader", n: int, out: Numbers) -> bool:
    """Whether a word beside the number says what it is; it is then kept in `out`."""
    figure = _Figure(r, n, out)
    return any(way(figure) for way in WAYS)


class _Figure:
    """A number with the words around it. Each way returns whether the number is taken."""

    def __init__(self, r: "Reader", n: int, out: Numbers) -> None:
        token = r.number(n)
        assert token is not None
        self.r, self.n, self.out, self.t = r, n, out, token
        self.before, self.before2, self.after = r.text(n - 1), r.text(n - 2), r.text(n + 1)
        self.behind = r.atoms[n + 1].means if n + 1 < len(r.atoms) else {}
        self.ahead = r.atoms[n - 1].means if n > 0 else {}
        self.feet = token.kind in ("ft", "num")
        self.length = self.feet or token.kind == "in"
        self.count = token.kind == "num" and not token.point
        self.others = any(k != n for k, _ in r.readings())

    def _take(self, *atoms: int) -> bool:
        self.out.take(self.r, self.n, *atoms)
        return True

    def _aside(self, other: int) -> bool:
        """It measures nothing that lies in the pipe."""
        self.r.aside.add(self.n)
        return self._take(other)

    def every(self) -> bool:
        """`joints every 3 ft`, `3 ft joints`"""
        every2 = self.n > 1 and self.r.atoms[self.n - 2].means.get("place") == "every"
        if self.length and (self.ahead.get("place") == "every" or (every2 and self.before in ABOUT)):
            self.out.every_ft = _ft(self.t)
            if "part" in self.behind:
                self.r.used.add(self.n + 1)
            return self._take(self.n - 1)
        pieces = self.behind.get("part") in ("joint", "piece", "pipe") and self.after not in ("pipe", "line", "wall")
        pieces = pieces or (self.after == "apart" and self.r.has("part", "joint"))
        if self.t.kind == "ft" and ((self.others and pieces) or self.after in ("lengths", "sections", "sticks")):
            self.out.every_ft = self.t.value
            return self._take()
        return False

    def long(self) -> bool:
        """`for 8 ft`, `8 ft long`, `an 8 ft section`"""
        before, after = self.before, self.after
        about = before in (*ABOUT, "approx", "the next", "roughly") and self.before2 in ("for", "next")
        ahead = before in ("for", "next", "por", "another", "runs", "about a") or about
        of = after in ("of", "section", "de", "stretch of", "run of") and self.t.kind == "ft" and not self.t.point
        behind = after in (*LONG, "length", "largo", "run of", "stretch", "worth", "run") or (of and self.n > 0)
        if not self.feet or not (ahead or behind):
            return False
        self.out.long_ft = self.t.value
        return self._aside(self.n - 1 if ahead else self.n + 1)

    def of_a_crack(self) -> bool:
        """Its length is not how far it is open."""
        return self.t.kind == "in" and self.after in LONG and self.r.has("finding", "crack") and self._aside(self.n + 1)

    def of_a_tool(self) -> bool:
        may_be = self.t.kind == "in" or self.after in CABLE or (self.others and self.t.kind == "num")
        if not may_be or self.after not in TOOLS:
            return False
        self.out.tool = self.after not in CABLE
        return self._aside(self.n + 1)

    def of_a_coupling(self) -> bool:
        coupling = self.behind.get("part") == "coupling" and self.n > 0
        return coupling and self.count and self.t.value <= 4 and self._aside(self.n + 1)

    def of_a_pipe(self) -> bool:
        """`8 transition 4 pvc to 4 ci`"""
        size = "material" in self.behind and self.count and self.t.value in SIZES_IN and self.n > 0
        if not (size and self.others and self.r.has("change")):
            return False
        self.out.inches.append((self.n, self.t.value))
        return self._take()

    def counted(self) -> bool:
        if _counts(self.r, self.n):
            self.out.count = (self.n, int(self.t.value))
            return self._take()
        return self.after in COUNTED_OTHERWISE and self._aside(self.n + 1)

    def riser(self) -> bool:
        said = self.before in ("is", "of") and self.before2 == "riser"
        if not (said or any("riser" in means.get("run", "") for means in (self.ahead, self.behind))):
            return False
        self.out.riser_ft = _ft(self.t)
        return self._aside(self.n + 1 if "run" in self.behind else self.n - 1)

    def away(self) -> bool:
        """How far a tree, another line or a footing lies off the drain, or above or below it."""
        r, t = self.r, self.t
        crossed = r.has("place", "crossing") or r.has("utility") or r.has("unclear", "water line")
        tree = r.has("place", "tree")
        if not (crossed or tree or r.has("unclear", "footing")):
            return False
        off = "away" in self.behind or self.after in ("away", "off", "from")
        if self.length and off and not (crossed and not tree and "above" in self.behind):
            self.out.lengths.append(("away", _ft(t)))
            return self._take(self.n + 1)
        told = t.kind in ("in", "ft") or (t.kind == "num" and bool({"above", "below"} & self.behind.keys()))
        label = self._above_or_below() if crossed and told else ""
        if label:
            self.out.lengths.append((label, _ft(t, bare_in=t.value >= 4)))
            return self._take()
        return False

    def _above_or_below(self) -> str:
        words = set(self.r.words().split())
        if words & ABOVE:
            return "above"
        if words & BELOW:
            return "below"
        return next((label for label in ("above", "below") if any(label in a.means for a in self.r.atoms)), "")

    def of_a_beam(self) -> bool:
        """`beam 24in deep 12in wide`"""
        if not self.length or not (self.r.has("place", "beam") or self.r.has("unclear", "footing")):
            return False
        wide = self.after in WIDE_SAID
        ahead = self.before in ("deep", "depth") and self.t.kind != "num" and not wide
        if not (wide or ahead or self.after in DEEP_SAID):
            return False
        self.out.lengths.append(("wide" if wide else "deep", _ft(self.t, bare_in=self.t.value >= 4)))
        return self._take(self.n + 1)

    def headroom(self) -> bool:
        if not (self.length and self.after in HEADROOM and self.r.has("zone", "crawl")):
            return False
        self.out.lengths.append(("", _ft(self.t)))
        return self._take(self.n + 1)

    def tape(self) -> bool:
        """`14 ft 2 off back wall`"""
        r, n, t = self.r, self.n, self.t
        feet_inches = t.kind == "range" and t.tight and (t.to or 12.0) < 12
        may_be = self.length or feet_inches
        found = anchor(r, n) if may_be and (t.kind != "in" or r.has("place", "loc")) else None
        if not found or not (beside(r, n, found[0], self.out) or not r.surface_follows(n)):
            return False
        k, name = found
        self.out.tapes.append((t.value + (t.to or 0.0) / 12 if feet_inches else _ft(t), name))
        return self._take(*range(n, k + 1))

    def depth(self) -> bool:
        r, n = self.r, self.n
        if not self.length or self.out.depth is not None or not is_depth(r, n):
            return False
        self.out.depth = (n, _ft(self.t))
        for k in range(n + 1, min(n + 4, len(r.atoms))):
            means = r.atoms[k].means
            deep = means.get("place") == "depth" or {"from surface", "surface", "plain"} & means.keys()
            if r.number(k) or means.get("place") == "loc" or not deep:
                break
            r.used.add(k)
        return self._take()


WAYS = (
    _Figure.every, _Figure.long, _Figure.of_a_crack, _Figure.of_a_tool, _Figure.of_a_coupling, _Figure.of_a_pipe,
    _Figure.counted, _Figure.riser, _Figure.away, _Figure.of_a_beam, _Figure.headroom, _Figure.tape, _Figure.depth,
)  # fmt: skip
"""What a word beside a number may say of it, in the order in which it is tried."""


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
