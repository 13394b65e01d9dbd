"""Whatever is typed, the interview goes on and the file stays good TOML that `check` can read to the end."""

import tomllib

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from estimator.fieldnotes import read_job

WORDS = st.sampled_from(
    ["", "", "", "yes", "no", "back", "undo", "list", "?", "go line", "go log", "go house", "go tests", "go xyz", "skip", "-", "main", "4", "ci",
     "slab", "city", "all", "main at 5", "2 baths", "11/16", "demo", "hall: wall 12", "planned 2027-01", "5:3/8", "4, 4",
     "pass vent, with flow, surface", "5 roots 30%", "7 murk 3in", "sag", "same", "done", "a \"b\" \\ '''", "[job]", "#", "=", "x" * 600]
)  # fmt: skip


@settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(
    st.lists(st.one_of(WORDS, st.text(max_size=30)), max_size=25),
    st.sampled_from(["", "line.0.name", "water_test.0.section", "reroute.0.name", "house.fixtures"]),
)
def test_any_answers_leave_a_file_that_reads(tmp_path_factory, interview, answers, at):
    path = tmp_path_factory.mktemp("any") / "job.toml"
    job, _ = interview(path, answers, at=at)
    if path.exists():
        assert tomllib.loads(path.read_text("utf-8")) == job.data
        assert {p.code for p in read_job(path).problems}.isdisjoint(
            {"job/toml", "job/unknown-key", "job/value", "job/length", "job/choice"}
        )
