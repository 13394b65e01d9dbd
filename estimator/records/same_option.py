"""The options of two quotes in; which of them do the same out: by their ways of repair on each line and the estimator's own
name, never by letters or lengths, which move with what is found."""

from collections.abc import Iterable, Mapping, Sequence
from typing import Any

from estimator.model.frozen import Frozen
from estimator.model.offer import Option
from estimator.model.say import Say
from estimator.model.work import Repair

Way = tuple[str, str, str]
"""A line, a way of repair on it, and the way round where it is a new one."""
Piece = tuple[float, float, str]
"""From and to (stations, ft), and from where a tunnel is begun."""


class OptionWork(Frozen):
    """What an option does: every way with its pieces of pipe. `title` has no length in it."""

    letter: str
    name: str
    title: str
    ways: Mapping[Way, tuple[Piece, ...]]

    @property
    def lines(self) -> frozenset[str]:
        return frozenset(line for line, _, _ in self.ways)

    def on(self, lines: Iterable[str]) -> frozenset[Way]:
        wanted = frozenset(lines)
        return frozenset(way for way in self.ways if way[0] in wanted)


def work_of(option: Option) -> OptionWork:
    """Of an option that is no record yet."""
    pieces = [
        ((r.line, r.method, r.reroute), (r.stretch.from_ft, r.stretch.to_ft, r.entry))
        for r in _every(option.scope.repairs)
    ]
    return OptionWork(option.letter, option.name, option.name or str(_bare(option.title)), _gathered(pieces))


def _every(repairs: Iterable[Repair]) -> Iterable[Repair]:
    return (one for repair in repairs for one in (*_every(repair.first), repair))


def _bare(title: Say) -> Say:
    """Without what was put behind it in brackets to tell it apart from others of its quote."""
    first = dict(title.words).get("title")
    return first if title.text == TOLD_APART and isinstance(first, Say) else title


TOLD_APART = "{title} ({what})"


def recorded(option: Mapping[str, Any]) -> OptionWork:
    """The same of an option as a record keeps it."""
    from estimator.records.recorded_text import sentence

    title = option["title"]
    bare = dict(title["words"])["title"] if title["text"] == TOLD_APART else title
    pieces = [
        ((r["line"], r["method"], r["reroute"]), (r["stretch"]["from_ft"], r["stretch"]["to_ft"], r["entry"]))
        for r in _all(option["scope"]["repairs"])
    ]
    return OptionWork(option["letter"], option["name"], option["name"] or str(sentence(bare)), _gathered(pieces))


def _all(repairs: Iterable[Mapping[str, Any]]) -> Iterable[Mapping[str, Any]]:
    return (one for repair in repairs for one in (*_all(repair["first"]), repair))


def _gathered(pieces: Iterable[tuple[Way, Piece]]) -> dict[Way, tuple[Piece, ...]]:
    found: dict[Way, tuple[Piece, ...]] = {}
    for way, piece in pieces:
        found[way] = (*found.get(way, ()), piece)
    return found


Rank = tuple[int, int, float, bool]


def rank(was: OptionWork, now: OptionWork) -> Rank | None:
    """How surely `now` is what `was` has become; the least is the surest, None: it does something else.

    First its name, then its ways on every line, then its ways on the lines it had, others added or gone; of several alike
    the one begun from the same side, then the nearest stretch, then the same letter.
    """
    sure = _sure(was, now)
    if sure is None:
        return None
    return sure, _entries(was) != _entries(now), _apart_ft(was, now), was.letter != now.letter


def _sure(was: OptionWork, now: OptionWork) -> int | None:
    if was.name and was.name == now.name:
        return 0
    if was.ways.keys() == now.ways.keys():
        return 1
    both = was.lines & now.lines
    kept = both and both in (was.lines, now.lines) and was.on(both) == now.on(both)
    return 2 if kept else None


def _entries(does: OptionWork) -> frozenset[tuple[Way, str]]:
    return frozenset((way, entry) for way, pieces in does.ways.items() for _, _, entry in pieces)


def _apart_ft(was: OptionWork, now: OptionWork) -> float:
    """How far the ends of the pipe of each way moved, and how much more or less of it there is, ft."""
    return sum(_moved_ft(was.ways.get(way, ()), now.ways.get(way, ())) for way in dict.fromkeys([*was.ways, *now.ways]))


def _moved_ft(before: Sequence[Piece], after: Sequence[Piece]) -> float:
    more = abs(_length_ft(before) - _length_ft(after))
    if not before or not after:
        return more
    starts = abs(min(p[0] for p in before) - min(p[0] for p in after))
    return more + starts + abs(max(p[1] for p in before) - max(p[1] for p in after))


def _length_ft(pieces: Sequence[Piece]) -> float:
    return sum(to - start for start, to, _ in pieces)


def same(was: OptionWork, offered: Sequence[OptionWork]) -> int | None:
    """Where among those offered the one stands that does the same; None where none does."""
    ranks = [(r, i) for i, now in enumerate(offered) if (r := rank(was, now)) is not None]
    return min(ranks)[1] if ranks else None


def paired(old: Sequence[OptionWork], new: Sequence[OptionWork]) -> dict[int, int]:
    """Each old option with the new one that does the same, the surest first; no option stands in two pairs."""
    ranks = sorted((r, i, j) for i, was in enumerate(old) for j, now in enumerate(new) if (r := rank(was, now)))
    found: dict[int, int] = {}
    for _, i, j in ranks:
        if i not in found and j not in found.values():
            found[i] = j
    return found


def names(old: Sequence[OptionWork], new: Sequence[OptionWork]) -> tuple[list[str], list[str]]:
    """The options of both by letter and short title; those that do the same have one name, with both letters where they differ.

    >>> dig, line = {("main", "trench", ""): ()}, {("main", "reline", ""): ()}
    >>> names([OptionWork("A", "", "Dig", dig)], [OptionWork("A", "", "Line", line), OptionWork("B", "", "Dig", dig)])
    (['A → B: Dig'], ['A: Line', 'A → B: Dig'])
    """
    pairs = paired(old, new)
    before = _unlike([_named(was, new[pairs[i]] if i in pairs else was) for i, was in enumerate(old)])
    back = {j: before[i] for i, j in pairs.items()}
    others = iter(_unlike([_named(now, now) for j, now in enumerate(new) if j not in back], before))
    return before, [back[j] if j in back else next(others) for j in range(len(new))]


def like(options: Sequence[OptionWork], known: Sequence[tuple[str, OptionWork]]) -> list[str]:
    """Names for the options of a third quote: those of the known ones that do the same."""
    back = {j: known[i][0] for i, j in paired([does for _, does in known], options).items()}
    others = iter(_unlike([_named(o, o) for j, o in enumerate(options) if j not in back], [name for name, _ in known]))
    return [back[j] if j in back else next(others) for j in range(len(options))]


def _named(was: OptionWork, now: OptionWork) -> str:
    letters = was.letter if was.letter == now.letter else f"{was.letter} → {now.letter}"
    return f"{letters}: {was.title}"


def _unlike(named: Iterable[str], taken: Iterable[str] = ()) -> list[str]:
    """Each told apart from all others by a number behind it, where it has to be."""
    known, out = set(taken), []
    for name in named:
        number, own = 1, name
        while own in known:
            number += 1
            own = f"{name} ({number})"
        known.add(own)
        out.append(own)
    return out
