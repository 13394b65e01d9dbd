"""A problem of a log line in, one short line that says what to write out."""

import re

from estimator.model.problem import Problem

_SHORT: dict[str, str] = {
    "log/no-pass": "first say the pass: pass front cleanout to house, riser 28in",
    "log/flow": "which way? with flow, or against flow",
    "log/riser": "riser? such as riser 28in, or surface",
    "log/riser-none": "no riser said, so none is taken off: riser 22in, or surface",
    "log/heading-word": "“{0}” is not understood; after ; it is a remark",
    "log/pass-unplaced": "where does this pass begin? type one thing seen again: 12.1 = hole",
    "log/tie-unknown": "no earlier pass saw “{0}”",
}


def short(problem: Problem) -> str:
    """What is wrong and what to write, without the place."""
    quoted = re.findall(r"“(.*?)”", str(problem.wrong))
    if problem.code in _SHORT and (quoted or "{0}" not in _SHORT[problem.code]):
        return _SHORT[problem.code].replace("{0}", quoted[0] if quoted else "")
    example = re.search(r"`([^`]+)`", str(problem.write))
    text = str(problem.wrong).rstrip(".")
    return f"{text}: {example[1]}" if example else f"{text}. {problem.write}"


def in_full(problem: Problem) -> str:
    return f"{problem.wrong} {problem.write}"
