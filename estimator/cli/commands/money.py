"""`estimator money`: what fell due, what came in, changes and credits in; the balance and a plain CSV out; over a folder who owes."""

from pathlib import Path
from typing import Annotated

import typer

from estimator.cli.arguments import AS_SET, AsJson, Language, OnDayOrToday, TablesFrom

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
    from estimator.cli.tables_asked import readable_tables
    from estimator.cli.views.layout import in_window
    from estimator.cli.views.money import write_money, write_owing
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
