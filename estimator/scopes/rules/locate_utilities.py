"""Before any dig the public utilities are located, and the firm finds the private ones.

>>> from tests.made_up.stretch import dug, limits, mark, stretch
>>> locate(stretch(method="trench"), limits())[0].effect.value
'requires first'
>>> private = stretch(method="trench", site={"located": True}, marks=(mark("crossing", choice="irrigation"),))
>>> [sorted(r.facts) for r in locate(private, limits())]
[['private_locate'], []]
>>> locate(stretch(method="trench", site={"located": True}), limits())
()
>>> gas = lambda away: (mark("crossing", away, choice="gas"),)
>>> beside = lambda away: dug(4.6, site={"located": True}, line_marks=gas(away))  # the dig ends at 30
>>> [r.effect.value for r in locate(beside(31.5), limits())], locate(beside(32.5), limits())
(['caution'], ())
"""

from estimator.model.judgement import Effect
from estimator.model.line import Mark
from estimator.model.opening import Opening
from estimator.model.say import Say
from estimator.scopes.rules.concern import DIGS
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import Rule, Ruling

PRIVATE = ("irrigation", "pool", "gas to grill", "private", "electric to shed", "low voltage", "propane")


def locate(it: StretchFacts, limits: Limits) -> tuple[Ruling, ...]:
    out = []
    if not it.site.located:
        out.append(
            Ruling(
                effect=Effect.REQUIRES_FIRST,
                homeowner=Say.of("Buried gas, power and water lines are marked before we dig. Please keep the marks."),
                estimator=Say.of(
                    "One-call locate (811) before digging; wait as the state says; hand-dig in the tolerance zone."
                ),
                facts=frozenset({"utility_locate"}),
            )
        )
    private = [m.choice for m in _crossing(it) if m.choice and any(word in m.choice for word in PRIVATE)]
    if private:
        out.append(
            Ruling(
                effect=Effect.ADDS_WORK,
                homeowner=Say.of("The utilities do not mark private lines in your yard. We locate them ourselves."),
                estimator=Say.of("Private lines cross: {what}; located by the firm.", what=", ".join(private)),
                facts=frozenset({"private_locate"}),
            )
        )
    if near := _in_the_zone(it, limits("utility_zone_ft")):
        out.append(_by_hand(near))
    return tuple(out)


def _in_the_zone(it: StretchFacts, zone_ft: float) -> tuple[tuple[Mark, Opening], ...]:
    """Marked lines so near an opening that no machine digs there."""
    return tuple((m, o) for o in it.works.digs for m, far in it.near(o, "crossing", at_top=True) if far <= zone_ft)


def _by_hand(near: tuple[tuple[Mark, Opening], ...]) -> Ruling:
    return Ruling(
        effect=Effect.CAUTION,
        homeowner=Say.of("Buried lines close to the dig are uncovered by hand and held up while the ground is open."),
        estimator=Say.of(
            "{what} within the tolerance zone of {opening}: dig by hand, uncover it, hold it up while the ground is open (29 CFR 1926.651(b)).",
            what=", ".join(dict.fromkeys(m.choice or "a buried line" for m, _ in near)),
            opening=near[0][1].name,
        ),
    )


def _crossing(it: StretchFacts) -> tuple[Mark, ...]:
    """Utilities on the stretch, and those within reach of what is opened."""
    by_opening = (m for o in it.works.digs for m, far in it.near(o, "crossing", at_top=True) if far <= 0)
    return tuple(dict.fromkeys((*it.placed("crossing"), *by_opening)))


RULE = Rule(
    id="locate-utilities",
    numbers=("R32",),
    concerns=DIGS,
    statement="Any dig or burst: one-call locate and its wait first; private lines are located by the firm; a marked line within the tolerance zone of an opening is uncovered by hand.",
    reason="Gas, power and water lie where nobody expects them.",
    source="29 CFR 1926.651(b); waits by state, usually 2 to 3 business days, and tolerance zones, 18 to 24 in (from memory)",
    worse="hurting somebody",
    reads=("utility_zone_ft",),
    guards_people=True,
    applies=locate,
)
