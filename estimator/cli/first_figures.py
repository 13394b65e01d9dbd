"""A folder and a terminal in; the fifty figures asked one by one and each written at once, with what the margin comes to, out."""

import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date
from decimal import Decimal, InvalidOperation
from pathlib import Path

from estimator.cli.interview.terminal import Terminal
from estimator.cli.job_figures import left, questions_of
from estimator.cli.tables_asked import readable_tables, tables_for
from estimator.cli.views.words import dollars, number
from estimator.cli.writing import new_folder
from estimator.model.problem import Level, Problem
from estimator.tables.as_csv import csv_files
from estimator.tables.first_answers import members_of, share_of_own, written_values
from estimator.tables.first_questions import CITY, CREW_DAYS, OVERHEAD, PROFIT, Question, first_questions
from estimator.tables.overhead import crew_day_cost
from estimator.tables.own_csv import OwnTables
from estimator.tables.read import demo_folder
from estimator.tables.tables import Tables
from estimator.tables.whose import own_rows
from estimator.wording.say import capital, say, speaker

BACK, DONE = "back", "done"
YES, NO = frozenset({"y", "yes", "s", "si", "sí"}), frozenset({"", "n", "no", BACK, DONE})
CHECKED = re.compile(r"“(checked [^”]+)”")


@dataclass(slots=True)
class Talk:
    """The folder being filled, who types, and the three figures from which the margin is computed."""

    own: OwnTables
    terminal: Terminal
    language: str
    computed: dict[str, Decimal] = field(default_factory=dict)
    city: str = ""
    job: Path | None = None
    mine: set[Question] = field(default_factory=set)

    def said(self, text: str, look: str = "") -> None:
        self.terminal.tell(text, look)


def talk(folder: Path, day: date, terminal: Terminal, language: str, job: Path | None = None) -> None:
    """Enter leaves a figure for later; `back` goes back; `done` or the end of the input stops. Whatever was typed is kept.

    With a job: the demo's figures that its price still rests on, instead of the fifty.

    Errors: CannotGoOn where the folder holds tables, or the job notes, that cannot be read; OSError.
    """
    speak = speaker(language)
    if not folder.exists():
        new_folder(folder, csv_files(readable_tables(day, demo_folder())))
    tables = readable_tables(day, folder)
    terminal.tell(speak("Enter leaves a figure for later, back goes back, done stops. Every answer is kept at once."))
    by = (terminal.ask(speak("Your name, for the rows you change") + ": ") or "").strip() or "office"
    now = Talk(OwnTables(folder, by, day), terminal, language, job=job)
    questions = list(questions_of(job, folder)) if job else _of_the_fifty(tables)
    at = 0
    while 0 <= at < len(questions):
        typed = _ask(now, questions[at], at + 1, len(questions))
        if typed == DONE:
            break
        at += -1 if typed == BACK and at else 1
    _closing(now, folder, day)


def _of_the_fifty(tables: Tables) -> list[Question]:
    """Those that are not the firm's own yet; who is in a crew is always asked, as a crew is no one row."""
    own = own_rows(tables)
    return [q for q in first_questions(tables) if (q.table, q.row) not in own or q.column == "count"]


def _ask(now: Talk, question: Question, at: int, of: int) -> str:
    """One question until its answer is written or left; the word that moves on."""
    speak = speaker(now.language)
    percent = number(question.share, language=now.language)
    moves = (
        speak("Share of this job's cost: {percent}%.", percent=percent)
        if now.job
        else speak("Share of a usual job's cost: {percent}%.", percent=percent)
    )
    share = f" {moves}" if question.share else ""
    now.said("")
    now.said(f"{at}/{of}  {capital(say(question.asks, now.language))}", "head")
    now.said(f"{say(question.decides, now.language)}{share}", "dim")
    while True:
        stands = _standing(now, question)
        yours = question in now.mine
        shown = speak("yours: {now}", now=stands) if yours else speak("invented: {now}", now=stands)
        typed = now.terminal.ask(f"  {shown} > ")
        if typed is None or typed.strip().lower() == DONE:
            return DONE
        if typed.strip().lower() in ("", BACK):
            return typed.strip().lower()
        answer = typed.strip()
        while answer:
            taken, answer = _taken(now, question, answer)
            if taken:
                now.mine.add(question)
                return typed.strip()


def _standing(now: Talk, question: Question) -> str:
    """What stands in the tables now; of what is computed, what was typed."""
    if question.table == "crews":
        members = (
            (r.count, r.role)
            for r in readable_tables(now.own.day, now.own.folder).crew_members
            if r.crew == question.row
        )
        return ", ".join(f"{number(count)} {role}" for count, role in members)
    if question.row in (OVERHEAD, CREW_DAYS, PROFIT):
        return str(now.computed.get(question.row, "—"))
    if question.row == CITY:
        return now.own.value("places", now.city, question.column) or "—" if now.city else "—"
    row = question.row or "lead plumber"
    value = now.own.value(question.table, row, question.column)
    if question.table == "equipment" and now.own.value("equipment", row, "unit") == "day":
        speak = speaker(now.language)
        return f"{value} {speak('own') if now.own.value('equipment', row, 'own') == 'yes' else speak('rented')}"
    return value


