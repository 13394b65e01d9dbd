"""Lines written from their meaning, in as many ways as plumbers write: what a line must say goes in with it.

A meaning is a line in standard words; its words come from the lexicon, its numbers in every form that US plumbers and Spanish
crews write lengths and shares in (common practice), its order, joints, fillers and marks by chance.
"""

import random
from collections import defaultdict
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import cache

from estimator.fieldnotes.lexicon import folded, lexicon, lexicon_data, unfolded
from estimator.fieldnotes.log import LogReader
from estimator.fieldnotes.logbook import Log
from estimator.fieldnotes.standard import tied
from estimator.fieldnotes.tidy import tidied

HEADER = ("pass front cleanout to house, surface", "0 yard lawn", "25 slab")
Chance = random.Random


@dataclass(frozen=True, slots=True)
class Line:
    """`text` as typed; `rows` what it means, in standard words; `es` whether it is Spanish."""

    text: str
    rows: tuple[str, ...]
    back: bool = False


# ── numbers ───────────────────────────────────────────────────────────────────────────────────

_UNITS = [
    "zero",
    "one",
    "two",
    "three",
    "four",
    "five",
    "six",
    "seven",
    "eight",
    "nine",
    "ten",
    "eleven",
    "twelve",
    "thirteen",
    "fourteen",
    "fifteen",
    "sixteen",
    "seventeen",
    "eighteen",
    "nineteen",
]
_TENS = ["zero", "ten", "twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"]
QUARTERS = {0.25: "1/4", 0.5: "1/2", 0.75: "3/4"}


