"""Words that hold from there on in (pipe, ground); what a line may mean by them, out."""

import itertools
from typing import TYPE_CHECKING

from estimator.fieldnotes.bare_figures import SIZES_IN
from estimator.fieldnotes.drafts import Draft
from estimator.fieldnotes.head_words import _asked, _room_name
from estimator.fieldnotes.numbers_of_a_line import Numbers
from estimator.model.say import Say

if TYPE_CHECKING:
    from estimator.fieldnotes.understand import Reader


OUTDOORS = ("lawn", "bed", "bare ground", "gravel", "dirt")
INDOORS = ("tile", "wood", "vinyl", "carpet", "laminate", "stone")
TURNS_TO = ("goes", "changes", "turns", "becomes", "switches", "transitions", "transition", "converts", "cambia")
NO_ZONE = frozenset((
    "branch", "pipe", "size", "loc", "depth", "pothole", "invert", "bend", "tree", "crossing", "end", "stop", "cleaned", "beam",
    "utility", "cleanout",
))  # fmt: skip
"""Beside these a word for what lies over the pipe says where they are."""
SOLID = ("tile", "wood", "brick", "stone")
"""What lies in a pipe as well as over one: `41 wood`."""


def _alone(r: "Reader") -> bool:
    """A word of what lies in a pipe as well as over one, and nothing else: `41 wood`."""
    words = [a.text for a in r.atoms if a.token is None]
    return len(words) == 1 and words[0].rstrip("s") in SOLID


def _in_the_way(r: "Reader") -> bool:
    return (
        any(a.text.startswith("stuck") for a in r.atoms)
        or r.has("part", "piece")
        or r.has("stop")
        or r.has("sign", "cannot pass")
    )


AT_ONE = ("from", "at", "@", "en", "starts", "start", "begins", "here", "now")
PAVING = ("asphalt", "pavers", "concrete", "brick")


def _pipe_beside(r: "Reader", out: list[Draft]) -> None:
    """`34 roots 20%, clay`: a material in a part of its own beside findings; else it only tells which joint."""
    for n in r.where("material"):
        alone = all(d.clause != r.clause[n] for d in out) and all(
            k == n or r.clause[k] != r.clause[n] or (a.token is not None and a.token.kind == "mark")
            for k, a in enumerate(r.atoms)
        )
        first = n == 0 and r.number(1) is not None and not r.single_place()  # `obg 22-31 egged`
        if (alone or first) and "finding" not in r.atoms[n].means and n not in r.used:
            out.append(Draft("pipe", n, r.clause[n], choice=r.atoms[n].means["material"]))
            r.used.add(n)


def _pipe_changed(r: "Reader", out: list[Draft]) -> None:
    """`34 pvc to clay offset 1in`: from one material to another, and what was found there."""
    where = [n for n in r.where("material") if n not in r.used and "finding" not in r.atoms[n].means]
    for n in where:
        if n and "change" in r.atoms[n - 1].means and r.text(n - 1).split()[0] in TURNS_TO:
            out.append(Draft("pipe", n, r.clause[n], choice=r.atoms[n].means["material"]))
            r.used |= {n, n - 1}
            return
    for a, b in itertools.pairwise(where):
        between = range(a + 1, b)
        if between and all("change" in r.atoms[k].means or "plain" in r.atoms[k].means for k in between):
            out.append(Draft("pipe", b, r.clause[b], choice=r.atoms[b].means["material"]))
            r.used |= {a, b, *between}


