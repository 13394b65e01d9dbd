"""A line of the job in, its log typed line by line out: one prompt, one line of answer, saved after each."""

from dataclasses import replace
from itertools import zip_longest

from estimator.cli.interview import log_files, reply
from estimator.cli.interview.answering import asked_aloud
from estimator.cli.interview.commands import AGAIN, ANSWER, DONE, LEAVE, TEACH, in_english
from estimator.cli.interview.job_file import JobFile
from estimator.cli.interview.line_edit import STRUCK, Edit, edited, numbered, read_edit
from estimator.cli.interview.log_account import account
from estimator.cli.interview.log_replies import greet, helped, listed, short, to_mend
from estimator.cli.interview.own_words import FirmWords, Lessons, Rows, lesson, why_not, words_of
from estimator.cli.interview.rows import ASKED_CODES, REMARK, taken_up, typed, without_last
from estimator.cli.interview.rows import Typed as TypedLog
from estimator.cli.interview.sheet import read
from estimator.cli.interview.steps import Step, item_of
from estimator.cli.interview.terminal import Terminal
from estimator.cli.reader import for_reader
from estimator.fieldnotes.answers import YES, cleaned
from estimator.fieldnotes.logbook import Asked
from estimator.model.line import Line
from estimator.model.problem import CannotGoOn, Level, Problem
from estimator.model.say import Say

_STOP = ("quit", "exit", "q")
_FINISHED = ("done", "end of log", "finished")


def run(job: JobFile, step: Step, terminal: Terminal, words: FirmWords) -> str:
    """`done`, `leave`, or `go …`. Each line is on the disk before it is answered."""
    if "pass" in item_of(step, job.data):
        terminal.tell(Say.of("this line's passes stand in the job file itself; change them there"))
        return DONE
    name = log_files.name_of(job, step)
    log = taken_up(log_files.about(job, step, name), words_of(job), log_files.rows_of(job, step, name))
    greet(log, name, terminal)
    return _Session(job, step, terminal, name, log, words).run()


