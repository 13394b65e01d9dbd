"""A method and the facts of a stretch in, or a repair with its takeoff; every rule's verdict out, overrides applied."""

import re
from collections.abc import Iterable, Sequence

from estimator.model.basis import Basis
from estimator.model.frozen import replace
from estimator.model.job import Job
from estimator.model.judgement import Effect, Verdict
from estimator.model.say import Say
from estimator.model.stretch import Stretch
from estimator.model.wanted import Override
from estimator.model.work import Repair, Takeoff
from estimator.model.works import Works
from estimator.scopes.rules import RULES
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.gathered import facts_of
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.measured import Measured
from estimator.scopes.rules.rule import Answers, Rule, Ruling, asked
from estimator.tables.tables import Tables

BEFORE_TAKEOFF = tuple(rule for rule in RULES if rule.applies is not None)
ON_THE_CURE = tuple(rule for rule in BEFORE_TAKEOFF if rule.judges_the_cure)
AFTER_TAKEOFF = tuple(rule for rule in RULES if rule.measures is not None)


def may(
    method: str, facts: StretchFacts, tables: Tables, rules: Sequence[Rule] = BEFORE_TAKEOFF
) -> tuple[Verdict, ...]:
    """What every rule says of one method over one stretch before anything is measured, in the order of RULES."""
    here = facts if facts.method == method else replace(facts, method=method)
    limits = Limits(tables, facts.house.jurisdiction)
    out: list[Verdict] = []
    for rule in asked(rules, here):
        if rule.applies is not None:
            out += [_verdict(rule, answer, here) for answer in each(rule.applies(here, limits))]
    return tuple(out) + _not_enough(tuple(out), here)


def conditions(repair: Repair, takeoff: Takeoff, job: Job, tables: Tables) -> tuple[Verdict, ...]:
    """What the rules that need depths, widths and pits say once a repair is measured."""
    facts = facts_of(job, job.line(repair.line), repair.stretch, (), tables, repair.reroute)
    measured = Measured(repair, takeoff, replace(facts, method=repair.method, works=takeoff.works))
    limits = Limits(tables, job.house.jurisdiction)
    out: list[Verdict] = []
    for rule in asked(AFTER_TAKEOFF, measured.at):
        if rule.measures is not None:
            out += [_verdict(rule, answer, measured.at) for answer in each(rule.measures(measured, limits))]
    return tuple(out) + _not_enough(tuple(out), measured.at)


def of_price(basis: Basis, repair: Repair, works: Works, job: Job, tables: Tables) -> tuple[Verdict, ...]:
    """What the rules say of a whole option by what its price rests on; `repair` is the one that moves it most."""
    facts = facts_of(job, job.line(repair.line), repair.stretch, (), tables, repair.reroute, works)
    here, limits = replace(facts, method=repair.method), Limits(tables, job.house.jurisdiction)
    answers = ((rule, rule.rests(basis, limits)) for rule in RULES if rule.rests)
    return tuple(_verdict(rule, answer, here) for rule, said in answers for answer in each(said))


def _not_enough(said: tuple[Verdict, ...], facts: StretchFacts) -> tuple[Verdict, ...]:
    """Where the owner overruled a rule that guards people and no approval is on file: he is told that nothing changed."""
    refused_rules = {o.rule for o in refused(facts)}
    return tuple(
        replace(
            verdict,
            effect=Effect.CAUTION,
            facts=frozenset(),
            estimator=Say.of(
                "The override of {rule} changes nothing: it guards people, so name the engineer or authority whose approval is on file.",
                rule=verdict.rule,
            ),
        )
        for verdict in said
        if verdict.rule in refused_rules and not verdict.overruled and verdict.effect in CAN_BE_OVERRULED
    )


def each(answers: Answers) -> tuple[Ruling, ...]:
    """None, one ruling or several, as a tuple."""
    if answers is None:
        return ()
    return (answers,) if isinstance(answers, Ruling) else tuple(answers)


def _verdict(rule: Rule, answer: Ruling, facts: StretchFacts) -> Verdict:
    return Verdict(
        rule=rule.id,
        effect=answer.effect,
        method=facts.method,
        line=facts.line,
        stretch=answer.stretch or facts.stretch,
        homeowner=answer.homeowner,
        estimator=answer.estimator,
        settings=rule.reads,
        facts=answer.facts,
        overruled=overruled(rule, answer, facts),
    )


_STATION = r"-?\d+(?:\.\d+)?"
CAN_BE_OVERRULED = (Effect.BLOCKS, Effect.NO_FIXED_PRICE, Effect.UNTIL_APPROVED, Effect.DOES_NOT_FIX, Effect.REQUIRES_FIRST, Effect.ADDS_WORK)  # fmt: skip


def overruled(rule: Rule, answer: Ruling, facts: StretchFacts) -> str:
    """Why this answer does not count here: an approval on file, or the owner's reason; "" when it counts.

    A rule that guards people gives way only to an approval on file that names it. A caution is never taken back.
    """
    if answer.effect not in CAN_BE_OVERRULED:
        return ""
    approval = next((a for a in facts.approvals if rule.id in a.covers), None)
    here = answer.stretch or facts.stretch
    word = next((o.reason for o in facts.overrides if o.rule == rule.id and _meant(o, facts.line, here)), "")
    if approval is not None and (rule.guards_people or answer.effect is Effect.UNTIL_APPROVED or word):
        paper = f"{approval.what} by {approval.by}, {approval.on.isoformat()}"
        return f"{word} ({paper})" if word else paper
    return "" if rule.guards_people else word


def refused(facts: StretchFacts, rules: Iterable[Rule] = RULES) -> tuple[Override, ...]:
    """Overrides of rules that guard people, with no approval on file: they change nothing, and the owner must be told."""
    if not facts.overrides:
        return ()
    guards = {rule.id for rule in rules if rule.guards_people}
    on_file = {rule for approval in facts.approvals for rule in approval.covers}
    return tuple(o for o in facts.overrides if o.rule in guards - on_file)


def _meant(override: Override, line: str, here: Stretch) -> bool:
    """The override names this line, or none, and a place that touches this stretch, or none."""
    if override.line and override.line != line:
        return False
    ends = re.fullmatch(rf"\s*({_STATION})(?:\s*(?:-|–|to|\.\.)\s*({_STATION}))?\s*", override.where, re.ASCII)
    return ends is None or Stretch.between(float(ends[1]), float(ends[2] or ends[1])).touches(here)
