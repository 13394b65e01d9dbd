"""`money`: what fell due, came in, was added and taken off, to the cent; appended, never lost; plain rows for the books."""

import csv
import json
import shutil
from decimal import Decimal
from pathlib import Path

import pytest
from typer.testing import CliRunner, Result

from estimator import demo
from estimator.cli.app import build
from estimator.records.recorded_text import sealed, unsealed

NOTES = Path(demo.__file__).parent
D = Decimal


def run(*words: object) -> Result:
    texts = [str(word) for word in words]
    return CliRunner().invoke(build(texts), texts, env={"COLUMNS": "100"})


@pytest.fixture(scope="module", name="signed")
def _signed(issued, tmp_path_factory: pytest.TempPathFactory) -> Path:
    job = issued(tmp_path_factory.mktemp("signed"))
    assert run("quote", job, "--accepted", "D", "--on", "2026-11-20").exit_code == 0
    return job


@pytest.fixture(name="job")
def _job(signed: Path, tmp_path: Path) -> Path:
    shutil.copytree(signed.parent, tmp_path / "one")
    return tmp_path / "one" / "job.toml"


def state(job: Path, *words: object) -> dict:
    done = run("money", job, *words, "--json")
    assert done.exit_code == 0, done.output
    return json.loads(done.stdout)


def test_at_first_all_of_the_price_is_owed_and_the_deposit_is_due_since_the_signing(job: Path) -> None:
    found = state(job)
    amounts = [D(m["amount"]) for m in found["money"]["milestones"]]
    accepted = json.loads((job.with_suffix("") / "accepted r1.json").read_text())
    assert sum(amounts) == D(found["balance"]) == D(accepted["total"])
    assert [(m["name"], m["due"]) for m in found["money"]["milestones"]][:2] == [
        ("deposit", "2026-11-20"),
        ("start", None),
    ]
    assert not (job.with_suffix("") / "money.json").exists()


def test_payments_changes_and_credits_are_appended_and_the_balance_follows_to_the_cent(job: Path) -> None:
    whole = D(state(job)["balance"])
    state(job, "--paid", "deposit", "--amount", "1000", "--on", "2026-12-01", "--ref", "123")
    state(job, "--change", "one more cleanout", "--amount", "350.10", "--on", "2026-12-03")
    found = state(job, "--credit", "no sod", "--amount", "$80.05", "--on", "2026-12-04")
    assert D(found["balance"]) == whole - 1000 + D("350.10") - D("80.05")
    assert [(e["kind"], e["reference"]) for e in found["money"]["later"]] == [
        ("payment", "123"),
        ("change", ""),
        ("credit", ""),
    ]


def test_two_equal_payments_on_one_day_both_count_and_are_asked_about(job: Path) -> None:
    whole = D(state(job)["balance"])
    words = ("--paid", "deposit", "--amount", "1000", "--on", "2026-12-01")
    assert "after/same-again" not in run("money", job, *words).stderr
    again = run("money", job, *words)
    assert again.exit_code == 0 and "after/same-again" in again.stderr
    found = state(job)
    assert D(found["balance"]) == whole - 2000
    assert [e["amount"] for e in found["money"]["later"]] == ["1000.00", "1000.00"]


def test_a_payment_taken_back_stands_beside_the_one_that_was_noted(job: Path) -> None:
    whole = state(job)["balance"]
    state(job, "--paid", "deposit", "--amount", "1000", "--on", "2026-12-01")
    found = state(job, "--paid", "deposit", "--amount", "-1000", "--on", "2026-12-02")
    assert (found["balance"], len(found["money"]["later"])) == (whole, 2)


def test_the_last_payment_is_due_when_the_work_is_noted_as_done(job: Path) -> None:
    assert run("quote", job, "--done", "--on", "2026-12-05").exit_code == 0
    state(job, "--due", "start of work", "--on", "2026-12-01")
    assert due_days(job) == {
        "deposit": "2026-11-20", "start": "2026-12-01", "pipe in before cover": "2026-12-04", "done": "2026-12-05",
        "second visit": "2026-12-05",
    }  # fmt: skip


