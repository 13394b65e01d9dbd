"""A problem of a log line in, one short line that says what to write out."""

import re

from estimator.cli.reader import told
from estimator.model.problem import Problem
from estimator.model.say import Say

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
    wrong, write = told(problem.wrong), told(problem.write)
    quoted = re.findall(r"“(.*?)”", wrong)
    if problem.code in _SHORT and (quoted or "{word}" not in _SHORT[problem.code].text):
        return told(_SHORT[problem.code]).replace("{word}", quoted[0] if quoted else "")
    example = re.search(r"`([^`]+)`", write)
    text = wrong.rstrip(".")
    return f"{text}: {example[1]}" if example else f"{text}. {write}"


def in_full(problem: Problem) -> str:
    return f"{told(problem.wrong)} {told(problem.write)}"
