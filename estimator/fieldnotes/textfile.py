"""A path comes in; the text of the file, or the plain reason why there is none, goes out."""

from pathlib import Path, PureWindowsPath

from estimator.disk.whole import read_bytes
from estimator.model.problem import Place, Problem, error
from estimator.model.say import Say

MISSING = error("file/missing", "there is no file {name}.", "Check the name and the folder.")
FOLDER = error("file/folder", "{name} is a folder.", "Name the file in it.")
UNREADABLE = error("file/unreadable", "{name} cannot be opened: {reason}.", "Check that you may read it.")
EMPTY = error("file/empty", "{name} is empty.", "Write the notes into it, or name another file.")
BINARY = error("file/binary", "{name} is not a text file{guess}.", "Save the notes as plain text.")
ENCODING = error("file/encoding", "{name} is written in {encoding}, not in UTF-8.", "Save it as UTF-8.")
TOO_BIG = error("file/too-big", "{name} is larger than {limit} MB.", "Field notes are a few pages; name another file.")
OUTSIDE = error(
    "file/outside",
    "{name} does not lie below the folder of the job file.",
    "Copy it beside the job file, or into a folder there, and name it without .. and without a drive.",
)
PROBLEMS = (MISSING, FOLDER, UNREADABLE, EMPTY, BINARY, ENCODING, TOO_BIG, OUTSIDE)

LARGEST_MB = 4
_BEGINNINGS = {
    b"PK\x03\x04": Say.of(": it looks like a workbook or a zip file"),
    b"\xd0\xcf\x11\xe0": Say.of(": it looks like an old office file"),
    b"%PDF": Say.of(": it is a PDF"),
    b"\xff\xd8\xff": Say.of(": it is a picture"),
    b"\x89PNG": Say.of(": it is a picture"),
}


def lies_below(name: str) -> bool:
    """A name that stays below the folder it is taken from, on any system; a record has to lay its notes out by it again.

    >>> [lies_below(name) for name in ("main.txt", "logs/main.txt", "../main.txt", "/home/main.txt", "C:main.txt")]
    [True, True, False, False, False]
    """
    path = PureWindowsPath(name)  # which knows both ways to write a path
    return not path.anchor and ".." not in path.parts


def read_text(path: Path, place: Place, name: str = "") -> str | Problem:
    """The text, its byte-order mark gone. A problem for what is missing, empty, no text or not UTF-8."""
    name = name or str(path)
    try:
        if path.is_dir():
            return FOLDER(place, name=name)
        data = read_bytes(path)
    except FileNotFoundError:
        return MISSING(place, name=name)
    except (OSError, ValueError) as problem:  # ValueError: a null character in a name
        refused = isinstance(problem, OSError) and problem.strerror
        reason = refused.lower() if refused else Say.of("the name is not valid")
        return UNREADABLE(place, name=name, reason=reason)
    return text_of(data, place, name)


def text_of(data: bytes, place: Place, name: str) -> str | Problem:
    """The text in these bytes, or what is wrong with them."""
    if len(data) > LARGEST_MB * 1024 * 1024:
        return TOO_BIG(place, name=name, limit=LARGEST_MB)
    if data.startswith((b"\xff\xfe", b"\xfe\xff")):
        return ENCODING(place, name=name, encoding="UTF-16")
    guess = next((words for start, words in _BEGINNINGS.items() if data.startswith(start)), "")
    if guess or any(byte < 32 and byte not in b"\t\n\r\x0c" for byte in data):
        return BINARY(place, name=name, guess=guess)
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError:
        return ENCODING(place, name=name, encoding=Say.of("another encoding, probably Windows-1252"))
    return text if text.strip() else EMPTY(place, name=name)