class _Session:
    def __init__(
        self, job: JobFile, step: Step, terminal: Terminal, name: str, log: TypedLog, words: FirmWords
    ) -> None:
        self.lessons = Lessons(words, terminal, f"{job.path.resolve()} {name}")
        self.job, self.step, self.terminal, self.name, self.log = job, step, terminal, name, log
        self.before: list[tuple[str, ...]] = []
        self.line: Line | None = log.sheet.line if log.rows else None
        self.warned = False

    def run(self) -> str:
        while True:
            text = self.terminal.ask(self._prompt(self.log.asked))
            if text is None:
                return LEAVE
            left = self._command(in_english(text.strip()))
            if left:
                return left

    def _prompt(self, asked: Asked | None) -> str:
        if asked is None:
            passes = self.log.sheet.log.passes
            no_pass = bool(passes) and passes[0].heading.access == "?"
            name = self.log.about.name
            return for_reader(Say.typed("{name} (no pass yet)", name=name)) + "> " if no_pass else f"{name}> "
        return f"  {for_reader(TEACH if asked.choices == (REMARK,) else ANSWER if asked.choices else AGAIN)}: "

    def _command(self, text: str) -> str:
        low = text.lower().rstrip(".!")
        if low in _STOP:
            return LEAVE
        if low in _FINISHED:
            return self._done()
        self.warned = False
        if low.startswith("go ") and not low[3:4].isdigit():
            return f"go {text[3:].strip()}"
        if low in ("?", "help"):
            helped(self.log, self.terminal)
        elif low == "undo":
            self._undo()
        elif low == "list":
            listed(self.log, self.terminal)
        elif edit := read_edit(text):
            self._edit(edit)
        elif not self._is_file(text):
            self._line(text)
        return ""

    def _keep(self) -> None:
        """What was typed so far, on the disk."""
        log_files.written(self.job, self.step, self.name, self.log.rows)

    # ── a line ────────────────────────────────────────────────────────────────────────────────

    def _line(self, text: str) -> None:
        before, asked = self.log.rows, self.log.asked
        taught = lesson(text, before[self.log.asking]) if asked else None
        if taught and (wrong := why_not(*taught)):
            self.terminal.tell(wrong, "bad")
            return
        own = list(self.lessons.words.used_in(text, before))
        for word, means in own:
            self.log = typed(self.log, f"{word} = {means}")
        self.log = typed(self.log, text)
        if self.log.rows != before:
            self.before.append(before)
            self._keep()
        self._answer(text)
        for word, means in own:
            self.terminal.tell(Say.typed("{word} = {means}, a word of your firm", word=word, means=means))
        if taught:
            self.lessons.taught(*taught)
        if self.log.taken_back:
            self.lessons.taken_back(self.log)

    def _forget(self, was: Rows) -> None:
        """Words of the firm that the log taught and no longer uses go with the line that explains them."""
        rows = self.lessons.without_unused(self.log.rows, was)
        if rows != self.log.rows:
            self.log = replace(self.log, rows=rows)
            self._keep()
            self.line = self.log.sheet.line

    def _answer(self, text: str) -> None:
        log, wide = self.log, self.terminal.columns
        if log.refused:
            self.terminal.tell(log.refused, "bad")
        elif log.asked is not None:
            asked_aloud(log.asked, self.terminal)
        elif log.taken_back:
            self.line = log.sheet.line
            self.terminal.tell(Say.typed("taken back: {taken_back}", taken_back=log.taken_back.strip()))
        elif log.row is not None:
            sheet = log.sheet
            more = [short(p) for p in (*log.problems, *self._unplaced())]
            said = reply.answer(sheet, log.row, wide, self.line, "; ".join(more))
            self.line = sheet.line
            if len(said) <= wide:
                self.terminal.say([said])
            else:
                self.terminal.tell(said.strip())

    def _unplaced(self) -> list[Problem]:
        row = self.log.row
        hanging = self.log.sheet.hanging
        return [p for p in hanging if row is not None and p.place.line == row + 1 and p.level is Level.ERROR]

    def _is_file(self, text: str) -> bool:
        """The name of a text file: what lies beside the job is read, a name of nothing there is told the nearest."""
        if not log_files.looks_like_a_file(text):
            return False
        there = log_files.beside(self.job)
        if text in there:
            self._read_file(text)
            return True
        self.terminal.tell(log_files.no_such_file(self.job, text, there), "bad")
        return True

    def _read_file(self, name: str) -> None:
        """The file becomes the line's log, with what was typed so far at its end; asked for where something was."""
        typed_so_far = [row for row in self.log.rows if not log_files.looks_like_a_file(row)]
        if typed_so_far and name != self.name:
            answer = self.terminal.ask(
                "  " + for_reader(Say.typed("Read {name}, and put what is typed here after it", name=name)) + " [yes]: "
            )
            if answer is None or cleaned(answer).lower() not in ("", *YES):
                self.terminal.tell(Say.typed("{name} is not read; the log goes on as it was", name=name))
                return
        try:
            rows = log_files.rows_of_file(self.job, name)
        except CannotGoOn as stop:
            self.terminal.tell(stop.problems[0].wrong, "bad")
            return
        if name == self.name:
            self.terminal.tell(Say.typed("{name} is this log", name=name))
            return
        self.before, self.name = [], name
        self.log = TypedLog(log_files.about(self.job, self.step, name), self.log.words, (*rows, *typed_so_far))
        log_files.written(self.job, self.step, name, self.log.rows)
        self.line = self.log.sheet.line
        greet(self.log, name, self.terminal)

    def _edit(self, edit: Edit) -> None:
        """Lines in the middle, struck, or one written anew; without a number all lines with theirs."""
        if not edit.rows:
            self.terminal.say(line[: self.terminal.columns] for line in numbered(self.log.rows))
            return
        new = edited(self.log, edit)
        if isinstance(new, Say):
            self.terminal.tell(new, "bad")
            return
        was = self.log.rows
        self.before.append(was)
        self.log = new
        self._keep()
        if edit.strikes:
            self.line = self.log.sheet.line
            for row in edit.rows:
                self.terminal.tell(Say.typed("struck: {struck}", struck=self.log.rows[row].removeprefix(STRUCK)))
            self._forget(was)
            return
        self._answer(edit.text)
        if not self.log.asked:
            self._forget(was)

    # ── undo, done ──────────────────────────────────────────────────────────────────────

    def _undo(self) -> None:
        if not self.log.rows:
            self.terminal.tell(Say.of("nothing to take back"))
            return
        was = self.log.rows
        last = without_last(self.log)
        self.log = TypedLog(last.about, last.words, self.before.pop() if self.before else last.rows)
        self._keep()
        self.line = self.log.sheet.line
        changed = [(row or "", now or "") for row, now in zip_longest(was, self.log.rows) if row != now]
        gone, again = changed[0] if changed else ("", "")
        fewer = len(self.log.rows) < len(was)
        self.terminal.tell(
            Say.typed("taken back: {gone}", gone=gone.strip())
            if fewer
            else Say.typed("again as it was: {again}", again=again.strip())
        )
        self._forget(was)

    def _done(self) -> str:
        """What is still to mend is said once; the second `done` leaves it so."""
        self.log = read_on(self.log)
        sheet = read(self.log.rows, self.log.about, self.log.words)
        wrong = [
            p for p in (*sheet.problems, *sheet.hanging) if p.level is not Level.WARNING and p.code not in ASKED_CODES
        ]
        if (wrong or sheet.not_read) and not self.warned:
            self.warned = True
            to_mend(sheet.not_read, wrong, self.terminal)
            return ""
        if sheet.readings:
            self.terminal.tell(account(sheet.line, self.name, len(self.log.rows)))
        return DONE


def read_on(log: TypedLog) -> TypedLog:
    """The log with no question open."""
    return TypedLog(log.about, log.words, log.rows)
