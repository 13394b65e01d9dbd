"""Words of a finding in; the findings a line may mean, out."""

import re
from typing import TYPE_CHECKING

from estimator.fieldnotes.drafts import Draft
from estimator.fieldnotes.lexicon import lexicon
from estimator.fieldnotes.numbers_of_a_line import Numbers

if TYPE_CHECKING:
    from estimator.fieldnotes.understand import Reader
from estimator.fieldnotes.head_words import _asked, _draft

HIDES = re.compile(r"(?:(?:was|were|had been|is|are) )?(?:hid|hiding?|hides|hidin|covering|coverin|covered|covers)\b")
"""`crack at the top, scale was hiding it`."""
BESIDE = (
    "under", "behind", "beneath", "below", "underneath", "past", "after", "before", "between", "debajo de", "bajo",
    "atras de",
)  # fmt: skip
OPENED = ("hole", "gap", "crack", "channel", "collapse", "offset")
JOINT_STATES = {
    "pulled": "gap",
    "apart": "gap", "off": "offset", "dropped": "offset down", "gone": "gap", "broken": "crack broken", "rotted": "crack broken",
}  # fmt: skip
"""What is wrong with a joint, by the word beside it."""
BOTTOM_STATES = {"gone": "channel gone", "rotted": "channel gone", "thin": "channel thin", "broken": "channel gone"}


def _findings(r: "Reader", numbers: Numbers, out: list[Draft]) -> None:
    for n in r.where("finding"):
        means = r.atoms[n].means
        if n in r.amount_words or (n in r.used and "fraction" in means):
            continue
        if (means.get("sign") == "capped" and r.has("place", "branch")) or (
            r.text(n) == "plug" and r.has("place", "cleanout")
        ):
            r.aside.add(n)
            continue  # the branch or the cleanout is shut, not the drain
        if "cleaned" in means and r.has("cleaned"):
            continue
        if means["finding"] == "reverse fall flat" and any(
            r.atoms[k].means["finding"].split()[0] in ("collapse", "oval") for k in r.where("finding")
        ):
            r.used.add(n)  # flat is how it was crushed
            continue
        if means["finding"] == "reverse fall flat" and numbers.percents and r.text(n).startswith("flat"):
            means = {"finding": "oval"}  # `obg 25% flat`: a fall has no share of the pipe
        if _only_where(r, n):
            r.aside.add(n)
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
    _of_the_water(r, out)
    if (
        any(d.word == "blocked" and "hard" in d.signs for d in out)
        and r.has("part", "bottom")
        and not (numbers.inches or numbers.percents or numbers.bare_fractions or r.has("sign", "cannot pass"))
    ):
        _asked(r, "concrete inside")  # it lies there: how high?
    _in_the_belly(r, out)
    opened = [d for d in out if d.word in OPENED]
    for n in r.where("unclear", "gravel"):
        if opened and n not in r.used:
            target = min(opened, key=lambda d: abs(d.at - n))
            r.used.add(n)
            if not {"soil seen", "washing"} & set(target.signs) and not r.has("sign", "washing"):
                target.signs.append("soil seen")


LIES = re.compile(
    r"\b(?:lay(?:ing|s)?|l(?:ying|ies)|sitting|sits|settled|in (?:it|there|bottom|the bottom|belly)|full of|full o|con)\b"
)
"""What lies in the water of a belly, not behind a hole."""


def _in_the_belly(r: "Reader", out: list[Draft]) -> None:
    """`belly 2in deep w sand laying in it`"""
    gravel = [n for n in r.where("unclear", "gravel") if n not in r.used]
    if not gravel or not any(d.word == "sag" for d in out) or any(d.word in ("mud", *OPENED) for d in out):
        return
    if LIES.search(r.words()):
        out.append(Draft("mud", gravel[0], r.clause[gravel[0]]))
        r.used |= set(gravel)
    else:
        _asked(r, "gravel")


def _of_the_water(r: "Reader", out: list[Draft]) -> None:
    """`panza con agua`: the water of the belly, and no branch in use."""
    if any(d.word in ("sag", "leak") for d in out) and not r.has("place", "branch"):
        r.used |= {n for n in r.where("live") if {"agua", "water", "wet"} & set(r.text(n).split())}


def _only_where(r: "Reader", n: int) -> bool:
    """`hole under the scale`: the second finding says where the first one is."""
    if HIDES.match(" ".join((r.text(n + 1), r.text(n + 2)))) and any(m < n for m in r.where("finding")):
        return True
    k = n - 1
    while k >= 0 and r.text(k) not in BESIDE and {"plain", "grade"} & set(r.atoms[k].means):
        k -= 1
    return any(m != n for m in r.where("finding")) and r.text(k) in BESIDE


def _states(r: "Reader", numbers: Numbers, out: list[Draft]) -> None:
    joints, bottoms = r.where("part", "joint") or r.where("part", "coupling"), r.where("part", "bottom")
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
        elif any(d.word in ("hole", "gap", "collapse") or (d.word == "sag" and state == "dropped") for d in out):
            r.used.add(n)
        elif state == "dropped" and (moved := next((d for d in out if d.word == "offset"), None)) is not None:
            moved.direction = moved.direction or "down"
            r.used.add(n)
        elif (alone := lexicon().alone.get(("state", state))) and not r.has("place", "branch") and not r.has("surface"):
            r.used.add(n)
            _alone(r, n, alone, out)
    if joints and not out and any(r.atoms[n].means.get("side") == "right" for n in r.denied):
        _asked(r, "bad joint")  # `not right`
    elif joints and not out and not r.has("place", "branch") and not numbers.every_ft and not r.has("sign"):
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
        "drags": ("roots", "offset", "gap", "crack", "hole", "collapse", "channel", "scale", "oval", "intruding", "fitting", "grease", "mud", "sag", "blister"),
    }.get(sign)  # fmt: skip
    fitting = [d for d in findings if takes is None or d.word in takes]
    same = [d for d in fitting if d.clause == r.clause[n]]
    return min(same or fitting, key=lambda d: abs(d.at - n), default=None)
