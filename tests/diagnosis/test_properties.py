"""Promises of diagnosis and rules, whatever the camera saw."""

from hypothesis import given, settings
from hypothesis import strategies as st

from estimator.diagnosis import diagnose
from estimator.model.job import Job
from estimator.model.line import FINDING_WORDS, SIGNS, Finding
from estimator.model.stretch import Stretch
from estimator.scopes.rules import facts_of, may
from estimator.works.methods import names
from tests.diagnosis.making import job, line
from tests.made_up.stretch import demo_tables

PIPES = ("clay", "cast iron", "PVC", "fiber", "galvanized", "unknown")
ZONES = ("yard", "slab", "drive", "street", "crawl", "basement")


@st.composite
def findings(draw: st.DrawFn) -> Finding:
    low, high = sorted(draw(st.tuples(st.integers(0, 60), st.integers(0, 60))))
    percent = draw(st.none() | st.integers(0, 100))
    kind = draw(st.sampled_from(FINDING_WORDS))
    return Finding(
        id=f"f{draw(st.integers(0, 10**9))}",
        kind=kind,
        stretch=Stretch(float(low), float(high)),
        percent=None if percent is None else (percent, percent),
        size_in=draw(st.none() | st.floats(0.1, 6)),
        clock=draw(st.none() | st.tuples(st.integers(1, 12), st.integers(1, 12))),
        signs=tuple(draw(st.lists(st.sampled_from(SIGNS), max_size=3))),
        grade=draw(st.sampled_from(("seen", "inferred", "suspected", "not inspected"))),
    )


@st.composite
def houses(draw: st.DrawFn) -> Job:
    seen = draw(st.lists(findings(), max_size=6, unique_by=lambda f: f.id))
    return job(line(*seen, pipe=draw(st.sampled_from(PIPES)), zone=draw(st.sampled_from(ZONES))))


@settings(max_examples=60, deadline=None)
@given(houses())
def test_any_findings_end_in_a_diagnosis_and_every_method_in_verdicts(house: Job) -> None:
    diagnosis = diagnose(house, demo_tables())
    ids = [n.id for n in diagnosis.needs]
    assert len(ids) == len(set(ids))
    for need in diagnosis.needs:
        assert 0 <= need.severity <= 4
        assert 0 <= need.urgency <= 4
        facts = facts_of(house, house.lines[0], need.stretch, (need,), demo_tables())
        for method in names():
            for verdict in may(method, facts, demo_tables()):
                assert str(verdict.homeowner) and str(verdict.estimator)


@settings(max_examples=40, deadline=None)
@given(houses(), st.randoms(use_true_random=False))
def test_the_order_of_findings_changes_no_need(house: Job, shuffle: object) -> None:
    from dataclasses import replace

    seen = list(house.lines[0].findings)
    shuffle.shuffle(seen)  # type: ignore[attr-defined]
    other = replace(house, lines=(replace(house.lines[0], findings=tuple(seen)),))

    def told(one: Job) -> set[tuple[object, ...]]:
        needs = diagnose(one, demo_tables()).needs
        return {(n.stretch, frozenset(n.kinds), n.severity, n.urgency, n.must, n.grade, n.whole_line) for n in needs}

    assert told(house) == told(other)


@settings(max_examples=40, deadline=None)
@given(houses())
def test_a_utility_in_the_bore_leaves_no_way_open(house: Job) -> None:
    from dataclasses import replace

    gas = Finding(id="gas", kind="utility", stretch=Stretch(30.0, 30.0))
    first = house.lines[0]
    struck = replace(house, lines=(replace(first, findings=(*first.findings, gas)),))
    facts = facts_of(struck, struck.lines[0], Stretch(0.0, 60.0), (), demo_tables())
    for method in ("clean", "reline", "sectional liner", "burst", "trench", "tunnel", "yard spot", "slab spot"):
        rules = {v.rule for v in may(method, facts, demo_tables()) if v.effect == "blocks"}
        assert "utility-in-the-bore" in rules
