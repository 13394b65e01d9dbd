"""The package's source in, every text it can say out; run as `python -m estimator.wording.sweep` it brings the catalogs up to date."""

import ast
import tomllib
from collections.abc import Iterator, Mapping
from functools import cache
from pathlib import Path

from estimator.model.languages import LANGUAGES
from estimator.model.say import GAP
from estimator.wording.numbers import family
from estimator.wording.say import LOCALES, NOTES_LANGUAGE

PACKAGE = Path(__file__).parent.parent
NO_TEXT = ""


@cache  # the program does not change while it runs
def texts(folder: Path = PACKAGE) -> Mapping[str, str]:
    """Every text people read, with the file it stands in. Errors: ValueError for one that is computed.

    Found are literals handed to Say.of(...), speak(...), speaker(language)(...); what a Rule or Reading says of itself;
    the formulas and the names of inputs that a takeoff writes down; what a problem says.
    """
    found: dict[str, str] = {}
    for path in sorted(folder.rglob("*.py")):
        for text in _said(ast.parse(path.read_text(encoding="utf-8")), path):
            found.setdefault(text, path.relative_to(folder).as_posix())
    for text in _asked_of_words(folder / LEXICON):
        found.setdefault(text, LEXICON)
    return found


LEXICON = "fieldnotes/lexicon.toml"


def _asked_of_words(lexicon: Path) -> Iterator[str]:
    """The questions of words that leave open what is there, as they are asked."""
    if lexicon.exists():
        entries = tomllib.loads(lexicon.read_text(encoding="utf-8"))["ask"].values()
        yield from (entry["question"] for entry in entries)


MAKES_ONE = "speaker"
"""The function whose answer, called at once, says its first argument."""
SAID = ("Say", "Unread")
"""Records made of a text people read, by `of` or `typed`."""
SAYING = ("speak", "assume", "warn", "col")
"""Functions and methods, beside those, whose first argument is a text people read; `col` is a column's note."""


def _said(tree: ast.AST, path: Path) -> Iterator[str]:
    named = _named(tree)
    for node in ast.walk(tree):
        if not isinstance(node, ast.Call):
            continue
        if node.args and _speaks(node.func):
            yield from _literals(node.args[0], named, path)
        elif isinstance(node.func, ast.Name) and node.func.id in DECLARING and _code(node):
            texts_at = DECLARING[node.func.id]
            yield from (
                text for at in texts_at for text in _literals(node.args[at], named, path) if not _all_gaps(text)
            )
        elif isinstance(node.func, ast.Name) and node.func.id == ASKING:
            yield from (t for at in (1, 2, 3) for t in _literals(node.args[at], named, path) if not _all_gaps(t))
        elif isinstance(node.func, ast.Name) and node.func.id == LISTED and path.name == LISTS:
            yield from _literals(node.args[1], named, path)
        elif isinstance(node.func, ast.Attribute) and node.func.attr in HELPED:
            for helped in (keyword.value for keyword in node.keywords if keyword.arg == "help"):
                yield from _literals(helped, named, path)
        elif isinstance(node.func, ast.Name) and node.func.id == REASONED:
            yield from _literals(node.args[2], named, path)
        elif isinstance(node.func, ast.Name) and node.func.id in OF_THEMSELVES:
            yield from _own_words(node)
        elif path.parent.name in MEASURING:
            own = [keyword.value for keyword in node.keywords if keyword.arg in NAMED]
            formula_at = WRITTEN_DOWN.get(node.func.attr) if isinstance(node.func, ast.Attribute) else None
            yield from _formula([*own, *(node.args[formula_at:] if formula_at is not None else ())])


DECLARING = {"Kind": (2, 3), "error": (1, 2), "warning": (1, 2), "question": (1, 2)}
"""What declares a problem: where what is wrong and what to write stand, behind its code."""


ASKING = "_q"
"""A question of the interview: behind its key stand the question, an example and why it is asked."""
LISTED, LISTS, HELPED = "Entry", "command_list.py", ("Option", "Argument")
"""A command with its line of the overview; what a command takes, with its help."""
REASONED = "Usual"
"""The usual range of a column: its third argument is the reason."""


def _code(node: ast.Call) -> bool:
    first = node.args[0] if node.args else None
    return isinstance(first, ast.Constant) and isinstance(first.value, str) and "/" in first.value


def _all_gaps(text: str) -> bool:
    """`{near} ` alone says nothing of its own."""
    return not any(letter.isalpha() for letter in GAP.sub("", text))


OF_A_RULE = ("statement", "reason", "worse")
OF_THEMSELVES = {"Rule": OF_A_RULE, "Row": OF_A_RULE, "Reading": ("evidence",)}
"""Records that hold sentences about themselves, by keyword."""
MEASURING, WRITTEN_DOWN = ("works", "takeoff"), {"put": 2, "add": 2, "letter": 0}
NAMED = ("formula", "words")
"""Where quantities are written down, and which argument is the formula, with the inputs that begin with their names behind it; or
the formula by keyword."""


