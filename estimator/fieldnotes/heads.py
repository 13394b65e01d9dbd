"""The things a line names: its atoms come in, drafts of findings, branches, bends, zones, pipe and the rest go out."""

from typing import TYPE_CHECKING

from estimator.fieldnotes.drafts import Draft
from estimator.fieldnotes.figures import DEGREES, SIZES_IN, Numbers
from estimator.fieldnotes.lexicon import lexicon

if TYPE_CHECKING:
    from estimator.fieldnotes.understand import Reader

JOINT_STATES = {
    "apart": "gap", "off": "offset", "dropped": "offset down", "gone": "gap", "broken": "crack broken", "rotted": "crack broken",
}  # fmt: skip
"""What is wrong with a joint, by the word beside it."""
BOTTOM_STATES = {"gone": "channel gone", "rotted": "channel gone", "thin": "channel thin", "broken": "channel gone"}
SAME_WAY = {"left": "left", "right": "right", "up": "up", "down": "down", "top": "up", "bottom": "down"}


def drafts(r: "Reader", numbers: Numbers) -> list[Draft]:
    out: list[Draft] = []
    _dangers(r, numbers, out)
    _utilities(r, numbers, out)
    if r.ask:
        return out
    if r.has("unclear", "opening") and numbers.inches:
        _asked(r, "opening")
    _findings(r, numbers, out)
    _states(r, numbers, out)
    _signs(r, numbers, out)
    _places(r, numbers, out)
    _ends(r, numbers, out)
    if not any(d.finding for d in out):
        _pipes(r, numbers, out)
        _zones(r, numbers, out)
        _rooms(r, numbers, out)
        _unclear(r, out)
    elif not any(d.word in ("branch", "loc") for d in out):
        _pipe_beside(r, out)
    return sorted(out, key=lambda d: d.at)


def _draft(r: "Reader", n: int, words: str) -> Draft:
    """A draft of standard words such as `roots severe` or `sag, lens under`."""
    from estimator.fieldnotes.words import ALL_SIGNS, BY_NAME, GRADE_WORDS, SIDES

    text = words.replace(",", " ").split()
    word = next((w for w in (" ".join(text[:2]), text[0]) if w in BY_NAME), text[0])
    draft = Draft(word, n, r.clause[n] if n < len(r.clause) else 0)
    rest = " ".join(text[len(word.split()) :])
    for sign in sorted(ALL_SIGNS, key=len, reverse=True):
        if sign in rest:
            draft.signs.append(sign)
            rest = rest.replace(sign, " ")
    for token in rest.split():
        if token in GRADE_WORDS:
            draft.grade = token
        elif token in SIDES:
            draft.direction = token
        elif token == "suspected":
            draft.doubt = True
        else:
            draft.choice = f"{draft.choice} {token}".strip()
    return draft


# ── gas and its kin ───────────────────────────────────────────────────────────────────────────────


def _asked(r: "Reader", name: str) -> None:
    ask = lexicon().asks[name]
    r.ask.append((ask.question, ask.choices))


def _dangers(r: "Reader", numbers: Numbers, out: list[Draft]) -> None:
    for n in r.where("danger"):
        r.used.add(n)
        if r.atoms[n].means["danger"] == "cross bore":
            draft = Draft("utility", n, r.clause[n])
            for k in r.where("utility"):
                draft.choice = r.atoms[k].means["utility"]
                r.used.add(k)
            out.append(draft)
        else:
            _asked(r, r.atoms[n].means["danger"])


