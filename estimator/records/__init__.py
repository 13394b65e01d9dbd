"""A quote and its papers in, a revision folder out, whole or not at all; and back: what was issued, and what moved since.

A job file `larkspur.toml` has its revisions beside it in `larkspur/r1`, `larkspur/r2` and so on. Each holds `to send` (what
may leave the house), `internal` (what may not) and in the latter the record: the notes, the table rows and every line the
quote was made from. What stands in a revision folder is never written again.
"""

from estimator.records.problems import PROBLEMS as PROBLEMS
