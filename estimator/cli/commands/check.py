"""`estimator check`: the notes in, their problems, a drawing of each line and the questions for a return visit out.

At a terminal the log lines that are asked back are asked there and then; each answer goes into its log at once.
"""

from collections.abc import Sequence

from estimator.cli.arguments import AS_SET, AsJson, JobFile, Language, SetKeys, TablesFrom
from estimator.cli.guard import DONE, TO_MEND
from estimator.model.problem import Problem


def command(
    job: JobFile,
    tables: TablesFrom = None,
    changes: SetKeys = None,
    language: Language = AS_SET,
    as_json: AsJson = False,
) -> int:
    from estimator.cli.diagnosed_job import diagnosed
    from estimator.cli.views.check import write_check
    from estimator.cli.views.layout import in_window
    from estimator.cli.views.problems import as_data, tell
    from estimator.cli.views.screen import answer
    from estimator.model.problem import Level

    looked = diagnosed(job, tables, changes)
    if not as_json and not changes and _answered(job, looked.problems, tables):
        looked = diagnosed(job, tables, changes)
    out = in_window(language)
    if looked.job:
        write_check(out, looked.job, looked.diagnosis)
    problems = (*looked.problems, *looked.notices)
    answer({"job": looked.job, "diagnosis": looked.diagnosis, "problems": as_data(problems)}, as_json, out.rows)
    tell(problems)
    return TO_MEND if any(p.level is Level.ERROR for p in problems) else DONE


def _answered(job: JobFile, problems: Sequence[Problem], tables: TablesFrom) -> bool:
    """What is asked back is asked at the terminal; true when something was answered."""
    if not problems:
        return False
    from estimator.fieldnotes.logproblems import ASKED, GAS_ASKED

    if not any(p.code in (ASKED.code, GAS_ASKED.code) for p in problems):
        return False
    from estimator.cli.interview.answering import answer_all
    from estimator.cli.interview.own_words import firm_words
    from estimator.cli.interview.terminal import Terminal

    terminal = Terminal()
    return terminal.live and answer_all(job, terminal, firm_words(tables)) > 0