def _utilities(r: "Reader", numbers: Numbers, out: list[Draft]) -> None:
    where = r.where("utility")
    if not where or any(d.word == "utility" for d in out):
        return
    n = where[0]
    what = r.atoms[n].means["utility"]
    if (
        what in ("power", "conduit")
        and not any(m in r.atoms[k].means for k in range(len(r.atoms)) for m in ("through", "above"))
        and not r.has("place", "crossing")
        and r.has("finding")
    ):
        return
    for k in where:
        r.used.add(k)
    through = list(r.where("through"))
    crossing = r.where("place", "crossing")
    beside = bool(numbers.lengths)
    r.used |= {*through, *crossing}
    if through and not crossing and not beside:
        out.append(Draft("utility", n, r.clause[n], choice=what))
    elif (crossing and not through) or (beside and not through):
        out.append(Draft("crossing", n, r.clause[n], choice=what, lengths=list(numbers.lengths)))
        numbers.lengths.clear()
    else:
        r.ask.append((
            f"does the {what} line run through the drain, or cross outside it? Treat it as live until its owner says what it is.",
            (f"utility {what}", f"crossing {what}"),
        ))  # fmt: skip


# ── findings ──────────────────────────────────────────────────────────────────────────────────────


def _findings(r: "Reader", numbers: Numbers, out: list[Draft]) -> None:
    for n in r.where("finding"):
        means = r.atoms[n].means
        if n in r.amount_words or (n in r.used and "fraction" in means):
            continue
        if "cleaned" in means and r.has("cleaned"):
            continue
        if _only_where(r, n):
            r.used.add(n)
            continue
        draft = _draft(r, n, means["finding"])
        same = next(
            (
                d
                for d in out
                if d.word == draft.word and (d.clause == draft.clause or draft.word in ("fitting", "blocked", "crack"))
            ),
            None,
        )
        r.used.add(n)
        if same is not None:
            same.signs += [s for s in draft.signs if s not in same.signs]
            same.grade = same.grade or draft.grade
            continue
        out.append(draft)
    opened = [d for d in out if d.word in ("hole", "gap", "crack", "channel", "collapse", "offset")]
    for n in r.where("unclear", "gravel"):
        if opened and n not in r.used:
            target = min(opened, key=lambda d: abs(d.at - n))
            r.used.add(n)
            if "soil seen" not in target.signs:
                target.signs.append("soil seen")


def _only_where(r: "Reader", n: int) -> bool:
    """`hole under the scale`: the second finding says where the first one is."""
    k = n - 1
    while k >= 0 and r.text(k) in ("the", "that", "all", "some", "all that", "this"):
        k -= 1
    others = [m for m in r.where("finding") if m != n]
    return bool(others) and r.text(k) in (
        "under",
        "behind",
        "beneath",
        "below",
        "underneath",
        "past",
        "after",
        "before",
        "between",
        "debajo de",
        "bajo",
        "atras de",
    )


def _states(r: "Reader", numbers: Numbers, out: list[Draft]) -> None:
    joints, bottoms = r.where("part", "joint"), r.where("part", "bottom")
    pieces = r.where("part", "piece")
    for n in r.where("state"):
        state = r.atoms[n].means["state"]
        if n in r.used or (r.text(n) in ("out", "off") and not _next_to(r, n, joints)):
            continue
        beside = [d for d in out if d.clause == r.clause[n]]
        if (
            state in ("apart",)
            and "sign" in r.atoms[n].means
            and any(d.word in ("crack", "channel", "gap") for d in beside)
        ):
            continue  # `crack open`
        joint = [k for k in joints if r.clause[k] == r.clause[n]] or (joints if not beside else [])
        bottom = [k for k in bottoms if r.clause[k] == r.clause[n]]
        if joint and state in JOINT_STATES and not any(d.word in ("offset", "gap", "crack") for d in beside):
            out.append(_draft(r, n, JOINT_STATES[state]))
            r.used |= {n, *joint}
        elif state == "off" or (joint and state == "thin"):
            continue
        elif bottom and state in BOTTOM_STATES:
            old = next((d for d in out if d.word == "channel"), None)
            if old is None:
                out.append(_draft(r, n, BOTTOM_STATES[state]))
            elif "gone" in BOTTOM_STATES[state] and "gone" not in old.signs:
                old.signs.append("gone")
            r.used |= {n, *bottom}
        elif pieces and state == "gone":
            if r.has("sign", "broken"):
                _asked(r, "broken")
            else:
                out.append(_draft(r, n, "hole"))
            r.used |= {n, *pieces}
        elif state == "rough" or "remark" in r.atoms[n].means:
            r.used.add(n)
        elif any(d.word == "channel" for d in out) and state in ("gone", "thin", "rotted"):
            sign = "thin" if state == "thin" else "gone"
            for d in out:
                if d.word == "channel" and sign not in d.signs:
                    d.signs.append(sign)
            r.used.add(n)
        elif any(d.word in ("hole", "gap", "collapse") for d in out):
            r.used.add(n)
        elif (alone := lexicon().alone.get(("state", state))) and not r.has("place", "branch") and not r.has("surface"):
            r.used.add(n)
            _alone(r, n, alone, out)
    if joints and not out and not r.has("place", "branch") and not numbers.every_ft and not r.has("sign"):
        sideways = [k for k in r.where("side") if r.atoms[k].means["side"] in ("up", "down", "left", "right")] + [
            k for k in bottoms if r.text(k) in ("abajo",)
        ]
        if sideways and (numbers.inches or numbers.percents or numbers.bare_fractions):
            draft = Draft(
                "offset", joints[0], r.clause[joints[0]], direction=r.atoms[sideways[0]].means.get("side", "down")
            )
            out.append(draft)
            r.used |= {joints[0], sideways[0]}
        elif any(a.means.get("grade") == "severe" for a in r.atoms):
            _asked(r, "bad joint")


