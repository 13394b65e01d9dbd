"""A log that was ended in; what it still lacks for a price asked, the answers written into it, and how it was left out."""

from estimator.cli.interview import log_files
from estimator.cli.interview.commands import DONE, LEAVE, LEAVING, NO_MORE, NOBODY_KNOWS, TO_THE_LOG, in_english
from estimator.cli.interview.gaps import PICTURES, Gap, Rows, gaps
from estimator.cli.interview.job_file import JobFile
from estimator.cli.interview.log_replies import short
from estimator.cli.interview.sheet import read
from estimator.cli.interview.steps import Step, item_of
from estimator.cli.interview.terminal import Terminal
from estimator.cli.reader import for_reader
from estimator.fieldnotes.answers import Unread, cleaned
from estimator.model.problem import Level
from estimator.model.say import Say

OPEN = ("", "skip", *NO_MORE)
"""Answers that leave a question open, beside those by which nobody knows."""


def ask_gaps(job: JobFile, step: Step, words: dict[str, str], terminal: Terminal) -> str:
    """Each gap once. `done`, `leave`, `log` for back into it, or `go …`."""
    if "pass" in item_of(step, job.data):
        return DONE
    left_open: set[Say] = set()
    before: Say | None = None  # the question just asked: asked again it is short
    while True:
        name = log_files.name_of(job, step)
        rows, about = log_files.rows_of(job, step, name), log_files.about(job, step, name)
        sheet = read(rows, about, words)
        gap = next((gap for gap in gaps(sheet, _pictures(job)) if gap.text not in left_open), None)
        if gap is None:
            return DONE
        answer = terminal.question(for_reader(gap.text).partition(":")[0] if gap.text == before else gap.text, "")
        before = gap.text
        if answer is None:
            return LEAVE
        plain = in_english(cleaned(answer))
        low = plain.lower().rstrip(".!")
        if low in LEAVING:
            return LEAVE
        if low in ("back", "log", "undo"):
            return TO_THE_LOG
        if low.startswith("go "):
            return plain
        if low in ("?", "help"):
            _explain(gap, terminal)
            continue
        if low in OPEN or NOBODY_KNOWS.fullmatch(low):
            left_open.add(gap.text)
            continue
        new = gap.rows(plain)
        wrong: Say | str = new.wrong if isinstance(new, Unread) else _worse(rows, new, job, step, words)
        if wrong or isinstance(new, Unread):
            terminal.tell(wrong, "bad")
            continue
        log_files.written(job, step, name, new)
        terminal.tell("; ".join(row.strip() for row in new if row not in rows), "good")
        left_open.add(gap.text)


def _explain(gap: Gap, terminal: Terminal) -> None:
    terminal.tell(gap.why)
    terminal.tell(Say.of("Such as: {example}; Enter leaves it open, back goes to the log.", example=gap.example))


def _worse(rows: Rows, new: Rows, job: JobFile, step: Step, words: dict[str, str]) -> str:
    """What is wrong with the log only since these lines stand in it."""
    about = log_files.about(job, step, "log")
    before, after = (read(each, about, words) for each in (rows, new))
    known = {problem.wrong for problem in (*before.problems, *before.hanging)}
    errors = (p for p in (*after.problems, *after.hanging) if p.level is Level.ERROR and p.wrong not in known)
    return next((short(problem) for problem in errors), "")


def _pictures(job: JobFile) -> tuple[str, ...]:
    try:
        return tuple(sorted(p.name for p in job.path.parent.iterdir() if p.suffix.lower() in PICTURES and p.is_file()))
    except OSError:
        return ()
