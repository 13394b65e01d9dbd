"""Options as they are shown and all sets that were looked at in; for each allowed way in none of them the reason, out."""

from collections.abc import Callable, Sequence
from dataclasses import replace

from estimator.model.judgement import Effect, Verdict
from estimator.model.say import Say
from estimator.model.work import LETTERS, Repair, all_repairs
from estimator.scopes.counter import Counter
from estimator.scopes.kinds import kind_of, reach_of
from estimator.scopes.menu import MenuEntry, by_price
from estimator.scopes.rules import BY_ID
from estimator.works.methods import renews

COSTS_MORE = "costs-more"
NO_ROOM = "four-are-enough"
TOO_MUCH = "smaller-way-first"
WHY: dict[str, Say] = {
    COSTS_MORE: Say.of(
        "It could be done, but option {option} costs no more and is no worse in days without drains, floor opened or old "
        "pipe left."
    ),
    NO_ROOM: Say.of("Possible. Compare option {option}."),
    TOO_MUCH: Say.of("Nothing found here asks for so much work; something smaller puts it right."),
}
Set = tuple[Repair, ...]
Figures = tuple[float, float, float, float]
"""Price, days without drains in halves, floor opened in sq ft, old pipe left in ft. Less is better in all four."""


def left_out(
    options: Sequence[Set],
    allowed: Sequence[MenuEntry],
    found: Sequence[MenuEntry],
    counter: Counter,
    dropped: set[str],
) -> tuple[Verdict, ...]:
    """One reason a way, of the cheapest set it is in: too much for what was found (`found`, not `allowed`), beaten by an
    option, or like the one named.

    `options` in the order of their letters. What the estimator dropped needs no reason. A way that no whole set uses keeps
    what the rules say of it elsewhere.
    """
    used = {r.method for option in options for r in all_repairs(option)} | dropped
    out: dict[str, Verdict] = {}
    for entry in by_price(found):
        whole = counter.repairs_of(entry.answer)
        for repair in (r for r in all_repairs(whole) if r.method not in used and r.method not in out):
            if danger := _danger(repair):
                out[repair.method] = danger
                continue
            why, option = _why(repair, whole, options, counter) if entry in allowed else (TOO_MUCH, "")
            out[repair.method] = _verdict(repair, why, option)
    return tuple(out.values())


def _danger(repair: Repair) -> Verdict | None:
    """What a rule that guards people holds against the price of this way: it weighs more than that another costs less."""
    held = (v for v in repair.verdicts if v.effect is Effect.NO_FIXED_PRICE and not v.overruled)
    return next((v for v in held if v.rule in BY_ID and BY_ID[v.rule].guards_people), None)


def _why(repair: Repair, whole: Set, options: Sequence[Set], counter: Counter) -> tuple[str, str]:
    """The reason and the letter of the option it speaks of: one that beats the set, else the one most like it.

    A lining beats no new pipe and a tunnel or trench no way round, whatever they cost: people compare those themselves.
    """
    mine = _figures(whole, counter)
    lettered = [(letter, o, _figures(o, counter)) for letter, o in zip(LETTERS, options, strict=False)]
    for letter, option, figures in lettered:
        if _same_kind(repair, option) and _no_worse(figures, mine):
            return COSTS_MORE, letter
    dearer = {letter: figures[0] > mine[0] for letter, _, figures in lettered}  # never all: the cheapest set is shown
    near = {
        letter: (not _cures(o, repair), dearer[letter], *(-n for n in _shared(o, whole))) for letter, o, _ in lettered
    }
    return NO_ROOM, min(near, key=lambda letter: near[letter])


def _cures(option: Set, repair: Repair) -> bool:
    """The option puts right some of what the repair would: a visit, or the cure of another line, stands for none."""
    return any(set(repair.answers) & set(r.answers) for r in all_repairs(option) if renews(r.method))


def _figures(repairs: Set, counter: Counter) -> Figures:
    """As they are printed beside each other."""
    days, floor, old = counter.measures_of(repairs)
    return float(counter.in_figures(repairs).total), float(days), round(floor, 6), round(old, 6)


def _no_worse(a: Figures, b: Figures) -> bool:
    return all(one <= other for one, other in zip(a, b, strict=True))


def _same_kind(repair: Repair, option: Set) -> bool:
    """All that the repair answers the option answers by repairs of its kind."""
    alike = [r for r in all_repairs(option) if kind_of(r.method) == kind_of(repair.method)]
    return set(repair.answers) <= {need for r in alike for need in r.answers}


def _shared(one: Set, other: Set) -> tuple[int, int]:
    """How many needs both treat by the same method, and how many they come to by the same way (floor, tunnel, lining)."""
    methods = _treated(one, lambda m: m) & _treated(other, lambda m: m)
    reaches = _treated(one, reach_of) & _treated(other, reach_of)
    return len(methods), len(reaches)


def _treated(repairs: Set, told: Callable[[str], str]) -> set[tuple[str, str]]:
    return {(need, told(r.method)) for r in all_repairs(repairs) for need in r.answers}


def _verdict(repair: Repair, why: str, option: str) -> Verdict:
    said = replace(WHY[why], words=(("option", option),) if option else ())
    return Verdict(
        rule=why,
        effect=Effect.PREFERS,
        method=repair.method,
        line=repair.line,
        stretch=repair.stretch,
        homeowner=said,
        estimator=said,
    )
