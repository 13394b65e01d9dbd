"""The atoms of a line in; those that a no takes away (`no roots or scale`, `roots all gone`, `27.5 not 25.7`), out."""

from collections.abc import Collection, Iterator, Sequence

from estimator.fieldnotes.atoms import Atom

SAYS = ("finding", "sign", "place", "state", "part", "unclear", "danger", "utility", "side", "live")
OF_AN_AMOUNT = ("not", "isnt", "aint", "no")
"""`not bad`: this no takes away how much, where nothing follows that it is much of."""
OWN_NO = ("cannot pass", "no flow")
LASTING = ("hole", "gap", "channel", "channel gone", "collapse")
"""What does not go away: `bottom gone`."""


def denied(every: Sequence[Atom]) -> set[int]:
    """Return the numbers of the atoms that are denied."""
    out: set[int] = set()
    for n, a in enumerate(every):
        if "no" in a.means and not {"finding", "sign", "live"} & a.means.keys():
            out |= set(_after(every, n))
        if 0 < n < len(every) - 1 and a.text == "not" and _number(every[n - 1]) and _number(every[n + 1]):
            out.add(n + 1)
        if a.text in ("none", "nope", "ninguno", "ninguna") and not any("finding" in b.means for b in every[n + 1 :]):
            out |= {k for k in range(n) if "finding" in every[k].means}  # `roots? none to 45`
        out |= _gone(every, n)
        if "later" in a.means:
            out |= set(_to_be_done(every, n))
    dangers = {n for n in out if _danger(every[n])}
    return out if dangers and _plainly(every, min(dangers), max(dangers)) else out - dangers


NOTHING_MORE = frozenset((
    "any", "sign", "signs", "of", "a", "an", "the", "or", "nor", "ni", "here", "there", "in", "it", "at", "all", "at all", "smell", "odor", "leak",
    "line", "lines", "pipe", "visible", "seen", "found", "showing", "today", "this", "house", "run", "hay", "olor", "a gas", "aqui",
))  # fmt: skip
"""What may stand beside a danger that is denied: any other word may say that there is one (`no gas marked`, `no longer see gas line`)."""


def _danger(a: Atom) -> bool:
    return bool({"danger", "utility"} & a.means.keys())


def _plainly(every: Sequence[Atom], first: int, last: int) -> bool:
    """Whether a clause says no more than that there is no such danger; dangers after the first are joined by `or`."""
    start = max((n for n in range(first) if "no" in every[n].means), default=first)
    end = next((n for n in range(last + 1, len(every)) if every[n].token is not None), len(every))
    joined = all(not _danger(every[n]) or not _danger(every[n - 1]) for n in range(first + 1, last + 1))
    rest = [every[n] for n in range(start + 1, end) if not _danger(every[n])]
    return (
        joined
        and "more" not in every[start].text
        and all(a.token is not None or set(a.text.split()) <= NOTHING_MORE for a in rest)
    )


DONE = ("cleaned", "repair")
"""What a crew does to a drain."""


def _to_be_done(every: Sequence[Atom], n: int) -> Iterator[int]:
    """`will jet`, `needs to be cut and jetted`: the work that was not done yet."""
    for k in range(n + 1, min(n + 6, len(every))):
        if any(c in every[k].means for c in DONE):
            yield k
        elif every[k].token is not None or not {"plain", "again", "still", "at"} & every[k].means.keys():
            return


def no_pipe(every: Sequence[Atom], taken: Collection[int]) -> bool:
    """Return whether what is denied (`taken`) is the pipe itself and no finding: `48 no pipe` may be a hole in the line."""
    return bool(taken) and all(every[n].means.get("part") == "pipe" for n in taken)


def _number(a: Atom) -> bool:
    return a.token is not None and a.token.number


def _after(every: Sequence[Atom], n: int) -> Iterator[int]:
    """The next word that says something, and those joined to it by `or`."""
    going = False
    for k in range(n + 1, len(every)):
        b = every[k]
        if b.token is not None and not (b.token.kind == "mark" and b.token.text == "/"):
            return
        if b.means.get("sign") in OWN_NO:
            return
        if any(c in b.means for c in SAYS):
            if going and not _joined(every[k - 1]):
                return
            yield k
            going = True
        elif "grade" in b.means and every[n].text in OF_AN_AMOUNT:
            following = every[k + 1].means if k + 1 < len(every) else {}
            if not {"finding", "part", "sign", "place"} & following.keys():
                yield k
                return
        elif not ({"or", "plain", "grade", "remark"} & b.means.keys() or b.text in ("nor", "ni")):
            return


def _joined(before: Atom) -> bool:
    """The atom before is `or`, or a word of the same thing."""
    return (
        bool({"or", "part"} & before.means.keys()) or before.text in ("nor", "ni", "/") or "plain" not in before.means
    )


def _gone(every: Sequence[Atom], n: int) -> set[int]:
    """`roots gone`, `scale came off`, `roots at 33 all gone`: nothing but its place stands before the word that takes it away."""
    means = every[n].means
    if means.get("finding", LASTING[0]) in LASTING:
        return set()
    if n + 1 < len(every) and every[n + 1].means.get("state") == "gone":
        return {n, n + 1}
    for k in range(n + 1, len(every)):
        if "past" in every[k].means:
            return {n, k}
        if not (every[k].token or {"plain", "at", "remark"} & every[k].means.keys()):
            return set()
    return set()
