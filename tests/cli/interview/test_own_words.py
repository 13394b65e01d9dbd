"""Words that a firm teaches: shown with each line, undone with the line that taught them, never a danger."""

import tomllib
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from estimator.cli.interview import log_interview
from estimator.cli.interview.answering import answer_all
from estimator.cli.interview.job_file import JobFile
from estimator.cli.interview.own_words import NAME, FirmWords, explanations, firm_words, holds, unused, why_not
from estimator.cli.interview.steps import Step
from estimator.fieldnotes import read_job
from estimator.fieldnotes.questions import SECTIONS

JOB = '[job]\nnumber = "1"\n[house]\nfloor = "slab"\n[[line]]\nname = "main"\nsize = "4 in"\npipe = "clay"\n'
PASS = "pass front cleanout to house, surface"


@pytest.fixture
def log(tmp_path, typist):
    """Types lines into the log of a job named so; what was said, and the log as it stands."""

    def typed(*lines: str, job: str = "a") -> tuple[list[str], list[str]]:
        path = tmp_path / job / "job.toml"
        path.parent.mkdir(exist_ok=True)
        if not path.exists():
            path.write_text(JOB, encoding="utf-8")
        section = next(s for s in SECTIONS if s.table == "line")
        person = typist(lines)
        log_interview.run(JobFile(path), Step(section, 0, section.questions[0]), person, FirmWords(tmp_path / NAME))
        file = path.parent / "main.txt"
        return person.told, file.read_text("utf-8").splitlines() if file.exists() else []

    return typed


def known(folder: Path) -> dict[str, str]:
    return {word: means for word, (means, _) in FirmWords(folder / NAME).known().items()}


def test_a_word_is_taught_where_it_is_asked_and_read_in_the_next_job(log, tmp_path):
    told, rows = log(PASS, "0 slab", "12 splodge 20%", "splodge = sag")
    assert rows == [PASS, "0 slab", "splodge = sag", "12 splodge 20%"]
    assert known(tmp_path) == {"splodge": "sag"}
    assert any("kept for your firm" in line for line in told)
    told, rows = log(PASS, "0 slab", "15 splodge 40%", job="b")
    assert rows == [PASS, "0 slab", "splodge = sag", "15 splodge 40%"], "the log explains itself"
    assert any("splodge = sag, a word of your firm" in line for line in told)
    line = read_job(tmp_path / "b" / "job.toml").job
    assert line is None or [f.kind for f in line.lines[0].findings] == ["sag"]


@pytest.mark.parametrize("gone", ["undo", "strike 4", "change 4 12 roots 20%", "scratch that"])
def test_it_is_forgotten_with_the_line_that_taught_it(log, tmp_path, gone):
    told, rows = log(PASS, "0 slab", "12 splodge 20%", "splodge = sag", gone, *(["undo"] if gone == "undo" else []))
    assert known(tmp_path) == {}, rows
    if gone != "scratch that":
        assert "splodge = sag" not in rows
    assert any("forgotten" in line for line in told)


def test_a_word_that_another_job_taught_outlives_a_line_that_uses_it(log, tmp_path):
    log(PASS, "0 slab", "12 splodge 20%", "splodge = sag")
    _, rows = log(PASS, "0 slab", "15 splodge 40%", "strike 4", job="b")
    assert rows[-1] == "# struck: 15 splodge 40%"
    assert known(tmp_path) == {"splodge": "sag"}


def test_a_danger_is_refused_and_the_question_stays(log, tmp_path):
    told, rows = log(PASS, "0 slab", "12 splodge", "splodge = gas line", "-")
    assert known(tmp_path) == {}
    assert any("danger" in line for line in told)
    assert rows[-1] == "# 12 splodge"


@pytest.mark.parametrize(
    "word", ["gas", "gaz", "yellow pipe", "tendon", "cant pass", "live", "dead", "cross bore", "wire"]
)
def test_no_word_of_danger_is_taught_either_way(word):
    """*Common practice*: what may be gas, a cable or a tendon is told each time in full."""
    assert why_not(word, "roots") is not None
    assert why_not("splodge", word) is not None


