"""A line that tells of two pipes, sizes or floors with one reading between in; a row for each, out."""

from estimator.fieldnotes.doubts import Doubts
from estimator.fieldnotes.drafts import Draft, row, shown
from estimator.fieldnotes.head_holds import INDOORS
from estimator.model.say import Say


class Changes(Doubts):
    """Where one thing ends and another of its kind begins."""

    def _two_pipes(self, at: float, to: float | None) -> list[str]:
        """`pvc c/o to 18 then clay`: one material to the reading, another from there."""
        r = self.r
        where = [n for n in range(len(r.atoms)) if "material" in r.atoms[n].means]
        first, last = where[0], where[-1]
        reading = next(
            (
                n
                for n in range(len(r.atoms))
                if (t := r.number(n)) is not None and t.kind in ("num", "ft") and t.value == at
            ),
            None,
        )
        kinds = [r.atoms[n].means["material"] for n in (first, last)]
        if kinds[0] == kinds[1]:
            return []
        others = [d for d in self.drafts if d.word != "pipe"]
        if reading is not None and first < reading < last and to is None:
            begin = 0.0
            return [
                f"{shown(begin)}-{shown(at)} pipe {kinds[0]}",
                row(at, None, [Draft("pipe", last, 0, choice=kinds[1]), *others]),
            ]
        if to is not None:
            return (
                [f"{shown(at)}-{shown(to)} pipe {kinds[0]}", f"{shown(to)} pipe {kinds[1]}"] if r.has("change") else []
            )
        return []

    def _two_sizes(self, at: float, to: float | None) -> list[str]:
        """`3in pipe to 33 then 4in`: one size to the reading, another from there."""
        r = self.r
        sizes = [n for n, a in enumerate(r.atoms) if a.token and a.token.kind == "in"]
        if (
            to is not None
            or len(sizes) != 2
            or not {"size"} <= {d.word for d in self.drafts} <= {"size", "pipe"}
            or not r.has("till")
        ):
            return []
        at_n = next((n for n in self.numbers.free if (t := r.number(n)) is not None and t.value == at), None)
        if at_n is None or not sizes[0] < at_n < sizes[1]:
            return []
        first, last = (r.atoms[n].token.value for n in sizes)  # type: ignore[union-attr]
        last_row = row(at, None, [d for d in self.drafts if d.word != "size"]) if len(self.drafts) > 1 else shown(at)
        mark = ", " if len(self.drafts) > 1 else " "
        return [f"0-{shown(at)} size {shown(first)}in", f"{last_row}{mark}size {shown(last)}in"]

    def _two_floors(self, at: float, to: float | None) -> list[str]:
        """`tile 25 to 40, vinyl after`: one floor over the stretch, another from its end."""
        r = self.r
        floors = [n for n in r.where("surface") if r.atoms[n].means["surface"] in INDOORS]
        reading = next((n for n in self.numbers.free), None)
        if len(floors) != 2 or reading is None or not floors[0] < reading < floors[1] or len(self.drafts) != 1:
            return []
        zone = self.drafts[0].word
        first, last = (r.atoms[n].means["surface"] for n in floors)
        if to is not None:
            return [f"{shown(at)}-{shown(to)} {zone} {first}", f"{shown(to)} {zone} {last}"]
        r.ask.append((Say.of("where does the {floor} begin?", floor=first), ()))
        return [f"{shown(at)} {zone} {last}"]
