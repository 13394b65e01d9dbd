"""The words of a branch in (its room, sides, live or dead); the branch, or one on each side, out."""

import copy
from typing import TYPE_CHECKING

from estimator.fieldnotes.drafts import Draft
from estimator.fieldnotes.numbers_of_a_line import Numbers
from estimator.model.say import Say

if TYPE_CHECKING:
    from estimator.fieldnotes.understand import Reader

DENIED_LIVE = {"live": "dead", "proven": "not proven"}


def _branch(r: "Reader", numbers: Numbers, out: list[Draft], branches: list[int], rooms: list[int]) -> None:
    n = (branches or rooms or r.where("side"))[0]
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
        if len(said) > 1 and any("or" in a.means for a in r.atoms[group[0] : group[-1]]):
            r.ask.append((Say.of("which of them is it?"), tuple(f"NAME {name}" for name in said)))
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
    for k, a in enumerate(r.atoms):
        if "live" not in a.means:
            continue
        live = a.means["live"]
        if k in r.denied:  # `aint in use no more`
            live = DENIED_LIVE.get(live, "")
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
        other = copy.deepcopy(draft)
        other.direction = "right"
        out.append(other)
        for k in range(len(r.atoms)):
            if r.text(k) in ("each", "side", "both", "sides", "each side", "both sides"):
                r.used.add(k)
