"""A folder and a terminal in; the fifty figures asked one by one and each written at once, with what the margin comes to, out."""

import re
from collections.abc import Callable
from dataclasses import dataclass, field, replace
from datetime import date
from pathlib import Path

from estimator.cli.first_written import NOTHING, UNREADABLE, Written, begun, left, questions_of
from estimator.cli.interview.commands import STOP, in_english
from estimator.cli.interview.terminal import Terminal
from estimator.cli.price_tables import readable_tables
from estimator.cli.views.words import Words
from estimator.cli.writing import new_folder
from estimator.model.problem import Problem
from estimator.model.say import Say, Typed, chained
from estimator.tables.csv_folder import csv_files
from estimator.tables.first_answers import answered, share_of_own
from estimator.tables.first_questions import OF_THE_MARGIN, Question, first_questions
from estimator.tables.overhead import CrewDayCost
from estimator.tables.read import demo_folder
from estimator.wording.say import capital, say

BACK, DONE = "back", "done"
YES, NO = frozenset({"y", "yes", "s", "si", "sí"}), frozenset({"", "n", "no", BACK, DONE})
CHECKED = re.compile(r"“(checked [^”]+)”")
IN_WORDS = {
    "wage": Say.of("wage"),
    "burden_percent": Say.of("what comes on top of the wage"),
    "cost": Say.of("cost"),
    "likely": Say.of("crew-hours"),
    "count": Say.of("how many"),
}
"""Columns as a sentence says them to who sees no table."""


@dataclass(slots=True)
class Talk:
    """Who types, the folder being filled, and what was answered since the start."""

    written: Written
    terminal: Terminal
    language: str
    job: Path | None = None
    mine: set[tuple[str, str, str]] = field(default_factory=set)

    @property
    def words(self) -> Words:
        return Words(self.language)

    @property
    def speak(self) -> Callable[..., str]:
        return self.words.speak

    def said(self, text: str, look: str = "") -> None:
        self.terminal.tell(text, look)

    def typed(self, prompt: str) -> str:
        """One line, its command in English; the end of the input is `done`."""
        line = self.terminal.ask(prompt)
        word = DONE if line is None else in_english(line.strip())
        return DONE if word.lower() in STOP else BACK if word.lower() == BACK else word


def talk(folder: Path, day: date, terminal: Terminal, language: str, job: Path | None = None) -> None:
    """Enter leaves a figure for later; `back` goes back; `done` or the end of the input stops. Whatever was typed is kept.

    With a job: the demo's figures that its price still rests on, instead of the fifty.

    Errors: CannotGoOn where the folder holds tables, or the job notes, that cannot be read; OSError.
    """
    if not folder.exists():
        new_folder(folder, csv_files(readable_tables(day, demo_folder())))
    readable_tables(day, folder)
    now = Talk(begun(folder, "", day, language), terminal, language, job)
    now.said(now.speak("Enter leaves a figure for later, back goes back, done stops. Every answer is kept at once."))
    now.said(
        now.speak(
            "The percent at a question is the cost that hangs on it. Labor hangs on its wages and on the hours of its tasks, so they overlap; labor counts as yours once both are."
        )
    )
    by = _name(now)
    now.written.own = replace(now.written.own, by=by)
    questions = list(_questions(now)) if by else []
    at = 0
    while 0 <= at < len(questions):
        typed = _ask(now, questions[at], at + 1, len(questions))
        if typed == DONE:
            break
        at += -1 if typed == BACK and at else 0 if typed == BACK else 1
        if at == len(questions) and job:
            asked = {_key(q) for q in questions}
            questions += [q for q in questions_of(job, folder) if _key(q) not in asked]
    _closing(now)


def _name(now: Talk) -> str:
    """Who signs the rows; "" where the input ends before."""
    while True:
        by = now.typed(now.speak("Your name, for the rows you change") + ": ")
        if by == DONE:
            return ""
        if by and by != BACK:
            return by
        now.said(now.speak("Write your name: each row you change says who changed it."), "bad")


def _questions(now: Talk) -> tuple[Question, ...]:
    """Those that are not the firm's own yet."""
    if now.job:
        return questions_of(now.job, now.written.own.folder)
    tables = now.written.tables
    return tuple(q for q in first_questions(tables) if not answered(q, tables))


