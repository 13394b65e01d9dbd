"""A job's number and site in, the names of its files out: the street to find them by, nothing a disk refuses."""

import re
from pathlib import Path

TO_SEND, INTERNAL = "to send", "internal"
LONGEST_STREET = 60


def street(site: str) -> str:
    """The part of an address before the first comma, without what a file name cannot hold.

    >>> street("417 Larkspur Court, Fernbrook"), street("12/3 Elm: rear"), street("...")
    ('417 Larkspur Court', '12 3 Elm rear', 'no street')
    """
    words = tidy(site.split(",")[0])[:LONGEST_STREET].strip(" .")
    return words or "no street"


def tidy(text: str) -> str:
    """Text without separators, wildcards and control characters, single blanks between words.

    >>> tidy("2026/114*")
    '2026 114'
    """
    kept = "".join(c if c.isprintable() and c not in '<>:"/\\|?*' else " " for c in text)
    return re.sub(r"\s+", " ", kept).strip(" .")


def stem(kind: str, number: str, revision: int, site: str) -> str:
    """`Drain quote 2026-131 r1 - 417 Larkspur Court`, the street last, kind first."""
    return f"{kind} {tidy(number)} r{revision} - {street(site)}".strip()


def revisions_folder(job_file: Path) -> Path:
    """The folder beside the job file that holds its revisions, under the job file's own name.

    >>> revisions_folder(Path("larkspur/job.toml")).name, revisions_folder(Path("job")).name, revisions_folder(Path(".")).name
    ('job', 'job revisions', ' revisions')
    """
    return job_file.with_suffix("") if job_file.suffix else job_file.parent / f"{job_file.name} revisions"
