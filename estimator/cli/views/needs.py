"""Needs in; a stretch each with what is on it, how bad and how sure, out."""

from collections.abc import Sequence

from estimator.cli.views.layout import Layout
from estimator.cli.views.words import Words
from estimator.model.judgement import Need


def write_needs(out: Layout, needs: Sequence[Need]) -> None:
    """What must be repaired, then what may stay, each under its own heading; the first heading always."""
    must, may_stay = ([need for need in needs if need.must is must] for must in (True, False))
    out.heading(out.speak("What must be repaired"))
    for need in must:
        write_need(out, need)
    if not must:
        out.line("  " + out.speak("Nothing seen that must be repaired."))
    if may_stay:
        out.heading(out.speak("What may stay for now"))
    for need in may_stay:
        write_need(out, need)


def write_need(out: Layout, need: Need) -> None:
    """A stretch with what is on it, how bad and how sure."""
    must = out.speak("must be repaired") if need.must else out.speak("may stay")
    how = out.speak("severity {severity}, urgency {urgency}", severity=need.severity, urgency=need.urgency)
    out.paragraph(f"{place_of(need, out)} — {must}; {how}, {out.term(need.grade)}.", by=2, hanging=4)


def place_of(need: Need, words: Words) -> str:
    """`main 10.9 – 18.3 ft: channel, hole`."""
    kinds = ", ".join(map(words.finding_term, need.kinds))
    return f"{words.term(need.line)} {words.stations(need.stretch)}: {kinds}"
