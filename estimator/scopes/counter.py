"""Repairs and the functions of other steps in; what the search asks of them out: takeoffs, candidates, prices, measures."""

from collections.abc import Iterable, Sequence
from decimal import Decimal

from estimator.model.basis import Basis
from estimator.model.frozen import replace
from estimator.model.job import Job
from estimator.model.judgement import Effect, Need, Verdict
from estimator.model.price import Price
from estimator.model.problem import CannotGoOn
from estimator.model.stretch import hull
from estimator.model.work import Candidate, Repair, Scope, Takeoff, all_repairs
from estimator.scopes.basis import on_its_basis
from estimator.scopes.costing import Costing, InFigures, Rough
from estimator.scopes.judge import counts
from estimator.scopes.kinds import SPOT
from estimator.scopes.least_price import Hours, LeastPrice, hours_less, hours_of
from estimator.scopes.measures import floor_sf, old_pipe_left_ft
from estimator.scopes.menu import Measures
from estimator.scopes.rules.why_not import NO_ROW_FOR_SIZE, no_price
from estimator.scopes.search import Answer
from estimator.scopes.shared_way import cleaning, saved_by_pairs, share_cleaning, share_ways
from estimator.tables.tables import Tables
from estimator.works.methods import record_of

CENTS = 100
WORST = 4
"""The highest severity there is."""


