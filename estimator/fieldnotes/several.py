"""Bare numbers of a line in; the several places of one finding that they are, out: `roots @28.5 33 36.5`."""

import itertools
from typing import TYPE_CHECKING

from estimator.fieldnotes.numbers_of_a_line import CLOCKED, DEGREES, SIZES_IN
from estimator.fieldnotes.way import Way

if TYPE_CHECKING:
    from estimator.fieldnotes.drafts import Draft
    from estimator.fieldnotes.understand import Reader


def several(r: "Reader", free: list[int], drafts: "list[Draft]") -> Way | None:
    """`roots @28.5 33 36.5`: one finding at several places."""
    kinds = {d.word for d in drafts}
    if len(drafts) > 1 and not (all(d.at < free[0] for d in drafts) or all(d.at > free[-1] for d in drafts)):
        return None  # a thing between the readings
    things = [n for n in r.where("finding") if n not in r.amount_words and n not in r.aside]
    if len(things) > 1 and min(things) < free[-1] and max(things) > free[0]:
        return None  # `grease 2in 34-36.5 then grease 44-52, 20 percent`
    tokens = [r.atoms[n].token for n in free]
    same = len({t.kind for t in tokens if t is not None}) == 1  # all with a foot mark, or none
    plain = [t for t in tokens if t is not None and (t.kind == "num" or (t.kind == "ft" and (same or not t.plain)))]
    spans = [(t.value, t.to) for t in tokens if t is not None and t.kind == "range" and t.to and t.value < t.to]
    if len(spans) == len(free) > 1 and spans == sorted(spans) and not kinds & {"hole", "branch", "bend"}:
        return Way(7.0, *spans[0], tuple(spans[1:]))
    values = [t.value for t in plain]
    if len(plain) < 2 or len(plain) != len(free) or values != sorted(set(values)) or not kinds:
        return None
    joined = all(
        all(
            r.is_mark(k, ",&+")
            or (
                "again" in r.atoms[k].means
                or r.text(k) in ("and", "y", "also", "then", "at", "plus", "one", "more", "another", "one more")
            )
            for k in range(a + 1, b)
        )
        for a, b in itertools.pairwise(free)
    )
    linked = any(b - a > 1 for a, b in itertools.pairwise(free))
    if not joined or not (linked or len(plain) > 2) or values[0] < 1:
        return None
    if kinds & CLOCKED and values[1] <= 12 < values[-1] and all(v.is_integer() for v in values[:-1]):
        return None  # `cracks at 3 and 9, 27.5`
    if kinds & {"branch", "bend"} and any(v in SIZES_IN or v in DEGREES for v in values):
        return None
    return Way(6.0, values[0], None, tuple((v, None) for v in values[1:]))
