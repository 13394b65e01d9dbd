"""A question that was answered in; the one that is asked next, and the one the interview has come to, out."""

from typing import TYPE_CHECKING

from estimator.cli.interview.job_file import JobFile
from estimator.cli.interview.log_account import branches
from estimator.cli.interview.steps import Step, answer_of, failed_branches, item_of, items, number_of
from estimator.cli.interview.terminal import Terminal
from estimator.model.say import Say

if TYPE_CHECKING:
    from estimator.cli.interview.interview import Interview

END = "end"


def failed_branch(job: JobFile, terminal: Terminal) -> str:
    """A branch that failed its own test and is no line yet is put down as one, for it has a size, a pipe and a length: its first question, or ""."""
    name = next(failed_branches(job.data, branches(job)), "")
    if not name:
        return ""
    index = len(items(job.data, "line"))
    job.put(("line", index), {"name": name, "joins": name})
    terminal.tell(Say.typed("{name} failed its test and has no line of its own: its pipe is asked for now", name=name))
    return f"line.{index}.size"


def next_after(talk: "Interview", step: Step, asked: set[str]) -> tuple[str, str]:
    """What is asked after this, and what the interview has come to; `asked` are the questions before the answer."""
    all_steps = talk.steps()
    here = number_of(step.id, all_steps)
    came_to = len(all_steps) if talk.job.next_id == END else number_of(talk.job.next_id, all_steps)
    blank = [n for n, s in enumerate(all_steps) if answer_of(s, talk.job.data) is None and n != here]
    if here == came_to:
        following = next((all_steps[n].id for n in blank if n > here), END)
        talk.walking, talk.adding = False, ""
        return following, following
    if talk.walking:
        between = [s for n, s in enumerate(all_steps) if here < n < came_to and not (s.begins and n in blank)]
        talk.walking = bool(between)
        return (between[0].id if between else talk.job.next_id), talk.job.next_id
    new = [
        n for n in blank if all_steps[n].id not in asked and (step.index is None or all_steps[n].table == step.table)
    ]
    same = new or [n for n in blank if step.index is not None and all_steps[n].table == step.table]
    later = [n for n in same if n > here] or [n for n in same if all_steps[n].question.needed]
    if step.begins and step.id in asked and item_of(step, talk.job.data):
        talk.adding = step.section.table
    if not later and talk.adding == step.section.table and not (step.begins and here in blank):
        more = [n for n in blank if all_steps[n].begins and all_steps[n].section is step.section]
        later, talk.adding = more, ""
    return (all_steps[later[0]].id if later else talk.job.next_id), talk.job.next_id
