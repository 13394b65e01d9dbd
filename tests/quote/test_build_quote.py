"""A quote in words from priced scopes: titles, terms, extras, what stays old; and the reasons to refuse one."""

from dataclasses import replace
from datetime import date, timedelta
from decimal import Decimal

import pytest

from estimator.model.judgement import Diagnosis, Effect, Evidence, Need, Question, Verdict
from estimator.model.line import Finding, Mark
from estimator.model.offer import Quote
from estimator.model.problem import CannotGoOn
from estimator.model.say import Say
from estimator.model.stretch import Stretch
from estimator.model.work import Quantity
from estimator.papers.letter import Letter
from estimator.papers.option_terms import received
from estimator.quote import PROBLEMS, Chosen, build_quote
from estimator.quote.refuse import facts, holds
from estimator.quote.urgency import if_cleaned, if_nothing
from estimator.tables import Tables
from tests.made_up.quote import example_quote

DAY = date(2026, 11, 18)
JOB = example_quote().job
DIAGNOSIS = example_quote().diagnosis


def built(chosen: tuple[Chosen, ...], tables: Tables, **more: object) -> Quote:
    given: dict[str, object] = {
        "job": JOB,
        "diagnosis": DIAGNOSIS,
        "chosen": chosen,
        "tables": tables,
        "day": DAY,
        "revision": 1,
    }
    return build_quote(**{**given, **more})  # type: ignore[arg-type]


def refused(chosen: tuple[Chosen, ...], tables: Tables, **more: object) -> list[str]:
    with pytest.raises(CannotGoOn) as caught:
        built(chosen, tables, **more)
    return [problem.code for problem in caught.value.problems]


def test_options_are_lettered_in_the_order_they_come_and_titled_from_the_methods(
    chosen: tuple[Chosen, ...], tables: Tables
) -> None:
    quote = built(chosen, tables)
    assert [o.letter for o in quote.options] == ["A", "B"]
    assert [str(o.title) for o in quote.options] == [
        tables.method("tunnel").title_en,
        tables.method("break-through").title_en,
    ]


def test_it_holds_for_the_firm_s_number_of_days(chosen: tuple[Chosen, ...], tables: Tables) -> None:
    assert built(chosen, tables).valid_until == DAY + timedelta(days=int(tables.number("validity_days")))


def test_rooms_are_named_where_a_floor_is_cut_and_only_there(chosen: tuple[Chosen, ...], tables: Tables) -> None:
    quote = built(chosen, tables)
    assert [o.floors_opened for o in quote.options] == [(), ("kitchen", "hall")]


def test_every_extra_has_a_cap_and_the_most_is_the_price_and_all_caps(
    chosen: tuple[Chosen, ...], tables: Tables
) -> None:
    for option in built(chosen, tables).options:
        assert option.extras
        assert all(e.cap_amount == e.price * e.cap_quantity > 0 for e in option.extras)
        assert option.most == option.price.total + sum(e.cap_amount for e in option.extras)


def test_extras_and_terms_are_those_of_the_ways_used(chosen: tuple[Chosen, ...], tables: Tables) -> None:
    tunnel, floor = built(chosen, tables).options
    assert "more-tunnel" in {e.code for e in tunnel.extras} and "more-tunnel" not in {e.code for e in floor.extras}
    assert "cau-dust" in {t.id for t in floor.terms} and "cau-dust" not in {t.id for t in tunnel.terms}


def test_a_caution_comes_with_its_fact(chosen: tuple[Chosen, ...], tables: Tables) -> None:
    old, new = (replace(JOB, house=replace(JOB.house, built=year)) for year in (1977, 1978))
    has = [
        any(t.id == "cau-lead" for o in built(chosen, tables, job=job).options for t in o.terms) for job in (old, new)
    ]
    assert has == [True, False]  # lead paint for homes was banned in 1978: 16 CFR 1303


def test_the_floor_goes_to_others_at_the_homeowner_s_own_price(chosen: tuple[Chosen, ...], tables: Tables) -> None:
    job = replace(JOB, house=replace(JOB.house, floor_price_sf=Decimal("15.50")))
    floor = built(chosen, tables, job=job).options[1]
    assert floor.all_in - floor.price.total == Decimal("837.00")  # 54 × 15.50 [computed]
    assert any(other.amount is None for other in floor.to_others)


def test_what_is_suspected_is_said_to_be_suspected(chosen: tuple[Chosen, ...], tables: Tables) -> None:
    found = [str(f.text) for f in built(chosen, tables).found]
    assert [("possible" in text) for text in found] == [False, False, False, True]


def test_what_was_not_seen_is_said(chosen: tuple[Chosen, ...], tables: Tables) -> None:
    quote = built(chosen, tables)
    assert [str(s) for s in quote.not_seen] == ["main line: 5 ft not inspected, under the hall."]
    assert "42 ft from" in str(quote.seen[0])


