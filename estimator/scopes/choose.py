"""Repairs the rules allow in, the options as scopes with their prices and what the homeowner lives with, out."""

from collections.abc import Iterable, Sequence
from dataclasses import replace
from string import ascii_lowercase

from estimator.model.frozen import Frozen
from estimator.model.gas import gas_smelled
from estimator.model.job import Job
from estimator.model.judgement import Diagnosis, Need, Verdict
from estimator.model.wanted import WantedOption
from estimator.model.work import Repair, all_repairs
from estimator.scopes.candidates import Offers
from estimator.scopes.chosen import Chosen, chosen, resting
from estimator.scopes.costing import Costing
from estimator.scopes.counter import Counter
from estimator.scopes.firm import is_firm, settled_by, visits
from estimator.scopes.judge import Judge, May
from estimator.scopes.left_out import left_out
from estimator.scopes.menu import MenuEntry, by_price, menu, menu_entries
from estimator.scopes.options import MOST_SHOWN, shown, small
from estimator.scopes.rules import may as all_rules
from estimator.scopes.rules.cleaning_closes_no_opening import lived_with
from estimator.scopes.wanted import by_hand, wanted_repair
from estimator.scopes.whole_yard import renews_the_yard, with_the_yard
from estimator.tables.tables import Tables

SERIOUS = 3
"""From this severity on a thing found is serious; below it nothing is dug for where cleaning will do."""


LookedAt = tuple[tuple[MenuEntry, ...], tuple[MenuEntry, ...]]
"""Sets that are worth showing, and all that the estimator did not drop."""


class Choices(Frozen, kw_only=True):
    """Options in the order they are shown: pinned ones, those the search found by price, those added by hand.

    `verdicts` are all that stand against a way, those found once a repair was measured among them; `unanswered` are needs
    that must be put right and that no allowed repair answers.
    """

    options: tuple[Chosen, ...]
    verdicts: tuple[Verdict, ...] = ()
    unanswered: tuple[Need, ...] = ()


def choose(
    job: Job, diagnosis: Diagnosis, offers: Offers, costing: Costing, tables: Tables, may: May = all_rules
) -> Choices:
    """Two to four options: the cheapest first, then the cheapest of other ways; the estimator's own before and after.

    Needs that must be put right are answered; where there is none, all needs are. What a scope does not answer it leaves,
    and says so. Errors: those of the functions handed in.
    """
    counter = Counter(job, diagnosis.needs, offers.repairs, costing, tables, offers.instead)
    judge = Judge(job, tables, may)
    pinned, against = _wanted(by_hand(job.options, "pin"), diagnosis.needs, counter, judge)
    added, more_against = _wanted(by_hand(job.options, "add"), diagnosis.needs, counter, judge)
    found, looked_at = _found(diagnosis.needs, counter, job.options, MOST_SHOWN - len(pinned))
    answered = {a for r in counter.repairs.values() for a in r.answers}
    unanswered = tuple(n for n in _to_answer(diagnosis.needs) if n.id not in answered)
    pinned, found, added = (
        tuple(_waiting(resting(o, counter), diagnosis) for o in some) for some in (pinned, found, added)
    )
    visit = _visit((*pinned, *found, *added), unanswered, diagnosis, counter)
    ahead = visit and (any(n.must for n in unanswered) or not _any_firm((*pinned, *found, *added), diagnosis))
    shown = found[: MOST_SHOWN - len(pinned) - len(visit)] if ahead else found
    in_order = (*pinned, *visit, *shown, *added) if ahead else (*pinned, *shown, *added, *visit)
    options = _named(_once(in_order), job.options)
    return Choices(
        options=options,
        verdicts=tuple(
            dict.fromkeys(
                (
                    *left_out([o.scope.repairs for o in options], *looked_at, counter, _dropped(job.options)),
                    *offers.verdicts,
                    *counter.blocked,
                    *against,
                    *more_against,
                )
            )
        ),
        unanswered=unanswered,
    )


def _visit(
    options: Sequence[Chosen], unanswered: Sequence[Need], diagnosis: Diagnosis, counter: Counter
) -> tuple[Chosen, ...]:
    """The visit that would make firm what is not, to be signed today; what must be repaired alone is open."""
    if gas_smelled(counter.job):
        return ()  # nobody is sent into a house that smells of gas
    open_ = tuple(n for n in unanswered if n.must)
    wanted = visits([(o.scope.repairs, o.takeoffs, o.basis) for o in options], diagnosis, open_)
    return (chosen(wanted, counter),) if wanted else ()


def _waiting(option: Chosen, diagnosis: Diagnosis) -> Chosen:
    wanted = settled_by(option.scope.repairs, option.takeoffs, option.basis, diagnosis)
    return replace(option, waits_for_visit=bool(wanted))


def _any_firm(options: Iterable[Chosen], diagnosis: Diagnosis) -> bool:
    return any(is_firm(o.scope.repairs, o.takeoffs, diagnosis) for o in options)


def _to_answer(needs: tuple[Need, ...]) -> tuple[Need, ...]:
    return tuple(n for n in needs if n.must) or needs


