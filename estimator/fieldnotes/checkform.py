"""Good TOML comes in; the checked form, or a problem for every key that is wrong, goes out."""

import re
from dataclasses import is_dataclass
from typing import Any, TypeVar, get_args

from pydantic import BaseModel, ValidationError
from pydantic_core import ErrorDetails

from estimator.fieldnotes.nearest import nearest
from estimator.fieldnotes.places import Path
from estimator.fieldnotes.syntax import Document
from estimator.fieldnotes.written import form_of
from estimator.model.problem import Problem, error
from estimator.model.say import Say

UNKNOWN_KEY = error(
    "job/unknown-key",
    "there is no key {key} here. {nearest}",
    "Take it out, or write one of: {known}.",
    "A misspelt key would otherwise be lost without a word.",
)
MISSING_KEY = error("job/missing-key", "{key} is missing.", "Add {last} = … there.")
BAD_LENGTH = error(
    "job/length", "{key} = {value} is no length: {reason}.", "Write it like 2 ft 8 in, 2'6, 30 in or 3.8 m."
)
BAD_CHOICE = error("job/choice", "{key} = {value} is none of the words allowed. {nearest}", "Write one of: {known}.")
BAD_TENDONS = error(
    "job/tendons",
    "{key} = {value} does not prove that the slab has no tendons: {reason}.",
    'Write "none" and the paper, such as "none, engineer\'s drawing of 1995"; "unknown" as long as nobody has one; "yes" where it has tendons.',
    "A floor is cut on the strength of this word, and a tendon that is cut can kill.",
)
BAD_VALUE = error("job/value", "{key} = {value} does not fit here.", "Write {better}.")
NO_PLACE_FOR_KEY = error(
    "job/no-place-for-key", "there is no place for {key} in this file.", "Add its table by hand, then try again."
)
PROBLEMS = (UNKNOWN_KEY, MISSING_KEY, BAD_LENGTH, BAD_CHOICE, BAD_TENDONS, BAD_VALUE, NO_PLACE_FOR_KEY)

_BETTER = {
    "date": Say.of("a day such as 2026-11-18"),
    "bool": Say.of("true or false"),
    "int": Say.of("a whole number"),
    "float": Say.of("a number"),
    "decimal": Say.of("a number of dollars such as 800 or 24.50"),
    "string": Say.of("words in double quotes"),
    "tuple": Say.of("a list, or one [[table]] for each"),
    "model": Say.of("keys under a [table]"),
    "edge_beam": Say.of('"none" where somebody made sure, or how deep and wide, such as "24in deep 12in wide"'),
    "length_pairs": Say.of(
        'two walls and how far each is, in braces, such as { "front wall" = "12 ft", "east wall" = "0 ft" }'
    ),
    "dict": Say.of("word = number pairs in braces"),
}

_BOUNDS = {
    "ge": Say.of("a number of {bound} or more"),
    "gt": Say.of("a number above {bound}"),
    "le": Say.of("a number of {bound} or less"),
    "lt": Say.of("a number below {bound}"),
}

F = TypeVar("F", bound=BaseModel)


def check(document: Document, form: type[F]) -> F | list[Problem]:
    """Every wrong key at once."""
    try:
        return form.model_validate(document.data)
    except ValidationError as errors:
        return _deduplicated([_problem(document, form, e) for e in errors.errors()])


def _deduplicated(problems: list[Problem]) -> list[Problem]:
    """A key that may be two things (a name or a table) gives an error for each: the first is enough."""
    seen: dict[object, Problem] = {}
    for p in problems:
        seen.setdefault((p.place.line, p.place.column, p.code == UNKNOWN_KEY.code and p.wrong), p)
    return list(seen.values())


def _written(document: Document, loc: tuple[str | int, ...]) -> Path:
    """The part of a pydantic location that is really in the file; it names union members too."""
    path: Path = ()
    here: Any = document.data
    for step in loc:
        try:
            here = here[step]
        except (KeyError, IndexError, TypeError):
            continue
        path = (*path, step)
    return path


def _shown(path: Path) -> str:
    """customer.name, line 2: size, as a person would point at it."""
    out = ""
    for step in path:
        out += f" {step + 1}" if isinstance(step, int) else (f".{step}" if out else str(step))
    return out


def _problem(document: Document, form: type[BaseModel], e: ErrorDetails) -> Problem:
    path = _written(document, e["loc"])
    place = document.place(*path)
    key = _shown(path) or Say.of("the file")
    kind, value = e["type"], e.get("input")
    if kind == "extra_forbidden":
        known = _known_keys(form, path[:-1])
        return UNKNOWN_KEY(place, key=key, nearest=nearest(str(path[-1]), known), known=", ".join(known))
    if kind == "missing":
        last = str(e["loc"][-1])
        return MISSING_KEY(place, key=_shown((*path, last)), last=last)
    shown = _short(value)
    if kind == "length":
        return BAD_LENGTH(place, key=key, value=shown, reason=e["ctx"]["reason"])
    if kind == "tendons":
        return BAD_TENDONS(place, key=key, value=shown, reason=e["ctx"]["reason"])
    if kind == "literal_error":
        known = tuple(re.findall(r"'([^']*)'", str(e.get("ctx", {}).get("expected", ""))))
        known = tuple(word for word in known if word)
        return BAD_CHOICE(place, key=key, value=shown, known=" | ".join(known), nearest=nearest(str(value), known))
    return BAD_VALUE(place, key=key, value=shown, better=_better(e))


def _better(e: ErrorDetails) -> Say:
    """What to write for a value of the wrong kind or out of bounds."""
    for name, bound in _BOUNDS.items():
        if name in (context := e.get("ctx", {})):
            return Say(bound.text, (("bound", str(context[name])),))
    return next((words for start, words in _BETTER.items() if e["type"].startswith(start)), Say.of("another value"))


def _short(value: object) -> Say | str:
    if isinstance(value, dict | list | tuple):
        return Say.of("a table") if isinstance(value, dict) else Say.of("a list")
    text = str(value).lower() if isinstance(value, bool) else str(value)
    return f"“{text[:40]}”" if len(text) <= 40 else f"“{text[:40]}…”"


def _known_keys(whole: type[BaseModel], path: Path) -> tuple[str, ...]:
    """The keys a table may have."""
    form: type[BaseModel] | None = whole
    for step in path:
        if isinstance(step, str) and form is not None:
            field = next((f for n, f in form.model_fields.items() if step in (n, f.alias)), None)
            form = _form_in(field.annotation) if field else None
    return tuple(f.alias or name for name, f in form.model_fields.items()) if form else ()


def _form_in(annotation: Any) -> type[BaseModel] | None:
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        return annotation
    if isinstance(annotation, type) and is_dataclass(annotation):
        return form_of(annotation)
    return next((found for part in get_args(annotation) if (found := _form_in(part))), None)
