"""Needs in; a stretch each with what is on it, how bad and how sure, out."""

from collections.abc import Iterable, Sequence

from estimator.cli.views.screen import Row
from estimator.cli.views.table import indented
from estimator.cli.views.vocabulary import finding_term, term
from estimator.cli.views.words import ENGLISH, at
from estimator.model.judgement import Need
from estimator.wording.say import speaker


def needs_rows(needs: Sequence[Need], columns: int, language: str = ENGLISH) -> list[Row]:
    """What must be repaired, then what may stay, each under its own heading; the first heading always."""
    speak, out = speaker(language), []
    parts = ((speak("What must be repaired"), True), (speak("What may stay for now"), False))
    for text, must in parts:
        found = [row for need in needs if need.must is must for row in need_rows(need, columns, language)]
        if found or must:
            nothing = [Row("  " + speak("Nothing seen that must be repaired."))]
            out += [Row(""), Row(text, "head"), *(found or nothing)]
    return out


def need_rows(need: Need, columns: int, language: str = ENGLISH) -> Iterable[Row]:
    """A stretch with what is on it, how bad and how sure."""
    speak = speaker(language)
    must = speak("must be repaired") if need.must else speak("may stay")
    how = speak("severity {severity}, urgency {urgency}", severity=need.severity, urgency=need.urgency)
    text = f"{place_of(need, language)} — {must}; {how}, {term(need.grade, language)}."
    return [Row(line) for line in indented(text, columns, hanging=4)]


def place_of(need: Need, language: str) -> str:
    """`main 10.9 – 18.3 ft: channel, hole`."""
    kinds = ", ".join(finding_term(kind, language) for kind in need.kinds)
    return f"{term(need.line, language)} {at(need.stretch, language)} {speaker(language)('ft')}: {kinds}"