def _found(
    needs: tuple[Need, ...], counter: Counter, wishes: tuple[WantedOption, ...], most: int
) -> tuple[tuple[Chosen, ...], LookedAt]:
    """From the menu, less what the estimator dropped; one that also puts right what may wait where all others leave it.

    Where nothing must be repaired nothing bigger than a spot is pushed, as long as there is something smaller.
    """
    if most <= 0 or not counter.candidates:
        return (), ((), ())
    dropped = _dropped(wishes)

    def allowed(some: tuple[MenuEntry, ...]) -> tuple[MenuEntry, ...]:
        return _wanted_ones(_no_bigger(some, needs), dropped)

    looked_at = _menu_entries(_to_answer(needs), counter)
    best = menu(allowed(looked_at))
    picked, planned = shown(best, most), _planned(needs)
    if not any({n.id for n in planned} <= {a for c in d.answer.chosen for a in c.answers} for d in picked):
        cheapest = not dropped and any(n.must for n in needs)  # then nothing decides but the price
        complete = best if planned == _to_answer(needs) else menu(allowed(_menu_entries(planned, counter, cheapest)))
        picked = (*shown(best, max(1, most - len(complete[:1]))), *complete[:1])[:most]
    if len(picked) < most:
        picked += _the_yard_new(picked, needs, counter, dropped)
    sold = (_sold(d, counter) for d in picked)
    keep = counter.job.wishes.keep_floors
    options = tuple(sorted(sold, key=lambda option: (keep and _opens_a_floor(option), option.total)))
    return options, (allowed(looked_at), _wanted_ones(looked_at, dropped))


def _the_yard_new(
    picked: tuple[MenuEntry, ...], needs: tuple[Need, ...], counter: Counter, dropped: set[str]
) -> tuple[MenuEntry, ...]:
    """The cheapest set with the whole yard line new beside what is repaired under the house, where none shown has it."""
    wanted = with_the_yard(needs, counter.job)
    if not wanted or any(renews_the_yard(d, wanted, counter.job) for d in picked):
        return ()
    found = by_price(_wanted_ones(_menu_entries(wanted, counter), dropped))
    return tuple(d for d in found if renews_the_yard(d, wanted, counter.job))[:1]


def _dropped(wishes: tuple[WantedOption, ...]) -> set[str]:
    return {o.name.lower() for o in by_hand(wishes, "drop")}


def _no_bigger(found: tuple[MenuEntry, ...], needs: tuple[Need, ...]) -> tuple[MenuEntry, ...]:
    """What is worth looking at where nothing must be repaired: single spots, and less where nothing is serious.

    Beside them what costs less than one of these; and all of it beside a dip that can only be lived with: no spot cures that.
    What is only watched is sold nothing bigger, even where there is nothing smaller.
    """
    if any(n.must for n in needs) or any(lived_with(n) for n in needs):
        return found
    little = small(found, slight=all(n.severity < SERIOUS for n in needs))
    dearest = max((d.price for d in little), default=None)
    if dearest is None:
        return () if all(n.watched for n in needs) else found
    return tuple(d for d in found if d in little or d.price < dearest)


def _sold(entry: MenuEntry, counter: Counter) -> Chosen:
    option = chosen(counter.repairs_of(entry.answer), counter)
    return replace(option, scope=counter.scope(entry.answer, entry.bound))


def _opens_a_floor(option: Chosen) -> bool:
    """Whoever wants his floors kept reads first what keeps them, whatever it costs."""
    return any(t.works.cuts_floor for t in option.takeoffs)


def _planned(needs: tuple[Need, ...]) -> tuple[Need, ...]:
    """What must be put right and what should be before long."""
    return tuple(n for n in needs if not n.watched)


def _wanted_ones(found: tuple[MenuEntry, ...], dropped: set[str]) -> tuple[MenuEntry, ...]:
    """Less what the estimator dropped; nothing bigger comes in its place."""
    return tuple(d for d in found if not dropped & {c.method for c in d.answer.chosen})


def _menu_entries(needs: Sequence[Need], counter: Counter, no_dearer: bool = False) -> tuple[MenuEntry, ...]:
    found = menu_entries(
        [n.id for n in needs],
        counter.candidates,
        counter.shared_costs,
        counter.price_cents,
        counter.measures,
        counter.part,
        counter.slack,
        (counter.least, counter.least_with_job),
        counter.left,
        no_dearer,
    )
    return tuple(d for d in found if d.answer.chosen)


def _wanted(
    wishes: Iterable[WantedOption], needs: tuple[Need, ...], counter: Counter, judge: Judge
) -> tuple[tuple[Chosen, ...], tuple[Verdict, ...]]:
    """The estimator's own options, and what forbids those that may not be offered."""
    out: list[Chosen] = []
    against: list[Verdict] = []
    for wish in wishes:
        offered = tuple(counter.repairs.values())
        made = [wanted_repair(w, needs, offered, judge) for w in wish.repairs]
        repairs = tuple(m for m in made if isinstance(m, Repair))
        stopped = [v for m in made if not isinstance(m, Repair) for v in m]
        stopped += [v for r in repairs for v in counter.forbids(r)]
        against += stopped
        if repairs and not stopped:
            out.append(chosen(repairs, counter, wish))
    return tuple(out), tuple(against)


def _named(options: Iterable[Chosen], wishes: Sequence[WantedOption]) -> tuple[Chosen, ...]:
    """Names the estimator gave: by the letter the option stands under, the old name, or the method it uses."""
    new = {o.name.lower(): o.new_name for o in by_hand(tuple(wishes), "rename")}
    out = []
    for letter, option in zip(ascii_lowercase, options, strict=False):
        words = [letter, option.name.lower(), *(r.method for r in option.scope.repairs)]
        out.append(replace(option, name=next((new[w] for w in words if w in new), option.name)))
    return tuple(out)


def _once(options: Iterable[Chosen]) -> tuple[Chosen, ...]:
    """The same repairs are shown once, where they come first."""
    kept: dict[frozenset[tuple[object, ...]], Chosen] = {}
    for option in options:
        same = frozenset((r.method, r.line, r.stretch, r.entry, r.reroute) for r in all_repairs(option.scope.repairs))
        kept.setdefault(same, option)
    return tuple(kept.values())