def test_many_alike_findings_are_counted_not_listed(chosen: tuple[Chosen, ...], tables: Tables) -> None:
    line = JOB.lines[0]
    joints = tuple(Finding(id=f"j{i}", kind="gap", stretch=Stretch(i, i)) for i in (2.0, 4.0, 6.0, 8.0))
    many = replace(JOB, lines=(replace(line, findings=joints),))
    assert [str(f.text) for f in built(chosen, tables, job=many).found] == [
        "main line, under the kitchen: an open joint, at 4 places."
    ]
    few = replace(JOB, lines=(replace(line, findings=joints[:3]),))
    assert len(built(chosen, tables, job=few).found) == 3


def test_old_pipe_that_stays_is_named(chosen: tuple[Chosen, ...], tables: Tables) -> None:
    assert [str(s) for s in built(chosen, tables).options[0].stays_old] == [
        "main line: 18 ft.",
        "Branch drains past the new fittings.",
    ]


def test_the_water_test_promises_only_what_is_new(chosen: tuple[Chosen, ...], tables: Tables) -> None:
    one = chosen[0]
    options = (one, replace(one, old_pipe_left_ft=0.0))
    assert [o.water_test for o in built(options, tables).options] == ["only this part", "yes"]


def with_method(one: Chosen, method: str) -> Chosen:
    repair = replace(one.scope.repairs[0], method=method)
    return replace(one, scope=replace(one.scope, repairs=(repair,)))


@pytest.mark.parametrize(
    ("method", "promise"), [("clean", "not promised"), ("reline", "only this part"), ("trench", "only this part")]
)
def test_the_water_test_promise_of_each_way(
    chosen: tuple[Chosen, ...], tables: Tables, method: str, promise: str
) -> None:
    assert built((with_method(chosen[0], method),), tables).options[0].water_test == promise


@pytest.mark.parametrize(
    ("effect", "fixed"), [(Effect.NO_FIXED_PRICE, False), (Effect.UNTIL_APPROVED, False), (Effect.CAUTION, True)]
)
@pytest.mark.parametrize("overruled", ["", "seen with my own eyes"])
def test_a_rule_that_says_no_fixed_price_is_told_unless_overruled(
    chosen: tuple[Chosen, ...], tables: Tables, effect: Effect, fixed: bool, overruled: str
) -> None:
    repair = chosen[0].scope.repairs[0]
    verdict = Verdict(
        rule="r",
        effect=effect,
        method="tunnel",
        line="main",
        stretch=repair.stretch,
        homeowner=Say("Depth is not known."),
        estimator=Say("x"),
        overruled=overruled,
    )
    one = replace(chosen[0], scope=replace(chosen[0].scope, repairs=(replace(repair, verdicts=(verdict,)),)))
    option = built((one,), tables).options[0]
    assert option.fixed == (fixed or bool(overruled))
    assert (verdict.homeowner in option.cautions) == (effect is Effect.CAUTION and not overruled)


@pytest.mark.parametrize(("where", "fixed"), [(Stretch(28, 40), False), (Stretch(29.5, 40), True), (None, False)])
def test_an_open_question_on_the_pipe_of_an_option_keeps_its_price_from_being_fixed(
    chosen: tuple[Chosen, ...], tables: Tables, where: Stretch | None, fixed: bool
) -> None:
    question = Question(about=Say("Is it live?"), line="main", stretch=where, not_fixed=Say("We look again first."))
    option = built((chosen[0],), tables, diagnosis=Diagnosis(needs=DIAGNOSIS.needs, questions=(question,))).options[0]
    assert option.fixed is fixed
    assert option.not_fixed_because == (
        () if fixed else (Say("We look again first."),)
    )  # what is told, not what is asked


def test_one_reason_for_several_ways_is_told_once(chosen: tuple[Chosen, ...], tables: Tables) -> None:
    lining = example_quote().blocked[0]
    same = [replace(lining, method=way) for way in ("reline", "sectional liner", "burst")]
    other = replace(lining, method="trench", homeowner=Say.of("The bore is full."))
    quote = built(chosen, tables, blocked=(*same, other))
    told = [(group.methods, str(group.text)) for group in quote.not_offered]
    assert [methods for methods, _ in told] == [("reline", "sectional liner", "burst"), ("trench",)]
    assert told[0][1].count(str(lining.homeowner)) == 1
    assert told[0][1].startswith("lining, pipe bursting: ")


def test_a_way_not_offered_is_named_with_one_reason(chosen: tuple[Chosen, ...], tables: Tables) -> None:
    lining = example_quote().blocked[0]
    tunnel = replace(lining, method="tunnel")
    quote = built(chosen, tables, blocked=(lining, replace(lining, rule="another"), tunnel))
    assert [v.method for v in quote.blocked] == ["reline"]
    assert str(quote.blocked[0].homeowner).startswith("lining: ")


