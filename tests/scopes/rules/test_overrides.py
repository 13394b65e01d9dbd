"""The owner may overrule a rule with a reason; a rule that guards people gives way only to an approval on file."""

from dataclasses import replace
from datetime import date

from estimator.model.judgement import Effect, Verdict
from estimator.model.wanted import Approval, Override
from estimator.scopes.rules import may
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.verdicts import refused
from tests.made_up.stretch import beam, demo_tables, stretch

OFFSET = stretch("offset 30%", method="reline")
TENDONS = stretch(method="break-through", zones=("slab",), house={"floor": "slab, tendons unknown"})


def said(facts: StretchFacts, method: str, rule: str) -> Verdict:
    return next(v for v in may(method, facts, demo_tables()) if v.rule == rule)


def word(rule: str, **more: str) -> Override:
    return Override(reason="the owner looked himself", rule=rule, **more)


def paper(rule: str) -> Approval:
    return Approval(what="engineer letter", by="P. Example, PE", on=date(2026, 11, 10), covers=(rule,))


def test_a_rule_counts_when_nobody_overrules_it() -> None:
    assert said(OFFSET, "reline", "big-offset").overruled == ""


def test_the_owners_reason_stands_on_the_verdict() -> None:
    facts = replace(OFFSET, overrides=(word("big-offset"),))
    assert said(facts, "reline", "big-offset").overruled == "the owner looked himself"


def test_an_override_counts_on_its_own_line_and_place_only() -> None:
    elsewhere = replace(OFFSET, overrides=(word("big-offset", line="kitchen"),))
    too_far = replace(OFFSET, overrides=(word("big-offset", where="11-20"),))  # the offset lies at 10
    here = replace(OFFSET, overrides=(word("big-offset", line="main", where="9-10"),))
    assert said(elsewhere, "reline", "big-offset").overruled == ""
    assert said(too_far, "reline", "big-offset").overruled == ""
    assert said(here, "reline", "big-offset").overruled != ""


def test_a_rule_that_guards_people_does_not_give_way_to_a_word_alone() -> None:
    facts = replace(TENDONS, overrides=(word("tendons-in-the-slab"),))
    assert said(facts, "break-through", "tendons-in-the-slab").overruled == ""
    assert refused(facts) == facts.overrides
    told = [v for v in may("break-through", facts, demo_tables()) if "changes nothing" in str(v.estimator)]
    assert [(v.rule, v.effect) for v in told] == [("tendons-in-the-slab", Effect.CAUTION)]


def test_it_gives_way_to_an_approval_on_file_that_names_it() -> None:
    facts = replace(TENDONS, overrides=(word("tendons-in-the-slab"),), approvals=(paper("tendons-in-the-slab"),))
    verdict = said(facts, "break-through", "tendons-in-the-slab")
    assert verdict.overruled == "the owner looked himself (engineer letter by P. Example, PE, 2026-11-10)"
    assert refused(facts) == ()


def test_an_approval_for_another_rule_changes_nothing() -> None:
    facts = replace(TENDONS, approvals=(paper("footing-below-dig"),))
    assert said(facts, "break-through", "tendons-in-the-slab").overruled == ""


def test_a_caution_is_never_taken_back() -> None:
    facts = stretch(method="tunnel", zones=("slab",), beams=(beam(),), overrides=(word("empty-pipe-floats"),))
    verdict = said(facts, "tunnel", "empty-pipe-floats")
    assert (verdict.effect, verdict.overruled) == (Effect.CAUTION, "")
