"""A problem of a log line in, one short line that says what to write out."""

import re

from estimator.cli.interview.loose import DENIES
from estimator.model.problem import Problem

_SHORT: dict[str, str] = {
    "log/no-pass": "first say the pass: pass front cleanout to house, riser 28in",
    "log/flow": "which way? with flow, or against flow",
    "log/riser": "riser? such as riser 28in, or surface",
    "log/riser-none": "no riser said, so none is taken off: riser 22in, or surface",
    "log/amount": "“{0}”: how much? 30%, 2in or light",
    "log/bare-number": "“{0}” of what? 40%, 2in or at 5-7",
    "log/order": "“{0}” of what? the word goes first: hole 2in",
    "log/word": "“{0}” of what? the word goes first: blocked soft, hole 2in",
    "log/nothing": "what is there? hole 2in, roots 30% …",
    "log/no-reading": "no reading, so a note; type the reading",
    "log/same": "no reading to repeat yet",
    "log/comma-number": "“{0}”: a comma is no point, write {better}",
    "log/reading-in-inches": "“{0}” is inches; the reel reads feet",
    "log/heading-word": "“{0}” is not understood; after ; it is a remark",
    "log/pass-unplaced": "where does this pass begin? type one thing seen again: 12.1 = hole",
    "log/tie-unknown": "no earlier pass saw “{0}”",
}


def short(problem: Problem) -> str:
    """What is wrong and what to write, without the place."""
    quoted = re.findall(r"“(.*?)”", problem.wrong)
    if problem.code == "log/word" and quoted and DENIES.search(quoted[0]):
        return f"“{quoted[0]}”: type what is there; what is not goes after ;"
    if problem.code in _SHORT and (quoted or "{0}" not in _SHORT[problem.code]):
        better = quoted[0].replace(",", ".") if quoted else ""
        return _SHORT[problem.code].replace("{0}", quoted[0] if quoted else "").replace("{better}", better)
    example = re.search(r"`([^`]+)`", problem.write)
    text = problem.wrong.rstrip(".")
    return f"{text}: {example[1]}" if example else f"{text}. {problem.write}"


def in_full(problem: Problem) -> str:
    return f"{problem.wrong} {problem.write}"
