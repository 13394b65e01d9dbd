"""The user's own settings file in, the tables and the language to use where the command line names none out.

The file lies where each system keeps such files. Two keys:

    tables = "/home/ines/prices"      # a folder of CSV files or one workbook
    language = "es_US"                # en_US or es_US
"""

import os
from pathlib import Path

from estimator.cli.problems import OWN_SETTINGS
from estimator.model.frozen import Frozen
from estimator.model.languages import LANGUAGES
from estimator.model.problem import CannotGoOn, Place
from estimator.model.say import Say

VARIABLE = "ESTIMATOR_SETTINGS"
NAME = "settings.toml"
KEYS = ("tables", "language")


class OwnSettings(Frozen):
    """What the user wants where nothing else is said; `tables` None: the demo's."""

    tables: Path | None = None
    language: str = LANGUAGES[0]


def settings_path() -> Path:
    """The file named in ESTIMATOR_SETTINGS, else the one in the system's own place for a user's settings."""
    if named := os.environ.get(VARIABLE):
        return Path(named)
    from platformdirs import user_config_path

    return user_config_path("estimator", appauthor=False) / NAME


def own_settings() -> OwnSettings:
    """Errors: CannotGoOn for a file that is there and cannot be used; a missing one is no error."""
    path = settings_path()
    if not path.is_file():
        return OwnSettings()
    return _checked(path, _read(path))


def _read(path: Path) -> dict[str, object]:
    import tomllib

    try:
        return tomllib.loads(path.read_text(encoding="utf-8-sig"))
    except (OSError, ValueError) as error:
        raise _unusable(path, str(error).rstrip(".")) from None


def _checked(path: Path, held: dict[str, object]) -> OwnSettings:
    if unknown := [key for key in held if key not in KEYS]:
        raise _unusable(path, Say.of("{key} is no setting", key=unknown[0]))
    if wrong := [key for key, value in held.items() if not isinstance(value, str) or not value.strip()]:
        raise _unusable(path, Say.of("{key} is no text in quotes", key=wrong[0]))
    language = str(held.get("language", LANGUAGES[0]))
    if language not in LANGUAGES:
        raise _unusable(path, Say.of("there are no texts in {language}", language=language))
    return OwnSettings(_tables(path, str(held["tables"])) if "tables" in held else None, language)


def _tables(settings: Path, named: str) -> Path:
    """`~` is the user's own folder; a name that does not begin at the root is looked for beside the settings file."""
    return settings.parent / Path(named).expanduser()


def _unusable(path: Path, said: Say | str) -> CannotGoOn:
    return CannotGoOn(
        OWN_SETTINGS(
            Place(file=str(path)), said=said, languages=Say.of("{one} or {two}", one=LANGUAGES[0], two=LANGUAGES[1])
        )
    )
