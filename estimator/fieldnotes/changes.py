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
        where = [n for n, a in enumerate(r.atoms) if "material" in a.means]
        first, last = where[0], where[-1]
        before, after = (r.atoms[n].means["material"] for n in (first, last))
        if "was" in r.atoms[last - 1].means:  # `clay picks up 37, was ci`
            return [f"0-{shown(at)} pipe {after}", f"{shown(at)} pipe {before}"]
        if before == after:
            return []
        doubted = not any("no" in a.means for a in r.atoms)  # `copper? no, galv`
        if doubted and any({"or", "doubt"} & r.atoms[n].means.keys() or r.is_mark(n, "?") for n in range(first, last)):
            r.ask.append((Say.of("which is meant?"), (f"pipe {before}", f"pipe {after}")))
            return []
        if to is not None:
            return [f"{shown(at)}-{shown(to)} pipe {before}", f"{shown(to)} pipe {after}"] if r.has("change") else []
        reading = next((n for n, t in r.numbers() if t.kind in ("num", "ft") and t.value == at), None)
        if reading is None or not first < reading < last:
            return []
        others = [d for d in self.drafts if d.word != "pipe"]
        return [f"0-{shown(at)} pipe {before}", row(at, None, [Draft("pipe", last, 0, choice=after), *others])]

    def _two_sizes(self, at: float, to: float | None) -> list[str]:
        """`3in pipe to 33 then 4in`: one size to the reading, another from there."""
        r = self.r
        sizes = [(n, t.value) for n, t in r.numbers() if t.kind == "in"]
        words = {d.word for d in self.drafts}
        if to is not None or len(sizes) != 2 or not {"size"} <= words <= {"size", "pipe"} or not r.has("till"):
            return []
        (first, before), (last, after) = sizes
        reading = next((n for n, t in r.numbers() if n in self.numbers.free and t.value == at), None)
        if reading is None or not first < reading < last:
            return []
        others = [d for d in self.drafts if d.word != "size"]
        from_there = f"{row(at, None, others)}," if others else shown(at)
        return [f"0-{shown(at)} size {shown(before)}in", f"{from_there} size {shown(after)}in"]

    def _two_floors(self, at: float, to: float | None) -> list[str]:
        """`tile 25 to 40, vinyl after`: one floor over the stretch, another from its end."""
        r = self.r
        floors = [n for n in r.where("surface") if r.atoms[n].means["surface"] in INDOORS]
        reading = next(iter(self.numbers.free), None)
        if len(floors) != 2 or reading is None or not floors[0] < reading < floors[1] or len(self.drafts) != 1:
            return []
        zone = self.drafts[0].word
        first, last = (r.atoms[n].means["surface"] for n in floors)
        if to is not None:
            return [f"{shown(at)}-{shown(to)} {zone} {first}", f"{shown(to)} {zone} {last}"]
        r.ask.append((Say.of("where does the {floor} begin?", floor=first), ()))
        return [f"{shown(at)} {zone} {last}"]