def _own_words(node: ast.Call) -> Iterator[str]:
    assert isinstance(node.func, ast.Name)
    wanted = OF_THEMSELVES[node.func.id]
    values = (keyword.value for keyword in node.keywords if keyword.arg in wanted)
    return (v.value for v in values if isinstance(v, ast.Constant) and isinstance(v.value, str) and v.value)


def _formula(given: list[ast.expr]) -> Iterator[str]:
    """Whole literals only: what is put together of several is translated by its parts."""
    wanted = [
        *(g for g in given[:1] if not isinstance(g, ast.Tuple)),
        *(pair.elts[0] for pair in given if isinstance(pair, ast.Tuple) and pair.elts),
    ]
    for expression in wanted:
        parts = {
            id(part) for joined in ast.walk(expression) if isinstance(joined, ast.JoinedStr) for part in joined.values
        }
        for node in ast.walk(expression):
            text = node.value if isinstance(node, ast.Constant) else None
            if isinstance(text, str) and id(node) not in parts and any(letter.isalpha() for letter in text):
                yield text


def _named(tree: ast.AST) -> dict[str, list[str]]:
    """Names that a text is given to, anywhere in the module, and those texts."""
    found: dict[str, list[str]] = {}
    for node in ast.walk(tree):
        if isinstance(node, ast.Assign) and isinstance(node.value, ast.Constant) and isinstance(node.value.value, str):
            for target in (t for t in node.targets if isinstance(t, ast.Name)):
                found.setdefault(target.id, []).append(node.value.value)
    return found


def _speaks(func: ast.expr) -> bool:
    if isinstance(func, ast.Call):
        return isinstance(func.func, ast.Name) and func.func.id == MAKES_ONE
    if isinstance(func, ast.Attribute):
        owner = func.value
        return func.attr in SAYING or (
            func.attr in ("of", "typed") and isinstance(owner, ast.Name) and owner.id in SAID
        )
    return isinstance(func, ast.Name) and func.id in (*SAYING, "Say")


def _literals(node: ast.expr, named: dict[str, list[str]], path: Path) -> Iterator[str]:
    if isinstance(node, ast.Constant) and isinstance(node.value, str):
        if node.value:
            yield node.value
    elif isinstance(node, ast.Name):
        yield from named.get(node.id, [])
    elif isinstance(node, ast.IfExp):
        yield from _literals(node.body, named, path)
        yield from _literals(node.orelse, named, path)
    elif isinstance(node, ast.JoinedStr | ast.BinOp):
        raise ValueError(f"{path}:{node.lineno}: a text to be said is put together, so nobody can translate it")


def update(language: str) -> tuple[int, int]:
    """Bring one catalog up to date: (texts, texts without a translation). Texts nobody says any more are dropped."""
    from babel.messages.catalog import Catalog
    from babel.messages.mofile import write_mo
    from babel.messages.pofile import read_po, write_po

    folder = LOCALES / language / "LC_MESSAGES"
    folder.mkdir(parents=True, exist_ok=True)
    old = {}
    if (folder / "estimator.po").exists():
        with (folder / "estimator.po").open("rb") as file:
            old = {m.id: m.string for m in read_po(file, locale=language) if m.id}
    new = Catalog(
        locale=language, project="estimator", charset="utf-8", fuzzy=False, header_comment="# What the program says."
    )
    for text, where in sorted(texts().items()):
        new.add(text, old.get(text) or NO_TEXT, auto_comments=[where])
    _write(folder, new, write_po, write_mo)
    return len(new), sum(1 for m in new if m.id and not m.string)


def _write(folder: Path, catalog: object, write_po: object, write_mo: object) -> None:
    from datetime import UTC, datetime

    # The catalog's own days are fixed: what is said decides the bytes, not when it was swept.
    fixed = datetime(2026, 1, 1, tzinfo=UTC)
    catalog.creation_date = catalog.revision_date = fixed  # type: ignore[attr-defined]
    with (folder / "estimator.po").open("wb") as file:
        write_po(file, catalog, width=0, sort_output=True)  # type: ignore[operator]
    with (folder / "estimator.mo").open("wb") as file:
        write_mo(file, catalog)  # type: ignore[operator]


def main() -> None:
    """Bring all catalogs up to date and say what is missing."""
    import sys

    for language in (one for one in LANGUAGES if family(one) != NOTES_LANGUAGE):
        count, missing = update(language)
        sys.stdout.write(f"{language}: {count} texts, {missing} without a translation\n")


if __name__ == "__main__":
    main()