def _key(question: Question) -> tuple[str, str, str]:
    return question.table, question.row, question.column


def _ask(now: Talk, question: Question, at: int, of: int) -> str:
    """One question until its answer is written or left; the word that moves on."""
    speak = now.speak
    percent = now.words.number(question.share)
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
        stands = now.written.standing(question)
        yours = _key(question) in now.mine
        shown = speak("yours: {now}", now=stands) if yours else speak("invented: {now}", now=stands)
        shown = speak("not said yet") if stands == NOTHING else shown
        answer = now.typed(f"  {shown} > ")
        if answer in ("", BACK, DONE):
            return answer
        while answer:
            taken, other = _taken(now, question, answer)
            if taken:
                now.mine.add(_key(question))
                for text in now.written.said_back(question, answer):
                    now.said(say(text, now.language))
                if question.row in OF_THE_MARGIN and (day := now.written.margin()):
                    _margin(now, day)
                return answer
            answer = other


def _taken(now: Talk, question: Question, typed: str) -> tuple[bool, str]:
    """Written where it can be read, with ""; else what is wrong is said, and nothing has changed: with another answer, where one was typed."""
    try:
        new, refused = now.written.take(question, typed)
    except ValueError:
        now.said(say(UNREADABLE, now.language), "bad")
        return False, ""
    return _asked_again(now, question, new, refused) if new else (True, "")


def _asked_again(now: Talk, question: Question, new: tuple[Problem, ...], refused: bool) -> tuple[bool, str]:
    """An error takes the answer back; a doubt may be kept, which the row's note then says. Neither yes nor no is another answer."""
    for wrong in dict.fromkeys(say(_in_words(problem.wrong), now.language) for problem in new):
        now.said(wrong, "bad")
    if refused:
        now.said(say(new[0].write, now.language))
        now.written.take_back()
        return False, ""
    typed = now.typed("  " + now.speak("Keep it? yes or no") + " > ")
    kept = typed.lower()
    if kept in YES:
        now.written.checked(question, tuple(m[1] for p in new if (m := CHECKED.search(str(p.write)))))
        return True, ""
    now.written.take_back()
    return False, "" if kept in NO else typed


def _in_words(wrong: Say) -> Say:
    """A problem with its column and its row as the reader's language calls them."""
    words = []
    for gap, value in wrong.words:
        plain = value.text if isinstance(value, Typed) else value
        if isinstance(plain, str) and gap in ("column", "item"):
            value = IN_WORDS.get(plain, Say.of(plain))
        words.append((gap, value))
    return Say(wrong.text, tuple(words))


def _margin(now: Talk, day: CrewDayCost) -> None:
    shown = {k: now.words.dollars(getattr(day, k)) for k in ("labor", "other", "overhead", "price")}
    now.said(
        now.speak(
            "A crew-day costs you {labor} of labor, {other} of material and machines, {overhead} of overhead.", **shown
        )
    )
    now.said(
        now.speak(
            "Sold at {price}, it leaves your profit: a margin of {percent}%.",
            price=shown["price"],
            percent=f"{day.margin_percent:f}",
        )
    )


def _closing(now: Talk) -> None:
    """How much of the cost is the firm's own now, what is left of a job, and where to go on."""
    speak, folder = now.speak, now.written.own.folder
    now.said("")
    share = f"{share_of_own(now.written.tables):.0f}"
    now.said(
        speak(
            "Your own figures now cover {percent}% of a usual job's cost: prices, and labor whose wages and hours are both yours.",
            percent=share,
        ),
        "head",
    )
    for one in left(now.job, folder) if now.job else ():
        words = {"letter": one.letter, "percent": f"{one.percent:.0f}"}
        now.said(speak("Option {letter}: {percent}% of the cost comes from demo figures.", **words))
        if one.largest:
            now.said("  " + speak("The largest: {rows}", rows=chained(one.largest, ", ")), "dim")
    if city := now.written.city:
        now.said(speak("In a job file there: jurisdiction = {city}", city=f'"{city}"'))
    now.said(speak("Look for mistakes: {check}", check=f"estimator tables check {folder}"))
    again = f"estimator tables start {folder}" + (f" --job {now.job}" if now.job else "")
    now.said(speak("Go on later: {again}", again=again))