def spoken(n: int) -> str:
    if n < 20:
        return _UNITS[n]
    return _TENS[n // 10] + (f" {_UNITS[n % 10]}" if n % 10 else "")


def feet(c: Chance, value: float, es: bool = False) -> str:
    """A footage: 33, 33', 33 ft, 33.5, 33'6", 33 1/2, thirty three."""
    whole, part = int(value), round(value - int(value), 4)
    inches = round(part * 12)
    if es:
        return c.choice([f"{value:g}", f"{value:g}", f"{value:g} pies", f"{value:g} ft"])
    if not part:
        return c.choice(
            [
                f"{whole}",
                f"{whole}",
                f"{whole}",
                f"{whole}ft",
                f"{whole}'",
                f"{whole} ft",
                f"{whole} feet",
                spoken(whole),
                f"{whole}.0",
            ]
        )
    forms = [f"{value:g}", f"{value:g}", f"{value:g}'", f"{value:g}ft", f"{value:g} ft"]
    if abs(part * 12 - inches) < 0.001:
        forms += [
            f"{whole}'{inches}\"",
            f"{whole}'-{inches}\"",
            f"{whole}'{inches}",
            f"{whole}ft{inches}in",
            f"{whole} ft {inches} in",
            f"{whole}' {inches}\"",
        ]
        if inches < 12 and whole > 12:
            forms += [f"{whole}-{inches}"]
    if part in QUARTERS:
        forms += [f"{whole} {QUARTERS[part]}"]
    if part == 0.5:
        forms += [f"{spoken(whole)} and a half", f"{whole} and a half"]
    return c.choice(forms)


def inches(c: Chance, value: float, es: bool = False) -> str:
    whole, part = int(value), round(value - int(value), 4)
    if not part:
        forms = [
            f'{whole}"',
            f"{whole}in",
            f"{whole} in",
            f"{whole} inch",
            f"{whole}-inch",
            f"{spoken(whole)} inch",
            f"{whole} inches",
            f"{whole}''",
            f"{whole}in.",
        ]
        spanish = [f"{whole} pulg", f"{whole} pulgadas", f'{whole}"']
        if whole == 1:
            forms += ["an inch", "1 inch"]
            spanish = ["una pulgada", "1 pulg"]
    elif not whole:
        forms = [
            f'{value:g}"',
            f"{QUARTERS[part]} in",
            f'{QUARTERS[part]}"',
            f"{QUARTERS[part]} inch",
            f"{value:g}in",
            f"{value:g} inch",
        ]
        if part == 0.5:
            forms += ["half inch", "half an inch", "1/2 inch", "a half inch"]
        if part == 0.25:
            forms += ["quarter inch", "a quarter inch"]
        if part == 0.75:
            forms += ["three quarter inch"]
        spanish = ["media pulgada"] if part == 0.5 else [f"{QUARTERS[part]} de pulgada", f"{QUARTERS[part]} pulg"]
    else:
        q = QUARTERS[part]
        forms = [
            f'{whole} {q}"',
            f"{whole}-{q}in",
            f"{value:g}in",
            f'{value:g}"',
            f"{whole} {q} inch",
            f"{whole}-{q} inch",
            f"{whole} {q} in",
        ]
        if value == 1.5:
            forms += ["inch and a half", "an inch and a half", "inch n a half"]
        spanish = [f"{value:g} pulg", f"{value:g} pulgadas"]
    return c.choice(spanish if es else forms)


SHARES = {
    25: ["a quarter", "1/4 of the pipe", "quarter pipe", "1/4 full"],
    33: ["a third", "1/3", "third of the pipe", "one third"],
    50: ["half", "half the pipe", "half full", "1/2 the pipe"],
    67: ["two thirds", "2/3", "2/3 of the pipe"],
    75: ["three quarters", "3/4 full", "3/4 of the pipe"],
}
SPANISH_SHARES = {25: ["un cuarto"], 33: ["un tercio"], 50: ["la mitad", "mitad", "medio tubo"], 75: ["tres cuartos"]}


def percent(c: Chance, value: int, es: bool = False) -> str:
    forms = [
        f"{value}%",
        f"{value}%",
        f"{value} %",
        f"{value} pct",
        f"{value} percent",
        f"{value}pct",
        f"{spoken(value)} percent",
    ]
    spanish = [f"{value}%", f"{value} por ciento", *SPANISH_SHARES.get(value, ())]
    return c.choice(spanish if es else [*forms, *SHARES.get(value, ())])


def about(c: Chance, text: str, es: bool) -> str:
    if c.random() < 0.75:
        return text
    return f"{c.choice(['como', 'casi']) if es else c.choice(['about', 'bout', 'abt', '~' if text[0].isdigit() else 'around', 'approx', 'roughly', 'like'])} {text}".replace(
        "~ ", "~"
    )


# ── places ────────────────────────────────────────────────────────────────────────────────────


def point(c: Chance, at: float, es: bool) -> str:
    said = feet(c, at, es)
    if es:
        return c.choice([said, f"en {said}", f"a los {said}", f"en el {said}"])
    return c.choice([said, said, f"@{said}", f"@ {said}", f"at {said}", f"{said} -", f"{said}:", f"{said},"])


def stretch(c: Chance, low: float, high: float, es: bool) -> str:
    a, b = f"{low:g}", f"{high:g}"
    if es:
        return c.choice(
            [f"{a} a {b}", f"de {a} a {b}", f"{a}-{b}", f"desde {a} hasta {b}", f"del {a} al {b}", f"entre {a} y {b}"]
        )
    long = f"{high - low:g}"
    return c.choice([
        f"{a}-{b}", f"{a}-{b}", f"{a} to {b}", f"{a} - {b}", f"{a}' to {b}'", f"{a}'-{b}'", f"{a} thru {b}", f"from {a} to {b}", f"{a} till {b}",
        f"{a}-{b}ft", f"{a} for {long} ft", f"between {a} and {b}", f"{a}ft to {b}ft", f"{a} to {b} ft", f"{a} out to {b}", f"from {a} thru {b}",
        f"starts {a} ends {b}", f"start {a} end {b}", f"{a}->{b}", f"{a} until {b}", f"{a}to{b}", f"from {a} out to {b}",
        f"starts at {a} and ends at {b}", f"begins {a}, ends {b}", f"{a} through {b}", f"starts {a} goes to {b}", f"{a} on to {b}",
    ])  # fmt: skip


# ── words ─────────────────────────────────────────────────────────────────────────────────────


@cache
def said_for() -> dict[tuple[str, str], dict[str, list[str]]]:
    """Class and meaning -> the trade words of the lexicon, by list (say, short, slip, es), those of one meaning alone."""
    lex, out = lexicon(), {}
    for cls, words in lexicon_data().items():
        if cls in ("ask", "standard", "filler", "language"):
            continue
        for meaning, entry in words.items():
            lists: dict[str, list[str]] = defaultdict(list)
            for listed in ("say", "short", "slip", "es"):
                for key in (key for phrase in entry.get(listed, ()) for key in unfolded(folded(phrase))):
                    alone = {meaning if cls == "verb" else cls: meaning}
                    if key and not any(ch.isdigit() for word in key for ch in word) and lex.means(key) == alone:
                        lists[listed].append(" ".join(key))
            out[cls, meaning] = dict(lists)
    return out


def word(c: Chance, cls: str, meaning: str, es: bool) -> str:
    lists = said_for()[cls, meaning]
    pools = (
        [lists.get("es", [])]
        if es and lists.get("es")
        else [lists.get("say", []), lists.get("say", []), lists.get("short", []), lists.get("slip", [])]
    )
    pools = [p for p in pools if p]
    return c.choice(c.choice(pools)) if pools else meaning


CLOCK_SAID = {
    "12": ["top", "on top", "at 12 oclock", "12 o'clock", "crown", "at the top"], "6": ["bottom", "at 6 oclock", "btm", "on the bottom", "6 o'clock"],
    "9": ["left side", "at 9 oclock", "on the left", "9 o'clock", "off the left wall", "off left wall", "left wall"], "3": ["right side", "rt side", "at 3 oclock", "3 o'clock", "off the right wall", "off of the right wall", "right wall"],
}  # fmt: skip


# ── meanings ──────────────────────────────────────────────────────────────────────────────────

FILLERS = ("got", "theres", "see", "here", "have", "is", "we got", "showing", "looking at", "i see")
FINDINGS: dict[str, tuple[str, ...]] = {
    "roots": ("pct", "grade"), "offset": ("in", "grade", "pct"), "sag": ("in", "pct", "grade"), "scale": ("pct", "grade", "none"),
    "grease": ("pct", "grade", "in"), "hole": ("in", "none"), "gap": ("in",), "crack": ("none",), "collapse": ("none",),
    "channel": ("none",), "channel gone": ("none",), "oval": ("pct",), "mud": ("in", "pct", "none"), "reverse fall": ("none",),
    "blocked soft": ("none",), "leak running in": ("none",), "roots severe": ("none",), "roots hair": ("none",), "intruding": ("in",),
    "crack hairline": ("none",), "insects": ("none",), "leak": ("none",), "blocked": ("none",),
}  # fmt: skip
STRETCHES = (
    "roots",
    "scale",
    "grease",
    "sag",
    "channel",
    "channel gone",
    "reverse fall",
    "mud",
    "oval",
    "crack",
    "collapse",
    "roots hair",
)
SIGNS: dict[str, tuple[str, ...]] = {
    "hole": ("soil seen", "void"), "crack": ("soil seen",), "gap": ("soil seen",), "collapse": ("cannot pass",), "roots": ("cannot pass",),
    "blocked": ("cannot pass",),
}  # fmt: skip


JUST_THERE = ("right at the hub", "rite at the jt", "right at the joint", "rt at the hub", "right by the hub")


def finding(c: Chance, es: bool) -> tuple[list[str], str, bool]:
    """Its words without a place, what they say, and whether it is a stretch."""
    kind = c.choice(list(FINDINGS))
    pieces = [word(c, "finding", kind, es)]
    row = [kind]
    how = c.choice(FINDINGS[kind])
    if how == "pct":
        value = c.choice([10, 15, 20, 25, 30, 33, 40, 50, 60, 67, 75])
        pieces.append(about(c, percent(c, value, es), es))
        row.append(f"{value}%")
    elif how == "in":
        value = c.choice([0.5, 0.75, 1.0, 1.5, 2.0, 3.0] if kind not in ("offset",) else [0.25, 0.5, 0.75, 1])
        a_by_b = kind == "hole" and value.is_integer() and c.random() < 0.3
        said = c.choice(['1x{:g}"', "1 x {:g} in", "1x{:g}in"]).format(value) if a_by_b else inches(c, value, es)
        pieces.append(about(c, said, es))
        row.append(f"{value:g}in")
    elif how == "grade":
        grade = c.choice(["light", "moderate", "severe"])
        pieces.insert(0, word(c, "grade", grade, es))
        row.append(grade)
    for sign in SIGNS.get(kind, ()):
        if c.random() < 0.3:
            pieces.append(word(c, "sign", sign, es))
            row.append(sign)
            break
    if kind in ("hole", "crack", "roots") and c.random() < 0.25 and not es:
        hour = c.choice(list(CLOCK_SAID))
        pieces.append(c.choice(CLOCK_SAID[hour]))
        row.append(f"at {hour}")
    if not es and c.random() < 0.08:
        pieces.append(c.choice(JUST_THERE))
    if kind in ("hole", "crack") and not es and c.random() < 0.08:
        pieces.append(f", {c.choice(['scale', 'grease', 'mud'])} was {c.choice(['hiding', 'covering', 'hidin'])} it")
    return pieces, " ".join(row), kind in STRETCHES and c.random() < 0.6


def branch(c: Chance, es: bool) -> tuple[list[str], str, bool]:
    size = c.choice([1.5, 2, 3, 4])
    pieces, row = [word(c, "place", "branch", es), inches(c, size, es)], [f"branch {size:g}in"]
    if c.random() < 0.6:
        side = c.choice(["left", "right"])
        pieces.append(word(c, "side", side, es))
        row.append(side)
    if c.random() < 0.5:
        live = c.choice(["live", "dead"])
        pieces.append(word(c, "live", live, es))
        row.append(live)
    if c.random() < 0.4:
        room = c.choice(["kitchen", "toilet", "laundry", "hall bath", "master bath", "shower", "tub", "washer"])
        pieces.append(word(c, "room", room, es))
        row.append(f"called {room}")
    return pieces, " ".join(row), False


def fixture(c: Chance, es: bool) -> tuple[list[str], str, bool]:
    """A branch by its fixture alone: `lav 1-1/2in rt`."""
    size, side = c.choice([1.5, 2, 3, 4]), c.choice(["left", "right"])
    room = c.choice(["kitchen", "laundry", "shower", "tub", "lav", "washer", "toilet"])
    said = f"{word(c, 'room', room, es)} {inches(c, size, es)} {word(c, 'side', side, es)}"
    return [said], f"branch {size:g}in {side} called {room}", False


def bend(c: Chance, es: bool) -> tuple[list[str], str, bool]:
    degrees, side = c.choice([90, 45, 22.5]), c.choice(["left", "right", "up", "down"])
    said = c.choice(["22-1/2", "22.5", "22 1/2"]) if degrees == 22.5 else f"{degrees}"
    while any(own in (elbow := word(c, "place", "bend", es)) for own in ("quarter", "90")):
        pass  # it has degrees of its own
    return (
        [f"{said}{c.choice(['', ' deg', ' degree'])} {elbow}", word(c, "side", side, es)],
        f"bend {degrees:g} {side}",
        False,
    )


def pipe(c: Chance, es: bool) -> tuple[list[str], str, bool]:
    new = c.choice(["PVC", "clay", "ABS", "fiber"])
    if c.random() < 0.5:
        old = word(c, "material", "cast iron", es)
        change = (
            c.choice(["a", "cambia a"])
            if es
            else c.choice(["to", "changes to", "goes to", "->", "to new", "turns to", "transitions to", "then"])
        )
        return [f"{old} {change} {word(c, 'material', new, es)}"], f"pipe {new}", False
    starts = c.choice(["empieza", "cambia a"]) if es else c.choice(["starts", "begins", "from here on", "from here"])
    return [word(c, "material", new, es), starts], f"pipe {new}", False


def depth(c: Chance, es: bool) -> tuple[list[str], str, bool]:
    value = c.choice([2.5, 3, 3.5, 4, 4.25, 5.5])
    long = c.choice(
        [
            f"{value:g} ft",
            f"{value:g}'",
            f"{value:g}ft",
            f"{value * 12:g}in",
            f"{value * 12:g} inches",
            f"{int(value)}'{round((value % 1) * 12)}\"",
        ]
    )
    surface = c.choice(["lawn", "slab", "floor", ""])
    head = c.choice(["loc", "depth"])
    pieces = [word(c, "place", head, es), f"{long} {c.choice(['deep', 'down', '']) if not surface else ''}".strip()]
    row = f"{head} {value:g} ft"
    if surface:
        pieces[1] += f" {c.choice(['from', 'below', 'under'])} {word(c, 'surface', surface, False)}"
        row += f" from {surface}"
    return pieces, row, False


def zone(c: Chance, es: bool) -> tuple[list[str], str, bool]:
    name = c.choice(["drive", "walk", "street", "slab"])
    return [word(c, "zone", name, es)], name, False


def tree(c: Chance, es: bool) -> tuple[list[str], str, bool]:
    away = c.choice([4, 6, 8, 10])
    return (
        [word(c, "place", "tree", es), f"{away} ft {c.choice(['away', 'off', 'from line', 'off line'])}"],
        f"tree {away}ft away",
        False,
    )


def utility(c: Chance, es: bool) -> tuple[list[str], str, bool]:
    what = c.choice(["gas", "water", "power", "irrigation"])
    return [f"{word(c, 'utility', what, es)} {word(c, 'through', 'through', es)}"], f"utility {what}", False


def stop(c: Chance, es: bool) -> tuple[list[str], str, bool]:
    if c.random() < 0.4:
        return [word(c, "verb", "cable end", es)], "stop cable end", False
    what = c.choice(["main", "septic tank", "manhole"])
    return (
        [f"{c.choice(['reached', 'hit', 'into', 'end at', 'got to'])} {word(c, 'reach', what, False)}"],
        f"end {what}",
        False,
    )


MEANINGS: tuple[Callable[[Chance, bool], tuple[list[str], str, bool]], ...] = (
    finding, finding, finding, finding, finding, branch, branch, fixture, bend, pipe, depth, zone, tree, utility, stop,
)  # fmt: skip
AT = (27, 28.5, 31, 33, 33.5, 36.25, 38, 41.5, 44, 46.75, 26.4)
SPANS = ((28, 33), (26.5, 31), (30, 41), (34, 36.5), (44, 52))


def fact(c: Chance, es: bool, at: float | None = None) -> tuple[str, str]:
    """One meaning with its place, as typed and in standard words."""
    pieces, row, long = c.choice(MEANINGS)(c, es)
    if at is None and long:
        low, high = c.choice(SPANS)
        place, where = stretch(c, low, high, es), f"{low:g}-{high:g}"
    else:
        at = c.choice(AT) if at is None else at
        place, where = point(c, at, es), f"{at:g}"
    tails = [p for p in pieces if p.startswith(",")]
    pieces = [p for p in pieces if p not in tails]
    c.shuffle(pieces)
    pieces += tails
    if c.random() < 0.2 and not es:
        pieces.insert(0, c.choice(FILLERS))
    cut = c.choice([0, 0, 0, len(pieces), len(pieces), c.randrange(len(pieces) + 1)])
    if cut:
        place = place.rstrip(" -:,")
    joint = c.choice([" ", " ", " ", ", "])
    behind = pieces[cut][:1] if cut < len(pieces) else ""
    feet_inches = place[-1:].isdigit() and not place.replace(".", "").isdigit() and (behind.isdigit() or "'" in place)
    if feet_inches or pieces[cut : cut + 1] == ["in depth"]:
        place += ","  # `41'6 3/4in` is 41 ft 6 3/4 in
    words = [*pieces[:cut], place, *pieces[cut:]]
    return joint.join(w for w in words if w).replace(" ,", ",").replace("-,", "-").replace(":,", ":").replace(
        ",,", ","
    ), f"{where} {row}"


def dressed(c: Chance, text: str) -> str:
    """Case, marks and spaces as they come."""
    text = c.choice([str, str, str, str.upper, str.capitalize, str.title])(text)
    if c.random() < 0.15:
        text += c.choice([".", "!", " .", "...", ","])
    return text.replace(" ", "  ") if c.random() < 0.05 else text


def held(c: Chance) -> tuple[str, tuple[str, ...]]:
    """What holds over a stretch, what was before it or comes after it."""
    (low, high), at = c.choice(SPANS), c.choice(AT)
    old, new = c.sample(["cast iron", "clay", "PVC", "ABS", "fiber"], 2)
    said_old, said_new = (word(c, "material", m, False) for m in (old, new))
    over = c.choice(["drive", "walk"])
    zone = f"{word(c, 'zone', over, False)} {low:g} to {high:g} then yard{c.choice(['', ' again', ' agn'])}"
    value = c.choice([10, 15, 20])
    return c.choice([
        (f"{said_new} {c.choice(['starts', 'picks up', 'begins'])} {at:g}, was {said_old}", (f"0-{at:g} pipe {old}", f"{at:g} pipe {new}")),
        (f"{said_new} {low:g}-{high:g} egged {percent(c, value, False)}", (f"{low:g}-{high:g} pipe {new}, oval {value}%",)),
        (f"{said_new} {low:g} to {high:g} then {said_old}", (f"{low:g}-{high:g} pipe {new}", f"{high:g} pipe {old}")),
        (zone, (f"{low:g}-{high:g} {over}", f"{high:g} yard")),
    ])  # fmt: skip


BACKING = ("on the way out: ", "on the way back, ", "coming back out: ", "pulling out - ")


def line(seed: int) -> Line:
    c = Chance(seed)
    if c.random() < 0.04:
        text, rows = held(c)
        return Line(dressed(c, text), rows)
    es = c.random() < 0.2
    text, row = fact(c, es)
    rows = (row,)
    if c.random() < 0.2:
        more, other = fact(c, es)
        if other.split()[0] != row.split()[0]:
            text += (
                c.choice([", ", " and ", " / ", ". ", " then ", " + ", "; "] if not es else [", ", " y ", ". "]) + more
            )
            rows = (row, other)
    back = not es and text[:1].isdigit() and c.random() < 0.04
    return Line(dressed(c, f"{c.choice(BACKING) if back else ''}{text}"), rows, back)


# ── what was read ─────────────────────────────────────────────────────────────────────────────


def facts(rows: tuple[str, ...]) -> Iterator[tuple[object, ...]]:
    """Each thing of lines in standard words: where, what, and how much."""
    for text in rows:
        said = tied(tidied(text), None, frozenset())
        assert said is not None, text
        where = (round(said.where.from_ft, 2), None if said.where.to_ft is None else round(said.where.to_ft, 2))
        for thing in said.things:
            kept = {
                k: v
                for k, v in thing.values.items()
                if v not in ((), None) and (thing.word.word, k) != ("bend", "choice")
            }
            if thing.word.kind in ("zone", "holds"):
                kept.pop("leg", None)  # it holds from there on, said or not
            yield (where, thing.word.word, tuple(sorted((k, _same(v)) for k, v in kept.items())))


def _same(value: object) -> object:
    if isinstance(value, float):
        return round(value, 2)
    if isinstance(value, tuple):
        return (
            tuple(sorted((_same(v) for v in value), key=str))
            if value and isinstance(value[0], str)
            else tuple(_same(v) for v in value)
        )
    return value


def read(text: str, before: tuple[str, ...] = HEADER) -> tuple[Log, tuple[str, ...] | None, str]:
    """The log with this line, what it was read as in standard words (None where it is asked back), and what is asked."""
    log = Log()
    LogReader(log, "main.txt", {}, None, 4.0).read("\n".join([*before, text]))
    asked = [a for a in log.asked if a.place.line == len(before) + 1]
    if asked:
        return log, None, f"{asked[0].question} {asked[0].choices}"
    return log, log.understood.get(("main.txt", len(before) + 1), ()), ""


def verdict(said: Line, before: tuple[str, ...] = HEADER) -> tuple[str, object]:
    """`right`, `asked` or `wrong`, and what was read or asked."""
    log, rows, asked = read(said.text, before)
    if rows is None:
        return "asked", asked
    if not rows or rows[0].startswith("pass ") or rows[0] == "back":
        return "wrong", rows or "a remark"
    if said.back and not all(e.back for e in log.passes[-1].entries[-len(rows) :]):
        return "wrong", "not on the way back"
    same = sorted(facts(rows), key=str) == sorted(facts(said.rows), key=str)
    return ("right" if same else "wrong"), rows
