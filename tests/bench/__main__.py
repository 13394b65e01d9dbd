"""How fast the program is on this machine: `python -m tests.bench` prints the tables of docs/performance.md, about five minutes.

`python -m tests.bench start jobs` prints only those named; `numbers` is measured only when it is named.
"""

import platform
import sys
from collections.abc import Callable

from tests.bench.first_numbers import first_numbers
from tests.bench.folders import folders
from tests.bench.on_the_way import on_the_way
from tests.bench.paper_pages import paper_pages
from tests.bench.ratios import ratios
from tests.bench.start_up import start_up
from tests.bench.thirty_needs import thirty_needs

TABLES: dict[str, Callable[[], list[str]]] = {
    "start": start_up,
    "way": on_the_way,
    "ratios": ratios,
    "needs": thirty_needs,
    "jobs": folders,
    "papers": paper_pages,
    "numbers": first_numbers,
}


def main() -> None:
    print(
        f"{platform.machine()}, {platform.system()}, Python {platform.python_version()}, {platform.processor() or '?'}"
    )
    for name in sys.argv[1:] or [name for name in TABLES if name != "numbers"]:
        print("", *TABLES[name](), sep="\n", flush=True)


if __name__ == "__main__":
    main()