def _next_to(r: "Reader", n: int, others: list[int]) -> bool:
    return any(abs(k - n) <= 2 for k in others)


def _alone(r: "Reader", n: int, alone: str, out: list[Draft]) -> None:
    if alone.startswith("ask "):
        _asked(r, alone[4:])
    else:
        out.append(_draft(r, n, alone))


def _signs(r: "Reader", numbers: Numbers, out: list[Draft]) -> None:
    findings = [d for d in out if d.finding]
    for n in r.where("sign"):
        if n in r.used:
            continue
        sign = r.atoms[n].means["sign"]
        if sign == "open" and (
            "apart" in r.atoms[n].means.get("state", "") and not any(d.word == "crack" for d in findings)
        ):
            continue
        if sign in ("two-way", "dry", "capped", "encased", "hung", "buried"):
            continue  # of places
        fitting = _fitting(r, n, findings, sign)
        if fitting is not None:
            if sign == "hair" and fitting.word == "crack":
                sign = "hairline"
            if sign not in fitting.signs:
                fitting.signs.append(sign)
            r.used.add(n)
        elif not findings and (sign in ("cannot pass",)):
            continue  # a stop, perhaps: _ends
        elif (alone := lexicon().alone.get(("sign", sign))) and not r.ask and not r.has("place", "branch"):
            r.used.add(n)
            _alone(r, n, alone, out)
            if out and not alone.startswith("ask ") and sign in ("hair", "drip"):
                out[-1].signs.append(sign)
            findings = [d for d in out if d.finding]
    if (
        {"broken"} & {r.atoms[n].means["sign"] for n in r.where("sign")}
        and any(d.word == "roots" for d in findings)
        and not any(d.word in ("crack", "hole", "collapse") for d in findings)
    ):
        _asked(r, "broken")
    if (
        any(d.word == "hole" for d in findings)
        and r.has("sign", "broken")
        and any("missing" in a.text for a in r.atoms)
    ):
        _asked(r, "broken")


def _fitting(r: "Reader", n: int, findings: list[Draft], sign: str) -> Draft | None:
    takes = {
        "soil seen": ("hole", "gap", "crack", "channel", "collapse", "offset"), "void": ("hole", "gap", "crack", "channel", "collapse", "offset"),
        "washing": ("hole", "gap", "crack", "channel", "collapse", "offset", "leak"), "hair": ("roots", "crack"), "open": ("crack", "channel"),
        "broken": ("crack", "collapse"), "soft": ("blocked", "grease", "scale"), "hard": ("blocked", "scale"), "cut yearly": ("roots",),
        "no flow": ("collapse", "blocked", "roots"), "several": ("crack", "hole", "gap", "offset", "leak"), "catches paper": ("fitting", "offset", "roots", "intruding", "scale", "crack", "hole"),
        "only in use": ("sag",), "drip": ("leak",), "loose": ("collapse", "crack"), "sharp": ("channel", "hole", "crack", "collapse"), "smooth": ("channel",),
    }.get(sign)  # fmt: skip
    fitting = [d for d in findings if takes is None or d.word in takes]
    same = [d for d in fitting if d.clause == r.clause[n]]
    return min(same or fitting, key=lambda d: abs(d.at - n), default=None)


