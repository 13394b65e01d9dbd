"""A word of the lexicon in; the thing it may begin, or the branch a room stands for, out."""

from typing import TYPE_CHECKING

from estimator.fieldnotes.drafts import Draft
from estimator.fieldnotes.lexicon import lexicon
from estimator.fieldnotes.numbers_of_a_line import Numbers
from estimator.fieldnotes.words import ALL_SIGNS, GRADE_WORDS, SIDES, standard_word
from estimator.model.say import Say

if TYPE_CHECKING:
    from estimator.fieldnotes.understand import Reader


def _draft(r: "Reader", n: int, words: str) -> Draft:
    """A draft of standard words such as `roots severe` or `sag, lens under`."""
    text, word = words.replace(",", " ").split(), standard_word(words)
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


def _asked(r: "Reader", name: str) -> None:
    ask = lexicon().asks[name]
    r.ask.append((ask.question, ask.choices))


EITHER = ("room", "side", "zone", "surface", "place", "utility")


def either(r: "Reader") -> tuple[str, str] | None:
    """`kitchen or laundry`: two of a kind with an or between."""
    for n in r.where("or"):
        if 0 < n < len(r.atoms) - 1:
            one, other = r.atoms[n - 1], r.atoms[n + 1]
            if any(c in one.means and c in other.means and one.means[c] != other.means[c] for c in EITHER):
                return one.text, other.text
    return None


OUTSIDE_TOO = ("porch", "pool", "stairs")
"""What stands in the yard as well as at the house: over the line, or beside it?"""
OUTDOOR_ZONES = ("yard", "drive", "walk", "street")
FIXTURES = frozenset(("toilet", "sink", "lav", "washer", "yard drain", "dishwasher", "tub", "shower", "bidet"))


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
    if out or r.ask or r.has("unclear", "deck"):
        return
    under = r.where("under")
    over = [n for n in r.where("over") if n not in r.used]
    rooms = [n for n in r.where("room") if n not in r.used]
    fixtures = [n for n in rooms if r.atoms[n].means["room"] in FIXTURES or r.text(n).startswith("vanit")]
    if under and (over or fixtures):
        n = (over or fixtures)[0]
        out.append(
            Draft(
                "under",
                n,
                r.clause[n],
                choice=r.atoms[n].means.get("over")
                or (r.text(n) if r.text(n).startswith("vanit") else r.atoms[n].means["room"]),
            )
        )
        r.used |= {n, *under}
    elif rooms and (under or r.text(rooms[0]) in ("walk in closet",) or r.single_place()):
        n = rooms[0]
        if not under and r.atoms[n].means["room"] in FIXTURES:
            r.ask.append(
                (
                    Say.of(
                        "does a branch from the {room} come in there, or does the line pass under it?",
                        room=r.atoms[n].text,
                    ),
                    (f"branch called {r.atoms[n].means['room']}", f"under {r.atoms[n].means['room']}"),
                )
            )
            r.used.add(n)
            return
        if not under and r.atoms[n].means["room"] in ("kitchen", "laundry", "bath", "powder room", "addition"):
            name = _room_name(r, rooms)
            r.ask.append(
                (
                    Say.of("does a branch from the {room} come in there, or does the line pass under it?", room=name),
                    (f"branch called {name}", f"room {name}"),
                )
            )
            r.used.add(n)
            return
        if r.context.zone in OUTDOOR_ZONES and (under or r.has("change") or r.has("reached")):
            out.append(Draft("slab", n, r.clause[n]))  # `14 going under garage`: the house begins
            r.used |= {*r.where("change"), *r.where("reached")}
        out.append(Draft("room", n, r.clause[n], name=_room_name(r, rooms)))
        r.used |= {*rooms, *under}
    elif over and not rooms:
        n = over[0]
        if (
            not under
            and r.atoms[n].means["over"] in OUTSIDE_TOO
            and r.context.zone not in ("slab", "basement", "crawl")
        ):
            r.used.add(n)
            _asked(r, r.atoms[n].means["over"])
            return
        out.append(Draft("under", n, r.clause[n], choice=r.atoms[n].means["over"]))
        r.used.add(n)