def test_lines_are_numbered_in_the_order_they_are_printed(chosen: tuple[Chosen, ...], tables: Tables) -> None:
    lines = built(chosen, tables).options[0].price.lines
    by_number = sorted(lines, key=lambda line: int(line.id[1:]))
    assert [line.work_class for line in by_number] == ["find", "reach", "pipe", "pipe", "pipe", "put back"]
    assert [line.work_item for line in lines] == [line.work_item for line in chosen[0].price.lines]


# ── refusals ──────────────────────────────────────────────────────────────────────────────────────


def test_every_reason_to_refuse_is_shown_at_once(chosen: tuple[Chosen, ...], tables: Tables) -> None:
    lapsed = tables.with_settings({"firm_licence_until": "2026-11-17", "firm_insurance_until": "soon"})
    job = replace(JOB, demo=False, customer=replace(JOB.customer, name="bell\x07"))
    of_a_report = {"quote/nothing-seen", "quote/asked-back"}  # asked of a house with nothing to repair alone
    assert sorted(refused((), lapsed, job=job)) == sorted(
        kind.code for kind in PROBLEMS if kind.code not in of_a_report
    )


def test_the_invented_place_serves_a_demo_only(chosen: tuple[Chosen, ...], tables: Tables) -> None:
    assert refused(chosen, tables, job=replace(JOB, demo=False)) == ["quote/demo-place"]
    real = replace(JOB, demo=False, house=replace(JOB.house, jurisdiction="unknown"))
    assert built(chosen, tables, job=real).options


@pytest.mark.parametrize("key", ["firm_licence_until", "firm_insurance_until", "firm_bond_until"])
def test_a_paper_holds_on_its_last_day_and_not_a_day_longer(
    chosen: tuple[Chosen, ...], tables: Tables, key: str
) -> None:
    assert built(chosen, tables.with_settings({key: "2026-11-18"}), day=DAY)
    assert refused(chosen, tables.with_settings({key: "2026-11-17"}), day=DAY) == ["quote/paper-lapsed"]


def test_a_revision_on_older_prices_holds_as_long_as_those_and_its_licence_is_of_its_own_day(
    chosen: tuple[Chosen, ...], tables: Tables
) -> None:
    later = DAY + timedelta(days=20)
    quote = built(chosen, tables, day=later)
    assert (quote.day, quote.price_day, quote.valid_until) == (later, DAY, built(chosen, tables).valid_until)
    ended = next(r for r in tables.settings if r.key == "firm_licence_until")
    rows = {**tables.rows}
    others = tuple(r for r in rows["settings"] if getattr(r, "key", "") != ended.key)
    old = replace(ended, value="2026-11-30", starts=date(2026, 1, 1))
    renewed = replace(ended, value="2027-11-30", starts=date(2026, 12, 1))
    rows["settings"] = (*others, old, renewed)
    assert built(chosen, replace(tables, rows=rows), day=later)
    rows["settings"] = (*others, old)
    assert refused(chosen, replace(tables, rows=rows), day=later) == ["quote/paper-lapsed"]


def test_only_the_bond_may_have_no_day(chosen: tuple[Chosen, ...], tables: Tables) -> None:
    assert built(chosen, tables.with_settings({"firm_bond_until": ""}))
    assert refused(chosen, tables.with_settings({"firm_licence_until": ""})) == ["quote/paper-day"]


def test_facts_of_the_house_reach_the_terms() -> None:
    one_bath = replace(JOB, house=replace(JOB.house, bathrooms=1, sewer="septic"))
    assert {"one_bathroom", "septic", "lived_in"} <= facts(one_bath, ())
    assert "one_bathroom" not in facts(replace(JOB, house=replace(JOB.house, bathrooms=2)), ())


@pytest.mark.parametrize(
    ("when", "known", "counts"),
    [
        ((), (), True),
        (("a",), ("a",), True),
        (("a",), (), False),
        (("not a",), (), True),
        (("not a",), ("a",), False),
        (("a", "not b"), ("a", "b"), False),
    ],
)
def test_when_a_row_counts(when: tuple[str, ...], known: tuple[str, ...], counts: bool) -> None:
    assert holds(when, set(known)) is counts


# ── what is promised only where it is in the price ────────────────────────────────────────────────


def without_tests(one: Chosen) -> Chosen:
    """The same work with no water test in it."""
    bare = (replace(t, quantities=tuple(q for q in t.quantities if q.name != "tests")) for t in one.takeoffs)
    return replace(one, takeoffs=tuple(bare))