class Counter:
    """Everything is measured once and priced once; a repair the rules forbid once it is measured is put aside."""

    def __init__(
        self,
        job: Job,
        needs: tuple[Need, ...],
        repairs: Sequence[Repair],
        costing: Costing,
        tables: Tables,
        instead: Sequence[Repair] = (),
    ) -> None:
        self.job, self.needs, self.tables, self._costing = job, needs, tables, costing
        self._takeoffs: dict[str, Takeoff] = {}
        self._roughs: dict[str, Rough] = {}
        self._figures: dict[tuple[str, ...], InFigures] = {}
        self.blocked: tuple[Verdict, ...] = tuple(dict.fromkeys(v for r in repairs for v in self.forbids(r)))
        self.repairs = {r.id: r for r in repairs if not self.forbids(r)}
        self.repairs |= {r.id: r for r in instead if not self._passes(r) and not self.forbids(r)}
        self.shared_costs: dict[str, int] = {}
        self._least_takeoffs = self._beside_all_others()
        alone = tuple(self._candidate(r) for r in self.repairs.values())
        measured = {name: self.takeoffs((r,)) for name, r in self.repairs.items()}
        on_the_way, ways = share_ways(alone, saved_by_pairs(measured, self._cents, costing.together))
        self.candidates, cleaned = share_cleaning(on_the_way, cleaning(measured, self._cents, costing.together))
        self.shared_costs |= ways | cleaned
        self._ways = frozenset(ways)
        self._old_pipe_ft = old_pipe_left_ft((), needs, job)
        self._least = self._least_price()

    # ── takeoffs ──────────────────────────────────────────────────────────────────────────────

    def takeoffs(self, repairs: Iterable[Repair]) -> tuple[Takeoff, ...]:
        return tuple(self._takeoff(one) for one in all_repairs(repairs))

    def _takeoff(self, repair: Repair) -> Takeoff:
        if repair.id not in self._takeoffs:
            measured = self._costing.take_off(repair)
            said = self._costing.conditions(repair, measured)
            facts = frozenset(fact for v in said if not v.overruled for fact in v.facts)
            self._takeoffs[repair.id] = replace(measured, finds=(*measured.finds, *said), facts=measured.facts | facts)
        return self._takeoffs[repair.id]

    def forbids(self, repair: Repair) -> tuple[Verdict, ...]:
        """What blocks a repair now that it is measured, or one of those that come first."""
        takeoffs = self.takeoffs((repair,))
        said = tuple(v for t in takeoffs for v in t.finds if counts(v, Effect.BLOCKS))
        return said or tuple(v for t in takeoffs if (v := self._without_price(t)) is not None)

    def _without_price(self, takeoff: Takeoff) -> Verdict | None:
        """Against a repair of a size the tables have no row for: it is put aside, and all others are priced."""
        try:
            self._rough(takeoff)
        except CannotGoOn as stop:
            if {p.code for p in stop.problems} == {NO_ROW_FOR_SIZE}:
                return no_price(takeoff)
        return None

    def _rough(self, takeoff: Takeoff) -> Rough:
        """The rough cost of a repair by itself, worked out once. Errors: as pricing."""
        name = takeoff.repair.id
        if name not in self._roughs:
            self._roughs[name] = self._costing.rough(takeoff)
        return self._roughs[name]

    def _passes(self, short: Repair) -> bool:
        """A repair of the same way that goes on beyond this one is allowed."""
        alike = (
            r for r in self.repairs.values() if (r.method, r.line, r.entry) == (short.method, short.line, short.entry)
        )
        return any(r.stretch.covers(short.stretch) for r in alike)

    def _beside_all_others(self) -> dict[str, tuple[Takeoff, ...]]:
        """The takeoffs of each repair that may come to less next to another one, as small as they may be."""
        every = [self._takeoff(r) for r in self.repairs.values()]
        out = {}
        for name, repair in self.repairs.items():
            own = self.takeoffs((repair,))
            least = tuple(self._costing.beside(one, every) for one in own)
            if least != own:
                out[name] = least
        return out

    # ── for the search ────────────────────────────────────────────────────────────────────────

    def _candidate(self, repair: Repair) -> Candidate:
        cost = 0
        shared: dict[str, int] = {}
        for takeoff in self._least_takeoffs.get(repair.id) or self.takeoffs((repair,)):
            rough = self._costing.rough(takeoff)
            cost += rough.cents
            shared |= dict(rough.shared)
        for key, charge in shared.items():
            self.shared_costs[key] = min(charge, self.shared_costs.get(key, charge))
        return Candidate(
            id=repair.id,
            line=repair.line,
            stretch=hull(r.stretch for r in all_repairs((repair,))),
            answers=frozenset(repair.answers),
            cost=cost,
            shared=frozenset(shared),
            method=repair.method,
            kind=self._kind(repair),
            cleans=self._only_cleans(repair),
        )

    def _only_cleans(self, repair: Repair) -> bool:
        works = self._takeoff(repair).works
        return bool(works.cleans) and not works.renewed and not repair.first

    def _kind(self, repair: Repair) -> str:
        """A short piece that hangs in the crawl space is a spot, not a line replaced."""
        short = record_of(repair.method).ground == "crawl" and not repair.first
        return SPOT if short and repair.stretch.length_ft <= self.tables.number("crawl_spot_max_ft") else ""

    def _cents(self, takeoff: Takeoff) -> int:
        return self._costing.rough(takeoff).cents if takeoff.quantities else 0

    def _least_price(self) -> LeastPrice | None:
        if not self.repairs:
            return None
        alone = {
            name: self._costing.in_figures(self._least_takeoffs[name])
            if name in self._least_takeoffs
            else self.in_figures((r,))
            for name, r in self.repairs.items()
        }
        once = {name: self._costing.rough(found.takeoffs[-1]) for name, found in alone.items()}
        least = {name: r.cents + sum(cents for _, cents in r.shared) for name, r in once.items()}
        return LeastPrice(alone, least, {n: self._cleaning_hours(n, f) for n, f in alone.items()}, self.tables)

    def _cleaning_hours(self, name: str, alone: InFigures) -> Hours:
        """Crew-hours a repair spends on the cleaning and filming of its line: what it takes less when done a second time."""
        own = self.takeoffs((self.repairs[name],))
        if not any(t.value("clean_ft") for t in own):
            return {}
        again = tuple(t for t in self._costing.together((*own, *own))[len(own) :] if t.quantities)
        return hours_less(alone, self._costing.unscheduled(again))

    @property
    def slack(self) -> int:
        """What a real price may lie below the sum."""
        return self._least.slack if self._least else 0

    def least(self, answer: Answer) -> int:
        """Cents the real price of a set is never below. Where tunnels share a way their hours are not simply added up."""
        shares = sum(1 for c in answer.chosen if c.shared & self._ways) > 1
        return self._least(answer) if self._least and not shares else answer.cost - self.slack

    def least_with_job(self, answer: Answer) -> int:
        """The same with what the job costs once for just this set."""
        low = self.least(answer)
        if not self._least or low == answer.cost - self.slack:
            return low
        found = self._costing.unscheduled(self._costing.together(self.takeoffs(self.repairs_of(answer))))
        once, paid = self._costing.rough(found.takeoffs[-1]), {key for c in answer.chosen for key in c.shared}
        cents = once.cents + sum(charge for key, charge in once.shared if key not in paid)
        return max(low, self._least(answer, cents, hours_of(found, job=True)))

    # ── prices and measures ───────────────────────────────────────────────────────────────────

    def in_figures(self, repairs: Sequence[Repair]) -> InFigures:
        """A scope in figures, reckoned once."""
        key = tuple(r.id for r in repairs)
        if key not in self._figures:
            self._figures[key] = self._costing.in_figures(self._costing.together(self.takeoffs(repairs)))
        return self._figures[key]

    def priced(self, repairs: Sequence[Repair]) -> tuple[tuple[Takeoff, ...], Price]:
        """All takeoffs of a scope, the job's last, and its real price built up with words."""
        takeoffs = self.in_figures(repairs).takeoffs
        return takeoffs, self._costing.price(takeoffs)

    def on_its_basis(
        self, repairs: Sequence[Repair], takeoffs: tuple[Takeoff, ...]
    ) -> tuple[Basis, tuple[Takeoff, ...]]:
        """What the price of a scope rests on, and its takeoffs with what the rules say of that."""
        return on_its_basis(repairs, takeoffs, self.job, self.tables, self._costing.smooth)

    def repairs_of(self, answer: Answer) -> tuple[Repair, ...]:
        return tuple(self.repairs[c.id] for c in answer.chosen)

    def price_cents(self, answer: Answer) -> int:
        """The real price before any discount, which every set gets alike and the sums know nothing of."""
        return int(self.in_figures(self.repairs_of(answer)).total * CENTS) if answer.chosen else 0

    def measures_of(self, repairs: Sequence[Repair]) -> Measures:
        found = self.in_figures(repairs)
        left = old_pipe_left_ft(repairs, self.needs, self.job)
        return found.days_without_drains, floor_sf(found.takeoffs), left

    def measures(self, answer: Answer) -> Measures:
        return self.measures_of(self.repairs_of(answer)) if answer.chosen else (0.0, 0.0, 0.0)

    def left(self, answer: Answer) -> tuple[int, ...]:
        """How many needs a set leaves of each severity, the worst first."""
        answered = {need for c in answer.chosen for need in c.answers}
        left = [n.severity for n in self.needs if n.id not in answered]
        return tuple(left.count(severity) for severity in range(WORST, -1, -1))

    def part(self, candidate: Candidate) -> Measures:
        """What one candidate adds to each measure; the pipe it renews counts below zero."""
        days, floor, left = self.measures_of((self.repairs[candidate.id],))
        return days, floor, left - self._old_pipe_ft

    # ── scopes ────────────────────────────────────────────────────────────────────────────────

    def scope(self, answer: Answer, bound_cents: int | None) -> Scope:
        bound = Decimal(bound_cents or 0) / CENTS
        return replace(self.scope_of(self.repairs_of(answer)), bound=bound)

    def scope_of(self, repairs: tuple[Repair, ...]) -> Scope:
        answered = {need for r in repairs for need in r.answers}
        return Scope(
            repairs=repairs,
            needs=tuple(n for n in self.needs if n.id in answered),
            leaves=tuple(n for n in self.needs if n.id not in answered),
        )
