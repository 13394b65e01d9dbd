"""Words of locates, stops and ends in; what a line may mean by them, out."""

from typing import TYPE_CHECKING

from estimator.fieldnotes.drafts import Draft
from estimator.fieldnotes.numbers_of_a_line import Numbers

if TYPE_CHECKING:
    from estimator.fieldnotes.understand import Reader
from estimator.fieldnotes.head_words import _asked
from estimator.model.say import Say


def _locates(r: "Reader", numbers: Numbers, out: list[Draft]) -> None:
    locs = [n for n in r.where("place", "loc") if n not in r.used]
    depths = [n for n in r.where("place", "depth") if n not in r.used]
    potholes = r.where("place", "pothole")
    inverts = [
        n
        for n in (
            *r.where("place", "invert"),
            *(
                k
                for k in r.where("part", "bottom")
                if r.text(k) in ("inv", "invert", "invert level", "flowline", "flow line")
            ),
        )
        if n not in r.used
    ]
    findings = [d for d in out if d.finding]
    water = any(d.word in ("sag", "blocked", "mud", "grease", "reverse fall") for d in findings)
    standing = bool(numbers.inches) and bool({"water", "agua"} & set(r.words().split()))
    water = water or standing or r.has("rises") or r.has("out of water")
    if (findings or water) and not locs:
        r.used |= {n for n in depths if "side" not in r.atoms[n].means}
        return
    word, n = "", 0
    if potholes:
        word, n = "pothole", potholes[0]
    elif locs:
        word, n = "loc", locs[0]
    elif numbers.tapes and not out:
        word, n = "loc", 0
    elif inverts and (numbers.depth or not out):
        word, n = "invert", inverts[0]
    elif numbers.depth or (depths and not out and not water):
        word, n = "depth", depths[0] if depths else numbers.depth[0] if numbers.depth else 0
    if word == "depth" and (numbers.flag or numbers.tapes):
        word = "loc"
    if not word or (word == "depth" and any(d.word in ("beam", "branch") for d in out)):
        return
    if word == "depth" and any(d.word == "bend" for d in out):
        return
    draft = Draft(word, n, r.clause[n])
    if numbers.depth:
        draft.depth_ft = numbers.depth[1]
        numbers.depth = None
    draft.surface, said = r.surface()
    draft.tapes, draft.flag = list(numbers.tapes), numbers.flag
    numbers.tapes.clear()
    r.used |= {*locs, *depths, *potholes, *inverts, *said}
    for k, a in enumerate(r.atoms):
        if "surface" in a.means or "from surface" in a.means or "under" in a.means:
            r.used.add(k)
    rooms = [k for k in r.where("room") if k not in r.used]
    out.append(draft)
    if rooms and not findings and not draft.tapes:
        out.append(Draft("room", rooms[0], r.clause[rooms[0]], name=r.atoms[rooms[0]].means["room"]))
        r.used.add(rooms[0])


def _ends(r: "Reader", numbers: Numbers, out: list[Draft]) -> None:
    findings = [d for d in out if d.finding]
    if any(d.word in ("branch", "loc", "depth", "tree", "crossing", "utility", "cleaned") for d in out):
        if any(d.word == "branch" for d in out):
            r.used |= set(r.where("reach", "main"))
        return
    stops, cable = r.where("stop"), r.where("cable end")
    if r.has("unclear", "camera out") and not findings and not stops and not cable:
        r.used |= {*r.where("unclear", "camera out"), *r.where("end")}
        _asked(r, "camera out")
        return
    stuck = list(r.where("sign", "cannot pass"))
    reach = [n for n in r.where("reach") if n not in r.used]
    ends = [n for n in r.where("end") if n not in r.used]
    if findings:
        if stops or stuck:
            real = [n for n in stops if r.text(n) not in ("stops", "stop") or stuck]
            if real or stuck:
                target = (
                    findings[-1] if len(findings) == 1 else min(findings, key=lambda d: abs(d.at - (real or stuck)[0]))
                )
                if "cannot pass" not in target.signs and not _got_thru(r):
                    target.signs.append("cannot pass")
                r.used |= {*real, *stuck}
        return
    if cable:
        out.append(Draft("stop", cable[0], r.clause[cable[0]], choice="cable end"))
        r.used |= {*cable, *stops, *ends}
        return
    if reach and not (r.has("material") and not ends) and not r.has("under"):
        what = r.atoms[reach[0]].means["reach"]
        room = [n for n in r.where("room") if n not in r.used and n not in reach]
        if what in ("main", "septic tank", "manhole", "stack", "closet bend") or ends or stuck or stops:
            if (
                what == "main"
                and r.atoms[reach[0]].text in ("main line", "mainline", "main", "mn")
                and not (ends or r.has("reached") or len(reach) > 1 or r.text(reach[0]).startswith("city"))
            ):
                r.ask.append((Say.of("does the line end in the city main there?"), ("end main", "note")))
                return
            word = "stop" if stuck or (stops and not ends) else "end"
            out.append(Draft(word, reach[0], r.clause[reach[0]], choice=what))
            r.used |= {*reach, *ends, *stops, *stuck, *r.where("reached"), *room}
            return
        if what == "trap":
            r.ask.append(
                (
                    Say.of("did the camera stop at the trap, or does the line end there?"),
                    ("stop trap", "end trap", "note"),
                )
            )
            return
    if ends and r.has("doubt", "cannot tell") and not out:
        _asked(r, "end or stop")
        return
    if ends and not r.has("material") and not r.has("surface") and not r.has("zone"):
        room = [n for n in r.where("room") if n not in r.used]
        choice = r.atoms[room[0]].means["room"] if room else ""
        out.append(Draft("end", ends[0], r.clause[ends[0]], choice=choice))
        r.used |= {*ends, *room, *stops, *stuck, *r.where("reached")}
        return
    real = [n for n in stops if r.text(n) not in ("stops",)]
    if real and r.has("doubt", "cannot tell"):
        _asked(r, "stopped")
    elif any("see" in r.text(n).split() for n in real) and {"water", "agua"} & set(r.words().split()):
        _asked(r, "blind")
    elif real and not r.has("material") and not r.has("surface") and not r.has("zone"):
        out.append(Draft("stop", real[0], r.clause[real[0]]))
        r.used |= {*stops, *stuck}
    elif stuck and any(d.word == "bend" for d in out):
        out.append(Draft("stop", stuck[0], r.clause[stuck[0]]))
        r.used |= set(stuck)
    elif stuck and not out:
        r.used |= set(stuck)
        _asked(r, "stopped")


def _got_thru(r: "Reader") -> bool:
    return any(
        w in r.words()
        for w in ("got thru", "got through", "pushed thru", "pushed through", "got by", "got past", "made it")
    )