def due_days(job: Path) -> dict[str, str]:
    return {m["name"]: m["due"] for m in state(job)["money"]["milestones"]}


def test_from_the_first_day_of_work_the_payments_fall_due_on_the_days_of_the_schedule_and_by_hand(job: Path) -> None:
    """The demo's option D has its pipe in on the fourth day of work and ends on the fifth. From Monday, December 21, 2026 the
    working days are 21 to 24, 28 to 31 (Christmas is a Friday): the fourth is the 24th, the fifth the 28th [by hand]. The visit after the lift has no day yet."""
    state(job, "--due", "start", "--on", "2026-12-21")
    assert due_days(job) == {
        "deposit": "2026-11-20", "start": "2026-12-21", "pipe in before cover": "2026-12-24", "done": "2026-12-28",
        "second visit": None,
    }  # fmt: skip
    assert "No day yet: second visit." in " ".join(run("money", job).output.split())
    state(job, "--due", "pipe", "--on", "2027-01-05")
    assert due_days(job)["pipe in before cover"] == "2027-01-05"


def test_a_change_order_is_billed_and_paid_by_its_name_with_its_tax(job: Path, tmp_path: Path) -> None:
    whole = D(state(job)["balance"])
    state(job, "--change", "one more cleanout", "--amount", "350.10", "--on", "2026-12-03")
    found = state(job, "--paid", "cleanout", "--amount", "350.10", "--on", "2026-12-20", "--csv", tmp_path / "b.csv")
    assert D(found["balance"]) == whole
    rows = list(csv.DictReader((tmp_path / "b.csv").open(encoding="utf-8", newline="")))
    assert ("payment", "one more cleanout", "-350.10") in [(r["kind"], r["text"], r["amount"]) for r in rows]
    shown = run("money", job).stdout
    assert "one more cleanout" in shown.split("Noted since")[0]
    assert "after/more-than-agreed" in run("money", job, "--paid", "cleanout", "--amount", "1").stderr


def test_the_rows_for_the_books_are_dated_named_and_sum_to_what_is_due(job: Path, tmp_path: Path) -> None:
    state(job, "--paid", "deposit", "--amount", "1000", "--on", "2026-12-01")
    found = state(job, "--credit", "no sod", "--amount", "80.05", "--on", "2026-12-04", "--csv", tmp_path / "books.csv")
    rows = list(csv.DictReader((tmp_path / "books.csv").open(encoding="utf-8", newline="")))
    assert list(rows[0]) == ["date", "job", "customer", "kind", "text", "amount", "account", "reference"]
    assert [(r["date"], r["kind"], r["account"]) for r in rows if r["date"]] == [
        ("2026-11-20", "deposit", "Customer deposits"), ("2026-12-01", "payment", "Bank"), ("2026-12-04", "credit", "Credits given"),
    ]  # fmt: skip
    assert [r["kind"] for r in rows if not r["date"]] == ["draw"] * 4  # agreed and not due yet: in the books as well
    assert sum(D(r["amount"]) for r in rows) == D(found["balance"])
    assert {(r["job"], r["customer"]) for r in rows} == {("2026-131", "Wren Castellane")}
    again = run("money", job, "--csv", tmp_path / "books.csv")
    assert "cli/file-there" in again.stderr


def test_the_books_of_a_folder_hold_every_accepted_job_in_the_language_asked_for(job: Path, tmp_path: Path) -> None:
    state(job, "--paid", "deposit", "--amount", "1000", "--on", "2026-12-01")
    run("money", job.parent, "--language", "es_US", "--csv", tmp_path / "libro.csv")
    heads, *rows = csv.reader((tmp_path / "libro.csv").open(encoding="utf-8", newline=""))
    assert heads == ["fecha", "trabajo", "cliente", "tipo", "texto", "importe", "cuenta", "referencia"]
    assert rows[0][1:5] == ["2026-131", "Wren Castellane", "depósito", "Anticipo al firmar"]
    assert sum(D(row[5]) for row in rows) == D(state(job)["balance"])
    assert "not a folder" in run("money", job.parent, "--paid", "deposit", "--amount", "5").stderr


