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


def highest_step(fact: str, facts: Iterable[str]) -> bool:
    """Of facts that are steps of one measure (`depth_over_4`, `depth_over_6`) only the highest slows the work.

    >>> highest_step("depth_over_4", {"depth_over_4", "depth_over_6"}), highest_step("wet", {"wet"})
    (False, True)
    """
    stem, over, step = fact.rpartition("_over_")
    if not over or not step.isdigit():
        return True
    rivals = (other.rpartition("_over_") for other in facts)
    return all(int(s) <= int(step) for name, mid, s in rivals if mid and name == stem and s.isdigit())
