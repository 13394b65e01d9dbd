"""`estimator quote --with`: what a homeowner chose becomes the next revision, stays chosen, and can be taken out again."""

import json
import shutil
from decimal import Decimal
from pathlib import Path

import pytest
from typer.testing import CliRunner, Result

from estimator import demo
from estimator.cli.app import build

NOTES = Path(demo.__file__).parent


def run(*words: object) -> Result:
    texts = [str(word) for word in words]
    return CliRunner().invoke(build(texts), texts, env={"COLUMNS": "120"})


@pytest.fixture(name="job", scope="module")
def _job(issued, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The demo: r1 as it is, r2 with a cleanout and a drawing, r3 without."""
    job = issued(tmp_path_factory.mktemp("house"))
    for words in (("--with", "cleanout,drain-plan"), ("--with", "none")):
        done = run("quote", job, "--on", "2026-11-18", *words)
        assert done.exit_code == 0, done.output
    return job


def record(job: Path, number: int) -> dict:
    return json.loads(next((job.with_suffix("") / f"r{number}").rglob("Record*.json")).read_text("utf-8"))


def totals(job: Path, number: int) -> dict[str, Decimal]:
    return {o["letter"]: Decimal(o["price"]["total"]) for o in record(job, number)["quote"]["options"]}


def test_each_choice_is_a_revision_and_the_one_without_says_what_the_first_said(job: Path) -> None:
    first, second, third = (totals(job, n) for n in (1, 2, 3))
    assert first == third
    for option in record(job, 2)["quote"]["options"]:
        chosen = [a for a in option["add_ons"] if a["chosen"]]
        assert {a["code"] for a in chosen} <= {"cleanout", "drain-plan"}
        added = sum((Decimal(a["amount"]) + Decimal(a["tax"]) for a in chosen), Decimal(0))
        assert second[option["letter"]] == first[option["letter"]] + added > first[option["letter"]]


def test_without_a_word_on_add_ons_the_last_choice_stands(job: Path, tmp_path: Path) -> None:
    folder = tmp_path / "house"
    shutil.copytree(job.parent, folder)
    shutil.rmtree(folder / "job" / "r3")
    done = run("quote", folder / "job.toml", "--on", "2026-11-18")
    assert "Nothing changed since r2" in done.output
    assert "With the add-ons chosen:" in done.output
    seen = run("options", folder / "job.toml", "--on", "2026-11-18", "--json").stdout
    assert {o["letter"]: Decimal(o["price"]["total"]) for o in json.loads(seen)["options"]} == totals(job, 2)


def test_it_is_made_again_to_the_byte(job: Path) -> None:
    done = run("quote", job, "--again", "r2")
    assert "byte for byte" in done.output
    shutil.rmtree(job.with_suffix("") / "r2 again")


def test_what_was_chosen_can_be_accepted_and_its_money_is_owed(job: Path, tmp_path: Path) -> None:
    folder = tmp_path / "house"
    shutil.copytree(job.parent, folder)
    done = run("quote", folder / "job.toml", "--accepted", "D", "--revision", "r2", "--on", "2026-11-20")
    assert f"{totals(job, 2)['D']:,.2f}" in done.output
    assert f"{totals(job, 2)['D']:,.2f}" in run("money", folder / "job.toml").output


def test_the_job_file_may_say_it_too_and_none_stands_over_it_until_the_file_wishes_otherwise(
    job: Path, tmp_path: Path
) -> None:
    folder = tmp_path / "house"
    folder.mkdir()
    for name in demo.FILES:
        shutil.copyfile(NOTES / name, folder / name)
    path, text = folder / "job.toml", (NOTES / "job.toml").read_text("utf-8")

    def quoted(wishes: str, *words: str) -> dict[str, Decimal]:
        path.write_text(text.replace("[wishes]\n", f"[wishes]\nadd_ons = {wishes}\n"), "utf-8")
        assert run("quote", path, "--on", "2026-11-18", *words).exit_code == 0
        return totals(path, len(list((folder / "job").glob("r?"))))

    both, neither = totals(job, 2), totals(job, 1)
    assert quoted('["cleanout", "drain-plan"]') == both
    assert quoted('["cleanout", "drain-plan"]', "--with", "none") == neither
    assert quoted('["cleanout", "drain-plan"]') == neither
    assert quoted('["drain-plan", "cleanout"]') == both


def test_one_option_may_have_what_the_others_have_not(job: Path, tmp_path: Path) -> None:
    folder = tmp_path / "house"
    shutil.copytree(job.parent, folder)
    assert run("quote", folder / "job.toml", "--on", "2026-11-18", "--with", "c:backwater-valve").exit_code == 0
    first, now = totals(job, 1), totals(folder / "job.toml", 4)
    assert now["C"] == first["C"] + 550
    assert {letter: total for letter, total in now.items() if letter != "C"} == {
        k: v for k, v in first.items() if k != "C"
    }


@pytest.mark.parametrize("words", ["", "none,cleanout", " , "])
def test_a_choice_that_says_nothing_or_two_things_is_asked_back(job: Path, words: str) -> None:
    done = run("quote", job, "--with", words)
    assert done.exit_code == 2
    assert "or none alone" in " ".join(done.output.split())


def test_a_revision_without_its_record_stops_no_other_command(job: Path, tmp_path: Path) -> None:
    folder = tmp_path / "house"
    shutil.copytree(job.parent, folder)
    (folder / "job" / "r4").mkdir()
    for command in ("options", "explain"):
        words = [command, folder / "job.toml", *(["A1"] if command == "explain" else [])]
        assert run(*words).exit_code == 0


def test_a_short_name_nobody_knows_stops_it_and_writes_nothing(job: Path) -> None:
    done = run("quote", job, "--with", "cleanot")
    assert done.exit_code == 1
    assert "Perhaps “cleanout” is meant" in done.output
    assert not (job.with_suffix("") / "r4").exists()


@pytest.mark.parametrize(("adds", "fine"), [(0, True), (650, True), (400, False)])
def test_a_file_that_came_back_with_marks_is_as_issued_and_says_what_was_marked(
    job: Path, tmp_path: Path, adds: int, fine: bool
) -> None:
    """As a phone saves it, the sum as it was; as an office program does, 250 and 400; any other sum is a change."""
    import openpyxl

    file = next((job.with_suffix("") / "r1" / "to send").glob("Drain quote*.xlsx"))
    sheet = openpyxl.load_workbook(file)["Agreement"]
    cells = [cell for row in sheet.iter_rows() for cell in row]
    codes = ("(drain-plan)", "(film-in-a-year)")
    boxes = [sheet.cell(c.row, 1).coordinate for c in cells if str(c.value).endswith(codes)]
    total = next(c.coordinate for c in cells if "SUMIF" in str(c.value))
    back = tmp_path / file.name
    back.write_bytes(written(file, "Agreement", boxes, total, adds))
    done = run("quote", job, "--verify", back)
    assert (done.exit_code == 0) is fine, done.output
    assert "--with drain-plan,film-in-a-year" in " ".join(done.output.split())


def test_a_yes_in_a_box_is_asked_about_and_not_counted(job: Path, tmp_path: Path) -> None:
    import openpyxl

    file = next((job.with_suffix("") / "r1" / "to send").glob("Drain quote*.xlsx"))
    cells = [cell for row in openpyxl.load_workbook(file)["Agreement"].iter_rows() for cell in row]
    boxes = [f"A{cell.row}" for cell in cells if str(cell.value).endswith("(drain-plan)")]
    total = next(cell.coordinate for cell in cells if "SUMIF" in str(cell.value))
    back = tmp_path / file.name
    back.write_bytes(written(file, "Agreement", boxes, total, 0, "yes please"))
    done = run("quote", job, "--verify", back)
    assert done.exit_code == 0
    assert "Agreement, drain-plan: “yes please” is no x and is not counted" in " ".join(done.output.split())
    assert "--with" not in done.output


def written(file: Path, sheet: str, boxes: list[str], total: str, value: int, mark: str = "x") -> bytes:
    """The file with a mark in each box and another stored value in the cell of the total, all else to the byte."""
    import io
    import re
    import zipfile

    with zipfile.ZipFile(file) as archive:
        parts = {name: archive.read(name) for name in archive.namelist()}
    names = re.findall(r'<sheet [^>]*name="([^"]+)"', parts["xl/workbook.xml"].decode())
    part = f"xl/worksheets/sheet{names.index(sheet) + 1}.xml"
    text = parts[part].decode()
    for box in boxes:
        text, count = re.subn(
            rf'<c r="{box}"( s="\d+")/>', rf'<c r="{box}"\1 t="inlineStr"><is><t>{mark}</t></is></c>', text
        )
        assert count == 1, box
    text, count = re.subn(rf'(<c r="{total}"[^>]*><f>[^<]*</f><v>)[^<]*', rf"\g<1>{value}", text)
    assert count == 1, total
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, data in {**parts, part: text.encode()}.items():
            archive.writestr(name, data)
    return out.getvalue()


def test_explain_tells_how_its_price_came_about(job: Path) -> None:
    said = run("explain", job, "c:backwater-valve").output
    # 1.67 h × 79.20 + 165.00 + 8.25 + 14.29 = 319.80; ÷ 0.60 = 533.00, up to 550 [by hand]
    for figure in ("$132.26", "$165.00", "$8.25", "$14.29", "$533.00", "$550.00"):
        assert figure in said, figure


def test_explain_takes_the_lines_that_stand_as_one_on_paper(job: Path) -> None:
    heads = [
        line[:4] for line in run("explain", job, "A1-3").output.splitlines() if line[:1] == "A" and line[1:2].isdigit()
    ]
    assert heads == ["A1  ", "A2  ", "A3  "]
    assert len(json.loads(run("explain", job, "A1–3", "--json").stdout)["lines"]) == 3
    assert "no line of the quote is called A1-99" in " ".join(run("explain", job, "A1-99").output.split())
