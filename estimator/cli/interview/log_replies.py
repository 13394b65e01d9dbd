"""A log typed so far in; what is said of it out: where it goes on, its lines, help, its problems, and what is still to mend."""

import re
from collections.abc import Sequence

from estimator.cli.interview import reply
from estimator.cli.interview.commands import HELP
from estimator.cli.interview.rows import Typed as TypedLog
from estimator.cli.interview.terminal import Terminal
from estimator.cli.reader import for_reader, reader
from estimator.cli.views.check import write_line
from estimator.cli.views.layout import Layout
from estimator.cli.views.words import ENGLISH
from estimator.fieldnotes.echo import echo_line
from estimator.model.problem import Level, Problem
from estimator.model.say import Say, Typed


def greet(log: TypedLog, name: str, terminal: Terminal) -> None:
    if log.rows:
        terminal.tell(
            Say.typed(
                "{name} has {rows} lines; it goes on from there. Its last one: {last}",
                name=name,
                rows=len(log.rows),
                last=log.rows[-1].strip(),
            )
        )
    else:
        terminal.tell(
            Say.typed(
                "Type the log as the video runs. Begin with where the camera went in and which way: {run}. ? explains, done ends it. Or the name of a text file you have.",
                run="front cleanout to house, riser 24in",
            )
        )


def listed(log: TypedLog, terminal: Terminal) -> None:
    sheet, out = log.sheet, Layout(reader(), terminal.columns)
    if reader() == ENGLISH:
        out.lines(line[: out.columns] for line in echo_line(sheet.line))
    else:
        out.line()
        write_line(out, sheet.line)
    terminal.say(out.rows)
    for row in sheet.not_read:
        terminal.tell(Say.typed("? asked back: {row}", row=row), "bad")
    drawn = reply.strip(sheet.line, terminal.columns - 2)
    if drawn:
        terminal.tell(drawn)
        terminal.tell(reply.legend(sheet.line), "dim")


def helped(log: TypedLog, terminal: Terminal) -> None:
    for problem in log.problems[:1]:
        terminal.tell(in_full(problem))
    for text in HELP:
        terminal.tell(text)


def to_mend(not_read: Sequence[str], wrong: Sequence[Problem], terminal: Terminal) -> None:
    """What was asked back and not answered, then the first six other things, each with its line."""
    for row in not_read:
        terminal.tell(Say.typed("? asked back, kept as it is: {row}", row=row), "bad")
    for p in wrong[:6]:
        terminal.tell(
            Say.of("? line {line}: {p}", line=p.place.line, p=Typed(short(p))), "bad" if p.level is Level.ERROR else ""
        )
    terminal.tell(Say.of("Type what is missing, or done once more to leave it for later."))


_SHORT: dict[str, Say] = {
    "log/no-pass": Say.of("first say the pass: pass front cleanout to house, riser 28in"),
    "log/flow": Say.of("which way? with flow, or against flow"),
    "log/riser": Say.of("riser? such as riser 28in, or surface"),
    "log/riser-none": Say.of("no riser said, so none is taken off: riser 22in, or surface"),
    "log/heading-word": Say.of("“{word}” is not understood; after ; it is a remark"),
    "log/pass-unplaced": Say.of("where does this pass begin? type one thing seen again: 12.1 = hole"),
    "log/tie-unknown": Say.of("no earlier pass saw “{word}”"),
}


def short(problem: Problem) -> str:
    """What is wrong and what to write, without the place."""
    wrong, write = for_reader(problem.wrong), for_reader(problem.write)
    quoted = re.findall(r"“(.*?)”", wrong)
    if problem.code in _SHORT and (quoted or "{word}" not in _SHORT[problem.code].text):
        return for_reader(_SHORT[problem.code]).replace("{word}", quoted[0] if quoted else "")
    example = re.search(r"`([^`]+)`", write)
    text = wrong.rstrip(".")
    return f"{text}: {example[1]}" if example else f"{text}. {write}"


def in_full(problem: Problem) -> str:
    return f"{for_reader(problem.wrong)} {for_reader(problem.write)}"
