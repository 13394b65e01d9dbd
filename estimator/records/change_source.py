"""Two versions of a job's texts in; each line that differs, by whose doing it is, out: found on site, a rule, a wish."""

import re
from collections.abc import Iterator, Mapping
from dataclasses import replace
from difflib import SequenceMatcher
from typing import Any

from estimator.model.job import Job

FINDING, RULE, WISH = "notes", "rule", "wish"
_HEADER = re.compile(r"\s*\[+\s*([\w-]+)")
WISHES = ("wishes", "option", "allowance", "discount", "add_on", "settings", "job", "customer")
"""Parts of a job file in which somebody wants something, or says how the papers are to look."""
RULES = ("override", "approval")
"""Parts that speak to the rules: one overruled, or a paper that one waits for."""


def parts_of(text: str) -> list[tuple[str, str]]:
    """Each line of a job file with the part it stands in; of anything else, such as a log, all is found on site.

    >>> parts_of('[house]\\nsoil = "rock"\\n\\n[[discount]]\\namount = 5')[1::3]
    [('soil = "rock"', 'notes'), ('amount = 5', 'wish')]
    """
    found, part = [], FINDING
    for line in text.splitlines():
        header = _HEADER.match(line)
        if header:
            part = WISH if header[1] in WISHES else RULE if header[1] in RULES else FINDING
        found.append((line, part))
    return found


def moved(before: str, after: str) -> Iterator[tuple[str, str, str]]:
    """(part, line before, line after) of what differs; one of the two is empty. Empty lines and headers say nothing."""
    old, new = parts_of(before), parts_of(after)
    for what, a, b, c, d in SequenceMatcher(None, old, new, autojunk=False).get_opcodes():
        if what != "equal":
            yield from ((part, text, "") for text, part in _said(old[a:b]))
            yield from ((part, "", text) for text, part in _said(new[c:d]))


def _said(lines: list[tuple[str, str]]) -> Iterator[tuple[str, str]]:
    for line, part in lines:
        text = " ".join(line.split())
        if text:
            yield text, part


def as_found(new: Job, old: Job) -> Job:
    """What was found by the new notes, with the wishes and the decisions of the old ones."""
    return replace(
        new,
        wishes=old.wishes,
        approvals=old.approvals,
        overrides=old.overrides,
        options=old.options,
        allowances=old.allowances,
        discounts=old.discounts,
        add_ons=old.add_ons,
        chosen=old.chosen,
        visits=old.visits,
        settings=old.settings,
    )


def rules_of(quote: Mapping[str, object]) -> dict[str, str]:
    """What each rule said of the ways of a recorded quote: `tunnel, main: rule-id` with its effect, or that it was overruled."""
    options: list[dict[str, Any]] = quote["options"]  # type: ignore[assignment]
    said = [verdict for option in options for repair in option["scope"]["repairs"] for verdict in repair["verdicts"]]
    found: dict[str, set[str]] = {}
    for verdict in [*said, *quote["blocked"]]:  # type: ignore[misc]
        how = f"overruled: {verdict['overruled']}" if verdict["overruled"] else verdict["effect"]
        found.setdefault(f"{verdict['method']}, {verdict['line']}: {verdict['rule']}", set()).add(how)
    return {name: ", ".join(sorted(effects)) for name, effects in found.items()}
