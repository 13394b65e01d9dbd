"""Needs, candidates and shared charges in, the same as bits and whole numbers out: what the search counts with.

A set of candidates has one whole number: cents first, then how many repairs, then ids; lower is better and no two
sets are equal, so ties need no care anywhere else.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence

from estimator.model.work import Candidate

Bits = int
IMPOSSIBLE = None


def ones(bits: Bits) -> Iterator[int]:
    """The places of the set bits, lowest first.

    >>> list(ones(0b1101))
    [0, 2, 3]
    """
    while bits:
        low = bits & -bits
        yield low.bit_length() - 1
        bits ^= low


def clash(a: Candidate, b: Candidate) -> bool:
    """They would put their hands on the same length of the same line; a cleaning goes on through what another renews."""
    return a.line == b.line and a.cleans == b.cleans and a.stretch.overlaps(b.stretch)


class Cover:
    """Which candidates answer which needs, what they weigh, which of them clash, which charges they share.

    Needs nobody answers are left out (`unreachable` names them). Errors: KeyError for a shared key without a charge,
    ValueError for a cost or charge below zero or for two candidates of one id.
    """

    def __init__(
        self,
        needs: Iterable[str],
        candidates: Sequence[Candidate],
        shared_costs: Mapping[str, int],
        may_be_negative: bool = False,
    ) -> None:
        wanted = set(needs)
        self.candidates = sorted((c for c in candidates if c.answers & wanted), key=lambda c: c.id)
        if len({c.id for c in candidates}) < len(candidates):
            raise ValueError("two candidates have the same id")
        self._only_adds = not may_be_negative
        if self._only_adds and min((*(c.cost for c in candidates), *shared_costs.values(), 0)) < 0:
            raise ValueError("a cost or a shared charge is below zero")
        self.unreachable = tuple(sorted(wanted - {n for c in self.candidates for n in c.answers}))
        self.needs = self._in_order_of_place(wanted - set(self.unreachable))
        self._number(shared_costs)
        self.groups = self._groups()
        self._share_charges()
        self._touched: dict[Bits, tuple[Bits, Bits]] = {}
        self._least: dict[tuple[Bits, Bits, Bits], int | None] = {}

    def _in_order_of_place(self, needs: set[str]) -> tuple[str, ...]:
        """Needs along each line, by the middle of the shortest candidate: neighbours stand together (speed only)."""
        place: dict[str, tuple[float, str, float]] = {}
        for c in self.candidates:
            here = (c.stretch.length_ft, c.line, c.stretch.middle_ft)
            for need in c.answers & needs:
                place[need] = min(place.get(need, here), here)
        return tuple(sorted(needs, key=lambda n: (place[n][1:], n)))

    def _number(self, shared_costs: Mapping[str, int]) -> None:
        count = len(self.candidates)
        self._shift = count + count.bit_length() + 1
        bit = {need: 1 << i for i, need in enumerate(self.needs)}
        self.all_needs: Bits = (1 << len(self.needs)) - 1
        self.keys = sorted({k for c in self.candidates for k in c.shared if shared_costs[k]})
        key_bit = {key: 1 << i for i, key in enumerate(self.keys)}
        self.charges = [shared_costs[k] << self._shift for k in self.keys]
        self.answers: list[Bits] = [sum(bit[n] for n in c.answers if n in bit) for c in self.candidates]
        self.uses: list[Bits] = [sum(key_bit[k] for k in c.shared if k in key_bit) for c in self.candidates]
        self.weights = [
            (c.cost << self._shift) + (1 << count) - (1 << (count - 1 - i)) for i, c in enumerate(self.candidates)
        ]
        self.clashes = self._clashes()
        self.answered_by: list[list[int]] = [[] for _ in self.needs]
        self._can_answer: list[Bits] = [0] * len(self.needs)
        for i in sorted(range(count), key=self.weights.__getitem__):
            for n in ones(self.answers[i]):
                self.answered_by[n].append(i)
                self._can_answer[n] |= 1 << i

    def _clashes(self) -> list[Bits]:
        """For every candidate the ones that cannot go with it: a sweep along each line."""
        clashes = [0] * len(self.candidates)
        along = sorted(enumerate(self.candidates), key=lambda pair: (pair[1].line, pair[1].stretch))
        for here, (i, a) in enumerate(along):
            for j, b in along[here + 1 :]:
                if b.line != a.line or b.stretch.from_ft >= a.stretch.to_ft > a.stretch.from_ft:
                    break
                if clash(a, b):
                    clashes[i] |= 1 << j
                    clashes[j] |= 1 << i
        return clashes

    def _groups(self) -> tuple[Bits, ...]:
        """Needs that hang together by a candidate or a line; nothing but shared charges joins two groups."""
        of_line: dict[str, Bits] = {}
        for c, answers in zip(self.candidates, self.answers, strict=True):
            of_line[c.line] = of_line.get(c.line, 0) | answers
        groups: list[Bits] = []
        for mask in of_line.values():
            apart = [g for g in groups if not g & mask]
            for g in groups:
                mask |= g if g & mask else 0
            groups = [*apart, mask]
        return tuple(groups)

    def _share_charges(self) -> None:
        """A charge several groups may use is split over them in the bound: together never more than the charge."""
        using = [0] * len(self.keys)
        for group in self.groups:
            keys = 0
            for answers, uses in zip(self.answers, self.uses, strict=True):
                keys |= uses if answers & group else 0
            for k in ones(keys):
                using[k] += 1
        shares = [charge // max(1, n) for charge, n in zip(self.charges, using, strict=True)]
        self._bound_uses = [[(1 << k, shares[k]) for k in ones(uses)] for uses in self.uses]
        self.across_groups = sorted((k for k, n in enumerate(using) if n > 1), key=lambda k: -self.charges[k])

    def charge(self, keys: Bits) -> int:
        return sum([self.charges[k] for k in ones(keys)]) if keys else 0

    def cents(self, number: int) -> int:
        """The cents in a set's whole number."""
        return number >> self._shift

    def users_of(self, key: int) -> Bits:
        return sum(1 << i for i, uses in enumerate(self.uses) if uses >> key & 1)

    def least(self, needs: Bits, paid: Bits, banned: Bits) -> int | None:
        """The least whole number that answers these needs of one group, keys in `paid` free; IMPOSSIBLE when nothing does.

        Exact but for charges across groups, of which the group bears its share.
        """
        if not needs:
            return 0
        if needs not in self._touched:
            self._touched[needs] = self._what_touches(needs)
        helpful, keys = self._touched[needs]
        state = (needs, paid & keys, banned & helpful)
        if state not in self._least:
            self._least[state] = self._least_by_first_need(*state)
        return self._least[state]

    def _what_touches(self, needs: Bits) -> tuple[Bits, Bits]:
        """Candidates that answer any of these needs, and their keys: nothing else bears on `least`."""
        helpful, keys = 0, 0
        for n in ones(needs):
            helpful |= self._can_answer[n]
        for c in ones(helpful):
            keys |= self.uses[c]
        return helpful, keys

    def _least_by_first_need(self, needs: Bits, paid: Bits, banned: Bits) -> int | None:
        best: int | None = IMPOSSIBLE
        first = (needs & -needs).bit_length() - 1
        for c in self.answered_by[first]:
            if banned >> c & 1:
                continue
            number = self.weights[c]
            for key, charge in self._bound_uses[c]:
                number += 0 if key & paid else charge
            if best is not None and self._only_adds and number >= best:
                continue
            rest = self.least(needs & ~self.answers[c], paid | self.uses[c], banned | self.clashes[c])
            if rest is not None and (best is None or number + rest < best):
                best = number + rest
        return best

    def bound(self, needs: Bits, paid: Bits, banned: Bits) -> int | None:
        """No set that answers these needs adds less than this; IMPOSSIBLE when none does."""
        total = 0
        for group in self.groups:
            part = self.least(needs & group, paid, banned)
            if part is None:
                return IMPOSSIBLE
            total += part
        return total
