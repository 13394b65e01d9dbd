"""A file larger than any notes; too large to lie here."""

from estimator.fieldnotes.textfile import LARGEST_MB, text_of
from estimator.model.problem import Place


def problems(folder):
    found = text_of(b"#" * (LARGEST_MB * 1024 * 1024 + 1), Place("job.toml"), "job.toml")
    fits = text_of(b"#" * (LARGEST_MB * 1024 * 1024), Place("job.toml"), "job.toml")
    assert isinstance(fits, str)
    return [found]
