"""A job file in, the logs out that it names in folders below its own; those beside it need no looking for."""

import re
from collections.abc import Iterator
from pathlib import Path

from estimator.fieldnotes.textfile import lies_below

IN_A_FOLDER = re.compile(r"""["']([^"'\n]+[/\\][^"'\n]+)["']""")


def logs_in_folders(job_file: Path) -> Iterator[tuple[str, Path]]:
    """Each once, by the name in the job file, in order; whatever is quoted there like a path and is a file.

    Errors: OSError where the job file cannot be read.
    """
    text = job_file.read_text(encoding="utf-8-sig", errors="replace")
    for name in sorted(set(IN_A_FOLDER.findall(text))):
        path = job_file.parent / name
        if lies_below(name) and path.is_file():
            yield name, path
