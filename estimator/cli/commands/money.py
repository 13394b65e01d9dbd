"""`estimator money`: what fell due, what came in, changes and credits in; the balance and a plain CSV out; over a folder who owes."""

from collections.abc import Sequence
from datetime import date
from decimal import Decimal
from pathlib import Path
from typing import Annotated

import typer

from estimator.cli.arguments import AS_SET, AsJson, Language, OnDayOrToday, TablesFrom
from estimator.cli.views.layout import Layout
from estimator.cli.views.table import folded
from estimator.cli.views.words import Words
from estimator.model.say import Say
from estimator.pricing.ledger import Entry
from estimator.records.afterwards.money import DONE, TAX_ON, Money
from estimator.records.afterwards.owing import Owing

JobOrFolder = Annotated[
    Path, typer.Argument(metavar="JOB", help="The job file; a folder of jobs lists who owes what since when.")
]
Letter = Annotated[str, typer.Option("--option", metavar="LETTER", help="The option sold; else the accepted one.")]
Paid = Annotated[
    str,
    typer.Option("--paid", metavar="NAME", help='Money came in for this payment or change order, such as "deposit".'),
]
Due = Annotated[
    str,
    typer.Option(
        "--due",
        metavar="NAME",
        help="This payment fell due, --on its day; start: the first day of work, the others follow its schedule.",
    ),
]
Change = Annotated[
    str, typer.Option("--change", metavar="TEXT", help="Work added, signed by the homeowner; --amount without tax.")
]
Credit = Annotated[str, typer.Option("--credit", metavar="TEXT", help="Something taken off; --amount without tax.")]
Order = Annotated[
    str, typer.Option("--order", metavar="rN", help="The change order to this revision was signed: bill what it moved.")
]
Amount = Annotated[str, typer.Option("--amount", metavar="DOLLARS", help="How much; below 0 to take a payment back.")]
Reference = Annotated[str, typer.Option("--ref", metavar="TEXT", help="A check number, the number of a change order.")]
Csv = Annotated[
    Path | None,
    typer.Option(
        "--csv", metavar="FILE", help="Write all of it as plain rows for the books; of a folder, every accepted job."
    ),
]


def command(
    job: JobOrFolder,
    letter: Letter = "",
    paid: Paid = "",
    due: Due = "",
    change: Change = "",
    credit: Credit = "",
    order: Order = "",
    amount: Amount = "",
    on: OnDayOrToday = None,
    reference: Reference = "",
    csv: Csv = None,
    tables: TablesFrom = None,
    language: Language = AS_SET,
    as_json: AsJson = False,
) -> None:
    from estimator.cli import job_money
    from estimator.cli.clock import today
    from estimator.cli.price_tables import readable_tables
    from estimator.cli.views.layout import in_window
    from estimator.cli.views.problems import tell
    from estimator.cli.views.screen import answer
    from estimator.records.afterwards.money import why_taxed

    day, out = on or today(), in_window(language)
    if job.is_dir():
        if any((letter, paid, due, change, credit, order, amount, reference)):
            raise typer.BadParameter("what came in or fell due is noted for one job: name its job file, not a folder.")
        found = job_money.of_folder(job, day, csv, tables, language)
        write_owing(out, found)
        answer(found, as_json, out.rows)
        return
    folder, done = job_money.of_job(job, letter)
    said = {"paid": paid, "due": due, "change": change, "credit": credit, "order": order}
    state, asked = job_money.noted_with_doubts(folder, done, said, amount, day, reference)
    tell(asked)
    if csv is not None:
        job_money.written(csv, [job_money.account(state, done)], readable_tables(day, tables), language)
    write_money(out, state, day, why_taxed(done))
    answer({"balance": state.balance, "money": state}, as_json, out.rows)


SAID = {"payment": "received"}
"""What came in stands as it came, above nothing."""


def write_money(out: Layout, state: Money, on: date, taxed: Say | None = None) -> None:
    """Two tables and the balance, as on that day; `taxed` says where sales tax on changes comes from."""
    speak = out.speak
    out.line(speak("Payments and change orders"), "head")
    heads = (speak("payment"), speak("amount"), speak("due on"), speak("came in"), speak("open"))
    asked = [
        (out.term(a.name), out.dollars(a.amount), _day(a.due, out), out.dollars(paid), out.dollars(a.amount - paid))
        for a in state.asked
        for paid in [state.paid_on(a.name)]
    ]
    out.table(heads, asked, right=(1, 3, 4))
    if any(a.name == DONE and a.due for a in state.asked):
        for one in (a for a in state.asked if a.due is None):
            said = speak("No day yet: {payment}. Once it is made: --due “{payment}” --on DAY.", payment=one.name)
            out.lines(folded(said, out.columns), "dim")
    if state.later:
        out.heading(speak("Noted since"))
        heads = (speak("day"), speak("kind"), speak("what"), speak("amount"), speak("reference"))
        out.table(heads, [_entry(entry, out) for entry in state.later], right=(3,))
    if taxed and any(e.text.startswith(TAX_ON) for e in state.later):
        out.lines((line for line in folded(out.say(taxed), out.columns) if line), "dim")
    out.line()
    _balance(out, state, on)


def write_owing(out: Layout, found: Sequence[Owing]) -> None:
    """Who owes what since when, over all jobs, with the sums."""
    speak = out.speak
    if not found:
        out.line(speak("Nothing is owed."), "good")
        return
    out.line(speak("Who owes what"), "head")
    heads = (speak("job"), speak("customer"), speak("due since"), speak("due"), speak("open in all"))
    good = [one for one in found if not one.wrong]
    cells = [(o.number, o.customer, _day(o.since, out), out.dollars(o.due), out.dollars(o.owed)) for o in good]
    due, owed = sum((o.due for o in good), Decimal(0)), sum((o.owed for o in good), Decimal(0))
    out.table(heads, [*cells, (speak("all"), "", "—", out.dollars(due), out.dollars(owed))], right=(3, 4))
    for one in found:
        if one.wrong:
            out.line(f"{one.job_file}: {out.say(one.wrong)}", "bad")


def _day(when: date | None, words: Words) -> str:
    return words.day(when) if when else "—"


def _entry(entry: Entry, words: Words) -> tuple[str, ...]:
    amount = words.dollars(-entry.amount if entry.kind == "credit" else entry.amount)
    kind = words.term(SAID.get(entry.kind, entry.kind))
    return _day(entry.day, words), kind, words.term(entry.text), amount, entry.reference


def _balance(out: Layout, state: Money, on: date) -> None:
    speak, due, when, look = out.speak, state.due(on), out.day(on), "head"
    owed = out.dollars(abs(state.balance))
    if state.balance < 0:
        said, look = speak("Paid too much: {amount} goes back.", amount=owed), "bad"
    elif state.balance == Decimal(0):
        said, look = speak("Nothing is owed."), "good"
    elif due > 0:
        part = out.dollars(due)
        said = speak("Still owed: {amount}; {part} of it is due by {day}.", amount=owed, part=part, day=when)
    else:
        said = speak("Still owed: {amount}; nothing of it is due by {day}.", amount=owed, day=when)
    out.lines(folded(said, out.columns), look)