# ── places ────────────────────────────────────────────────────────────────────────────────────────


def _places(r: "Reader", numbers: Numbers, out: list[Draft]) -> None:
    findings = [d for d in out if d.finding]
    branches = r.where("place", "branch")
    rooms = [n for n in r.where("room") if r.text(n) not in ("closet bend", "closet flange")]
    words = {d.word for d in findings}
    tied = bool(branches) and not (words & {"intruding", "fitting"})
    if (
        tied
        and findings
        and all(
            r.text(n) in ("coming in", "comes in", "entra", "enters", "te", "stack", "combo", "llega") for n in branches
        )
    ):
        tied = False
    implied = (
        not branches
        and not findings
        and bool(rooms)
        and bool([1 for _, v in numbers.inches if v in SIZES_IN] or _bare_size(r))
        and not r.has("under")
        and not r.has("place", "loc")
        and not r.has("surface")
        and not numbers.depth
    )
    left_room = (
        not branches
        and not findings
        and rooms
        and any(r.text(n) in ("left", "right", "izq", "der") for n in r.where("side"))
        and not r.has("under")
        and not r.has("place", "loc")
        and not r.has("place", "bend")
        and not r.has("end")
    )
    if tied or implied or left_room:
        _branch(r, numbers, out, branches, rooms)
    elif branches:
        r.used |= set(branches)
    if words & {"intruding", "fitting"}:
        r.used |= {*branches, *rooms}
    for n in r.where("place", "cleanout"):
        if n in r.used or findings or ("run" in r.atoms[n].means and _pipe_from_access(r)):
            continue
        if any(d.word == "branch" for d in out) or numbers.tapes:
            continue
        draft = Draft("cleanout", n, r.clause[n])
        for k in r.where("sign", "two-way"):
            draft.signs.append("two-way")
            r.used.add(k)
        out.append(draft)
        r.used.add(n)
        break
    bends = [n for n in r.where("place", "bend") if r.text(n) not in ("turns",) or not r.has("material")]
    turned = not bends and not out and _bend_by_degrees(r)
    if turned and not r.has("side") and not numbers.degrees and not r.has("part"):
        values = [t.value for n in range(len(r.atoms)) if (t := r.number(n)) is not None]
        r.ask.append(("a bend, or a stretch?", tuple(f"bend {v:g}" for v in values if v in DEGREES)))
    if (bends or turned) and not findings and not any(d.word in ("branch", "cleanout") for d in out):
        n = bends[0] if bends else 0
        out.append(
            Draft(
                "bend",
                n,
                r.clause[n],
                choice="long sweep" if r.text(n) == "long sweep" else "sweep" if r.text(n) == "sweep" else "",
            )
        )
        r.used |= set(bends)
    for word in ("beam", "property line"):
        for n in r.where("place", word)[:1]:
            if not findings:
                out.append(Draft(word, n, r.clause[n], lengths=list(numbers.lengths) if word == "beam" else []))
                r.used.add(n)
    for n in r.where("place", "tree")[:1]:
        if "finding" not in r.atoms[n].means and not findings and not any(d.word == "branch" for d in out):
            draft = Draft("tree", n, r.clause[n], lengths=list(numbers.lengths))
            out.append(draft)
            r.used.add(n)
    _locates(r, numbers, out)
    joints = r.where("part", "joint")
    if numbers.every_ft and not any(d.finding for d in out):
        n = joints[0] if joints else 0
        out.append(Draft("joint", n, r.clause[n], every_ft=numbers.every_ft))
        numbers.every_ft = None
        r.used |= set(joints)
    for n in r.where("cleaned")[:1]:
        if not findings or (
            "cleaned" in r.atoms[n].means and "finding" not in r.atoms[n].means and all(d.at == n for d in findings)
        ):
            how = (
                "cutter"
                if r.text(n).startswith(
                    ("cut", "corta", "corte", "ran cutter", "ran blade", "ran a blade", "roots cut")
                )
                else "jet"
                if "jet" in r.text(n)
                else "descaled"
                if any(w in r.text(n) for w in ("descale", "mill", "chain", "scale"))
                else "cable machine"
                if any(w in r.text(n) for w in ("snake", "cable", "rod", "rooter"))
                else ""
            )
            out.append(Draft("cleaned", n, r.clause[n], choice=how))
            r.used.add(n)
            if numbers.tool:
                numbers.inches.clear()


