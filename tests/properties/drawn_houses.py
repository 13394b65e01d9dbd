"""A seed in, an invented house out: its job file and logs as a plumber would type them, or typed another way."""

import os
import random
import shutil
from collections.abc import Callable
from dataclasses import dataclass, field, replace
from datetime import date
from functools import cache
from pathlib import Path
from tempfile import mkdtemp

from estimator.fieldnotes.reading import read_job
from estimator.model.job import Job
from estimator.model.offer import Option, Quote
from estimator.model.problem import CannotGoOn
from estimator.pipeline import report, run
from estimator.tables.read import demo_folder, read_tables
from estimator.tables.tables import Tables
from tests.fresh import chance

DAY = date(2026, 11, 28)
SEED = os.environ.get("ESTIMATOR_SEED", "")
"""Set it to the number a failed test named, to draw the same houses again."""
DRAW = chance("drawn houses")


def seeds(count: int) -> list[int]:
    """So many seeds, new ones in each run; the workers of one run draw the same."""
    return [int(SEED)] if SEED else [DRAW.randrange(10**9) for _ in range(count)]


@cache
def tables() -> Tables:
    reading = read_tables(demo_folder(), DAY)
    assert reading.tables is not None
    return reading.tables


Row = tuple[float, float | None, str]
"""Where from, where to (None: one place), what was typed."""


@dataclass(frozen=True)
class Drawn:
    """An invented house: what the job file says of it, and the log of each line, row by row."""

    floor: str
    soil: str
    pipe: str
    slab: bool
    length_ft: float
    seen_ft: float
    depth_in: int
    rows: tuple[Row, ...]
    line: str = "main"
    feet: Callable[[float], str] = field(default=lambda ft: f"{ft:g}")
    inches: Callable[[int], str] = field(default=lambda inches: f"{inches}in")

    @property
    def heading(self) -> str:
        return "pass front cleanout to street, with flow, surface"

    def log(self) -> str:
        start = "slab tile" if self.slab else "yard lawn"
        under = "tile" if self.slab else "lawn"
        rows = [self.heading, f"0 cleanout, {start}"]
        rows += [f"{self.feet(6)} depth {self.inches(self.depth_in)} from {under}"]
        rows += [self._row(row) for row in self.rows]
        whole = self.seen_ft >= self.length_ft
        rows += [f"{self.feet(self.seen_ft)} " + ("end city main, stop reached main" if whole else "stop cable end")]
        return "\n".join(rows) + "\n"

    def _row(self, row: Row) -> str:
        low, high, words = row
        return f"{self.feet(low)} {words}" if high is None else f"{self.feet(low)}-{self.feet(high)} {words}"

    def job_file(self) -> str:
        return "\n".join(
            (
                '[job]\nnumber = "D-1"\ndate = 2026-11-28\nprepared_by = "R. Example"\ndemo = true',
                '[customer]\nname = "An invented owner"\nsite = "1 Example Court"',
                f'[house]\njurisdiction = "demo"\nbuilt = 1960\nfloor = "{self.floor}"\nsoil = "{self.soil}"',
                'lived_in = true\nbathrooms = 2\nfloor_finish = "tile"\nwater_lines = "overhead"\nin_slab = "nothing"',
                'slab_thickness = "4 in"\nslab_above_grade = "6 in"\nedge_beam = "24in deep 12in wide"'
                if self.floor == "slab"
                else "",
                '[site]\nlocated = true\ncaving_signs = false\ncompetent_person = "R. Example"',
                f'[[line]]\nname = "{self.line}"\nsize = "4 in"\npipe = "{self.pipe}"\nzero = "access"',
                f'length = "{self.length_ft:g} ft"\nends = "city main"\nlog = "log.txt"\n',
            )
        )


TROUBLES = (
    "crack broken, soil seen", "hole 2in, soil seen", "offset 35% down", "roots 60%", "gap 1in, soil seen", "channel gone, soil seen",
    "scale 40%", "sag 40%", "grease 30%", "collapse still flows",
)  # fmt: skip
LONG = ("channel gone, soil seen", "scale 40%", "sag 40%", "grease 30%")


def trouble(rng: random.Random, low: float, high: float) -> Row:
    """Something wrong between these stations, on whole feet."""
    words = rng.choice(TROUBLES)
    at = float(rng.randint(int(low), int(high)))
    return (at, min(at + rng.randint(2, 8), high + 2), words) if words in LONG else (at, None, words)


def drawn(seed: int) -> Drawn:
    """A house with one or two troubles, filmed whole or in part."""
    rng = random.Random(seed)
    slab = rng.random() < 0.4
    length = float(rng.randint(40, 70))
    seen = length if rng.random() < 0.6 else float(rng.randint(30, int(length)))
    rows = tuple(sorted({trouble(rng, 8, seen - 8) for _ in range(rng.randint(1, 2))}, key=lambda row: row[0]))
    return Drawn(
        floor="slab" if slab else "crawl space",
        soil=rng.choice(("firm clay", "sand", "loam")),
        pipe=rng.choice(("cast iron", "clay", "PVC")),
        slab=slab,
        length_ft=length,
        seen_ft=seen,
        depth_in=rng.randint(24, 60),
        rows=rows,
    )


def read(house: Drawn) -> Job | None:
    """The job as the program reads it; None where two troubles at one place make it ask."""
    folder = Path(mkdtemp())
    try:
        (folder / "log.txt").write_text(house.log(), encoding="utf-8")
        (folder / "job.toml").write_text(house.job_file(), encoding="utf-8")
        return read_job(folder / "job.toml").job
    finally:
        shutil.rmtree(folder)


def quoted(job: Job) -> Quote:
    """The quote, or the report where there is nothing to offer."""
    try:
        found = run(job, tables(), DAY).quote
    except CannotGoOn:
        found = None
    return found or report(job, tables(), DAY)


def sound(quote: Quote) -> tuple[Option, ...]:
    """The options that work on the pipe and leave nothing that must be put right; a visit is none."""
    works_on = (o for o in quote.options if any(t.works.renewed or t.works.cleans for t in o.takeoffs))
    return tuple(o for o in works_on if not any(n.must for n in o.scope.leaves))


def with_rows(house: Drawn, *rows: Row) -> Drawn:
    return replace(house, rows=tuple(sorted({*house.rows, *rows}, key=lambda row: row[0])))
