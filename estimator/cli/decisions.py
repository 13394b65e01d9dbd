"""What was decided after a quote in: an option accepted, the work done, the job lost; the note of it out."""

from datetime import date
from decimal import Decimal
from pathlib import Path

from estimator.cli.problems import DAY_TO_COME
from estimator.cli.views.layout import Layout
from estimator.model.problem import Place
from estimator.model.say import Typed
from estimator.records.names import revisions_folder


def accept(out: Layout, job_file: Path, letter: str, on: date, asked: str = "") -> None:
    """The note that an option was accepted: of the revision that was asked for, such as r1, else of the newest one."""
    from estimator.records.accepted import accept as note
    from estimator.records.accepted import note_of
    from estimator.records.revisions import named, newest

    folder = revisions_folder(job_file)
    revision = named(folder, asked) if asked else newest(folder) or named(folder, "r1")
    kept = note(folder, revision, letter, on)
    _ask_about_a_day_to_come(on, note_of(folder, revision))
    words = {"letter": kept.option, "number": kept.revision, "day": kept.on, "total": out.dollars(Decimal(kept.total))}
    out.line(out.speak("Option {letter} of r{number} accepted on {day}, {total}.", **words))
    if until := kept.cancel_until:
        out.line(out.speak("The homeowner may cancel until the end of {day}; start nothing before.", day=until))


def finish(out: Layout, job_file: Path, on: date) -> None:
    """The note that the accepted work was done."""
    from estimator.cli.views.problems import tell
    from estimator.records.finished import doubts, note_of
    from estimator.records.finished import finish as note

    folder = revisions_folder(job_file)
    kept = note(folder, on)
    tell(doubts(folder, kept))
    _ask_about_a_day_to_come(on, note_of(folder, kept.revision))
    words = {"letter": kept.option, "number": kept.revision, "day": kept.on}
    out.line(out.speak("Option {letter} of r{number} was done on {day}.", **words))


def lose(out: Layout, job_file: Path, on: date, why: str) -> None:
    """The note that the job was not won, and why; typed again it takes the place of the one before."""
    from estimator.records.afterwards.lost import NAME
    from estimator.records.afterwards.lost import lose as note

    folder = revisions_folder(job_file)
    kept = note(folder, on, why.strip())
    _ask_about_a_day_to_come(on, folder / NAME)
    words = {"number": kept.revision, "day": kept.on, "why": Typed(kept.why)}
    out.line(out.speak("r{number} was lost on {day}: {why}.", **words))


def _ask_about_a_day_to_come(on: date, note: Path) -> None:
    """Nothing is refused for it: the machine's clock may be the one that is wrong."""
    from estimator.cli.clock import today
    from estimator.cli.views.problems import tell

    if on > today():
        tell([DAY_TO_COME(Place(), day=on, today=today(), file=note)])
