"""What leaves the house: options side by side, the quote, the record of a revision."""

from datetime import date
from decimal import Decimal
from typing import Literal

from estimator.model.add_on import AddOn
from estimator.model.basis import Basis
from estimator.model.found import Found
from estimator.model.frozen import Frozen
from estimator.model.job import Job
from estimator.model.judgement import Diagnosis, Verdict
from estimator.model.likely_range import LikelyRange
from estimator.model.not_offered import NotOffered, told_once
from estimator.model.price import CostLine, Price, TaskHours
from estimator.model.say import Say
from estimator.model.schedule import Schedule
from estimator.model.ways import Ways
from estimator.model.work import Scope, Takeoff
from estimator.model.works import Works, together

TestPromise = Literal["yes", "only this part", "not promised"]


class Extra(Frozen, kw_only=True):
    """A unit price agreed before work starts, with the most it can add before we stop and call.

    `margin_of` is what of the option's own price it is a margin of: length, depth, side drain; empty: a price of the table.
    `counted` is how much of that is in the price now, in `unit`.
    """

    code: str
    text_en: str
    text_es: str
    unit: str
    price: Decimal
    cap_quantity: Decimal
    cap_amount: Decimal
    margin_of: str = ""
    counted: Decimal = Decimal(0)


class Margin(Frozen):
    """What one more of something adds to an option's price, up to how many that holds, and how many are in it now."""

    price: Decimal
    holds_to: Decimal
    counted: Decimal


class Term(Frozen, kw_only=True):
    """A sentence of the terms; its kind is one of those of table terms, but for what goes to others."""

    id: str
    kind: str
    text_en: str
    text_es: str


class Payment(Frozen, kw_only=True):
    """A milestone: when it falls due and how much; the amounts sum to the total to the cent."""

    text: Say
    amount: Decimal


class ToOthers(Frozen, kw_only=True):
    """Something the homeowner will also meet: who does it, and about how much; None where nobody can say yet."""

    text_en: str
    text_es: str
    who: Literal["we do", "you do", "allowance"] = "you do"
    amount: Decimal | None = None


class Option(Frozen, kw_only=True):
    """A scope in words a homeowner compares by. Percent, days and lengths are as shown."""

    letter: str
    title: Say
    under_title: Say
    scope: Scope
    takeoffs: tuple[Takeoff, ...]
    price: Price
    days_on_site: Decimal
    days_without_drains: Decimal
    floors_opened: tuple[str, ...]
    floor_sf: float
    yard_sf: float
    old_pipe_left_ft: float
    stays_old: tuple[Say, ...]
    water_test: TestPromise
    water_test_text: Say
    life_low: int
    life_high: int
    warranty_en: str
    warranty_es: str
    main_risk: Say
    extras: tuple[Extra, ...]
    terms: tuple[Term, ...]
    payments: tuple[Payment, ...]
    extras_tax: Decimal = Decimal(0)  # the most sales tax that all extras together can carry
    needs_papers: tuple[Say, ...] = ()  # permits, engineer
    name: str = ""  # the estimator's own name for it, when he gave one
    fixed: bool = True  # False: something must be confirmed before the price holds
    not_fixed_because: tuple[Say, ...] = ()
    firm_after: str = ""  # the letter of the visit that settles what keeps the price from being firm
    does: tuple[Say, ...] = ()  # how many feet, of what, where in the house
    to_others: tuple[ToOthers, ...] = ()
    cautions: tuple[Say, ...] = ()  # from the rules and the takeoff, beside those of the terms
    assumptions: tuple[Say, ...] = ()
    cost_a_year: tuple[Decimal, Decimal] | None = None  # least and most over the stated life, an aid to compare
    likely_range: LikelyRange | None = None  # how far the firm's own cost may run: for the office alone
    add_ons: tuple[AddOn, ...] = ()  # those that are chosen stand in the price already
    basis: Basis = Basis()  # what the price rests on, and how far it may move
    work_key: str = ""  # what is done, without lengths, depths and counts (model/agreed.py)

    @property
    def schedule(self) -> Schedule:
        """Who does what on which day: days on site, days without drains and milestones are read from it."""
        return self.price.schedule

    @property
    def works(self) -> Works:
        """All that the option does: the works of its repairs together."""
        return together(t.works for t in self.takeoffs)

    @property
    def open_add_ons(self) -> tuple[AddOn, ...]:
        """What may still be added."""
        return tuple(a for a in self.add_ons if not a.chosen)

    @property
    def chosen_add_ons(self) -> tuple[AddOn, ...]:
        """What was added: in the price, the lines and the payments."""
        return tuple(a for a in self.add_ons if a.chosen)

    @property
    def all_tasks(self) -> tuple[TaskHours, ...]:
        """The tasks of the scope and of the add-ons chosen, for the crew."""
        return (*self.price.tasks, *(task for a in self.chosen_add_ons for task in a.tasks))

    @property
    def all_costs(self) -> tuple[CostLine, ...]:
        """What the crew brings: of the scope and of the add-ons chosen."""
        return (*self.price.costs, *(cost for a in self.chosen_add_ons for cost in a.costs))

    @property
    def all_in(self) -> Decimal:
        """The price and what goes to others, as far as anybody can say."""
        return self.price.total + sum((o.amount for o in self.to_others if o.amount is not None), Decimal(0))

    @property
    def most(self) -> Decimal:
        """What the price cannot go above unless the homeowner signs: price, all capped extras and their tax."""
        return self.price.total + self.extras_tax + sum((e.cap_amount for e in self.extras), Decimal(0))


class Firm(Frozen, kw_only=True):
    """The firm's letterhead, from the settings table."""

    name: str
    address: str
    phone: str
    email: str
    licence: str
    insurance: str
    accent: str  # RRGGBB
    logo: str = ""


class Quote(Frozen, kw_only=True):
    """Options side by side with everything the papers need; pure data, no files."""

    job: Job
    diagnosis: Diagnosis
    options: tuple[Option, ...]
    blocked: tuple[Verdict, ...]  # why a way is not offered, one a method
    firm: Firm
    place: str
    revision: int
    day: date
    valid_until: date
    seen: tuple[Say, ...]  # what was filmed, how far
    not_seen: tuple[Say, ...]
    found: tuple[Found, ...]  # the defects in plain words, lettered
    notices: tuple[Term, ...] = ()
    tables_fingerprint: str = ""
    urgency: Say | None = None
    if_nothing: Say | None = None  # what happens if nothing is done
    if_cleaned: Say | None = None  # and if it is only cleaned
    tests: tuple[Say, ...] = ()  # what the water tests showed
    tests_compared: tuple[Say, ...] = ()  # what two tests of one section show together
    lift_steps: tuple[Say, ...] = ()  # tests, repairs and the foundation lift in their order
    cancel_business_days: int | None = None
    priced_on: date | None = None  # the day of the prices where they are older than the quote
    ways: Ways | None = None  # the ways to one stretch side by side: for the office alone
    own_numbers: tuple[str, ...] = ()  # for the office: numbers set by hand whose ground moved since the last revision
    paper_warnings: tuple[Say, ...] = ()  # for the office: what a person must still check before sending
    invented: tuple[Say, ...] = ()  # what is still the demo's: then it is no offer, and nobody can accept it

    @property
    def not_offered(self) -> tuple[NotOffered, ...]:
        """Why ways are not offered, each reason once."""
        return told_once(self.blocked)

    @property
    def price_day(self) -> date:
        """The day whose prices it is made with: a revision within validity keeps that of the first issue."""
        return self.priced_on or self.day
