"""A slab that has, or may have, steel tendons is not cut until it is scanned and an engineer has spoken.

>>> from tests.made_up.stretch import limits, stretch
>>> unknown = {"floor": "slab, tendons unknown"}
>>> tendons(stretch(method="break-through", zones=("slab",), house={**unknown, "built": 1965}), limits()).effect.value
'until approved'
>>> tendons(stretch(method="break-through", zones=("slab",), house={**unknown, "built": 1964}), limits()) is None
True
>>> proven = {"floor": "slab", "built": 1990, "tendons": "none, engineer's drawing"}
>>> tendons(stretch(method="slab spot", zones=("slab",), house=proven), limits()) is None
True
>>> tendons(stretch(method="slab spot", zones=("slab",), house={**proven, "tendons": ""}), limits()).effect.value
'until approved'
"""

from estimator.knowledge.tendons import may_have_tendons
from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.concern import BELOW_FLOOR
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import Answers, Rule, Ruling


def tendons(it: StretchFacts, limits: Limits) -> Answers:
    if not may_have_tendons(it.house, limits.place.tendons_since if limits.place else None):
        return None
    if it.works.cuts_floor:
        return Ruling(
            effect=Effect.UNTIL_APPROVED,
            homeowner=Say.of(
                "Your floor may contain tensioned steel cables. We do not cut it until it is scanned and an engineer agrees."
            ),
            estimator=Say.of(
                "Tendons known or not ruled out: no saw, breaker or core until scan and engineer's letter are on file."
            ),
            facts=frozenset({"slab_may_have_tendons", "tendon_scan", "engineer"}),
        )
    if any(o.kind == "tunnel" and "slab" in o.zones for o in it.works.openings):
        return Ruling(
            effect=Effect.CAUTION,
            homeowner=Say.of(
                "Your floor may contain tensioned steel cables, so we do not drill into it from below. The new pipe sits on supports on the tunnel floor."
            ),
            estimator=Say.of(
                "Tendons possible: no anchors or cores into the slab, no cleanout core without a scan; pipe on stands from the tunnel floor, no hangers."
            ),
            facts=frozenset({"slab_may_have_tendons"}),
        )
    return None


RULE = Rule(
    id="tendons-in-the-slab",
    numbers=("R17",),
    concerns=BELOW_FLOOR,
    statement="A post-tensioned slab, or one built since the place's year without proof that it has no tendons: not cut until scanned and approved; in a tunnel nothing is anchored in it.",
    reason="A tendon carries about 30,000 lb; a cut one can kill. House slabs with tendons were in use in the 1960s, and a missing stamp proves nothing.",
    source="trade publications on post-tensioned slabs (force, decade); the year is a default to be set for each place",
    settled_by="scan",
    worse="hurting somebody",
    guards_people=True,
    applies=tendons,
)
