"""A job whose logs have lines that are asked back in; each asked at the terminal, its answer in the log on the disk, out."""

from dataclasses import replace
from pathlib import Path

from estimator.cli.interview import log_files
from estimator.cli.interview.job_file import JobFile, locked_job
from estimator.cli.interview.own_words import FirmWords, lesson, why_not, words_of
from estimator.cli.interview.rows import REMARK, answered, put, too_long
from estimator.cli.interview.rows import Typed as TypedLog
from estimator.cli.interview.steps import Step, items
from estimator.cli.interview.terminal import Terminal
from estimator.cli.reader import for_reader
from estimator.fieldnotes.answers import LONGEST, YES, cleaned
from estimator.fieldnotes.logbook import Asked
from estimator.fieldnotes.questions import SECTIONS
from estimator.model.say import Say, Typed

PROMPT = Say.of("number, - for a remark, the line again, or Enter to leave it open")

KEEP = Say.of("keep it as a remark")


def asked_aloud(asked: Asked, terminal: Terminal) -> None:
    """The question, with what may be meant, best first. A line that may be gas says so."""
    terminal.tell(f"? {for_reader(asked.question)}", "bad" if asked.danger else "")
    for n, choice in enumerate(asked.choices, start=1):
        terminal.tell(f"  {n} {for_reader(KEEP) if choice == REMARK else choice}")


def answer_all(path: Path, terminal: Terminal, words: FirmWords | None = None) -> int:
    """Asks what is open in each log of the job; return how many lines were answered. Errors: CannotGoOn, OSError."""
    with locked_job(path) as ours:
        if not ours:
            terminal.tell(Say.of("the job is open in an interview; answer there"), "bad")
            return 0
        job = JobFile(path)
        section = next(s for s in SECTIONS if s.table == "line")
        done = 0
        for index, item in enumerate(items(job.data, "line")):
            log = item.get("log", "")
            if "pass" in item or not isinstance(log, str) or not log.strip():
                continue
            more, left = _Log(job, Step(section, index, section.questions[0]), terminal, words or FirmWords()).ask()
            done += more
            if left:
                break
        return done


class _Log:
    """The log of one line. What is left open stays as it was typed, and the rest of the log with it."""

    def __init__(self, job: JobFile, step: Step, terminal: Terminal, firm: FirmWords) -> None:
        self.firm, self.refused = firm, set[str]()
        self.job, self.step, self.terminal = job, step, terminal
        self.name = log_files.name_of(job, step)
        about, rows = log_files.about(job, step, self.name), log_files.rows_of(job, step, self.name)
        self.log = TypedLog(about, words_of(job), rows)

    def ask(self) -> tuple[int, bool]:
        """How many were answered, and whether the user went away."""
        done = 0
        left_open: set[str] = set()
        while asked := next((a for a in self.log.sheet.log.asked if a.text not in left_open), None):
            row = (asked.place.line or 1) - 1
            if not 0 <= row < len(self.log.rows):
                left_open.add(asked.text)
                continue
            self.terminal.tell(
                Say.of(
                    "{name}, line {row}: {typed}",
                    name=Typed(self.name),
                    row=row + 1,
                    typed=Typed(self.log.rows[row].strip()),
                )
            )
            if self._by_firm(row):
                done += 1
                continue
            asked_aloud(asked, self.terminal)
            said = self.terminal.ask(f"  {for_reader(PROMPT)}: ")
            if said is None or said.strip().lower() in ("q", "quit", "exit"):
                return done, True
            new = self._with(asked, row, said.strip())
            if new is None:
                left_open.add(asked.text)
            elif new.rows != self.log.rows:
                self.log = new
                log_files.written(self.job, self.step, self.name, new.rows)
                done += 1
        return done, False

    def _by_firm(self, row: int) -> bool:
        """A word of the firm is written into the log when somebody says so; Enter alone does not."""
        for word, means in self.firm.used_in(self.log.rows[row], self.log.rows):
            if word in self.refused:
                continue
            says = Say.typed("your firm says {word} = {means}; use it in this log, yes or no", word=word, means=means)
            if cleaned(self.terminal.ask(f"  {for_reader(says)}: ") or "").lower() in YES:
                rows = (*self.log.rows[:row], f"{word} = {means}", *self.log.rows[row:])
                self.log = replace(self.log, rows=rows)
                log_files.written(self.job, self.step, self.name, rows)
                return True
            self.refused.add(word)
        return False

    def _with(self, asked: Asked, row: int, said: str) -> TypedLog | None:
        """The log with the answer in it; None where it is left open."""
        if not said:
            return None
        if len(said) > LONGEST:
            self.terminal.tell(too_long(len(said)), "bad")
            return self.log
        if said.isdigit() and not 1 <= int(said) <= len(asked.choices):
            self.terminal.tell(Say.typed("there is no answer {said}", said=said), "bad")
            return self.log
        taught = lesson(said, self.log.rows[row])
        if taught and (wrong := why_not(*taught)):
            self.terminal.tell(wrong, "bad")
            return self.log
        if taught:
            self.firm.teach(*taught, f"{self.job.path.resolve()} {self.name}")
        return answered(self.log, asked, said) or put(
            self.log, row, "".join(c if c.isprintable() else " " for c in said)
        )
