"""Where a job's money stands in, the office's lines out: payments, changes and credits, what came in, what is owed."""

from collections.abc import Sequence
from datetime import date
from decimal import Decimal

from estimator.cli.views.screen import Row
from estimator.cli.views.table import folded, table
from estimator.cli.views.vocabulary import term
from estimator.cli.views.words import ENGLISH, day, dollars
from estimator.model.say import Say
from estimator.pricing.ledger import Entry
from estimator.records.afterwards.money import TAX_ON, Money
from estimator.records.afterwards.owing import Owing
from estimator.wording.say import say, speaker

SAID = {"payment": "received"}
"""What came in stands as it came, above nothing."""


def rows(state: Money, on: date, columns: int, language: str = ENGLISH, taxed: Say | None = None) -> list[Row]:
    """Two tables and the balance, as on that day; `taxed` says where sales tax on changes comes from."""
    tax = say(taxed, language) if taxed and any(e.text.startswith(TAX_ON) for e in state.later) else ""
    return [
        *_agreed(state, columns, language),
        *_later(state, columns, language),
        *(Row(line, "dim") for line in folded(tax, columns) if line),
        Row(""),
        *_balance(state, on, columns, language),
    ]


def owing_rows(found: Sequence[Owing], columns: int, language: str = ENGLISH) -> list[Row]:
    """Who owes what since when, over all jobs, with the sums."""
    speak = speaker(language)
    if not found:
        return [Row(speak("Nothing is owed."), "good")]
    heads = (speak("job"), speak("customer"), speak("due since"), speak("due"), speak("open in all"))
    good = [one for one in found if not one.wrong]
    cells = [(one.number, one.customer, *_sums(one.since, one.due, one.owed, language)) for one in good]
    due, owed = (sum((getattr(one, n) for one in good), Decimal(0)) for n in ("due", "owed"))
    cells.append((speak("all"), "", *_sums(None, due, owed, language)))
    body = table(heads, cells, columns, right=(3, 4))
    wrong = [Row(f"{one.job_file}: {say(one.wrong, language)}", "bad") for one in found if one.wrong]
    return [Row(speak("Who owes what"), "head"), *(Row(text) for text in body), *wrong]


def _sums(since: date | None, due: Decimal, owed: Decimal, language: str) -> tuple[str, str, str]:
    return day(since, language) if since else "—", dollars(due, language=language), dollars(owed, language=language)


def _agreed(state: Money, columns: int, language: str) -> list[Row]:
    speak = speaker(language)
    heads = (speak("payment"), speak("amount"), speak("due on"), speak("came in"), speak("open"))
    cells = []
    for asked in state.asked:
        paid = state.paid_on(asked.name)
        amounts = [dollars(amount, language=language) for amount in (asked.amount, paid, asked.amount - paid)]
        due = day(asked.due, language) if asked.due else "—"
        cells.append((term(asked.name, language), amounts[0], due, *amounts[1:]))
    body = table(heads, cells, columns, right=(1, 3, 4))
    return [Row(speak("Payments and change orders"), "head"), *(Row(text) for text in body)]


def _later(state: Money, columns: int, language: str) -> list[Row]:
    if not state.later:
        return []
    speak = speaker(language)
    heads = (speak("day"), speak("kind"), speak("what"), speak("amount"), speak("reference"))
    body = table(heads, [_entry(entry, language) for entry in state.later], columns, right=(3,))
    return [Row(""), Row(speak("Noted since"), "head"), *(Row(text) for text in body)]


def _entry(entry: Entry, language: str) -> tuple[str, ...]:
    amount = dollars(-entry.amount if entry.kind == "credit" else entry.amount, language=language)
    when = day(entry.day, language) if entry.day else "—"
    return when, term(SAID.get(entry.kind, entry.kind), language), term(entry.text, language), amount, entry.reference


def _balance(state: Money, on: date, columns: int, language: str) -> list[Row]:
    speak, due, when = speaker(language), state.due(on), day(on, language)
    owed = dollars(abs(state.balance), language=language)
    if state.balance < 0:
        said, look = speak("Paid too much: {amount} goes back.", amount=owed), "bad"
    elif state.balance == Decimal(0):
        said, look = speak("Nothing is owed."), "good"
    elif due > 0:
        part = dollars(due, language=language)
        said, look = (
            speak("Still owed: {amount}; {part} of it is due by {day}.", amount=owed, part=part, day=when),
            "head",
        )
    else:
        said, look = speak("Still owed: {amount}; nothing of it is due by {day}.", amount=owed, day=when), "head"
    return [Row(line, look) for line in folded(said, columns)]
