"""The made-up quote issued and, where asked, signed, for the cases of what comes after the signature."""

from pathlib import Path

from estimator.records.accepted import accept
from estimator.records.afterwards.sold import Sold, sold
from estimator.records.record import Inputs, made
from estimator.records.recorded_text import sealed
from estimator.records.revisions import INTERNAL, Revision
from estimator.tables.read import demo_folder, read_tables
from tests.made_up.quote import example_quote


def issued(folder: Path, letter: str = "A") -> Sold:
    """A folder with a first revision, its option signed on the quote's own day; not signed where no letter is named."""
    quote = example_quote()
    tables = read_tables(demo_folder(), quote.day).tables
    assert tables is not None, "the demo's tables can be read"
    inputs = Inputs(job_file="job.toml", texts={}, tables=tables, day=quote.day, languages=("en_US",))
    inside = folder / "r1" / INTERNAL
    inside.mkdir(parents=True)
    (inside / "Record.json").write_bytes(sealed(made(quote, inputs, {}).data))
    if letter:
        accept(folder, Revision(1, folder / "r1"), letter, quote.day)
    return sold(folder, letter or "A")
