"""Step 2: a Job in; what the findings mean out: needs with level and urgency, evidence, questions."""

from estimator.diagnosis.diagnose import diagnose

__all__ = ["diagnose"]
