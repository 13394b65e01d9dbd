"""A column `when` and a set of facts in; whether the row counts here, out."""

from collections.abc import Iterable, Set


def holds(when: Iterable[str], facts: Set[str]) -> bool:
    """Every name holds; a name after `not` must not hold. No names: always.

    >>> holds(("under_slab", "not tunnel"), {"under_slab"}), holds(("under_slab",), set()), holds((), set())
    (True, False, True)
    """
    for word in when:
        name = word.removeprefix("not ").strip()
        if (name in facts) == word.startswith("not "):
            return False
    return True
