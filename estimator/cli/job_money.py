"""What is typed about a job's money in, noted beside its revisions; where it stands, and a plain CSV, out."""

from collections.abc import Iterable, Iterator
from datetime import date
from decimal import Decimal, InvalidOperation
from pathlib import Path
from typing import get_args

import typer

from estimator.cli.price_tables import readable_tables
from estimator.cli.views.vocabulary import term
from estimator.cli.writing import new_file
from estimator.model.problem import Place, Problem
from estimator.model.say import Say
from estimator.pricing.ledger import Account, Entry, Kind, bookkeeping_csv
from estimator.records.accepted import accepted
from estimator.records.afterwards.money import START, Money, changed, milestone, money, note
from estimator.records.afterwards.owing import Owing, owing
from estimator.records.afterwards.problems import (
    BEFORE_SIGNING,
    BOOKED_ALREADY,
    MORE_THAN_AGREED,
    SAME_AGAIN,
)
from estimator.records.afterwards.purchase import order_entries
from estimator.records.afterwards.sold import Sold, sold
from estimator.records.job_status import job_files
from estimator.records.revisions import revisions_folder
from estimator.tables.tables import Tables
from estimator.wording.say import speaker, spoken


def amount_of(text: str) -> Decimal:
    """Dollars and cents as typed. Errors: BadParameter for anything else."""
    try:
        amount = Decimal(text.replace("$", "").replace(",", ""))
        if amount.is_finite() and amount != 0 and amount == round(amount, 2):
            return round(amount, 2)
    except InvalidOperation:
        pass
    raise typer.BadParameter(f"{text or 'nothing'} is no amount; write it as --amount 1000 or --amount 80.50.")


def noted(folder: Path, done: Sold, said: dict[str, str], amount: str, day: date, reference: str) -> Money:
    """`said` holds what was typed by its option: paid, due, change, credit, order. Nothing typed: as it stands. Errors: CannotGoOn."""
    state = money(folder, done)
    entries: list[Entry] = []
    due = {_due_name(state, said["due"], folder): day} if said["due"] else {}
    if said["paid"]:
        name = milestone(state, said["paid"], folder).name
        entries.append(Entry(day=day, kind="payment", text=name, amount=amount_of(amount), reference=reference))
    if said["order"]:
        entries += order_entries(folder, done, said["order"], day, state.later)
    for kind in ("change", "credit"):
        if said[kind]:
            entries += changed(
                done, "change" if kind == "change" else "credit", said[kind], _above(amount), day, reference
            )
    return note(folder, done, entries, due) if entries or due else state


def noted_with_doubts(
    folder: Path, done: Sold, said: dict[str, str], amount: str, day: date, reference: str
) -> tuple[Money, list[Problem]]:
    """The same, and what is asked about it: money that came early or too much, or that may have been noted twice."""
    before = money(folder, done)
    state = noted(folder, done, said, amount, day, reference)
    typed = bool(said["paid"] or said["change"] or said["credit"])
    return state, [*doubts(folder, done, state, said["paid"], amount, day), *twice(folder, before, state, typed)]


def _due_name(state: Money, typed: str, folder: Path) -> str:
    """The first day of work may be noted whether a payment is agreed for it or not: the schedule hangs on it."""
    return START if typed.strip().lower() == START else milestone(state, typed, folder).name


def doubts(folder: Path, done: Sold, state: Money, paid: str, amount: str, day: date) -> list[Problem]:
    """What is asked about a payment that was just noted; it stands all the same, for money may come early or too much."""
    if not paid or amount_of(amount) < 0:
        return []
    asked, name = [], milestone(state, paid, folder)
    if state.paid_on(name.name) > name.amount:
        over = state.paid_on(name.name) - name.amount
        asked.append(MORE_THAN_AGREED(Place(file=str(folder)), name=name.name, over=f"{over:.2f}"))
    if done.signed and day < date.fromisoformat(done.signed.on):
        asked.append(BEFORE_SIGNING(Place(file=str(folder)), day=day, signed=done.signed.on))
    return asked