def test_a_water_test_is_promised_only_where_one_is_in_the_price(chosen: tuple[Chosen, ...], tables: Tables) -> None:
    with_one, without = (built((one,), tables).options[0] for one in (chosen[0], without_tests(chosen[0])))
    assert with_one.water_test != "not promised" and without.water_test == "not promised"
    letters = [Letter(built((one,), tables), "en_US") for one in (chosen[0], without_tests(chosen[0]))]
    words = "Water test reading"
    assert [words in received(letter, letter.quote.options[0]) for letter in letters] == [True, False]


@pytest.mark.parametrize(
    ("fact", "words"),
    [("septic_permit", "health department"), ("street_permit", "street permit"), ("asbestos_check", "asbestos"), ("lead_safe", "Lead-safe")],
)  # fmt: skip
def test_a_paper_that_a_rule_asks_for_is_among_those_needed(
    chosen: tuple[Chosen, ...], tables: Tables, fact: str, words: str
) -> None:
    first, *rest = chosen[0].takeoffs
    asked = replace(chosen[0], takeoffs=(replace(first, facts=first.facts | {fact}), *rest))
    plain, needed = (" ".join(map(str, built((one,), tables).options[0].needs_papers)) for one in (chosen[0], asked))
    assert words.lower() in needed.lower() and words.lower() not in plain.lower()


def need(*kinds: str, line: str = "main") -> Need:
    return replace(DIAGNOSIS.needs[0], kinds=kinds, line=line)


def test_what_cleaning_does_is_told_by_what_is_wrong() -> None:
    said = {kind: str(if_cleaned([need(kind)])) for kind in ("roots", "sag", "channel", "collapse", "utility")}
    assert [kind for kind, text in said.items() if "oots come back" in text] == ["roots"]
    assert "flows" not in said["collapse"] and "Never clean" in said["utility"]
    assert if_cleaned([]) is None


def test_pipe_that_hangs_in_a_crawl_space_washes_no_soil_away() -> None:
    marks = (Mark(word="crawl", stretch=Stretch(0.0, 0.0), holds=True),)
    hung = replace(JOB, lines=(replace(JOB.lines[0], marks=marks),))
    assert "soil" in str(if_nothing([need("hole")], JOB))
    assert "soil" not in str(if_nothing([need("hole")], hung)) and "drips" in str(if_nothing([need("hole")], hung))


def test_roots_at_an_opening_are_roots_first() -> None:
    assert "roots" in str(if_nothing([need("roots", "opening")])) and "soil" in str(if_nothing([need("hole", "roots")]))


def test_nobody_is_told_of_a_cover_where_nothing_is_uncovered(chosen: tuple[Chosen, ...], tables: Tables) -> None:
    permit = Quantity(name="permits", value=1, unit="each")
    first, *rest = chosen[0].takeoffs
    dug = (replace(first, quantities=(*first.quantities, permit)), *rest)
    lined = (replace(first, quantities=(permit,)), *rest)
    papers = [str(built((replace(chosen[0], takeoffs=t),), tables).options[0].needs_papers[0]) for t in (dug, lined)]
    assert ["before we cover" in text for text in papers] == [True, False]


def test_the_lines_a_place_wants_on_the_first_page_hold_for_the_whole_quote(
    chosen: tuple[Chosen, ...], tables: Tables
) -> None:
    there = replace(JOB, house=replace(JOB.house, jurisdiction="texas lump sum"))
    first = [n for n in built(chosen, tables, job=there).notices if n.kind == "first page"]
    assert len(first) == 1 and "Board of Plumbing Examiners" in first[0].text_en
    assert not [n for n in built(chosen, tables).notices if n.kind == "first page"]


def test_a_first_page_line_of_one_way_of_repair_comes_only_with_it(chosen: tuple[Chosen, ...], tables: Tables) -> None:
    def with_line(method: str) -> list[str]:
        row = replace(tables.terms[0], id="own", kind="first page", methods=(method,), when=(), text_en="Own line.")
        own = replace(tables, rows={**tables.rows, "terms": (*tables.rows["terms"], row)})
        return [n.text_en for n in built(chosen, own).notices if n.kind == "first page"]

    assert with_line("tunnel") == ["Own line."]
    assert with_line("burst") == []


def test_pipe_under_heavy_scale_was_filmed_and_not_seen(chosen: tuple[Chosen, ...], tables: Tables) -> None:
    """That nothing was seen under scale proves nothing (common practice)."""
    line = JOB.lines[0]
    evidence = Evidence(
        rule="scale-hides", line=line.name, stretch=Stretch(1.0, 9.0), findings=(), meaning=Say.of("hidden")
    )
    told = built(chosen, tables, diagnosis=replace(DIAGNOSIS, evidence=(evidence,))).not_seen
    plain = built(chosen, tables, diagnosis=replace(DIAGNOSIS, evidence=())).not_seen
    assert len(told) == len(plain) + 1
    assert "heavy scale hides part of the wall" in str(told[-1])