def test_tax_charged_is_apart_in_the_books_and_on_changes(job: Path, tmp_path: Path) -> None:
    """8.25 % on all of 4,000: 330, a change of 100 carries 8.25 [computed]."""
    record = next(job.with_suffix("").rglob("Record*.json"))
    held = unsealed(record.read_bytes())
    option = held["quote"]["options"][3]
    option["price"] |= {"total": "4330.00", "tax": "330.00"}
    option["payments"] = [{"text": {"text": text, "words": []}, "amount": amount} for text, amount in (("Deposit at signing", "433.00"), ("Completion", "3897.00"))]  # fmt: skip
    record.write_bytes(sealed(held))
    found = state(job, "--change", "cleanout", "--amount", "100", "--on", "2026-12-01")
    assert [(m["amount"], m["tax"]) for m in found["money"]["milestones"]] == [
        ("433.00", "33.00"),
        ("3897.00", "297.00"),
    ]
    assert [(e["kind"], e["amount"]) for e in found["money"]["later"]] == [("change", "100.00"), ("tax", "8.25")]
    why = "Sales tax on changes: 8.25%, the share it has of the price signed ($330.00 on $4,000.00)."
    assert why in run("money", job).output
    assert D(found["balance"]) == D("4438.25")
    run("money", job, "--csv", tmp_path / "books.csv")
    rows = list(csv.DictReader((tmp_path / "books.csv").open(encoding="utf-8", newline="")))
    assert [(r["kind"], r["amount"]) for r in rows] == [
        ("deposit", "400.00"),
        ("tax", "33.00"),
        ("change", "100.00"),
        ("tax", "8.25"),
        ("draw", "3600.00"),
        ("tax", "297.00"),
    ]


@pytest.mark.parametrize("amount", ["", "lots", "nan", "Infinity", "0", "1.005", "1e99999999"])
def test_what_is_no_amount_is_a_wrong_command_line(job: Path, amount: str) -> None:
    assert run("money", job, "--paid", "deposit", "--amount", amount).exit_code == 2
    assert run("money", job, "--credit", "x", "--amount", "-5").exit_code == 2
    assert not (job.with_suffix("") / "money.json").exists()


def test_paid_too_much_is_said(job: Path) -> None:
    said = run("money", job, "--paid", "done", "--amount", "99999", "--on", "2026-12-09").stdout
    assert "Paid too much" in said


def test_money_that_came_in_is_shown_above_nothing_as_received(job: Path) -> None:
    done = run("money", job, "--paid", "deposit", "--amount", "500", "--on", "2026-12-01")
    assert "received" in done.stdout
    assert "-$500" not in done.stdout
    assert "after/" not in done.stderr


def test_a_payment_above_what_was_agreed_or_before_the_signature_is_noted_and_asked_about(job: Path) -> None:
    deposit = D(state(job)["money"]["milestones"][0]["amount"])
    exactly = run("money", job, "--paid", "deposit", "--amount", deposit, "--on", "2026-11-20")
    assert "after/" not in exactly.stderr
    more = run("money", job, "--paid", "deposit", "--amount", "0.01", "--on", "2026-11-19")
    assert more.exit_code == 0
    assert "after/more-than-agreed" in more.stderr
    assert "after/before-signing" in more.stderr
    back = run("money", job, "--paid", "deposit", "--amount", "-0.01", "--on", "2026-11-20")
    assert "after/" not in back.stderr


def test_the_help_says_which_day_is_taken(job: Path) -> None:
    assert "else today" in run("money", "--help").stdout


def test_the_same_reference_on_another_day_is_asked_about_and_the_very_same_command_too(job: Path) -> None:
    paid = ("--paid", "deposit", "--amount", "1000", "--ref", "123")
    assert "after/" not in run("money", job, *paid, "--on", "2026-12-01").stderr
    balance = state(job)["balance"]
    again = run("money", job, *paid, "--on", "2026-12-01")
    assert "after/same-again" in again.stderr and "booked-already" not in again.stderr
    assert D(state(job)["balance"]) == D(balance) - 1000
    run("money", job, "--paid", "deposit", "--amount", "-1000", "--ref", "123", "--on", "2026-12-01")
    assert state(job)["balance"] == balance
    later = run("money", job, *paid, "--on", "2026-12-03")
    assert later.exit_code == 0
    assert "after/booked-already" in later.stderr and "on 2026-12-01" in " ".join(later.stderr.split())
    assert "same-again" not in later.stderr
    back = run("money", job, "--paid", "deposit", "--amount", "-1000", "--ref", "123", "--on", "2026-12-03")
    assert "booked-already" not in back.stderr
    assert state(job)["balance"] == balance