def _taken(now: Talk, question: Question, typed: str) -> tuple[bool, str]:
    """Written where it can be read, with ""; else what is wrong is said, and nothing has changed: with another answer, where one was typed."""
    if question.row in (OVERHEAD, CREW_DAYS, PROFIT):
        return _computed(now, question.row, typed), ""
    before = now.own.text(question.table)
    known = set(map(str, tables_for(now.own.day, now.own.folder)[1]))
    try:
        _write(now, question, typed)
    except ValueError:
        now.said(speaker(now.language)("Write how many and who, such as: 1 lead plumber, 1 helper"), "bad")
        return False, ""
    tables, problems = tables_for(now.own.day, now.own.folder)
    new = [p for p in problems if str(p) not in known and (tables is None) == (p.level is Level.ERROR)]
    if not new:
        return True, ""
    return _asked_again(now, question, new, before, refused=tables is None)


def _asked_again(now: Talk, question: Question, new: list[Problem], before: str, refused: bool) -> tuple[bool, str]:
    """An error takes the answer back; a doubt may be kept, which the row's note then says. Neither yes nor no is another answer."""
    speak = speaker(now.language)
    for wrong in dict.fromkeys(say(problem.wrong, now.language) for problem in new):
        now.said(wrong, "bad")
    checked = [m[1] for p in new if (m := CHECKED.search(str(p.write)))]
    if not refused:
        typed = (now.terminal.ask("  " + speak("Keep it? yes or no") + " > ") or "").strip()
        kept = typed.lower()
        if kept in YES:
            if checked and question.row and question.table != "crews":
                now.own.set(question.table, question.row, {"note": "; ".join(checked)})
            return True, ""
        now.own.put(question.table, before)
        return False, "" if kept in NO else typed
    now.said(say(new[0].write, now.language))
    now.own.put(question.table, before)
    return False, ""


def _write(now: Talk, question: Question, typed: str) -> None:
    if question.table == "crews":
        roles = [r.role for r in readable_tables(now.own.day, now.own.folder).current("roles")]  # type: ignore[attr-defined]
        now.own.crew(question.row, members_of(typed, roles))
    elif question.row == CITY:
        if question.column == "text":
            now.city = " ".join(typed.lower().replace(",", " ").split())
        now.own.copy("places", "unknown", now.city or CITY, {question.column: typed, **_SOURCE})
        now.city = now.city or CITY
    elif question.column == "burden_percent":
        for role in _own_roles(now):
            now.own.set("roles", role, {"burden_percent": typed})
    else:
        now.own.set(question.table, question.row, _values(now, question, typed))


def _own_roles(now: Talk) -> list[str]:
    """Roles whose wage is the firm's: only those take its burden, so that no invented wage passes for its own."""
    own = own_rows(readable_tables(now.own.day, now.own.folder))
    return sorted(row for table, row in own if table == "roles")


_SOURCE: Mapping[str, str] = {"source": "typed in tables start; write who said so"}


def _values(now: Talk, question: Question, typed: str) -> Mapping[str, str]:
    if question.column == "wage" and (others := _own_roles(now)):
        return {"wage": typed, "burden_percent": now.own.value("roles", others[0], "burden_percent")}
    standing = {c: now.own.value(question.table, question.row, c) for c in ("low", "likely", "high")}
    return written_values(question, typed, standing)


def _computed(now: Talk, row: str, typed: str) -> bool:
    """One of the three figures behind the margin; when the last is in, the margin is shown and written."""
    speak = speaker(now.language)
    try:
        amount = Decimal(typed.replace("$", "").replace(",", "").replace("%", ""))
    except InvalidOperation:
        amount = Decimal("NaN")
    least, most = (0, 90) if row == PROFIT else (1, 100_000_000)
    if not amount.is_finite() or not least <= amount <= most:
        now.said(speak("Write a number from {least} to {most}.", least=str(least), most=str(most)), "bad")
        return False
    now.computed[row] = amount
    if {OVERHEAD, CREW_DAYS, PROFIT} <= set(now.computed):
        _margin(now)
    return True


def _margin(now: Talk) -> None:
    speak = speaker(now.language)
    overhead, days, profit = (now.computed[key] for key in (OVERHEAD, CREW_DAYS, PROFIT))
    day = crew_day_cost(overhead, days, profit, readable_tables(now.own.day, now.own.folder))
    shown = {k: dollars(getattr(day, k), language=now.language) for k in ("labor", "other", "overhead", "price")}
    now.said(
        speak(
            "A crew-day costs you {labor} of labor, {other} of material and machines, {overhead} of overhead.", **shown
        )
    )
    now.said(
        speak(
            "Sold at {price}, it leaves your profit: a margin of {percent}%.",
            price=shown["price"],
            percent=f"{day.margin_percent:f}",
        )
    )
    floor = min(Decimal(now.own.value("pricing", "own", "floor_margin_percent")), day.margin_percent)
    now.own.set(
        "pricing",
        "own",
        {"margin_percent": f"{day.margin_percent:f}", "floor_margin_percent": f"{floor:f}", "note": ""},
    )


def _closing(now: Talk, folder: Path, day: date) -> None:
    """How much of a usual job's cost is the firm's own now, and where to go on."""
    speak = speaker(now.language)
    share = share_of_own(readable_tables(day, folder))
    now.said("")
    now.said(
        speak(
            "Your own figures now cover {percent}% of a usual job's cost. Each quote shows its own share.",
            percent=f"{share:.0f}",
        ),
        "head",
    )
    for letter, demo in left(now.job, folder) if now.job else ():
        now.said(
            speak(
                "Option {letter}: {percent}% of the cost comes from demo figures.", letter=letter, percent=f"{demo:.0f}"
            )
        )
    if now.city:
        now.said(speak("In a job file there: jurisdiction = {city}", city=f'"{now.city}"'))
    now.said(speak("Look for mistakes: {check}", check=f"estimator tables check {folder}"))
    now.said(speak("Go on later: {again}", again=f"estimator tables start {folder}"))