def _bare_size(r: "Reader") -> bool:
    return any(
        (t := r.number(n)) is not None and t.kind == "num" and t.value in SIZES_IN and n > 0 and not t.point
        for n in range(len(r.atoms))
    )


def _pipe_from_access(r: "Reader") -> bool:
    return r.has("material") and (r.has("change") or r.has("reached"))


def _bend_by_degrees(r: "Reader") -> bool:
    """`15 45 left`: two numbers, one of them the degrees of a bend."""
    values = [(n, t) for n in range(len(r.atoms)) if (t := r.number(n)) is not None]
    plain = [t for _, t in values if t.kind in ("num", "deg")]
    heads = any(
        c in a.means
        for a in r.atoms
        for c in ("finding", "place", "material", "room", "surface", "zone", "utility", "reach", "unclear")
    )
    return (
        not heads
        and len(plain) == len(values)
        and any(t.value in (90.0, 45.0, 22.5) for t in plain)
        and (len(values) == 2 or any(t.kind == "deg" for t in plain) or r.has("side"))
    )


def _branch(r: "Reader", numbers: Numbers, out: list[Draft], branches: list[int], rooms: list[int]) -> None:
    n = branches[0] if branches else rooms[0]
    draft = Draft("branch", n, r.clause[n])
    if any(r.text(k) in ("tap",) for k in branches) and r.has("reach") and not rooms:
        return
    r.used |= set(branches)
    names = sorted({*rooms, *r.where("whose"), *r.where("name")} - r.used)
    names = [
        k
        for k in names
        if rooms or "name" in r.atoms[k].means or r.atoms[k].means.get("whose") not in ("side", "front", "back", "half")
    ]
    if names and rooms:
        group = [k for k in names if any(abs(k - m) <= 1 for m in rooms) or k in rooms]
        said: list[str] = []
        for k in group:
            means = r.atoms[k].means
            word = (
                r.atoms[k].text
                if means.get("room") == "yard drain" or means.get("name")
                else means["whose"]
                if "whose" in means and k not in rooms
                else means.get("room") or means.get("name") or ""
            )
            if word and word not in said:
                said.append(word)
        draft.name = " ".join(said)
        r.used |= set(group)
    elif names and any("name" in r.atoms[k].means for k in names):
        k = next(k for k in names if "name" in r.atoms[k].means)
        draft.name = r.atoms[k].means["name"]
        r.used.add(k)
    both = (
        any(r.text(k) in ("each side", "both sides") for k in range(len(r.atoms)))
        or "each side" in r.words()
        or "both sides" in r.words()
        or "ambos lados" in r.words()
    )
    for k in r.where("side"):
        side = r.atoms[k].means["side"]
        if r.text(k) == "up" and r.text(k + 1) in ("to",):
            continue
        if not draft.direction and k not in r.used:
            draft.direction = side
            r.used.add(k)
    for k in r.where("part", "top"):
        if not draft.direction:
            draft.direction = "up"
            r.used.add(k)
    for k in r.where("live"):
        live = r.atoms[k].means["live"]
        if "finding" in r.atoms[k].means and k in r.used:
            continue
        if live in ("live", "dead") and draft.live != "dead":
            draft.live = live
        elif live in ("proven", "not proven"):
            draft.proven = live
        r.used.add(k)
    for k in r.where("sign"):
        if r.atoms[k].means["sign"] in ("dry", "capped"):
            draft.signs.append(r.atoms[k].means["sign"])
            r.used.add(k)
    out.append(draft)
    if both:
        draft.direction = "left"
        import copy

        other = copy.deepcopy(draft)
        other.direction = "right"
        out.append(other)
        for k in range(len(r.atoms)):
            if r.text(k) in ("each", "side", "both", "sides", "each side", "both sides"):
                r.used.add(k)


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
    if findings and not locs:
        r.used |= {n for n in depths if "side" not in r.atoms[n].means}
        return
    word, n = "", 0
    if potholes:
        word, n = "pothole", potholes[0]
    elif locs:
        word, n = "loc", locs[0]
    elif inverts and (numbers.depth or not out):
        word, n = "invert", inverts[0]
    elif numbers.depth or (depths and not out and not water):
        word, n = "depth", depths[0] if depths else numbers.depth[0] if numbers.depth else 0
    if not word or (word == "depth" and any(d.word in ("beam", "branch") for d in out)):
        return
    if word == "depth" and any(d.word == "bend" for d in out):
        return
    draft = Draft(word, n, r.clause[n])
    if numbers.depth:
        draft.depth_ft = numbers.depth[1]
        numbers.depth = None
    draft.surface = r.surface()
    draft.tapes, draft.flag = list(numbers.tapes), numbers.flag
    numbers.tapes.clear()
    r.used |= {*locs, *depths, *potholes, *inverts}
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
    stuck = list(r.where("sign", "cannot pass"))
    reach = [n for n in r.where("reach") if n not in r.used]
    ends = [n for n in r.where("end") if n not in r.used]
    if findings:
        if (stops or stuck) and not r.has("pushed"):
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
                r.ask.append(("does the line end in the city main there?", ("end main", "note")))
                return
            word = "stop" if stuck or (stops and not ends) else "end"
            out.append(Draft(word, reach[0], r.clause[reach[0]], choice=what))
            r.used |= {*reach, *ends, *stops, *stuck, *r.where("reached"), *room}
            return
        if what == "trap":
            r.ask.append(
                ("did the camera stop at the trap, or does the line end there?", ("stop trap", "end trap", "note"))
            )
            return
    if ends and not r.has("material") and not r.has("surface") and not r.has("zone"):
        room = [n for n in r.where("room") if n not in r.used]
        choice = r.atoms[room[0]].means["room"] if room else ""
        out.append(Draft("end", ends[0], r.clause[ends[0]], choice=choice))
        r.used |= {*ends, *room, *stops, *stuck, *r.where("reached")}
        return
    real = [n for n in stops if r.text(n) not in ("stops",)]
    if real and not r.has("material") and not r.has("surface") and not r.has("zone"):
        out.append(Draft("stop", real[0], r.clause[real[0]]))
        r.used |= {*stops, *stuck}
    elif stuck and not out:
        r.used |= set(stuck)
        _asked(r, "stopped")


