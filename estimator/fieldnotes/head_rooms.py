"""Words of rooms and of what stands over the pipe in; what a line may mean by them, out."""

from typing import TYPE_CHECKING

from estimator.fieldnotes.drafts import Draft
from estimator.fieldnotes.head_words import _asked
from estimator.fieldnotes.numbers_of_a_line import Numbers
from estimator.model.say import Say

if TYPE_CHECKING:
    from estimator.fieldnotes.understand import Reader

OUTSIDE_TOO = ("porch", "pool", "stairs")
"""What stands in the yard as well as at the house: over the line, or beside it?"""
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
