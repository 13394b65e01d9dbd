"""Every kind of problem the field notes can have, in one tuple."""

from estimator.fieldnotes import (
    afterwards,
    assemble,
    build,
    checkform,
    contradictions,
    hang,
    joins,
    lines,
    logproblems,
    sights,
    spans,
    syntax,
    textfile,
    unlikely,
)
from estimator.model.problem import Kind

PROBLEMS: tuple[Kind, ...] = (
    *textfile.PROBLEMS,
    *syntax.PROBLEMS,
    *checkform.PROBLEMS,
    *build.PROBLEMS,
    *lines.PROBLEMS,
    *joins.PROBLEMS,
    *logproblems.PROBLEMS,
    *spans.PROBLEMS,
    *hang.PROBLEMS,
    *assemble.PROBLEMS,
    *sights.PROBLEMS,
    *contradictions.PROBLEMS,
    *unlikely.PROBLEMS,
    *afterwards.PROBLEMS,
)
