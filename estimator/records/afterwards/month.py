"""Job files and a month in; quotes sent, won and lost, money, work in hand and what a crew-day earned by method, out."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace
from datetime import date
from decimal import Decimal
from pathlib import Path

from msgspec import field

from estimator.model.frozen import Frozen
from estimator.model.problem import in_short
from estimator.model.say import Say, Typed
from estimator.pricing.ledger import Entry, owed
from estimator.records.accepted import accepted
from estimator.records.afterwards.actuals import worked
from estimator.records.afterwards.crew_day_profit import Earned, earned
from estimator.records.afterwards.lost import lost
from estimator.records.afterwards.money import money
from estimator.records.afterwards.sold import Sold, sold
from estimator.records.finished import finished
from estimator.records.revisions import revisions, revisions_folder

ZERO = Decimal(0)


class Counted(Frozen, kw_only=True):
    """How many jobs, and the dollars of their options: the accepted one's price, else the cheapest of the newest quote. Of
    jobs done or in hand with the change orders and credits noted by then."""

    jobs: int = 0
    dollars: Decimal = ZERO


class Month(Frozen, kw_only=True):
    """Sums over a month. `backlog_days` are crew-days of all jobs accepted and not done by its end; `earned` are methods of
    jobs done in it whose hours are kept. `wrong` names jobs that cannot be read."""

    month: str
    sent: Counted = Counted()
    won: Counted = Counted()
    lost: Counted = Counted()
    reasons: Mapping[str, int] = field(default_factory=dict)
    done: Counted = Counted()
    came_in: Decimal = ZERO
    backlog: Counted = Counted()
    backlog_days: Decimal = ZERO
    earned: tuple[Earned, ...] = ()
    wrong: tuple[Say, ...] = ()


class Life(Frozen, kw_only=True):
    """The days of one job as ISO text ("" where it has not come to that), its price, and what it holds. `changes` are what
    change orders and credits moved its price by, tax in it, each with its day."""

    first_sent: str
    won: str
    lost: str
    why: str
    done: str
    price: Decimal
    payments: tuple[tuple[str, Decimal], ...] = ()
    changes: tuple[tuple[str, Decimal], ...] = ()
    crew_days: Decimal = ZERO
    earned: tuple[Earned, ...] = ()

    def price_by(self, month: str) -> Decimal:
        """The price with all that moved it until the end of a month."""
        return self.price + sum((amount for day, amount in self.changes if day[:7] <= month), ZERO)


def month_of(job_files: Iterable[Path], month: str) -> Month:
    """Return the sums of a month such as 2026-11. Errors: none; a job that cannot be read is named in `wrong`."""
    lives: list[Life] = []
    wrong: list[Say] = []
    for path in job_files:
        try:
            lives += _life(revisions_folder(path))
        except Exception as error:  # one broken job never hides the others
            wrong.append(Say.of("{job}: {why}", job=Typed(str(path)), why=in_short(error)))
    return _summed(lives, month, tuple(wrong))


def _summed(lives: Iterable[Life], month: str, wrong: tuple[Say, ...]) -> Month:
    lives = tuple(lives)
    lost_now = [life for life in lives if life.lost.startswith(month)]
    in_hand = [life for life in lives if _in_hand(life, month)]
    done = [life for life in lives if life.done.startswith(month)]
    why = sorted(life.why for life in lost_now)
    return Month(
        month=month,
        sent=_counted(life for life in lives if life.first_sent.startswith(month)),
        won=_counted(life for life in lives if life.won.startswith(month)),
        lost=_counted(lost_now),
        reasons={reason: why.count(reason) for reason in dict.fromkeys(why)},
        done=_counted(done, month),
        came_in=sum((amount for life in lives for day, amount in life.payments if day.startswith(month)), ZERO),
        backlog=_counted(in_hand, month),
        backlog_days=sum((life.crew_days for life in in_hand), ZERO),
        earned=_by_method(one for life in done for one in life.earned),
        wrong=wrong,
    )


def _in_hand(life: Life, month: str) -> bool:
    """Accepted by the end of the month, and neither done nor lost by then."""
    ended = [day for day in (life.done, life.lost) if day]
    return bool(life.won) and life.won[:7] <= month and not any(day[:7] <= month for day in ended)


def _counted(lives: Iterable[Life], month: str = "") -> Counted:
    prices = [life.price_by(month) for life in lives]
    return Counted(jobs=len(prices), dollars=sum(prices, ZERO))


def _by_method(found: Iterable[Earned]) -> tuple[Earned, ...]:
    sums: dict[str, Earned] = {}
    for one in found:
        sums[one.method] = sums[one.method].plus(one) if one.method in sums else one
    return tuple(sums[method] for method in sorted(sums))


def _life(folder: Path) -> Iterator[Life]:
    every = revisions(folder)
    if not every:
        return
    signed, gone, ended = accepted(folder), lost(folder), finished(folder)
    again = bool(signed and gone and gone.on < signed.on)
    done = sold(folder) if signed else None
    quote = every[0].record().data["quote"]
    offered = [Decimal(option["price"]["total"]) for option in every[-1].record().data["quote"]["options"]]
    if not offered:
        return
    later = money(folder, done).later if done else ()
    yield Life(
        first_sent=quote["day"],
        won=signed.on if signed else "",
        lost=gone.on if gone and not again else "",
        why=gone.why if gone and not again else "",
        done=ended.on if ended else "",
        price=Decimal(signed.total) if signed else min(offered),
        payments=_dated(e for e in later if e.kind == "payment"),
        changes=_dated(replace(e, amount=owed([e])) for e in later if e.kind != "payment"),
        crew_days=done.days if done else ZERO,
        earned=_earned(folder, done) if done and ended else (),
    )


def _dated(entries: Iterable[Entry]) -> tuple[tuple[str, Decimal], ...]:
    return tuple((str(e.day or date.max), e.amount) for e in entries)


def _earned(folder: Path, done: Sold) -> tuple[Earned, ...]:
    held = worked(folder)
    return earned(done, held) if held and (held.revision, held.option) == (done.revision.number, done.letter) else ()
