"""`tables start`: from an empty folder to a firm's own figures; each answer kept at once, what is skipped stays the demo's."""

import csv
from decimal import Decimal
from pathlib import Path

import pytest
from openpyxl import load_workbook
from typer.testing import CliRunner, Result

from estimator.cli.app import build
from estimator.cli.first_written import left, questions_of
from estimator.tables import demo_folder, read_tables
from estimator.tables.as_workbook import workbook
from estimator.tables.first_answers import answered
from estimator.tables.first_questions import FirstNumber, Question, first_questions, measured
from estimator.tables.invented_rows import FIGURES, own_rows
from estimator.tables.overhead import crew_day_cost
from tests.tables.workbench import DAY, demo, reading

D = Decimal
JOBS = Path(__file__).parents[1] / "jobs"


def start(folder: Path, *answers: str) -> Result:
    words = ["tables", "start", str(folder), "--on", "2026-11-29"]
    return CliRunner().invoke(build(words), words, input="\n".join(answers) + "\n")


def cell(folder: Path, table: str, row: str, column: str) -> str:
    with (folder / f"{table}.csv").open(encoding="utf-8", newline="") as file:
        return next(r[column] for r in csv.DictReader(file) if next(iter(r.values())) == row)


def answers_to(wanted: dict[tuple[str, str, str], list[str]]) -> list[str]:
    """What is typed at each question in its order; Enter where nothing is wanted."""
    return [line for q in first_questions(demo()) for line in wanted.get((q.table, q.row, q.column), [""])]


@pytest.fixture(scope="module", name="begun")
def _begun(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, str]:
    folder = tmp_path_factory.mktemp("own") / "tables"
    wanted = {
        ("settings", "firm_name", "value"): ["Oak Street Plumbing"],
        ("roles", "lead plumber", "wage"): ["4400", "no", "44"],  # a month's wage is asked about and not kept
        ("roles", "", "burden_percent"): ["35"],
        ("crews", "plumbing", "count"): ["two men", "1 lead plumber, 2 helpers"],
        ("settings", "overhead_a_year", "value"): ["$120,000"],
        ("settings", "crew_days_a_year", "value"): ["400"],
        ("settings", "profit_percent", "value"): ["10"],
        ("places", "your city", "text"): ["Elm City"],
        ("places", "your city", "tax_kind"): ["who knows", "whole charge"],
        ("places", "your city", "tax_percent"): ["8.25"],
        ("production", "tunnel dig", "likely"): ["2.3"],
    }
    done = start(folder, "Mara", *answers_to(wanted))
    assert done.exit_code == 0, done.output
    return folder, done.output


def test_there_are_fifty_and_those_on_which_most_hangs_come_first() -> None:
    questions = first_questions(demo())
    assert len(questions) == len(set(questions)) == 50
    for table in (("materials", "equipment", "subs_and_fees"), ("production",)):
        shares = [q.share for q in questions if q.table in table and q.share]
        assert shares == sorted(shares, reverse=True) and len(shares) >= 10
    assert sum(n.share for n in measured() if n.table == "production") > 20  # labor is a good part of every job


def test_what_was_typed_stands_in_the_tables_signed_and_dated_and_they_can_be_used(begun: tuple[Path, str]) -> None:
    folder, _ = begun
    assert cell(folder, "settings", "firm_name", "value") == "Oak Street Plumbing"
    assert (cell(folder, "roles", "lead plumber", "wage"), cell(folder, "roles", "lead plumber", "burden_percent")) == (
        "44",
        "35",
    )
    assert (
        cell(folder, "roles", "lead plumber", "changed_by"),
        cell(folder, "roles", "lead plumber", "changed_on"),
    ) == ("Mara", "2026-11-29")
    assert [cell(folder, "production", "tunnel dig", c) for c in ("low", "likely", "high")] == [
        "1.8",
        "2.3",
        "3.8",
    ]  # twice 0.9, 1.15, 1.9
    place = reading(folder, DAY).tables.place("elm city")
    assert (place.text, place.tax_kind, place.tax_percent) == ("Elm City", "whole charge", D("8.25"))


