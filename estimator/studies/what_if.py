"""A job, tables and changes in, the options before and after, out. The files stay as they are."""

from collections.abc import Mapping
from dataclasses import fields, replace
from datetime import date
from decimal import Decimal
from typing import Any

from estimator.model.frozen import Frozen
from estimator.model.job import Job
from estimator.model.offer import Option
from estimator.pipeline import Result, run
from estimator.tables.tables import Tables


class Moved(Frozen, kw_only=True):
    """One way of repair before and after; None where it was not, or is no longer, among the options."""

    methods: tuple[str, ...]
    before: Decimal | None
    after: Decimal | None

    @property
    def difference(self) -> Decimal | None:
        return None if self.before is None or self.after is None else self.after - self.before


class WhatIf(Frozen, kw_only=True):
    before: Result
    after: Result
    moved: tuple[Moved, ...]


def what_if(job: Job, tables: Tables, day: date, changes: Mapping[str, Any]) -> WhatIf:
    """The whole way twice: as it is, and with the changes. Errors: KeyError for a fact nobody knows; those of the way."""
    before = run(job, tables, day)
    after = run(changed(job, changes), tables, day)
    return WhatIf(before=before, after=after, moved=moved(_options(before), _options(after)))


def changed(job: Job, changes: Mapping[str, Any]) -> Job:
    """The job with `house.…` or `site.…` facts and `settings.…` changed. Values are of the fact's own type.

    Errors: KeyError for any other word.
    """
    for path, value in changes.items():
        room, _, name = path.partition(".")
        if room == "settings" and name:
            kept = tuple((k, v) for k, v in job.settings if k != name)
            job = replace(job, settings=(*kept, (name, str(value))))
        elif room in ("house", "site") and name in {f.name for f in fields(getattr(job, room))}:
            job = replace(job, **{room: replace(getattr(job, room), **{name: value})})
        else:
            raise KeyError(path)
    return job


def moved(before: tuple[Option, ...], after: tuple[Option, ...]) -> tuple[Moved, ...]:
    """Options matched by the ways they use, the cheapest of each; in the order before, new ones last."""
    old, new = _cheapest(before), _cheapest(after)
    return tuple(Moved(methods=m, before=old.get(m), after=new.get(m)) for m in dict.fromkeys((*old, *new)))


def _cheapest(options: tuple[Option, ...]) -> dict[tuple[str, ...], Decimal]:
    out: dict[tuple[str, ...], Decimal] = {}
    for option in options:
        ways = tuple(sorted({r.method for r in option.scope.repairs}))
        out[ways] = min(option.price.total, out.get(ways, option.price.total))
    return out


def _options(result: Result) -> tuple[Option, ...]:
    return result.quote.options if result.quote else ()
