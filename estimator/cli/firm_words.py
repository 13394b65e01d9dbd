"""The price tables named on the command line in, where the firm that they belong to keeps its own words for field notes out."""

from pathlib import Path

from estimator.cli.interview.own_words import NAME, FirmWords
from estimator.cli.own_settings import settings_path
from estimator.cli.tables_asked import firms_own


def firm_words(asked: Path | None) -> FirmWords:
    """Beside the firm's tables; where only the demo's are used, beside the user's settings file."""
    tables = firms_own(asked)
    if tables is None:
        return FirmWords(settings_path().parent / NAME)
    return FirmWords((tables if tables.is_dir() else tables.parent) / NAME)
