"""Readings and lines asked back in; each taken into the log where it belongs, out."""

import re
from collections.abc import Mapping
from dataclasses import replace

from estimator.fieldnotes.heading import Heading
from estimator.fieldnotes.lexicon import lexicon
from estimator.fieldnotes.logbook import DANGERS, Asked, Entry, Log, LogPass, Same, _Last
from estimator.fieldnotes.logproblems import NO_PASS, WHAT
from estimator.fieldnotes.meaning import Context, Meaning
from estimator.fieldnotes.standard import AT_ONE_PLACE, Said, tied
from estimator.fieldnotes.tidy import Tidied, tidied
from estimator.fieldnotes.understand import understand
from estimator.fieldnotes.where import Where
from estimator.model.problem import Place


class LogTaking:
    """A log in the making: what has been said so far, and what holds."""

    def __init__(
        self, log: Log, file: str, words: Mapping[str, str], given: Heading | None, bore_in: float = 4.0
    ) -> None:
        self.log, self.file, self.given, self.bore_in = log, file, given, bore_in
        self.words = _safe(words)
        self.here: LogPass | None = None
        self.back = False
        self.last: Where | None = None
        self.before = _Last()
        self.told_no_pass = False

    def _begin(self, heading: Heading) -> None:
        self.here = LogPass(heading)
        self.log.passes.append(self.here)
        self.back, self.last, self.before = False, None, _Last()

    def _place(self, place: Place, line: Tidied, at: int) -> Place:
        return Place(place.file, place.line, (place.column or 1) - 1 + line.column(at))

    def _take(
        self,
        saids: list[Said],
        line: Tidied,
        raw: str,
        note: str,
        place: Place,
        rows: tuple[str, ...],
        column: bool = True,
    ) -> None:
        run = self._run(place)
        self._answered(saids)
        self.before = _Last(rows, run, len(run.entries), len(run.sames), None, raw)
        for said in saids:
            where = said.where
            if where.from_ft >= 0:
                self.last = where
            if said.same:
                at = self._place(place, line, said.same_at) if column else place
                run.sames.append(Same(where.from_ft, where.to_ft, said.same, at))
            for thing in said.things:
                at = (
                    self._place(place, line, thing.at)
                    if column
                    else Place(place.file, place.line, (place.column or 1) + thing.at)
                )
                leg = thing.values.pop("leg", "") or (
                    "to end"
                    if said.to_end
                    else "starts"
                    if where.open_end and thing.word.word not in AT_ONE_PLACE
                    else ""
                )
                run.entries.append(
                    Entry(where.from_ft, where.to_ft, leg, where.about, thing, at, raw.rstrip(), self.back, note)
                )
        self.log.understood[place.file, place.line or 0] = rows

    def _run(self, place: Place) -> LogPass:
        if self.here is None:
            if not self.told_no_pass:
                self.log.found.append(NO_PASS(place))
            self.told_no_pass = True
            self._begin(Heading(access="?", flow="with flow", surface=True, place=place))
        assert self.here is not None
        return self.here

    def _context(self) -> Context:
        runs = self.log.passes
        entries = self.here.entries if self.here else []
        opened: set[str] = set()
        for e in entries:
            if e.leg == "starts":
                opened.add(e.thing.word.word)
            elif e.leg == "ends":
                opened.discard(e.thing.word.word)
        zones = [e.thing.word.word for e in entries if e.thing.word.kind == "zone"]
        far = [r for p in runs for e in p.entries for r in (e.from_ft, e.to_ft) if r is not None]
        before = self.before.rows
        if not before and self.before.asked is not None:
            before = tuple(c for c in self.before.asked.choices if c != "note")[:1]
        return Context(
            bore_in=self.bore_in,
            last_ft=self.last.from_ft if self.last else None,
            furthest_ft=max(far, default=0.0),
            zone=zones[-1] if zones else "",
            before=before,
            started=frozenset(opened),
            runs=len(runs),
            seen=frozenset(e.thing.word.word for p in runs[:-1] for e in p.entries),
            names=tuple(self.log.names.values()),
            access=runs[-1].heading.access.strip("?") if runs else "",
            flow=(runs[-1].heading.flow or "") if runs else "",
            riser=runs[-1].heading.riser if runs else "",
        )

    def _answered(self, saids: list[Said]) -> None:
        """A line typed again, whole, stands for the one before it that was asked back."""
        asked = self.before.asked
        if asked is None or self.before.run is None or asked.from_ft is None:
            return
        kinds = {word for c in asked.choices for word in c.replace(",", " ").split()[1:3]}
        for said in saids:
            again = abs(said.where.from_ft - asked.from_ft) < 0.01 and any(t.word.word in kinds for t in said.things)
            if again and asked in self.before.run.asked:
                self.before.run.asked.remove(asked)

    def _opened(self, saids: list[Said]) -> None:
        """`22 sag` waited for how much; now that it goes on or ends, it was where it starts."""
        run = self.here
        if run is None:
            return
        going = {t.word.word for s in saids for t in s.things if t.values.get("leg") in ("ends", "still")}
        for asked in reversed(list(run.asked)):
            kind = next((w for w in going if any(f" {w} " in f"{c} " for c in asked.choices)), None)
            if kind and asked.to_ft is None and asked.from_ft is not None:
                line = tidied(f"{asked.from_ft:g} {kind} starts")
                said = tied(line, None, frozenset())
                if said is not None:
                    run.asked.remove(asked)
                    thing = said.things[0]
                    thing.values.pop("leg", None)
                    run.entries.append(
                        Entry(asked.from_ft, None, "starts", False, thing, asked.place, asked.text, self.back, "")
                    )
                return

    def _ask(self, meaning: Meaning, raw: str, place: Place, context: Context) -> None:
        run = self._run(place)
        where = next((w for c in meaning.choices if c != "note" and (w := _where_of(c)) is not None), None)
        from_ft, to_ft = where if where else (meaning.at, meaning.to)
        asked = Asked(from_ft, to_ft, raw.strip(), meaning.asked or WHAT, meaning.choices, place, self.back)
        run.asked.append(asked)
        self.before = _Last((), run, len(run.entries), len(run.sames), asked, raw)
        if from_ft is not None:
            self.last = Where(from_ft, to_ft, False, False, 0)

    def _unclear(self, match: re.Match[str], place: Place) -> None:
        run = self._run(place)
        low = float(match[1]) if match[1] else None
        high = float(match[2]) if match[2] else None
        meaning = understand(match[4].partition(";")[0], self._context())
        choices = meaning.choices or meaning.rows
        run.asked.append(
            Asked(
                low,
                high,
                match[4].strip(),
                meaning.asked or WHAT,
                choices,
                place,
                self.back,
                utility=bool(match[3]),
            )
        )

    def _take_back(self) -> list[str]:
        """The line before no longer counts; what stood apart beside it is kept."""
        last = self.before
        notes = [e.note for e in last.run.entries[last.entries :]] if last.run is not None else []
        if last.run is not None:
            del last.run.entries[last.entries :]
            del last.run.sames[last.sames :]
            if last.asked is not None and last.asked in last.run.asked:
                last.run.asked.remove(last.asked)
        return notes

    def _struck(self, word: str, at: float | None) -> bool:
        """Take one earlier thing of this run back; False where none, or more than one, is meant."""
        run = self.here
        found = [
            e
            for e in (run.entries if run else ())
            if (not word or e.thing.word.word == word) and (at is None or abs(e.from_ft - at) < 0.01)
        ]
        if run is None or len(found) != 1:
            return False
        run.entries.remove(found[0])
        self.before = _Last()
        return True

    def _filled(self, heading: Heading) -> Heading:
        """What the heading leaves out comes from the keys of the line, for its first run only."""
        if self.given is None or (self.log.passes and self.here is not self.log.passes[0]):
            return heading
        return replace(
            heading,
            flow=heading.flow or self.given.flow,
            riser_ft=heading.riser_ft if heading.riser_ft is not None else self.given.riser_ft,
        )


def _safe(words: Mapping[str, str]) -> dict[str, str]:
    """A job's own words without those that would stand over a danger, or over any word the lexicon knows another meaning of."""
    lex = lexicon()
    return {
        short: meaning
        for short, meaning in words.items()
        if not DANGERS.search(short) and not lex.guarded(tuple(short.lower().replace("'", "").split()))
    }


def _where_of(row: str) -> tuple[float, float | None] | None:
    match = re.match(r"~?(\d+(?:\.\d+)?)(?:-(\d+(?:\.\d+)?))?\s", row)
    return (float(match[1]), float(match[2]) if match[2] else None) if match else None
