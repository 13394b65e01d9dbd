"""The things of a line in; which of them begin, go on or end there (`sag starts`, `back out of water`), out."""

from typing import TYPE_CHECKING

from estimator.fieldnotes.drafts import Draft
from estimator.fieldnotes.numbers_of_a_line import Numbers

if TYPE_CHECKING:
    from estimator.fieldnotes.understand import Reader

GO_ON = ("scale", "channel", "grease", "mud", "sag", "roots", "oval")
ON = ("on", "onward", "onwards", "on out", "and on", "en adelante", "from here on", "from there on", "on down")
"""`40 on scale light`: what goes on from there."""

TILL_ONE = ("till", "til", "until", "up to", "hasta", "thru", "to")
FROM_ONE = ("from", "desde", "starting from")
"""Before the only reading of a line: a stretch ends, or begins."""


class Legs:
    """The things of a line, each where it begins, goes on or ends."""

    def __init__(self, r: "Reader", numbers: Numbers, found: list[Draft]) -> None:
        self.r, self.numbers, self.drafts = r, numbers, found

    def _legs(self) -> None:
        r = self.r
        if r.has("rises"):
            n = r.where("rises")[0]
            r.used |= {*r.where("rises"), *r.where("out of water"), *r.where("ends")}
            sag = self._sag(n)
            if not self._has_range():
                sag.leg = "starts"
            if any(w in r.text(n).split() for w in ("under", "underwater")) and "lens under" not in sag.signs:
                sag.signs.append("lens under")
            r.ask = [a for a in r.ask if "water pipe" not in a[0].text]
            return
        if r.has("out of water") and not r.has("place", "branch"):
            n = r.where("out of water")[0]
            r.used |= set(r.where("out of water"))
            self._sag(n).leg = "ends"
            return
        self._water_goes_on()
        findings = [d for d in self.drafts if d.finding]
        if len({d.word for d in findings}) != 1 or self._has_range():
            return
        only = findings[0]
        n = only.at
        if only.word in GO_ON and any(r.text(k + 1) in ON for k, _ in r.readings()):
            only.leg = "starts"
        readings = [k for k, _ in r.readings()]
        before = r.text(readings[0] - 1) if len(readings) == 1 and readings[0] else ""
        before = "" if before in TILL_ONE and n > readings[0] else before
        if not r.has("end") and (
            before in TILL_ONE or (before in FROM_ONE and only.word in GO_ON)
        ):  # `roots thick till 52`
            only.leg = "ends" if before in TILL_ONE else "starts"
            return
        near = [k for k in (n - 2, n - 1, n + 1, n + 2) if 0 <= k < len(r.atoms)]
        starts = [k for k in near if "starts" in r.atoms[k].means and r.text(k) not in ("into", "goes in")]
        ends = [
            k
            for k in near
            if ("ends" in r.atoms[k].means and not (r.text(k) == "done" and only.word not in r.context.started))
            or ("end" in r.atoms[k].means and r.text(k) in ("end", "ends", "fin", "termina", "acaba"))
        ]
        to_end = any(r.text(k - 1) in ("to", "till", "til", "until", "hasta", "thru", "the") for k in ends if k)
        if starts and not to_end:
            only.leg = "starts"
            r.used |= set(starts)
        elif ends and not to_end:
            only.leg = "ends"
            r.used |= set(ends)
        elif r.has("still") and only.word in r.context.started:
            only.leg = "still"
            r.used |= set(r.where("still"))
        if only.leg:
            for d in [d for d in self.drafts if d.word in ("end", "stop")]:
                self.drafts.remove(d)

    def _water_goes_on(self) -> None:
        """`33 back up, bout 2 in deep`, `still in water 31` in a belly that began."""
        r = self.r
        if "sag" not in r.context.started or any(d.word != "depth" for d in self.drafts) or r.ask:
            return
        leg = "ends" if r.has("ends") else "still" if r.has("still") else ""
        wet = any({"water", "agua", "wet"} & set(a.text.split()) for a in r.atoms)
        if leg and not any(r.has(c) for c in ("material", "zone", "surface", "room")) and (leg == "ends" or wet):
            inch = next((d.depth_ft * 12 for d in self.drafts if d.depth_ft is not None), None)
            self.drafts[:] = [Draft("sag", 0, r.clause[0], leg=leg, inch=inch)]
            r.used |= {*r.where("ends"), *r.where("still"), *r.where("place", "depth")}

    def _sag(self, n: int) -> Draft:
        """The sag that the line names, or one that a word of water at `n` tells of."""
        if not (sag := self._first("sag")):
            sag = Draft("sag", n, self.r.clause[n])
            self.drafts.append(sag)
        return sag

    def _first(self, *words: str) -> Draft | None:
        """The first thing that is one of these."""
        return next((d for d in self.drafts if d.word in words), None)

    def _has_range(self) -> bool:
        return any((t := self.r.number(n)) is not None and t.kind == "range" for n in self.numbers.free)
