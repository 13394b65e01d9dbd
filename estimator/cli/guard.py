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

DONE, TO_MEND, WRONG_WORDS, FAULT, STOPPED = 0, 1, 2, 3, 130


def guarded(command: Callable[..., int | None]) -> Callable[..., None]:
    """Runs the command and leaves with its exit code; tracebacks only with ESTIMATOR_DEBUG=1."""

    @functools.wraps(command)
    def run(*given: object, **named: object) -> None:
        _sweep((*given, *named.values()))
        raise typer.Exit(_code(lambda: command(*given, **as_set(named))))

    return run


def _sweep(given: Iterable[object]) -> None:
    """What a killed run left beside the files this command is about goes first, whichever command it is."""
    from estimator.disk.whole import sweep

    for path in (value for value in given if isinstance(value, Path)):
        for folder in {path.parent, path if path.is_dir() else path.with_suffix("")}:
            sweep(folder)


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
        print("\nStopped. Files that were finished are kept; nothing half-written stays behind.", file=sys.stderr)
        return STOPPED
    except OSError as error:
        print(in_plain_words(error), file=sys.stderr)
        return TO_MEND
    except Exception as error:
        return _fault(error)


def _tell_problems(stop: CannotGoOn) -> None:
    from estimator.cli.views.problems import tell

    tell(stop.problems)


def in_plain_words(error: OSError) -> str:
    """What the machine refused, as one would say it across a desk."""
    name = error.filename or "a file"
    match error:
        case FileNotFoundError():
            return f"{name} is not there."
        case IsADirectoryError():
            return f"{name} is a folder; a file is wanted here."
        case NotADirectoryError() | FileExistsError():
            return f"{name} is in the way: give another name."
        case PermissionError():
            return f"{name} may not be written or read: it is open in another program, or belongs to someone else."
    return f"{name}: {error.strerror or error}."


def _fault(error: Exception) -> int:
    if os.environ.get("ESTIMATOR_DEBUG") == "1":
        import traceback

        traceback.print_exc()
    else:
        print(
            f"The program made a mistake of its own ({type(error).__name__}) and stopped; your files are as they were. "
            "Run it again with ESTIMATOR_DEBUG=1 to see where.",
            file=sys.stderr,
        )
    return FAULT
