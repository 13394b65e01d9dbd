"""Candidates and what pairs of them save by sharing a way in; candidates that share it as a charge paid once, out.

A tunnel to a side line may begin in the tunnel along the line it joins. Alone it pays for the way; beside the other it
does not. As the search counts, the way is a charge of both, and the long tunnel's own cost is so much less.
"""

from collections.abc import Mapping, Sequence
from dataclasses import replace

from estimator.model.work import Candidate

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
) -> tuple[tuple[Candidate, ...], dict[str, int], int]:
    """Candidates with the cleaning of their line as a charge paid once; the charge of each line; cents still unshared.

    `cleaning` is what each spends on having its line cleaned and filmed first. The charge is the most that any of a line
    spends, but no more than the cheapest of them costs. A set of n on one line is then summed up to (n - 1) times the
    cents unshared too dear, never more.
    """
    charge: dict[str, int] = {}
    unshared = 0
    for line in dict.fromkeys(c.line for c in candidates):
        here = [c for c in candidates if c.line == line and cleaning.get(c.id, 0) > 0]
        if len(here) > 1:
            most = max(cleaning[c.id] for c in here)
            charge[line] = min(most, *(c.cost for c in here))
            unshared = max(unshared, most - charge[line])
    shared = tuple(
        replace(c, cost=c.cost - charge[c.line], shared=c.shared | {_cleaned(c.line)})
        if cleaning.get(c.id, 0) > 0 and c.line in charge
        else c
        for c in candidates
    )
    return shared, {_cleaned(line): cents for line, cents in charge.items()}, unshared


def _cleaned(line: str) -> str:
    return f"cleaning of {line}"


def _key(guest: str) -> str:
    return f"way in of {guest}"