def _pipes(r: "Reader", numbers: Numbers, out: list[Draft]) -> None:
    where = [n for n in r.where("material") if n not in r.used]
    if not out and any(r.atoms[k].means.get("part") == "piece" for n in where for k in range(max(n - 2, 0), n)):
        _asked(r, "broken")  # pieces of it lie there
        return
    words = {d.word for d in out}
    if words & {"branch", "loc", "depth", "pothole", "tree", "crossing", "cleaned", "invert", "utility"}:
        return
    sizes = [(n, v) for n, v in numbers.inches if v in SIZES_IN]
    if not where:
        pair = next((n for n in numbers.free if _two_sizes(r, n)), None)
        if pair is not None and not out and len(numbers.free) > 1 and not r.has("zone") and not r.has("room"):
            token = r.number(pair)
            numbers.free.remove(pair)
            r.aside.add(pair)
            if token and not (r.has("change") or r.has("part", "pipe") or {*r.words().split()} & {*TURNS_TO}):
                size = f"size {token.to:g}in"
                r.ask.append((Say.of("a change of size, or something from the one to the other?"), (size, "note")))
                return
            out.append(Draft("size", pair, r.clause[pair], inch=token.to if token else None))
            r.used |= {*r.where("change"), *r.where("starts")}
        elif numbers.sizes and not out and (r.readings() or r.has("change")):
            n, a, b = numbers.sizes[0]
            if (a, b) == (2.0, 4.0):  # a board as well
                r.ask.append((Say.of("a change of size, or a piece of lumber?"), ("size 4in", "blocked hard")))
                r.aside.add(n)
                return
            out.append(Draft("size", n, r.clause[n], inch=b))
            numbers.sizes.clear()
        elif (
            sizes
            and not out
            and (r.has("change") or r.has("starts") or r.has("part", "pipe"))
            and not any(r.has(cls) for cls in ("zone", "surface", "room", "unclear"))
        ):
            n, value = sizes[-1]
            out.append(Draft("size", n, r.clause[n], inch=value))
            numbers.inches = [x for x in numbers.inches if x not in sizes]
            r.used |= {*r.where("change"), *r.where("starts")}
        return
    liner_ends = r.has("ends") or r.has("end")
    last = where[-1]
    if len(where) == 1 and r.atoms[last].means["material"] == "liner" and liner_ends:
        r.ask.append(
            (Say.of("what pipe follows the liner?"), ("pipe cast iron", "pipe clay", "pipe PVC", "pipe unknown"))
        )
        r.used |= {*where, *r.where("ends"), *r.where("end")}
        return
    if r.has("repair") and r.single_place() and (len(where) > 1 or not r.has("change")):
        what = r.atoms[last].means["material"]
        r.ask.append((Say.of("how long is the {what} repair?", what=what), (f"pipe {what}", "note")))
        r.used |= {*where, *r.where("repair")}
        return
    if (
        len(where) == 1
        and r.atoms[last].means["material"] == "copper"
        and not r.has("change")
        and not r.has("part", "pipe")
    ):
        r.ask.append(
            (
                Say.of("copper: is this drain of it, or a branch or a water pipe beside it?"),
                ("pipe copper", "utility water" if r.has("through") else "branch 2in", "crossing water"),
            )
        )
        r.used |= set(where)
        return
    draft = Draft("pipe", last, r.clause[last], choice=r.atoms[last].means["material"])
    out.append(draft)
    said = ("change", "repair", "starts", "ends", "end", "reached")
    r.used |= {*where, *(n for cls in said for n in r.where(cls)), *r.where("part", "coupling")}
    if numbers.sizes:
        out.append(Draft("size", last, r.clause[last], inch=numbers.sizes[0][2]))
        numbers.sizes.clear()
    elif sizes:
        out.append(Draft("size", sizes[-1][0], r.clause[sizes[-1][0]], inch=sizes[-1][1]))
        numbers.inches = [x for x in numbers.inches if x not in sizes]


def _two_sizes(r: "Reader", n: int) -> bool:
    """`goes 4 to 6 at 41`: one pipe size, then another."""
    t = r.number(n)
    return t is not None and t.kind == "range" and not t.tight and {t.value, t.to} <= set(SIZES_IN) and t.value != t.to