@given(st.text(max_size=24), st.sampled_from(["sag", "roots", "hole", "gas", "live", "tendon"]))
def test_any_word_is_taught_or_refused_and_the_lexicon_keeps_its_own(word, means):
    from estimator.fieldnotes.lexicon import lexicon

    key = tuple(word.lower().replace("'", "").split())
    if why_not(word, means) is None:
        assert not lexicon().guarded(key)
        assert means in ("sag", "roots", "hole")


WORD = st.from_regex(r"[a-z]{3,9}", fullmatch=True)


@given(st.dictionaries(WORD, st.sampled_from(["sag", "roots", "hole"]), max_size=6), st.data())
def test_what_is_taught_is_there_and_what_is_forgotten_is_gone(tmp_path_factory, words, data):
    file = tmp_path_factory.mktemp("firm") / NAME
    firm = FirmWords(file)
    wanted = {word: means for word, means in words.items() if why_not(word, means) is None}
    for word, means in wanted.items():
        firm.teach(word, means, "here")
    assert {w: m for w, (m, _) in FirmWords(file).known().items()} == wanted
    if wanted:
        gone = data.draw(st.sampled_from(sorted(wanted)))
        assert not firm.forget(gone, "elsewhere")
        assert firm.forget(gone, "here")
        assert set(FirmWords(file).known()) == set(wanted) - {gone}
        assert tomllib.loads(file.read_text("utf-8")).keys() == set(wanted) - {gone}


@given(
    st.lists(
        st.sampled_from(["splodge = sag", "12 splodge", "# 12 splodge", "13 roots ; splodge", "0 slab"]), max_size=6
    )
)
def test_an_explanation_is_unused_when_no_other_line_says_its_word(rows):
    uses = [row for row in rows if "=" not in row and holds(row, "splodge")]
    explained = [n for word, n in explanations(rows) if word == "splodge"]
    found = [n for _, n in unused(rows, ("splodge",))]
    assert found == ([] if uses or len(explained) > 1 else explained)


def test_a_file_that_somebody_broke_or_filled_with_dangers_teaches_nothing(tmp_path):
    file = tmp_path / NAME
    file.write_text('splodge = "sag"\n"yellow line" = "hole"\nzotz = "gas"\n', encoding="utf-8")
    assert known(tmp_path) == {"splodge": "sag"}
    file.write_text("= broken", encoding="utf-8")
    assert known(tmp_path) == {}


def test_check_offers_the_word_and_takes_it_only_for_a_yes(tmp_path, typist):
    FirmWords(tmp_path / NAME).teach("splodge", "sag", "elsewhere")
    (tmp_path / "job.toml").write_text(JOB + 'log = "main.txt"\n', encoding="utf-8")
    log = tmp_path / "main.txt"
    log.write_text(f"{PASS}\n0 slab\n12 splodge 20%\n14 splodge 30%\n", encoding="utf-8")
    answer_all(tmp_path / "job.toml", typist(["", "", ""]), FirmWords(tmp_path / NAME))
    assert "=" not in log.read_text("utf-8")
    answer_all(tmp_path / "job.toml", typist(["yes"]), FirmWords(tmp_path / NAME))
    assert log.read_text("utf-8").splitlines()[2:] == ["splodge = sag", "12 splodge 20%", "14 splodge 30%"]


def test_the_words_are_beside_the_tables_of_the_firm_or_the_settings_of_the_user(tmp_path, monkeypatch):
    monkeypatch.delenv("ESTIMATOR_TABLES", raising=False)
    monkeypatch.setenv("ESTIMATOR_SETTINGS", str(tmp_path / "own" / "settings.toml"))
    assert firm_words(None).path == tmp_path / "own" / NAME
    assert firm_words(tmp_path).path == tmp_path / NAME
    assert firm_words(tmp_path / "prices.xlsx").path == tmp_path / NAME
