"""What is typed so far in, the words it may go on with out: line names, lines of the quote, option letters, revisions.

Lines come from the job file, everything else from the newest record; nothing is priced, and nothing here is ever an error:
a shell that is asked for words shows none where there are none.
"""

import contextlib
from collections.abc import Callable, Iterable, Iterator
from pathlib import Path

import typer

Words = list[tuple[str, str]]
"""Each with the help that zsh and fish show beside it."""


def add_on_codes(ctx: typer.Context, incomplete: str) -> Words:
    """The add-ons of the newest revision, with what each is, and none."""
    before, comma, last = incomplete.rpartition(",")
    return [(before + comma + word, text) for word, text in _begin(last, lambda: _add_ons(_job(ctx)))]


def languages(incomplete: str) -> Words:
    return _begin(incomplete, lambda: (("en_US", "English"), ("es_US", "español")))


def _job(ctx: typer.Context) -> Path:
    """The job file: an argument already read, or one of the words left over where an option still waits for its value."""
    words = [str(ctx.params.get("job") or ""), *map(str, ctx.args)]
    files = (Path(word).expanduser() for word in words if word and not word.startswith("-"))
    return next(file for file in files if file.is_file())


def _begin(incomplete: str, words: Callable[[], Iterable[tuple[str, str]]]) -> Words:
    """Those that begin with what was typed, in any case; what was typed stays as it is."""
    typed = len(incomplete)
    with contextlib.suppress(Exception):  # a shell waits for the answer: nothing is better than a fault
        fitting = [(word, text) for word, text in words() if word.lower().startswith(incomplete.lower())]
        return [(incomplete + word[typed:], text) for word, text in fitting]
    return []


def _lines(job: Path) -> Iterator[tuple[str, str]]:
    import tomllib

    for line in tomllib.loads(job.read_text(encoding="utf-8-sig"))["line"]:
        yield str(line["name"]), " ".join(str(line[key]) for key in ("size", "pipe") if key in line)


def _items(job: Path) -> Iterator[tuple[str, str]]:
    from estimator.records.revisions import revisions_folder
    from estimator.records.summary import options_of

    for option in options_of(revisions_folder(job)):
        for line in option["price"]["lines"]:
            yield str(line["id"]).upper(), str(line["text_en"])
        for add_on in option.get("add_ons", ()):
            yield f"{option['letter']}:{add_on['code']}", str(add_on["text_en"])


def _add_ons(job: Path) -> Iterator[tuple[str, str]]:
    from estimator.records.revisions import revisions_folder
    from estimator.records.summary import options_of

    found = {a["code"]: a["text_en"] for option in options_of(revisions_folder(job)) for a in option.get("add_ons", ())}
    yield from ((str(code), str(text)) for code, text in found.items())
    yield "none", "without add-ons"


def _letters(job: Path) -> Iterator[tuple[str, str]]:
    from estimator.records.revisions import revisions_folder
    from estimator.records.summary import summaries

    newest = list(summaries(revisions_folder(job)))[-1][1]
    yield from ((letter, f"${total}") for letter, total in newest["totals"].items())


def _revisions(job: Path) -> Iterator[tuple[str, str]]:
    from estimator.records.revisions import revisions_folder
    from estimator.records.summary import summaries

    for name, held in summaries(revisions_folder(job)):
        yield name, ", ".join(f"{letter} ${total}" for letter, total in held["totals"].items())


def _completer(found: Callable[[Path], Iterable[tuple[str, str]]]) -> Callable[[typer.Context, str], Words]:
    def words(ctx: typer.Context, incomplete: str) -> Words:
        return _begin(incomplete, lambda: found(_job(ctx)))

    return words


line_names, item_ids, option_letters, revision_names = map(_completer, (_lines, _items, _letters, _revisions))
"""Lines of the job; A1, A2 … with what each says; A, B … with their totals; r1, r2 … with their totals, all of the newest record."""