def twice(folder: Path, before: Money, after: Money, typed: bool) -> list[Problem]:
    """What is asked where the same money may have been noted twice: the very same entry, or another of its reference."""
    new = after.later[len(before.later) :] if typed else ()
    same = [_same_again(folder, e) for e in new if e.kind != "tax" and e.amount > 0 and e in before.later]
    return same or [_booked(folder, e, was) for e in new if (was := _of_its_reference(e, before.later)) is not None]


KINDS = {"payment": Say.of("payment"), "change": Say.of("change"), "credit": Say.of("credit")}


def _same_again(folder: Path, entry: Entry) -> Problem:
    ref = f" --ref '{entry.reference}'" if entry.reference else ""
    back = {
        "payment": (f"--paid '{entry.text}'{ref}", f"-{entry.amount}"),
        "change": (f"--credit 'noted twice: {entry.text}'", f"{entry.amount}"),
        "credit": (f"--change 'noted twice: {entry.text}'", f"{entry.amount}"),
    }
    how, taken = back.get(entry.kind, ("", ""))
    words = {
        "kind": KINDS.get(entry.kind, entry.kind),
        "amount": entry.amount,
        "day": entry.day,
        "back": how,
        "taken": taken,
    }
    return SAME_AGAIN(Place(file=str(folder)), **words)


def _of_its_reference(entry: Entry, known: tuple[Entry, ...]) -> Entry | None:
    """A payment under the same reference that was not taken back. One check may be shared over several payments on one day."""
    same = [e for e in known if e.kind == entry.kind == "payment" and e.reference == entry.reference != ""]
    left = sum((e.amount for e in same), Decimal(0))
    if entry.amount <= 0 or left <= 0:
        return None
    return next((e for e in same if e.amount > 0 and (e.day != entry.day or e.text == entry.text)), None)


def _booked(folder: Path, entry: Entry, was: Entry) -> Problem:
    return BOOKED_ALREADY(
        Place(file=str(folder)),
        reference=entry.reference,
        amount=was.amount,
        name=was.text,
        day=was.day,
        paid=entry.text,
        now=entry.amount,
        on=entry.day,
    )


def _above(text: str) -> Decimal:
    amount = amount_of(text)
    if amount > 0:
        return amount
    raise typer.BadParameter("a change or a credit is above 0; take something off with --credit.")


def of_job(job_file: Path, letter: str) -> tuple[Path, Sold]:
    """The job's folder and what was sold. Errors: CannotGoOn."""
    folder = revisions_folder(job_file)
    return folder, sold(folder, letter)


def written(to: Path, jobs: Iterable[Account], tables: Tables, language: str) -> Path:
    """Everything as plain rows; what is not due yet stands at the end of its job, without a day. Errors: CannotGoOn."""
    text = bookkeeping_csv(
        jobs, accounts(tables), _heads(language), lambda word: spoken(term(word, language), language)
    )
    return new_file(to, text.encode("utf-8"))


def _heads(language: str) -> tuple[str, ...]:
    speak = speaker(language)
    return (speak("date"), speak("job"), speak("customer"), speak("kind"), speak("text"), speak("amount"),
            speak("account"), speak("reference"))  # fmt: skip


def of_all(job_files: Iterable[Path]) -> Iterator[Account]:
    """The money of every accepted job. Errors: CannotGoOn for one that cannot be read."""
    for folder in map(revisions_folder, job_files):
        if accepted(folder):
            done = sold(folder)
            yield account(money(folder, done), done)


def of_folder(folder: Path, day: date, to: Path | None, tables: Path | None, language: str) -> tuple[Owing, ...]:
    """Who owes what over a folder of jobs; where a file is named, every accepted job's money is written there. Errors: CannotGoOn."""
    files = list(job_files(folder))
    found = owing(files, day)
    if to is not None:
        written(to, of_all(files), readable_tables(day, tables), language)
    return found


def account(state: Money, done: Sold) -> Account:
    job = done.record.data["quote"]["job"]
    return Account(job["number"], job["customer"]["name"], state.entries)


def accounts(tables: Tables) -> dict[str, str]:
    """The firm's own names of its accounts, by kind; empty where the settings have none."""
    named = {}
    for kind in get_args(Kind):
        try:
            named[kind] = tables.text(f"account_{kind}")
        except KeyError:
            named[kind] = ""
    return named
