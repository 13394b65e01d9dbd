"""What comes after the signature in, small files beside the revisions out: hours as they turned out, and the job's money.

They stand in the job's folder as `actuals.json` and `money.json`; a revision folder is never touched.
"""

from estimator.records.afterwards.problems import PROBLEMS as PROBLEMS
