"""A firm's tables and where they lie in; how many of their figures are still the demo's, and where to go, in words, out."""

from collections.abc import Iterator
from pathlib import Path

from estimator.model.say import Say, Typed
from estimator.tables.first_answers import share_of_own
from estimator.tables.invented_rows import still_invented
from estimator.tables.tables import Tables


def demo_figures(tables: Tables, path: Path | None) -> Iterator[Say]:
    """Nothing where every figure is the firm's own. `path`: a folder or workbook of the firm's; None for the demo's own."""
    count, every = still_invented(tables)
    if not count:
        return
    if path is None:
        yield Say.typed("These are the demo's. Begin your own: {command}", command="estimator tables start FOLDER")
        return
    yield Say.of(
        "{count} of {every} wages, prices, times and margins are still the demo's; your own cover {percent}% of a usual job's cost.",
        count=count,
        every=every,
        percent=f"{share_of_own(tables):.0f}",
    )
    if path.is_dir():
        command = Typed(f"estimator tables start {path}")
        yield Say.of("Replace them: {command}; or those of one job: {command} --job JOB", command=command)
    else:
        yield Say.of("The first sheet of the workbook lists those to begin with.")
