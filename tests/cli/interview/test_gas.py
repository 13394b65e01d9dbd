"""A gas smell told in the interview is answered at once, and again whenever the interview is taken up, until it is cleared."""

from pathlib import Path

from tests.cli.interview.conftest import talked

JOB = '[job]\nnumber = "1"\ndate = 2026-11-18\nprepared_by = "R. Example"\ndemo = true\n[house]\njurisdiction = "demo"\nfloor = "slab"\n'


def told(tmp_path: Path, text: str, *answers: str) -> list[str]:
    path = tmp_path / "job.toml"
    path.write_text(text)
    return talked(path, answers, at="sign.0.what", most=len(answers))[1].told


def test_the_answer_to_a_gas_smell_is_to_leave_and_call_911(tmp_path: Path) -> None:
    said = told(tmp_path, JOB, "gas smell", "kitchen")
    assert any("911" in line and "leave the house" in line for line in said[:3]), said


def test_a_smell_of_the_sewer_is_no_gas(tmp_path: Path) -> None:
    assert not any("911" in line for line in told(tmp_path, JOB, "sewer smell", "kitchen"))


def test_taken_up_again_it_is_said_before_any_question(tmp_path: Path) -> None:
    said = told(tmp_path, JOB + '[[sign]]\nwhat = "rotten egg smell"\n')
    assert "911" in said[0]


def test_once_cleared_it_is_not_said(tmp_path: Path) -> None:
    cleared = '[[sign]]\nwhat = "gas smell"\n[[approval]]\nwhat = "report"\nby = "gas company"\non = 2026-11-18\ncovers = ["gas-smell"]\n'
    assert not any("911" in line for line in told(tmp_path, JOB + cleared))
