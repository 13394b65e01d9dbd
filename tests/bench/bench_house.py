"""Times of whole houses: the repairs the rules allow, and the options with their real prices.

python tests/bench/bench_house.py
"""

import platform
import sys
import tempfile
import time
from datetime import date
from pathlib import Path

_ROOT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(_ROOT))

from estimator.diagnosis import diagnose  # noqa: E402
from estimator.fieldnotes.lines import LogFiles  # noqa: E402
from estimator.fieldnotes.reading import read_job_text  # noqa: E402
from estimator.model.job import Job  # noqa: E402
from estimator.pipeline.costing import costing, place_of  # noqa: E402
from estimator.scopes.candidates import repairs  # noqa: E402
from estimator.scopes.choose import choose  # noqa: E402
from estimator.tables.read import demo_folder, read_tables  # noqa: E402

HEAD = """[job]
number = "1"
date = 2026-11-18
prepared_by = "R. Example"
demo = true
[customer]
name = "Invented"
site = "1 Invented Street"
[house]
built = 1965
floor = "slab"
soil = "firm clay"
jurisdiction = "demo"
exits = {lines}
"""
LINE = """[[line]]
name = "line {number}"
size = "4 in"
pipe = "clay"
ends = "city main"
log = '''
pass front cleanout to street, surface
0 yard lawn, cleanout
0-100 depth 3ft from lawn
0-99 joints every 3ft
{needs}
100 end city main, stop reached main
'''
"""


def house(lines: int, needs: int) -> Job:
    """Clay lines in the yard, roots at so many joints of each."""
    seen = "\n".join(f"{12 + 16 * i} roots 30%" for i in range(needs))
    text = HEAD.format(lines=lines) + "".join(LINE.format(number=i, needs=seen) for i in range(lines))
    job = read_job_text(text, "job.toml", LogFiles(Path(tempfile.gettempdir()))).job
    assert job is not None
    return job


def row(lines: int, needs: int) -> str:
    job, tables = house(lines, needs), read_tables(demo_folder(), date(2026, 11, 18)).tables
    assert tables is not None
    diagnosis = diagnose(job, tables)
    start = time.process_time()
    offers = repairs(job, diagnosis, tables)
    middle = time.process_time()
    found = choose(job, diagnosis, offers, costing(job, tables, place_of(job, tables)), tables).options
    end = time.process_time()
    times = f"{middle - start:8.2f} | {end - middle:7.2f}"
    bound = 100 * found[0].scope.bound / found[0].price.total
    return f"| {lines * needs:5} | {lines:5} | {len(offers.repairs):7} | {times} | {bound:6.1f} |"


def main() -> None:
    print(f"{platform.machine()}, Python {platform.python_version()}, processor seconds")
    print("| needs | lines | repairs | allowed  | options | bound % |")
    print("|------:|------:|--------:|---------:|--------:|--------:|")
    for lines, needs in ((1, 4), (2, 4), (3, 5), (6, 5)):
        print(row(lines, needs))


if __name__ == "__main__":
    main()