def test_what_was_left_or_could_not_be_read_stays_the_demos(begun: tuple[Path, str]) -> None:
    folder, said = begun
    assert cell(folder, "roles", "helper", "burden_percent") == "32"  # its wage is invented still, and so is the row
    tables = reading(folder, DAY).tables
    assert tables is not None
    assert {row for table, row in own_rows(tables) if table == "roles"} == {"lead plumber"}
    assert "Write how many and who" in said and "tax_kind is “who knows”" in said
    assert 'jurisdiction = "elm city"' in said


def test_begun_tables_are_gone_on_with_and_what_is_the_firms_is_not_asked_again(begun: tuple[Path, str]) -> None:
    folder, _ = begun
    again = start(folder, "Mara", "done")
    assert again.exit_code == 0 and "Its address" in again.output and "Name of your firm" not in again.output


def test_the_margin_pays_for_overhead_and_profit(monkeypatch: pytest.MonkeyPatch) -> None:
    """Labor $700 and $300 of other cost a crew-day at the demo's wages; overhead 120,000 ÷ 400 = 300; 10 % profit.

    (700 + 300 + 300) ÷ 0.9 = 1,444.44; margin 1 − 1,000 ÷ 1,444.44 = 30.8 % [by hand].
    """
    rows = (("a crew-day", "labor", 700.0), ("a crew-day", "other own cost", 300.0), ("roles", "helper", 10.0))
    monkeypatch.setattr(
        "estimator.tables.overhead.measured", lambda: tuple(FirstNumber(t, r, "", s) for t, r, s in rows)
    )
    day = crew_day_cost(D(120000), D(400), D(10), demo())
    assert (day.labor, day.other, day.overhead, day.price, day.margin_percent) == (
        D(700),
        D(300),
        D(300),
        D("1444.44"),
        D("30.8"),
    )


def test_the_fifty_stand_first_in_the_workbook_each_with_its_cell(tmp_path: Path) -> None:
    (tmp_path / "prices.xlsx").write_bytes(workbook(demo()))
    book = load_workbook(tmp_path / "prices.xlsx")
    lines = [[cell.value for cell in row] for row in book.worksheets[0].iter_rows()]
    at = next(i for i, line in enumerate(lines) if str(line[0]).startswith("The fifty figures"))
    listed = lines[at + 1 : at + 51]
    assert at < next(
        i for i, line in enumerate(lines) if line[0] == "Who keeps it: the office" or "rows" in str(line[0])
    )
    for question, line in zip(first_questions(demo()), listed, strict=True):
        assert line[1] == str(question.asks)
        sheet, place = str(line[2]).split("!")
        header = book[sheet].cell(1, book[sheet][place].column).value
        assert header == question.column
        if question.row in {r[0].value for r in book[sheet].iter_rows(min_row=2)}:
            assert book[sheet].cell(book[sheet][place].row, 1).value == question.row
    assert read_tables(demo_folder(), DAY).tables is not None


def test_a_machine_is_own_or_rented_as_typed(tmp_path: Path) -> None:
    wanted = {("equipment", "excavator", "cost"): ["120 own"], ("equipment", "liner-rig", "cost"): ["$410, rented"]}
    assert start(tmp_path / "own", "Mara", *answers_to(wanted)).exit_code == 0
    found = [
        (cell(tmp_path / "own", "equipment", row, c)) for row in ("excavator", "liner-rig") for c in ("cost", "own")
    ]
    assert found == ["120", "yes", "410", "no"]


def test_another_figure_typed_where_yes_or_no_was_asked_is_the_answer(tmp_path: Path) -> None:
    wanted = {("roles", "lead plumber", "wage"): ["4400", "44"]}
    assert start(tmp_path / "own", "Mara", *answers_to(wanted)).exit_code == 0
    assert cell(tmp_path / "own", "roles", "lead plumber", "wage") == "44"


