"""Whole houses judged: what must be offered, what must be blocked and by which rule, what must be warned of.

Each folder beside this file with an expect.toml is one case. The judgement is common practice of the trade.
"""

import tomllib
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

import pytest

from estimator.diagnosis import diagnose
from estimator.fieldnotes import read_job
from estimator.model.job import Job
from estimator.model.judgement import Diagnosis, Effect, Verdict
from estimator.model.stretch import Stretch, joined
from estimator.model.work import Repair, all_repairs
from estimator.scopes.candidates import Offers, repairs
from estimator.scopes.judge import Judge
from estimator.scopes.rules import may
from tests.made_up.stretch import demo_tables

HERE = Path(__file__).parent
CASES = sorted(p.parent.name for p in HERE.glob("*/expect.toml"))


@dataclass(frozen=True)
class Judged:
    job: Job
    diagnosis: Diagnosis
    offers: Offers

    def repairs(self, wanted: dict[str, Any]) -> list[Repair]:
        """Repairs of the wanted method (and line) that cover, touch or answer what is asked."""
        found = [r for r in self.offers.repairs if r.method == wanted["method"]]
        found = [r for r in found if r.line == wanted.get("line", r.line)]
        if "covers" in wanted:  # a lining stops at the pipe laid new before it: the two cover it together
            found = [r for r in found if _all_of(r).covers(Stretch(*wanted["covers"]))]
        if "touches" in wanted:
            found = [r for r in found if r.stretch.touches(Stretch(*wanted["touches"]))]
        if "answers" in wanted:
            found = [r for r in found if wanted["answers"] in r.answers]
        return [r for r in found if set(wanted.get("facts", ())) <= r.facts]

    def verdicts(self, wanted: dict[str, Any]) -> list[Verdict]:
        """What the wanted rule says anywhere: on repairs offered, on those forbidden, and over each need by itself."""
        said = (
            [v for r in self.offers.repairs for v in r.verdicts] + list(self.offers.verdicts) + self._over_needs(wanted)
        )
        said = [v for v in said if v.rule == wanted["rule"]]
        return [v for v in said if v.method == wanted.get("method", v.method) and v.line == wanted.get("line", v.line)]

    def _over_needs(self, wanted: dict[str, Any]) -> list[Verdict]:
        if "method" not in wanted:
            return []
        judge = Judge(self.job, demo_tables(), may)
        over = (judge.verdicts(wanted["method"], n.line, n.stretch, (n,)) for n in self.diagnosis.needs)
        return [verdict for said in over for verdict in said]


def _all_of(repair: Repair) -> Stretch:
    whole = repair.stretch
    for one in joined(r.stretch for r in all_repairs((repair,))):
        whole = whole.union(one) if one.touches(whole) else whole
    return whole


@cache
def judged(case: str) -> Judged:
    reading = read_job(HERE / case / "job.toml")
    assert reading.job is not None, reading.problems
    diagnosis = diagnose(reading.job, demo_tables())
    return Judged(reading.job, diagnosis, repairs(reading.job, diagnosis, demo_tables()))


def expected(kind: str) -> list[Any]:
    out = []
    for case in CASES:
        for wanted in tomllib.loads((HERE / case / "expect.toml").read_text("utf-8")).get(kind, []):
            what = " ".join(str(v) for v in wanted.values())
            out.append(pytest.param(case, wanted, id=f"{case}: {what}"))
    return out


def test_there_are_seven_cases_and_eight_near_misses() -> None:
    near = [c for c in CASES if "near" in c]
    assert len(near) >= 8
    assert len(CASES) - len(near) >= 7


@pytest.mark.parametrize("case", CASES)
def test_the_notes_are_read_without_an_error(case: str) -> None:
    reading = read_job(HERE / case / "job.toml")
    assert [str(p) for p in reading.problems if p.level == "error"] == []


@pytest.mark.parametrize("case, wanted", expected("offer"))
def test_what_must_be_offered_is_offered(case: str, wanted: dict[str, Any]) -> None:
    found = judged(case).repairs(wanted)
    assert found, sorted(r.id for r in judged(case).offers.repairs)
    if wanted.get("first"):
        assert any(r.first for r in found)


@pytest.mark.parametrize("case, wanted", expected("block"))
def test_what_must_be_blocked_is_blocked_by_the_right_rule(case: str, wanted: dict[str, Any]) -> None:
    asked = {k: v for k, v in wanted.items() if k != "rule"}
    assert judged(case).repairs(asked) == []
    assert any(v.effect is Effect.BLOCKS for v in judged(case).verdicts(wanted))


@pytest.mark.parametrize("case, wanted", expected("wait"))
def test_what_must_wait_for_an_approval_waits(case: str, wanted: dict[str, Any]) -> None:
    waiting = [v for v in judged(case).verdicts(wanted) if v.effect is Effect.UNTIL_APPROVED]
    assert waiting
    assert set(wanted.get("facts", ())) <= waiting[0].facts


@pytest.mark.parametrize("case, wanted", expected("not_offer"))
def test_what_is_no_answer_is_not_offered(case: str, wanted: dict[str, Any]) -> None:
    assert judged(case).repairs(wanted) == []


@pytest.mark.parametrize("case, wanted", expected("warn"))
def test_what_must_be_warned_of_is_said(case: str, wanted: dict[str, Any]) -> None:
    assert judged(case).verdicts(wanted)


@pytest.mark.parametrize("case, wanted", expected("evidence"))
def test_what_the_findings_mean_is_said(case: str, wanted: dict[str, Any]) -> None:
    assert wanted["rule"] in {e.rule for e in judged(case).diagnosis.evidence}


@pytest.mark.parametrize("case, wanted", expected("no_evidence"))
def test_what_the_findings_do_not_mean_is_not_said(case: str, wanted: dict[str, Any]) -> None:
    assert wanted["rule"] not in {e.rule for e in judged(case).diagnosis.evidence}


@pytest.mark.parametrize("case, wanted", expected("need"))
def test_the_needs_are_as_a_seasoned_eye_sees_them(case: str, wanted: dict[str, Any]) -> None:
    need = {n.id: n for n in judged(case).diagnosis.needs}[wanted["id"]]
    assert {key: getattr(need, key) for key in wanted} == wanted


@pytest.mark.parametrize("case, wanted", expected("only"))
def test_nothing_but_this_is_offered(case: str, wanted: dict[str, Any]) -> None:
    assert {r.method for r in judged(case).offers.repairs} == set(wanted["methods"])
