"""A line of the job with its log in, what is said of it when it ends out; and the names of the branches in all logs."""

from collections.abc import Mapping, Sequence

from estimator.cli.interview import log_files
from estimator.cli.interview.job_file import JobFile
from estimator.cli.interview.own_words import words_of
from estimator.cli.interview.sheet import About, read
from estimator.cli.interview.steps import Step, items
from estimator.cli.views.words import AS_NOTED
from estimator.fieldnotes.agreement import agreement
from estimator.fieldnotes.questions import SECTIONS
from estimator.model.line import Line
from estimator.model.problem import CannotGoOn
from estimator.model.profile import Profile
from estimator.model.remembered import remembered_by
from estimator.model.say import Say, Typed

number = AS_NOTED.number


def account(line: Line, name: str, rows: int) -> Say:
    """`22 lines in main.txt: 3 passes agree within 0.7 ft; not seen: 41–47 ft.`"""
    agree = agreement(line)
    apart = Say.of("agree within {apart} ft", apart=number(agree[1])) if agree else ""
    unseen = [f"{number(part.from_ft)}–{number(part.to_ft)}" for part in Profile(line).not_inspected]
    dark = Say.typed("; not seen: {unseen} ft", unseen=", ".join(unseen)) if unseen else ""
    count, words = len(line.passes), {"rows": rows, "name": Typed(name), "apart": apart, "dark": dark}
    if count == 1:
        return Say.of("{rows} lines in {name}: 1 pass {apart}{dark}.", **words)
    return Say.of("{rows} lines in {name}: {count} passes {apart}{dark}.", count=count, **words)


def branches(job: JobFile) -> tuple[str, ...]:
    """The names of branches in the logs there are, for what joins and what a test covers."""
    section = next(s for s in SECTIONS if s.table == "line")
    out: list[str] = []
    for index in range(len(items(job.data, "line"))):
        step = Step(section, index, section.questions[0])
        try:
            name = log_files.name_of(job, step)
            out += _branches(log_files.rows_of(job, step, name), log_files.about(job, step, name), words_of(job))
        except CannotGoOn:
            continue
    return tuple(dict.fromkeys(out))


@remembered_by(lambda rows, about, words: (tuple(rows), about, tuple(words.items())))
def _branches(rows: Sequence[str], about: About, words: Mapping[str, str]) -> tuple[str, ...]:
    """The names of the branches in one log, which is read again where it, its line or the firm's words have changed."""
    return tuple(m.name for m in read(rows, about, words).line.marks if m.word == "branch" and m.name)
