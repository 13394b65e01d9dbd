"""A short sheet for the person who needs it: a title, and blocks of sentences and tables; the same on a phone, on paper and as JSON."""

from dataclasses import replace

from estimator.model.frozen import Frozen
from estimator.model.gas import first_warnings
from estimator.model.job import Job
from estimator.model.say import Say

Words = Say | str


class Block(Frozen, kw_only=True):
    """A heading, sentences, and a table where `heads` names its columns."""

    heading: Say
    lines: tuple[Say, ...] = ()
    heads: tuple[Say, ...] = ()
    rows: tuple[tuple[Words, ...], ...] = ()

    @property
    def empty(self) -> bool:
        return not self.lines and not self.rows


class SiteSheet(Frozen, kw_only=True):
    """One sheet; `answer` says in one sentence what it comes to."""

    name: str
    title: Say
    answer: Say
    first: tuple[Say, ...] = ()  # what comes before anything else
    blocks: tuple[Block, ...]


def of_the_house(sheet: SiteSheet, job: Job) -> SiteSheet:
    """Return the sheet with what comes before anything else in this house: there may be gas in it."""
    return replace(sheet, first=first_warnings(job))
