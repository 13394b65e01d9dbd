"""Where the floor joists hang too low over the soil nobody couples pipe: room is dug out first, and the price is not fixed.

>>> from tests.made_up.stretch import limits, stretch
>>> from estimator.model.stretch import Stretch
>>> from estimator.model.works import Laid, Works
>>> from estimator.model.opening import Opening
>>> from estimator.model.say import Say
>>> low = Opening(kind="dig in the crawl space", line="main", along=Stretch(0, 9), depth_ft=0.5, name=Say.of("the dig"))
>>> pipe = (Laid(line="main", stretch=Stretch(0, 9), size_in=4.0, hung=True),)
>>> dug = Works(line="main", openings=(low,), laid=pipe)
>>> too_low(stretch(method="crawl replace", zones=("crawl",), works=dug), limits()).effect.value
'no fixed price'
>>> too_low(stretch(method="crawl replace", zones=("crawl",)), limits()) is None
True
"""

from estimator.model.judgement import Effect
from estimator.model.say import Feet, Say
from estimator.scopes.rules.concern import HANGS
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import COMMON_PRACTICE, Answers, Rule, Ruling


def too_low(it: StretchFacts, limits: Limits) -> Answers:
    dug = next((o for o in it.works.openings if o.kind == "dig in the crawl space"), None)
    if dug is None:
        return None
    return Ruling(
        effect=Effect.NO_FIXED_PRICE,
        homeowner=Say.of(
            "The space under your floor is too low to work in. We first dig out room by hand. We set its price after we have been in."
        ),
        estimator=Say.of(
            "Crawl space lower than {least}: {deep} is dug out along the pipe before anyone couples it, or it is reached another way; permit space to be decided (29 CFR 1926.1203).",
            least=Feet(limits("crawl_work_ft")),
            deep=Feet(round(dug.depth_ft, 2)),
        ),
        facts=frozenset({"crawl_low"}),
    )


RULE = Rule(
    id="room-is-dug-in-a-crawl-space",
    numbers=(),
    concerns=HANGS,
    statement="A crawl space lower than anyone can couple pipe in: room is dug out first, no fixed price.",
    reason="Nobody couples a drain lying on his back with a hand's width over it.",
    source=COMMON_PRACTICE,
    worse="hurting somebody",
    reads=("crawl_work_ft",),
    guards_people=True,
    applies=too_low,
)