def test_for_a_job_the_demos_figures_it_rests_on_are_asked_the_largest_first_until_none_is_left(tmp_path: Path) -> None:
    folder, job = tmp_path / "own", JOBS / "maple" / "job.toml"
    assert start(folder, "Mara").exit_code == 0
    asked = questions_of(job, folder)
    assert [q.table for q in asked[:11]] == ["settings"] * 11
    shares = [q.share for q in asked if q.share]
    assert shares == sorted(shares, reverse=True)
    assert {q.table for q in asked} >= {"roles", "production"}  # the hours that the wages hide are asked in the same go
    words = ["tables", "start", str(folder), "--job", str(job), "--on", "2026-11-29"]
    typed = "\n".join(["Mara", *map(answer, asked)]) + "\n"
    done = CliRunner().invoke(build(words), words, input=typed)
    assert done.exit_code == 0, done.output
    assert max(one.percent for one in left(job, folder)) < 1
    assert "0% of the cost comes from demo figures" in done.output
    assert all(q.share == 0 for q in questions_of(job, folder))


def test_what_is_left_of_a_job_is_named(tmp_path: Path) -> None:
    folder, job = tmp_path / "own", JOBS / "maple" / "job.toml"
    assert start(folder, "Mara").exit_code == 0
    words = ["tables", "start", str(folder), "--job", str(job), "--on", "2026-11-29"]
    said = CliRunner().invoke(build(words), words, input="Mara\ndone\n").output
    flat = " ".join(said.split())
    assert "Option A: 99% of the cost comes from demo figures. The largest: lead plumber, helper, lining rig" in flat
    assert "--job" in flat[flat.index("Go on later") :]


def answer(question: Question) -> str:
    """A figure of the firm's own: the demo's, which counts as its own once somebody of the firm typed it."""
    if question.table == "settings":
        of_the_margin = {"overhead_a_year": "120000", "crew_days_a_year": "400", "profit_percent": "10"}
        until = "2028-03-31" if question.row.endswith("_until") else f"Oak {question.row}"
        return of_the_margin.get(question.row, until)
    if question.column == "burden_percent":
        return "32"
    return str(getattr(next(r for r in demo().current(question.table) if question.row in vars_of(r)), question.column))


def vars_of(row: object) -> tuple[object, ...]:
    return tuple(getattr(row, name, None) for name in ("role", "task", "item"))


def test_check_says_how_many_figures_are_still_the_demos_and_where_to_go(begun: tuple[Path, str]) -> None:
    """One wage, the margin and a task's time are the firm's, of all rows that price anything [counted from the files]."""
    folder, _ = begun
    words = ["tables", "check", str(folder), "--on", "2026-11-29"]
    said = " ".join(CliRunner().invoke(build(words), words).output.split())
    names = {t: {r[0] for r in rows_of(folder / f"{t}.csv")} for t in FIGURES}
    every = sum(map(len, names.values()))
    assert f"{every - 3} of {every} wages, prices, times and margins are still the demo's" in said
    assert f"estimator tables start {folder}".replace(" ", "") in said.replace(" ", "")
    own = " ".join(CliRunner().invoke(build(words[:2]), words[:2]).output.split())
    assert "These are the demo's. Begin your own: estimator tables start FOLDER" in own


def rows_of(path: Path) -> list[list[str]]:
    with path.open(encoding="utf-8", newline="") as file:
        return list(csv.reader(file))[1:]


ANSWERS = {
    ("settings", "firm_licence_until", "value"): ["3/31/2028"],
    ("settings", "firm_insurance_until", "value"): ["soon", "2028-06-30"],
    ("roles", "lead plumber", "wage"): ["44"],
    ("roles", "", "burden_percent"): ["32"],  # the demo's figure, and the firm's own all the same
    ("crews", "plumbing", "count"): ["1 lead plumber, 1 helper"],
    ("settings", "overhead_a_year", "value"): ["$120,000"],
    ("settings", "profit_percent", "value"): ["10 %"],
    ("places", "your city", "text"): ["Elm City"],
    ("places", "your city", "tax_percent"): ["8.25"],
}


