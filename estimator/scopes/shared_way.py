"""Candidates and what pairs of them save by sharing a way in; candidates that share it as a charge paid once, out.

A tunnel to a side line may begin in the tunnel along the line it joins. Alone it pays for the way; beside the other it
does not. As the search counts, the way is a charge of both, and the long tunnel's own cost is so much less.
"""

from collections.abc import Callable, Mapping, Sequence
from itertools import pairwise

from estimator.model.frozen import replace
from estimator.model.work import Candidate, Takeoff

Saved = Mapping[tuple[str, str], int]
"""(the tunnel one begins in, the tunnel that begins there): cents the two save together."""


def share_ways(candidates: Sequence[Candidate], saved: Saved) -> tuple[tuple[Candidate, ...], dict[str, int]]:
    """Candidates with the way as a shared key, and the charge of each key.

    Never more than the pair really costs: a charge is cut where a long tunnel would come out below nothing.
    """
    beside: dict[str, list[str]] = {}
    for host, guest in saved:
        beside.setdefault(host, []).append(guest)
    charge = {guest: min(cents for (_, g), cents in saved.items() if g == guest) for _, guest in saved}
    cost = {c.id: c.cost for c in candidates}
    for guest in charge:
        charge[guest] = min(charge[guest], cost[guest])
    for host, guests in beside.items():
        for guest in guests:
            charge[guest] = min(charge[guest], cost[host] // len(guests))
    return (
        tuple(_sharing(c, charge, beside.get(c.id, [])) for c in candidates),
        {_key(guest): cents for guest, cents in charge.items()},
    )


def _sharing(candidate: Candidate, charge: Mapping[str, int], guests: Sequence[str]) -> Candidate:
    mine = [*guests, *([candidate.id] if candidate.id in charge else [])]
    if not mine:
        return candidate
    return replace(
        candidate,
        cost=candidate.cost - sum(charge[g] for g in mine),
        shared=candidate.shared | {_key(g) for g in mine},
    )


def share_cleaning(
    candidates: Sequence[Candidate], cleaning: Mapping[str, int]
) -> tuple[tuple[Candidate, ...], dict[str, int]]:
    """Candidates with the cleaning of their line as charges paid once, and those charges.

    `cleaning` is what each spends on having its line cleaned and filmed first. The tool goes in at one end, so who reaches
    farther cleans for whoever is nearer: each step from one spending to the next is a charge of all that spend so much. A
    set is summed with the most that any of it spends, which is what it really pays, or less where they go in at both ends.

    >>> from estimator.model.stretch import Stretch
    >>> def c(id, cost): return Candidate(id=id, line="main", stretch=Stretch(0, 1), answers=frozenset(id), cost=cost)
    >>> shared, charges = share_cleaning((c("near", 50), c("far", 70)), {"near": 20, "far": 30})
    >>> [one.cost for one in shared], sorted(charges.values()), [len(one.shared) for one in shared]
    ([30, 40], [10, 20], [1, 2])
    """
    steps: dict[str, list[int]] = {}
    for line in dict.fromkeys(c.line for c in candidates):
        spent = sorted({s for c in candidates if c.line == line and (s := cleaning.get(c.id, 0)) > 0})
        steps[line] = spent
    shared = tuple(_cleaned(c, cleaning.get(c.id, 0), steps[c.line]) for c in candidates)
    charges = {_step(line, high): high - low for line, spent in steps.items() for low, high in pairwise([0, *spent])}
    return shared, charges


def _cleaned(candidate: Candidate, spent: int, steps: Sequence[int]) -> Candidate:
    if spent <= 0:
        return candidate
    keys = {_step(candidate.line, step) for step in steps if step <= spent}
    return replace(candidate, cost=candidate.cost - spent, shared=candidate.shared | keys)


def _step(line: str, cents: int) -> str:
    return f"cleaning of {line} up to {cents}"


def _key(guest: str) -> str:
    return f"way in of {guest}"


Measured = Mapping[str, Sequence[Takeoff]]
"""By the id of a repair: the takeoffs of what comes first and its own, the last."""
Cents = Callable[[Takeoff], int]
Together = Callable[[Sequence[Takeoff]], Sequence[Takeoff]]


def saved_by_pairs(measured: Measured, cents: Cents, together: Together) -> dict[tuple[str, str], int]:
    """What two tunnels on different lines save where one begins in the other."""
    tunnels = {name: own[0] for name, own in measured.items() if len(own) == 1 and own[0].works.tunnels}
    pairs = ((a, b) for a in tunnels for b in tunnels if tunnels[a].repair.line != tunnels[b].repair.line)
    saved = {(a, b): cents(tunnels[b]) - cents(together((tunnels[a], tunnels[b]))[1]) for a, b in pairs}
    return {pair: less for pair, less in saved.items() if less > 0}


def cleaning(measured: Measured, cents: Cents, together: Together) -> dict[str, int]:
    """What each repair spends on a cleaning and a film that another on its line may have paid for already."""

    def spent(takeoff: Takeoff) -> int:
        again = together((takeoff, takeoff))[1]  # the second time nothing is left to clean
        return cents(takeoff) - cents(again)

    return {name: sum(spent(t) for t in own if t.value("clean_ft")) for name, own in measured.items()}