def _zones(r: "Reader", numbers: Numbers, out: list[Draft]) -> None:
    words = {d.word for d in out}
    into = any(
        "material" in a.means and "zone" in b.means for a, b in itertools.pairwise(r.atoms)
    )  # `26 to clay drive`
    if words & NO_ZONE and not (words == {"pipe"} and into and r.has("change")):
        return
    if r.has("unclear", "deck") or r.has("state", "gone"):
        return
    zones = [n for n in r.where("zone") if n not in r.used]
    gravel = [n - 1 for n in zones if n and r.atoms[n - 1].means.get("unclear") == "gravel"]  # `gravel driveway`
    surfaces = [n for n in r.where("surface") if n not in r.used]
    if not zones and not surfaces:
        return
    edges = [n for n in zones if r.atoms[n].means["zone"] == "edge"]
    plain = [n for n in zones if r.atoms[n].means["zone"] != "edge"]
    surface = next(
        (
            r.atoms[n].means["surface"]
            for n in surfaces
            if r.atoms[n].means["surface"] not in ("slab", "floor", "ground", "slab top")
        ),
        "",
    )
    surface = surface or ("gravel" if gravel else "")
    inside = r.context.zone in ("slab", "basement", "crawl")
    if edges and not plain:
        zone = "slab" if surface in INDOORS or not (inside or surface in OUTDOORS) else "yard"
    elif plain:
        zone = r.atoms[plain[-1]].means["zone"]
        if r.text(plain[-1]) in ("walk",) and r.has("room"):
            return
    elif surface in ("dirt", "gravel") and not any(
        r.has(c) for c in ("starts", "ends", "end", "change", "under", "back")
    ):
        _asked(r, "gravel")
        r.ask[-1] = (r.ask[-1][0], (*r.ask[-1][1], f"yard {surface}"))  # `1.5 dirt`: or the ground over it
        return
    elif surface in OUTDOORS:
        zone = "yard"
    elif (
        surface == "tile"
        and "floor" not in r.words().split()
        and all(n in surfaces or a.token or a.text in AT_ONE for n, a in enumerate(r.atoms))
    ):
        _asked(r, "tile")
        return
    elif surface in SOLID and (_in_the_way(r) or (_alone(r) and r.single_place())):
        over = "slab" if surface in INDOORS else "walk"
        choices = ("blocked hard",) if _in_the_way(r) else (f"{over} {surface}", "blocked hard")
        r.ask.append((Say.of("does it lie over the pipe, or in it?"), choices))
        return
    elif surface in INDOORS:
        zone = r.context.zone if r.context.zone in ("slab", "basement") else "slab"
    elif surface in PAVING:
        if r.context.zone in ("drive", "walk", "street"):
            zone = r.context.zone
        else:
            r.ask.append(
                (
                    Say.of("what is it that has {surface} over it?", surface=surface),
                    (f"drive {surface}", f"walk {surface}", f"street {surface}", f"slab {surface}"),
                )
            )
            return
    elif any(r.atoms[n].means["surface"] in ("slab", "floor") for n in surfaces):
        zone = "slab"
        if r.has("ends") or r.has("end"):
            zone = "yard"
    else:
        return
    if numbers.depth:
        return
    draft = Draft(zone, zones[-1] if zones else surfaces[-1], r.clause[(zones or surfaces)[-1]], choice=surface)
    if zone == "crawl":
        draft.lengths = [x for x in numbers.lengths if x[0] == ""]
        numbers.lengths.clear()
    out.append(draft)
    said = ("under", "change", "starts", "back", "reached", "ends", "end")
    r.used |= {*zones, *surfaces, *gravel, *r.where("place", "crossing"), *(n for cls in said for n in r.where(cls))}
    rooms = [n for n in r.where("room") if n not in r.used]
    if rooms and zone in ("slab", "basement", "crawl"):
        out.append(Draft("room", rooms[0], r.clause[rooms[0]], name=_room_name(r, rooms)))
        r.used |= set(rooms)
