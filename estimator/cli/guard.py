"""A command in, the same command out with every way to go wrong turned into plain words and an exit code."""

import contextlib
import functools
import os
import sys
from collections.abc import Callable, Iterable, Mapping
from pathlib import Path

import typer

from estimator.cli.arguments import AS_SET
from estimator.model.problem import CannotGoOn
from estimator.model.say import Say, Typed

DONE, TO_MEND, WRONG_WORDS, FAULT, STOPPED = 0, 1, 2, 3, 130


def guarded(command: Callable[..., int | None]) -> Callable[..., None]:
    """Runs the command and leaves with its exit code; tracebacks only with ESTIMATOR_DEBUG=1."""

    @functools.wraps(command)
    def run(*given: object, **named: object) -> None:
        _sweep((*given, *named.values()))
        raise typer.Exit(_code(lambda: command(*given, **_with_language(named))))

    return run


def _sweep(given: Iterable[object]) -> None:
    """What a killed run left beside the files this command is about goes first, whichever command it is."""
    from estimator.disk.whole import sweep

    for path in (value for value in given if isinstance(value, Path)):
        for folder in {path.parent, path if path.is_dir() else path.with_suffix("")}:
            sweep(folder)


def _with_language(named: Mapping[str, object]) -> dict[str, object]:
    """The arguments as set; problems are told in the language that the command answers in."""
    from estimator.cli.reader import reads

    reads("")
    words = as_set(named)
    language = words.get("language")
    reads(language if isinstance(language, str) else "")
    return words


def as_set(named: Mapping[str, object]) -> dict[str, object]:
    """The arguments, with the language of the settings file where none was typed."""
    if named.get("language") != AS_SET:
        return dict(named)
    from estimator.cli.own_settings import own_settings

    return {**named, "language": own_settings().language}


def _code(call: Callable[[], int | None]) -> int:
    try:
        code = call() or DONE
        sys.stdout.flush()
        return code
    except typer.Exit as left:
        return left.exit_code
    except typer.BadParameter:
        raise
    except CannotGoOn as stop:
        _tell_problems(stop)
        return TO_MEND
    except BrokenPipeError:
        with contextlib.suppress(OSError):
            os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return DONE
    except KeyboardInterrupt:
        _last_words(STOPPED_BY_HAND, before="\n")
        return STOPPED
    except OSError as error:
        _last_words(in_plain_words(error))
        return TO_MEND
    except Exception as error:
        return _fault(error)


def _tell_problems(stop: CannotGoOn) -> None:
    from estimator.cli.views.problems import tell

    tell(stop.problems)


def in_plain_words(error: OSError) -> Say:
    """What the machine refused, as one would say it across a desk."""
    name = Typed(str(error.filename)) if error.filename else Say.of("a file")
    match error:
        case FileNotFoundError():
            return Say.of("{name} is not there.", name=name)
        case IsADirectoryError():
            return Say.of("{name} is a folder; a file is wanted here.", name=name)
        case NotADirectoryError() | FileExistsError():
            return Say.of("{name} is in the way: give another name.", name=name)
        case PermissionError():
            return Say.of(
                "{name} may not be written or read: it is open in another program, or belongs to someone else.",
                name=name,
            )
    return Say.of("{name}: {refused}.", name=name, refused=Typed(str(error.strerror or error)))


def _last_words(said: Say, before: str = "") -> None:
    """Why nothing more comes, on the error stream in the reader's language."""
    from estimator.cli.reader import reader
    from estimator.wording.say import say

    print(before + say(said, reader()), file=sys.stderr)


STOPPED_BY_HAND = Say.of("Stopped. Files that were finished are kept; nothing half-written stays behind.")


def _fault(error: Exception) -> int:
    if os.environ.get("ESTIMATOR_DEBUG") == "1":
        import traceback

        traceback.print_exc()
    else:
        _last_words(
            Say.of(
                "The program made a mistake of its own ({fault}) and stopped; your files are as they were. "
                "Run it again with {setting} to see where.",
                fault=type(error).__name__,
                setting="ESTIMATOR_DEBUG=1",
            )
        )
    return FAULT
