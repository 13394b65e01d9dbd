"""A job in; whether a pump pushes the sewage out, out: said of the house, or told by the name of a line or of where it ends."""

import re

from estimator.model.job import Job

TELLS = re.compile(r"\b(ejector|force[ -]?main|grinder|lift station|pump\w*|pressure line)\b", re.IGNORECASE)


def pumped(job: Job) -> bool:
    """Return whether sewage is pushed out under pressure; what was said of the house stands over the names."""
    if job.house.force_main is not None:
        return job.house.force_main
    return any(TELLS.search(f"{line.name} {line.ends}") for line in job.lines)