def _got_thru(r: "Reader") -> bool:
    return any(
        w in r.words()
        for w in ("got thru", "got through", "pushed thru", "pushed through", "got by", "got past", "made it")
    )


# ── what holds ────────────────────────────────────────────────────────────────────────────────────


def _pipe_beside(r: "Reader", out: list[Draft]) -> None:
    """`34 roots 20%, clay`: a material in a part of its own beside findings; else it only tells which joint."""
    for n in r.where("material"):
        alone = all(d.clause != r.clause[n] for d in out) and all(
            k == n or r.clause[k] != r.clause[n] or (a.token is not None and a.token.kind == "mark")
            for k, a in enumerate(r.atoms)
        )
        if alone and "finding" not in r.atoms[n].means and n not in r.used:
            out.append(Draft("pipe", n, r.clause[n], choice=r.atoms[n].means["material"]))
            r.used.add(n)


def _pipes(r: "Reader", numbers: Numbers, out: list[Draft]) -> None:
    where = [n for n in r.where("material") if n not in r.used]
    words = {d.word for d in out}
    if words & {"branch", "loc", "depth", "pothole", "tree", "crossing", "cleaned", "invert", "utility"}:
        return
    sizes = [(n, v) for n, v in numbers.inches if v in SIZES_IN]
    if not where:
        if numbers.sizes and not out:
            n, _a, b = numbers.sizes[0]
            out.append(Draft("size", n, r.clause[n], inch=b))
            numbers.sizes.clear()
        elif (
            sizes
            and not out
            and (r.has("change") or r.has("starts") or r.has("part", "pipe"))
            and not r.has("zone")
            and not r.has("surface")
            and not r.has("room")
            and not r.has("unclear")
        ):
            n, value = sizes[-1]
            out.append(Draft("size", n, r.clause[n], inch=value))
            numbers.inches = [x for x in numbers.inches if x not in sizes]
            r.used |= {*r.where("change"), *r.where("starts")}
        return
    if "barro" in " ".join(r.text(n) for n in where) and not r.has("material", "cast iron"):
        pass
    liner_ends = r.has("ends") or r.has("end")
    last = where[-1]
    if len(where) == 1 and r.atoms[last].means["material"] == "liner" and liner_ends:
        r.ask.append(("what pipe follows the liner?", ("pipe cast iron", "pipe clay", "pipe PVC", "pipe unknown")))
        r.used |= {*where, *r.where("ends"), *r.where("end")}
        return
    if len(where) == 1 and r.has("repair") and r.single_place() and not r.has("change"):
        what = r.atoms[last].means["material"]
        if r.text(last) not in ("patch liner", "cipp patch", "point repair") or True:
            r.ask.append((f"how long is the {what} repair?", (f"pipe {what}", "note")))
            r.used |= {*where, *r.where("repair")}
            return
    draft = Draft("pipe", last, r.clause[last], choice=r.atoms[last].means["material"])
    out.append(draft)
    r.used |= {
        *where,
        *r.where("change"),
        *r.where("repair"),
        *r.where("starts"),
        *r.where("ends"),
        *r.where("end"),
        *r.where("reached"),
        *r.where("part", "coupling"),
    }
    if numbers.sizes:
        out.append(Draft("size", last, r.clause[last], inch=numbers.sizes[0][2]))
        numbers.sizes.clear()
    elif sizes:
        out.append(Draft("size", sizes[-1][0], r.clause[sizes[-1][0]], inch=sizes[-1][1]))
        numbers.inches = [x for x in numbers.inches if x not in sizes]


