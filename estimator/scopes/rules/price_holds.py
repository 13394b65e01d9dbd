"""A price is firm only while what is not known for sure cannot raise it by more than the firm's limit.

>>> from estimator.model.basis import Basis, Fact
>>> from estimator.model.say import Say
>>> from estimator.model.stretch import Stretch
>>> from tests.made_up.stretch import limits
>>> depth = Fact(subject="depth", line="main", stretch=Stretch(0, 9), how="measured", words=Say.of("x"), rises=1100)
>>> holds(Basis(price=10_000, facts=(depth,)), limits()).effect.value
'no fixed price'
>>> holds(Basis(price=11_000, facts=(depth,)), limits()) is None  # just at the limit of 10 percent
True
"""

from estimator.model.basis import Basis
from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.concern import ANYTHING
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import Answers, Rule, Ruling


def _because(subject: str, percent: int) -> Say:
    if subject == "depth":
        return Say.of(
            "The exact depth of the pipe could raise this price by about {percent}%. We can set a firm price after we uncover or measure the pipe.",
            percent=percent,
        )
    if subject == "soil":
        return Say.of(
            "The soil could raise this price by about {percent}%. We can set a firm price after we dig a test hole and see the soil.",
            percent=percent,
        )
    return Say.of(
        "The thickness of the floor could raise this price by about {percent}%. We can set a firm price after we measure it.",
        percent=percent,
    )


def holds(basis: Basis, limits: Limits) -> Answers:
    most = basis.moves_most
    if most is None or round(basis.rises_percent, 6) <= limits("firm_swing_percent"):
        return None
    percent = round(basis.rises_percent)
    return Ruling(
        effect=Effect.NO_FIXED_PRICE,
        homeowner=_because(most.subject, percent),
        estimator=Say.of(
            "Inside the tolerances the price may rise by {percent}%, more than your {limit}%; most of it: {fact}.",
            percent=percent,
            limit=f"{limits('firm_swing_percent'):g}",
            fact=most.words,
        ),
        stretch=most.stretch,
    )


RULE = Rule(
    id="price-holds-in-its-tolerance",
    numbers=(),
    concerns=ANYTHING,
    statement="Measured and priced anew at both ends of what is not known for sure (locator depth, soil nobody named, floor nobody measured), a price that may rise by more than the firm's limit is no fixed price.",
    reason="A price that may not hold is not firm, however well the pipe was seen. One that can only come down surprises nobody.",
    source="independent errors added as the root of the sum of their squares, plain arithmetic; the limit is the firm's",
    settled_by="",
    worse="offering what cannot work",
    reads=("firm_swing_percent", "locator_tolerance_percent", "locator_tolerance_min_ft", "slab_thickness_off_in"),
    rests=holds,
)