def test_one_check_for_two_payments_of_one_day_and_one_that_was_taken_back_are_not_asked_about(job: Path) -> None:
    run("money", job, "--paid", "deposit", "--amount", "1000", "--on", "2026-12-01", "--ref", "123")
    both = run("money", job, "--paid", "start", "--amount", "500", "--on", "2026-12-01", "--ref", "123")
    assert "booked-already" not in both.stderr
    run("money", job, "--paid", "done", "--amount", "10", "--on", "2026-12-02", "--ref", "bounced")
    run("money", job, "--paid", "done", "--amount", "-10", "--on", "2026-12-04", "--ref", "bounced")
    assert (
        "booked-already"
        not in run("money", job, "--paid", "done", "--amount", "10", "--on", "2026-12-06", "--ref", "bounced").stderr
    )
    assert "same-again" not in run("money", job).stderr


def test_a_text_that_a_spreadsheet_would_calculate_stays_a_text(job: Path, tmp_path: Path) -> None:
    state(job, "--credit", '=HYPERLINK("http://x","y")', "--amount", "5", "--on", "2026-12-04", "--ref", "@SUM(1)")
    run("money", job, "--csv", tmp_path / "books.csv")
    rows = list(csv.DictReader((tmp_path / "books.csv").open(encoding="utf-8", newline="")))
    mine = next(r for r in rows if r["kind"] == "credit")
    assert (mine["text"], mine["reference"], mine["amount"]) == ('\'=HYPERLINK("http://x","y")', "'@SUM(1)", "-5.00")


def test_a_job_done_and_not_paid_waits_for_payment_and_stands_in_the_list_of_who_owes(job: Path) -> None:
    assert run("quote", job, "--done", "--on", "2026-12-05").exit_code == 0
    whole = D(state(job)["balance"])
    deposit = D(state(job)["money"]["milestones"][0]["amount"])
    waits = json.loads(run("jobs", job.parent, "--json", "--on", "2026-12-06").stdout)
    assert waits[0]["waits_for"] == f"payment: ${whole:,.2f} is owed"
    listed = json.loads(run("money", job.parent, "--on", "2026-12-01", "--json").stdout)
    assert [(D(o["due"]), D(o["owed"]), o["since"]) for o in listed] == [(deposit, whole, "2026-11-20")]
    state(job, "--paid", "deposit", "--amount", str(deposit), "--on", "2026-11-30")
    listed = json.loads(run("money", job.parent, "--on", "2026-12-06", "--json").stdout)
    assert [(D(o["owed"]), o["since"]) for o in listed] == [(whole - deposit, "2026-12-05")]
    assert "Wren Castellane" in run("money", job.parent, "--on", "2026-12-06").stdout
    state(job, "--paid", "done", "--amount", str(whole - deposit), "--on", "2026-12-20")
    assert "Nothing is owed." in run("money", job.parent, "--on", "2026-12-21").stdout
    assert json.loads(run("jobs", job.parent, "--json", "--on", "2026-12-21").stdout)[0]["waits_for"] == "nothing"


def test_a_change_carries_the_rate_of_the_place_to_the_cent() -> None:
    """8.25 % of $10,000 is $825.00; the share 3.31 / 40.15 of a small original would say 8.244 % [computed]."""
    from estimator.pricing.ledger import tax_on

    assert tax_on(D(10000), D("40.15"), D("3.31"), D("8.25")) == D("825.00")
    assert tax_on(D(10000), D("40.15"), D("3.31")) == D("824.41")
    assert tax_on(D(2000), D(4000), D("165.00"), D("8.25")) == D("165.00")  # a permit in the original was not taxed