def test_what_was_answered_before_the_input_ended_is_not_asked_again(tmp_path: Path) -> None:
    folder = tmp_path / "own"
    typed = answers_to(ANSWERS)
    words = ["tables", "start", str(folder), "--on", "2026-11-29"]
    assert CliRunner().invoke(build(words), words, input="\n".join(["Mara", *typed])).exit_code == 0
    assert cell(folder, "settings", "firm_licence_until", "value") == "2028-03-31"
    assert cell(folder, "settings", "firm_insurance_until", "value") == "2028-06-30"
    again = CliRunner().invoke(build(words), words, input="\n".join(["Mara", *[""] * 60])).output
    asked = [str(q.asks) for q in first_questions(demo()) if (q.table, q.row, q.column) in ANSWERS]
    flat = " ".join(again.split())
    assert len(asked) == 9 and not [text for text in asked if text in flat]
    assert "Crew-days a year that customers pay for" in flat and "Sales tax there" in flat
    assert "invented: Elm City" not in again and 'jurisdiction = "elm city"' in again
    last = start(
        folder,
        "Mara",
        *[line for q in questions_left(folder) for line in (["400"] if q.row == "crew_days_a_year" else [""])],
    )
    assert "a margin of" in last.output and cell(folder, "pricing", "own", "margin_percent") != "40"


def questions_left(folder: Path) -> list[Question]:
    tables = reading(folder, DAY).tables
    assert tables is not None
    return [q for q in first_questions(tables) if not answered(q, tables)]


def test_a_name_is_needed_to_sign_the_rows(tmp_path: Path) -> None:
    assert "Write your name" in start(tmp_path / "own", "", "  ", "Mara", "Oak Street Plumbing").output
    assert cell(tmp_path / "own", "settings", "firm_name", "changed_by") == "Mara"


def test_what_an_answer_fills_in_beyond_what_was_typed_is_said_back(tmp_path: Path) -> None:
    """The jetter stays own where nobody said; jetting at 0.02 h a foot for 0.015 moves good and bad days by a third [computed]."""
    wanted = {("equipment", "jetter", "cost"): ["95"], ("production", "jet", "likely"): ["0.02"]}
    said = start(tmp_path / "own", "Mara", *answers_to(wanted)).output
    assert "Kept: 95 a day, own." in said and "If not, go back and type: 95 rented" in said
    assert "invented: 0.015 (for 100 ft: 1.5 crew-hours)" in said
    low, high = (cell(tmp_path / "own", "production", "jet", c) for c in ("low", "high"))
    assert (
        f"Kept: 0.02 (for 100 ft: 2 crew-hours). In proportion: {low} on a good day, {high} on a bad one."
        in " ".join(said.split())
    )


def test_in_spanish_commands_roles_and_columns_are_spanish(tmp_path: Path) -> None:
    folder = tmp_path / "own"
    wanted = {
        ("settings", "firm_name", "value"): ["Plomería Roble"],
        ("settings", "firm_phone", "value"): ["atras", "", ""],
        ("roles", "lead plumber", "wage"): ["4400", "no", "44"],
        ("crews", "plumbing", "count"): ["1 plomero principal y 2 ayudantes"],
    }
    words = ["tables", "start", str(folder), "--on", "2026-11-29", "--language", "es_US"]
    said = CliRunner().invoke(build(words), words, input="\n".join(["Mara", *answers_to(wanted)]) + "\n").output
    assert cell(folder, "settings", "firm_phone", "value") == "555-0100"
    with (folder / "crews.csv").open(encoding="utf-8", newline="") as file:
        crew = {r["role"]: r["count"] for r in csv.DictReader(file) if r["crew"] == "plumbing"}
    assert crew == {"lead plumber": "1", "helper": "2"}
    assert "1 plomero principal, 1 ayudante" in said and "salario de “plomero principal” es 4400" in " ".join(
        said.split()
    )
