"""`python -m tests.damage [SEED [ROWS]]`: every kind of damage to every column of every table, and what becomes of each.

Each ends as named, the same price, or a change that `tables changes` shows; what passes `check` is priced now and then. The rest is
printed with the seed. Half an hour for three rows a column.
"""

import sys
import time
from collections import Counter

from tests.damage.outcome import outcome, priced
from tests.damage.sample import damages

EVERY = 25
"""Of the damages that pass `check`, one in so many is priced."""
HOUSE = "j10-chestnut"


def main() -> int:
    seed = int(sys.argv[1]) if len(sys.argv) > 1 else time.time_ns() % 1_000_000
    rows = int(sys.argv[2]) if len(sys.argv) > 2 else 3
    print(f"seed {seed}, {rows} rows a column", flush=True)
    counts: Counter[str] = Counter()
    for damage in damages(seed, rows):
        ended, found = outcome(damage)
        counts[ended] += 1
        if ended == "silent":
            print(f"SILENT  {damage}", flush=True)
        if found.tables is not None and ended != "same":
            counts["passed check"] += 1
            if counts["passed check"] % EVERY == 0 and (why := priced(found.tables, HOUSE)):
                counts["not priced"] += 1
                print(f"NOT PRICED  {damage}: {why}", flush=True)
    print(dict(counts))
    return int(bool(counts["silent"] or counts["not priced"]))


if __name__ == "__main__":
    sys.exit(main())
