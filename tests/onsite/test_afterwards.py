"""What comes after the work: ends of warranties, callbacks per way of repair, a failed inspection, the record sheet."""

import json
import random
from datetime import date, timedelta
from decimal import Decimal
from pathlib import Path

import pytest
from dateutil.relativedelta import relativedelta
from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import binomtest
from typer.testing import CliRunner, Result

from estimator import demo
from estimator.cli.app import build
from estimator.cli.priced_job import priced
from estimator.fieldnotes import read_job
from estimator.fieldnotes.afterwards import read_afterwards
from estimator.model.afterwards import Callback
from estimator.model.problem import CannotGoOn
from estimator.onsite.callbacks import DoneJob, counted, share_band
from estimator.onsite.failed_inspection import failed_inspection
from estimator.onsite.warranty import last_day, looks_due, months_later
from estimator.records.revisions import newest

NOTES = Path(demo.__file__).parent
DAYS = st.dates(date(2020, 1, 1), date(2060, 12, 31))


@given(DAYS, st.integers(-24, 300))
def test_months_are_those_of_dateutil(day: date, months: int) -> None:
    assert months_later(day, months) == day + relativedelta(months=months)


@given(DAYS, st.integers(1, 25))
def test_a_warranty_ends_on_the_same_day_of_a_later_year(day: date, years: int) -> None:
    assert last_day(f"{years} years on the new pipe", day) == day + relativedelta(years=years)
    assert last_day(f"{years} days against the same stoppage", day) == day + timedelta(days=years)


def test_every_warranty_of_the_demo_begins_with_its_term_or_promises_nothing() -> None:
    tables = priced(NOTES / "job.toml", None).tables
    ends = {row.method: last_day(row.warranty_en, date(2027, 1, 1)) for row in tables.current("methods")}  # type: ignore[attr-defined]
    without = {name for name, end in ends.items() if end is None}
    assert without == {"isolation test", "look and see", "visit", "job"}


def test_a_look_before_a_warranty_ends_by_hand() -> None:
    """Done in December 2026, seen in January 2028, warranted to December 2028: again in January 2029, and in November 2028."""
    due = looks_due(date(2026, 12, 1), [date(2028, 1, 10)], [date(2028, 12, 1)], 12)
    assert due == (date(2028, 11, 1), date(2029, 1, 10))


@pytest.mark.parametrize(("hits", "of"), [(0, 1), (0, 12), (1, 10), (7, 9), (12, 12), (40, 500)])
def test_the_band_of_a_share_is_scipys(hits: int, of: int) -> None:
    """Source: E. B. Wilson (1927); SciPy's binomtest, method wilson, at 90 %."""
    found = binomtest(hits, of).proportion_ci(0.9, method="wilson")
    assert share_band(hits, of) == pytest.approx((found.low, found.high), abs=1e-4)


def test_the_true_share_lies_in_its_band_nine_times_of_ten() -> None:
    """A way of repair that is called back on 2 to 30 % of its jobs, forty jobs of it; a thousand fresh draws."""
    draw, inside = random.Random(), 0
    for _ in range(1000):
        true = draw.uniform(0.02, 0.3)
        low, high = share_band(sum(draw.random() < true for _ in range(40)), 40)
        inside += low <= true <= high
    assert inside >= 0.86 * 1000  # nine of ten less four standard deviations of a thousand draws


def test_a_share_of_nothing_is_refused() -> None:
    with pytest.raises(ValueError, match="at least one"):
        share_band(0, 0)


def call(method: str, cause: str, cost: int) -> Callback:
    return Callback(on=date(2027, 3, 1), method=method, cause=cause, cost=Decimal(cost))  # type: ignore[arg-type]


def test_callbacks_are_counted_by_hand() -> None:
    """Three jobs; the tunnel called back twice on one of them, once through us; one blamed a trench that was not sold."""
    jobs = [
        DoneJob(frozenset({"tunnel", "reroute"}), (call("tunnel", "our work", 400), call("tunnel", "use", 90))),
        DoneJob(frozenset({"tunnel"}), ()),
        DoneJob(frozenset({"reline"}), (call("trench", "our material", 50),)),
    ]
    found = {c.method: (c.jobs, c.called_back, c.calls, c.ours, c.cost) for c in counted(jobs)}
    assert found == {
        "tunnel": (2, 1, 2, 1, Decimal(490)),
        "trench": (1, 1, 1, 1, Decimal(50)),
        "reline": (1, 0, 0, 0, Decimal(0)),
        "reroute": (1, 0, 0, 0, Decimal(0)),
    }


HOUSES = Path(__file__).parents[1] / "cases" / "houses"


@pytest.mark.parametrize(
    ("job", "way", "rent"),
    [
        (NOTES, "tunnel", 0),
        (HOUSES / "water-in-a-four-foot-trench", "yard spot", 150 + 140 + 2 * 45),
        (HOUSES / "twenty-feet-and-a-half", "yard spot", 0),
        (HOUSES / "bursting-five-feet-from-gas", "burst", 320 + 6 * 140 + 8 * 45),
    ],
)
def test_a_failed_inspection_by_hand(job: Path, way: str, rent: int) -> None:
    """The plumbing crew's half day, the city's $75, and rent where the day that is added passes what is paid (a week costs 3 days).

    The demo's digger is away while the inspector comes. In the wet trench a box and two shields stand from day 1 to 2, then to 3: one
    day more each; the digger is fetched and brought again, 150, less than a day to stand. Three boxes from day 1 to 3 are paid for
    the week, so the fourth day is free. From day 1 to 5, a week, to day 6: a day of digger, six boxes and eight shields.
    """
    run = priced(job / "job.toml", None)
    option = next(o for o in run.quote.options if any(t.repair.method == way for t in o.takeoffs))
    found = failed_inspection(option, run.tables)
    assert found is not None
    rate = next(c.rate for c in option.price.crews if c.crew == "plumbing")
    assert found.cost == 4 * rate + rent + 75
    assert [(before + found.days, after) for _, before, after in found.moved] == [
        (after, after) for *_, after in found.moved
    ]
    assert found.moved[-1][1] == next(m.day for m in option.schedule.marks if m.name == "done")


