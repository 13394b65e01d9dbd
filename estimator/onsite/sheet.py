"""A short sheet for the person who needs it: a title, and blocks of sentences and tables; the same on a phone, on paper and as JSON."""

from dataclasses import dataclass

from estimator.model.say import Say

Words = Say | str


@dataclass(frozen=True, slots=True, kw_only=True)
class Block:
    """A heading, sentences, and a table where `heads` names its columns."""

    heading: Say
    lines: tuple[Say, ...] = ()
    heads: tuple[Say, ...] = ()
    rows: tuple[tuple[Words, ...], ...] = ()

    @property
    def empty(self) -> bool:
        return not self.lines and not self.rows


@dataclass(frozen=True, slots=True, kw_only=True)
class SiteSheet:
    """One sheet; `answer` says in one sentence what it comes to."""

    name: str
    title: Say
    answer: Say
    blocks: tuple[Block, ...]
