"""A job's folder and its quote in, the pictures the notes name out, without place or time in them; and those not found."""

from collections.abc import Iterator
from pathlib import Path

from estimator.cli.problems import NO_PICTURE, NOT_A_PICTURE
from estimator.disk.read import read_bytes
from estimator.fieldnotes.textfile import lies_below
from estimator.model.offer import Quote
from estimator.model.problem import Place, Problem

LOGO = "logo"


def photos(folder: Path, quote: Quote) -> tuple[dict[str, bytes], tuple[Problem, ...]]:
    """Pictures lie beside the job file or in a folder there, under the names of the notes; the firm's logo too, under its setting's."""
    from estimator.sheets.images import NotAPicture
    from estimator.sheets.shrunk import shrunk

    found: dict[str, bytes] = {}
    wrong: list[Problem] = []
    for key, name in _named(quote):
        path = folder / name
        place = Place(file=str(path))
        if not lies_below(name) or not path.is_file():
            wrong.append(NO_PICTURE(place, name=name))
            continue
        try:
            found[key] = shrunk(read_bytes(path))
        except NotAPicture as error:
            wrong.append(NOT_A_PICTURE(place, said=error.args[0]))
    return found, tuple(wrong)


def _named(quote: Quote) -> Iterator[tuple[str, str]]:
    """Each name once, with the key the papers know it by."""
    found = [finding.photo_file for line in quote.job.lines for finding in line.findings]
    marked = [mark.photo_file for line in quote.job.lines for mark in line.marks]
    yield from ((name, name) for name in dict.fromkeys((*found, *marked)) if name)
    if quote.firm.logo:
        yield LOGO, quote.firm.logo