OUTDOORS = ("lawn", "bed", "bare ground", "gravel", "dirt")
INDOORS = ("tile", "wood", "vinyl", "carpet", "laminate", "stone")
PAVING = ("asphalt", "pavers", "concrete", "brick")


def _zones(r: "Reader", numbers: Numbers, out: list[Draft]) -> None:
    words = {d.word for d in out}
    if words & {
        "branch",
        "pipe",
        "size",
        "loc",
        "depth",
        "pothole",
        "invert",
        "bend",
        "tree",
        "crossing",
        "end",
        "stop",
        "cleaned",
        "beam",
        "utility",
    }:
        return
    zones = [n for n in r.where("zone") if n not in r.used]
    surfaces = [n for n in r.where("surface") if n not in r.used]
    if not zones and not surfaces:
        return
    over = [n for n in r.where("over") if n not in r.used]
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
    inside = r.context.zone in ("slab", "basement", "crawl")
    if edges and not plain:
        zone = "yard" if inside else "slab"
    elif plain:
        zone = r.atoms[plain[-1]].means["zone"]
        if r.text(plain[-1]) in ("walk",) and r.has("room"):
            return
        if len({r.atoms[n].means["zone"] for n in plain}) > 1:
            zone = _last_zone(r, plain)
    elif surface in OUTDOORS:
        zone = "yard"
    elif surface in INDOORS:
        zone = r.context.zone if r.context.zone in ("slab", "basement") else "slab"
    elif surface in PAVING:
        if r.context.zone in ("drive", "walk", "street"):
            zone = r.context.zone
        else:
            r.ask.append(
                (
                    f"what is it that has {surface} over it?",
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
    if surface == "concrete" and zone == "slab":
        surface = "concrete"
    draft = Draft(zone, zones[-1] if zones else surfaces[-1], r.clause[(zones or surfaces)[-1]], choice=surface)
    if zone == "crawl":
        draft.lengths = [x for x in numbers.lengths if x[0] == ""]
        numbers.lengths.clear()
    out.append(draft)
    r.used |= {
        *zones,
        *surfaces,
        *r.where("under"),
        *r.where("change"),
        *r.where("starts"),
        *r.where("back"),
        *r.where("reached"),
        *r.where("ends"),
        *r.where("end"),
    }
    rooms = [n for n in r.where("room") if n not in r.used]
    if rooms and zone in ("slab", "basement", "crawl"):
        out.append(Draft("room", rooms[0], r.clause[rooms[0]], name=_room_name(r, rooms)))
        r.used |= set(rooms)
    del over


def _last_zone(r: "Reader", plain: list[int]) -> str:
    """`from yard to drive`: the one after to."""
    return r.atoms[plain[-1]].means["zone"]


def _room_name(r: "Reader", rooms: list[int]) -> str:
    n = rooms[0]
    whose = r.atoms[n - 1].means.get("whose") if n else None
    if whose:
        r.used.add(n - 1)
    name = r.atoms[n].means["room"]
    if len(rooms) > 1 and rooms[1] == n + 1:
        r.used.add(rooms[1])
        name = f"{name} {r.atoms[rooms[1]].means['room']}"
    return f"{whose} {name}" if whose and whose != name else name


def _rooms(r: "Reader", numbers: Numbers, out: list[Draft]) -> None:
    if out or r.ask:
        return
    under = r.where("under")
    over = [n for n in r.where("over") if n not in r.used]
    rooms = [n for n in r.where("room") if n not in r.used]
    fixtures = [n for n in rooms if r.atoms[n].means["room"] in ("tub", "shower")]
    if under and (over or fixtures):
        n = (over or fixtures)[0]
        out.append(Draft("under", n, r.clause[n], choice=r.atoms[n].means.get("over") or r.atoms[n].means["room"]))
        r.used |= {n, *under}
    elif rooms and (under or r.text(rooms[0]) in ("walk in closet",) or r.single_place()):
        n = rooms[0]
        if not under and r.atoms[n].means["room"] in (
            "toilet",
            "sink",
            "lav",
            "washer",
            "yard drain",
            "dishwasher",
            "tub",
            "shower",
            "bidet",
        ):
            r.ask.append(
                (
                    f"does a branch from the {r.atoms[n].text} come in there, or does the line pass under it?",
                    (f"branch called {r.atoms[n].means['room']}", f"under {r.atoms[n].means['room']}"),
                )
            )
            r.used.add(n)
            return
        if not under and r.atoms[n].means["room"] in ("kitchen", "laundry", "bath", "powder room", "addition"):
            name = _room_name(r, rooms)
            r.ask.append(
                (
                    f"does a branch from the {name} come in there, or does the line pass under it?",
                    (f"branch called {name}", f"room {name}"),
                )
            )
            r.used.add(n)
            return
        out.append(Draft("room", n, r.clause[n], name=_room_name(r, rooms)))
        r.used |= {*rooms, *under}
    elif over and not rooms:
        n = over[0]
        out.append(Draft("under", n, r.clause[n], choice=r.atoms[n].means["over"]))
        r.used.add(n)


def _unclear(r: "Reader", out: list[Draft]) -> None:
    if out or r.ask:
        return
    for n in r.where("unclear"):
        r.used.add(n)
        _asked(r, r.atoms[n].means["unclear"])
        return


__all__ = ["DEGREES", "drafts"]