def run(*words: object) -> Result:
    texts = [str(word) for word in words]
    return CliRunner().invoke(build(texts), texts, env={"COLUMNS": "80"})


AFTER = """
[[laid]]
line = "main"
from = -2
to = 20.3
size = "4 in"
pipe = "PVC"

[[level]]
line = "main"
at = 20.3
bottom = "27 in"

[[level]]
line = "main"
at = -2
bottom = "29 13/16 in"

[[test]]
what = "new pipe"
on = 2026-11-26
result = "passed"

[[test]]
what = "under slab"
on = 2027-01-20
result = "passed"
after_lift = true

[[inspection]]
on = 2026-11-25
result = "failed"
why = "no bedding at the wye"

[[still]]
file = "tie-in.jpg"
shows = "upper tie-in"

[[callback]]
on = 2027-03-02
method = "tunnel"
cause = "our work"
cost = 185
what = "slow tub"
"""


@pytest.fixture(scope="module", name="sold")
def _sold(issued, tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("after") / "one"
    job = issued(folder)
    revision = newest(folder / "job")
    assert revision is not None
    options = revision.record().data["quote"]["options"]
    letter = next(o["letter"] for o in options if any(t["repair"]["method"] == "tunnel" for t in o["takeoffs"]))
    assert run("quote", job, "--accepted", letter, "--on", "2026-11-20").exit_code == 0
    assert run("quote", job, "--done", "--on", "2026-11-27").exit_code == 0
    (folder / "job-after.toml").write_text(AFTER, encoding="utf-8")
    return job


def test_the_record_says_what_lies_when_warranties_end_and_what_is_missing(sold: Path) -> None:
    done = run("site", sold, "record", "--json")
    assert done.exit_code == 0, done.output
    assert "tie-in.jpg" in done.stderr  # it is named, and nobody has put it there
    sheet = json.loads(done.stdout)
    blocks = {b["heading"]: b for b in sheet["blocks"]}
    assert "January 20, 2028" in sheet["answer"]  # a year after the test that begins the warranty
    assert [row[3] for row in blocks["As built"]["rows"]] == ["as planned"]
    assert blocks["Levels as built"]["rows"][0][3] == "⅛ in"  # 2 13/16 in in 22.3 ft: 0.126 in a foot, by hand
    ends = {row[0]: row[3] for row in blocks["Warranties"]["rows"]}
    assert ends["tunnel"] == "January 20, 2032"
    lacking = " ".join(blocks["Still missing from this record"]["lines"])
    assert "line yard" in lacking
    assert "inspector" in lacking
    assert "line main" not in lacking


def test_the_record_fits_a_terminal_and_is_said_in_spanish(sold: Path) -> None:
    for language in ("en_US", "es_US"):
        shown = run("site", sold, "record", "--language", language)
        assert shown.exit_code == 0, shown.output
        assert max(map(len, shown.stdout.splitlines())) <= 80
    assert "Garantías" in shown.stdout


def test_callbacks_over_a_folder(sold: Path, tmp_path: Path) -> None:
    done = run("site", sold.parent, "callbacks", "--json", "--out", tmp_path / "calls.xlsx")
    assert done.exit_code == 0, done.output
    rows = json.loads(done.stdout)["blocks"][0]["rows"]
    assert rows[0][:3] == ["tunnel", "1", "1"]
    assert rows[0][-1] == "$185"
    assert (tmp_path / "calls.xlsx").exists()


@pytest.mark.parametrize(
    ("wrong", "said"),
    [
        ('[[laid]]\nline = "mian"\nfrom = 1\nto = 2\nsize = 4\npipe = "PVC"', "no line mian"),
        ('[[callback]]\non = 2027-01-01\nmethod = "tunel"\ncause = "use"', "Did you mean “tunnel”"),
        ('[[callback]]\non = 2027-01-01\nmethod = "tunnel"\ncause = "bad luck"', "our work"),
        ("[[lade]]\n", "laid, level, test"),
        ("[[laid]\n", "cannot be read"),
    ],
)
def test_a_mistake_in_the_file_is_named_and_nothing_is_shown(tmp_path: Path, wrong: str, said: str) -> None:
    job = read_job(NOTES / "job.toml").job
    assert job is not None
    (tmp_path / "job-after.toml").write_text(wrong, encoding="utf-8")
    with pytest.raises(CannotGoOn) as stop:
        read_afterwards(tmp_path / "job.toml", job)
    assert said in " ".join(f"{p.wrong} {p.write}" for p in stop.value.problems)


def test_the_example_in_the_docs_is_read(tmp_path: Path) -> None:
    job = read_job(NOTES / "job.toml").job
    page = (Path(__file__).parents[2] / "docs" / "afterwards.md").read_text(encoding="utf-8")
    assert job is not None
    (tmp_path / "job-after.toml").write_text(
        "".join(p.split("```")[0] for p in page.split("```toml")[1:]), encoding="utf-8"
    )
    after = read_afterwards(tmp_path / "job.toml", job)
    assert after.laid and after.levels and after.tests and after.inspections and after.stills and after.callbacks
    assert after.lifts and after.lift_levels
