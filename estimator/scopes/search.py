"""Needs, candidates and shared charges in, the sets that answer every need out, cheapest first. Knows nothing of pipes.

The sum of a set is the costs of its candidates and each shared charge once. Two candidates of a set never overlap in
length on one line. A set from which something could be taken away is never given: taking it away costs nothing.
"""

from collections.abc import Container, Iterable, Iterator, Mapping, Sequence
from heapq import heappop, heappush

from estimator.model.frozen import Frozen, replace
from estimator.model.work import Candidate
from estimator.scopes.cover import Bits, Cover, ones


class Answer(Frozen):
    """Candidates in order of id, and their sum in cents."""

    chosen: tuple[Candidate, ...]
    cost: int


class Cheapest(Frozen):
    """The cheapest set (None when candidates clash so that nothing answers the rest), and needs nobody answers."""

    answer: Answer | None
    unreachable: tuple[str, ...]


class _Node(Frozen):
    """Sets that hold `chosen`, nothing of `banned`, and use every key of `must_use`."""

    spent: int
    left: Bits
    paid: Bits
    banned: Bits
    chosen: Bits = 0
    decided: int = 0  # how many charges across groups are settled
    must_use: Bits = 0


def cheapest(
    needs: Iterable[str], candidates: Sequence[Candidate], shared_costs: Mapping[str, int] | None = None
) -> Cheapest:
    """The exact cheapest set: least sum, then fewest repairs, then ids.

    Sum = Σ cost + Σ charge of every shared key that occurs, in whole cents. Needs that no candidate answers are named
    and left out. Errors: KeyError for a shared key without a charge, ValueError for a cost below zero or an id twice.

    >>> from estimator.model.stretch import Stretch
    >>> def c(id, a, b, answers, cost):
    ...     return Candidate(id=id, line="main", stretch=Stretch(a, b), answers=frozenset(answers), cost=cost)
    >>> found = cheapest({"n1", "n2"}, [c("a", 0, 4, ["n1"], 70), c("b", 8, 9, ["n2"], 50), c("c", 0, 9, ["n1", "n2"], 110)])
    >>> [chosen.id for chosen in found.answer.chosen], found.answer.cost
    (['c'], 110)
    """
    cover = Cover(needs, candidates, shared_costs or {})
    return Cheapest(next(_in_order(cover), None), cover.unreachable)


def in_order(
    needs: Iterable[str], candidates: Sequence[Candidate], shared_costs: Mapping[str, int] | None = None
) -> Iterator[Answer]:
    """Every set that answers the needs and has nothing to spare, one after another, by sum, then repairs, then ids.

    Lazy: the next set is looked for when it is asked for. Needs that no candidate answers are left out.
    """
    return _in_order(Cover(needs, candidates, shared_costs or {}))


def cheapest_without(cover: Cover, methods: Container[str]) -> Answer | None:
    """Return the cheapest set that uses none of these methods; None where the others cannot answer every need."""
    banned = sum([1 << i for i, c in enumerate(cover.candidates) if c.method in methods])
    return next(_in_order(cover, banned), None)


def least_by(
    needs: Iterable[str],
    candidates: Sequence[Candidate],
    shared_costs: Mapping[str, int],
    weights: Mapping[str, int],
) -> Answer | None:
    """The set with the least sum of other weights, by id of the candidate, which may be below zero; None when there is none."""
    weighed = [replace(c, cost=weights[c.id]) for c in candidates]
    return next(_in_order(Cover(needs, weighed, shared_costs, may_be_negative=True)), None)


def _in_order(cover: Cover, banned: Bits = 0) -> Iterator[Answer]:
    """Best first: the node that may hold the cheapest set is opened next, so sets come out in order."""
    queue: list[tuple[int, int, _Node]] = []
    pushed = 0

    def push(node: _Node) -> None:
        nonlocal pushed
        more = cover.bound(node.left, node.paid, node.banned)
        if more is not None:
            pushed += 1
            heappush(queue, (node.spent + more, pushed, node))

    push(_Node(0, cover.all_needs, 0, banned))
    while queue:
        _, _, node = heappop(queue)
        if node.decided < len(cover.across_groups):
            for part in _with_and_without(cover, node):
                push(part)
        elif node.left:
            for part in _by_who_answers(cover, node):
                push(part)
        elif _is_tight(cover, node):
            yield Answer(tuple(cover.candidates[c] for c in ones(node.chosen)), cover.cents(node.spent))


def _with_and_without(cover: Cover, node: _Node) -> Iterator[_Node]:
    """Settle one charge across groups: it is paid and used, or nobody who needs it comes."""
    key = cover.across_groups[node.decided]
    decided = node.decided + 1
    yield _Node(
        node.spent + cover.charges[key],
        node.left,
        node.paid | 1 << key,
        node.banned,
        node.chosen,
        decided,
        node.must_use | 1 << key,
    )
    yield _Node(
        node.spent, node.left, node.paid, node.banned | cover.users_of(key), node.chosen, decided, node.must_use
    )


def _by_who_answers(cover: Cover, node: _Node) -> Iterator[_Node]:
    """Split by the first candidate that answers the first open need: no set falls into two parts."""
    first = (node.left & -node.left).bit_length() - 1
    banned = node.banned
    for c in cover.answered_by[first]:
        if banned >> c & 1:
            continue
        spent = node.spent + cover.weights[c] + cover.charge(cover.uses[c] & ~node.paid)
        yield _Node(
            spent,
            node.left & ~cover.answers[c],
            node.paid | cover.uses[c],
            banned | cover.clashes[c],
            node.chosen | 1 << c,
            node.decided,
            node.must_use,
        )
        banned |= 1 << c


def _is_tight(cover: Cover, node: _Node) -> bool:
    """Every paid charge is used, and no candidate could be left out."""
    used = 0
    once, twice = 0, 0
    for c in ones(node.chosen):
        used |= cover.uses[c]
        twice |= once & cover.answers[c]
        once |= cover.answers[c]
    needed = all(cover.answers[c] & ~twice for c in ones(node.chosen))
    return needed and not node.must_use & ~used
