"""A job file's place and the price tables in, what the answers may lean on out: the last job's words, the next number."""

import re
import tomllib
from collections.abc import Iterator
from datetime import date
from pathlib import Path
from typing import Any

from estimator.fieldnotes.answers import Known

MOST_FILES = 60
LARGEST_BYTES = 1_000_000


def known_before(job_file: Path, tables: Path | None, today: date) -> Known:
    """Errors: none; what cannot be read is not leaned on, nor are the invented names and words of a demo."""
    from estimator.cli.tables_asked import tables_for
    from estimator.tables.own_facts import in_use
    from estimator.tables.rows import PlaceRow, Soil

    jobs = [data for path in _job_files(job_file) if (data := _job_in(path))]
    read, _ = tables_for(today, tables)
    numbers = [str(data["job"]["number"]) for data in jobs if "number" in data["job"]]
    return Known(
        today=today,
        soils=tuple(row.soil for row in read.every(Soil)) if read else (),
        places={row.place: row.text for row in read.every(PlaceRow)} if read else {},
        own_facts=in_use(read) if read else (),
        last=next((_flat(data) for data in jobs if data["job"].get("demo") is not True), {}),
        number=next_number(numbers, today),
    )


def _job_files(job_file: Path) -> list[Path]:
    """TOML files in this folder, the one above, and that one's other folders; the newest first."""
    folder = job_file.resolve().parent
    found: dict[Path, float] = {}
    try:
        for path in (*folder.glob("*.toml"), *folder.parent.glob("*.toml"), *folder.parent.glob("*/*.toml")):
            if path.resolve() != job_file.resolve() and path.is_file():
                found[path.resolve()] = path.stat().st_mtime
    except OSError:
        pass
    return sorted(found, key=lambda path: (-found[path], str(path)))[:MOST_FILES]


def _job_in(path: Path) -> dict[str, Any]:
    try:
        if path.stat().st_size > LARGEST_BYTES:
            return {}
        data = tomllib.loads(path.read_text(encoding="utf-8-sig"))
    except (OSError, ValueError, RecursionError):
        return {}
    return data if isinstance(data.get("job"), dict) and isinstance(data.get("house", {}), dict) else {}


def _flat(data: dict[str, Any]) -> dict[str, Any]:
    """The last job's tables; of its lines the first, as one table."""
    lines = data.get("line")
    first = lines[0] if isinstance(lines, list) and lines and isinstance(lines[0], dict) else {}
    return {**data, "line": first}


def next_number(numbers: list[str], today: date) -> str:
    """One more than the highest number that begins with this year; the first of the year where there is none.

    >>> next_number(["2026-131", "2026-9", "A7"], date(2026, 11, 25)), next_number([], date(2026, 11, 25))
    ('2026-132', '2026-001')
    """
    matches: Iterator[re.Match[str] | None] = (
        re.fullmatch(rf"({today.year}\D{{0,3}})(\d{{1,6}})", n, re.ASCII) for n in numbers
    )
    highest = max((m for m in matches if m), key=lambda m: int(m[2]), default=None)
    if highest is None:
        return f"{today.year}-001"
    return f"{highest[1]}{int(highest[2]) + 1:0{len(highest[2])}d}"
