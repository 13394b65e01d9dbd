"""Answers about lines and ways round come in; values for the job file go out."""

import re
from collections.abc import Mapping, Sequence
from typing import Any

from estimator.fieldnotes.answers import Got, Known, Unread, chosen, length_words, nearest
from estimator.fieldnotes.tidy import trade_shortenings
from estimator.fieldnotes.words import MATERIALS
from estimator.model.lengths import match_length, parse_length, plain_marks
from estimator.model.say import Say, Typed, chained

ENDS = ("city main", "septic tank", "alley main", "street main")
COMMANDS = (
    "done", "back", "undo", "list", "lines", "go", "log", "end", "quit", "exit", "stop", "strike", "change", "yes", "no",
)  # fmt: skip
LEG_ZONES = ("wall", "yard", "crawl", "attic", "drive", "walk", "street", "basement", "garage", "ceiling")
_AT = re.compile(
    r"(?:(?:joins?|into|in|the)\s+)*(?P<name>.+?)\s*(?:\bat\b|@)\s*(?P<at>\d+(?:\.\d+)?)\s*(?:ft|')?", re.I | re.A
)
_AT_FIRST = re.compile(
    r"(?:(?:joins?|into|at)\s+)*(?:at\s+)?(?P<at>\d+(?:\.\d+)?)\s*(?:ft|feet|')?\s*(?:on|of|in|into|along)\s+(?:the\s+)?(?P<name>\D.*)",
    re.I | re.A,
)
_NAME_NUMBER = re.compile(
    r"(?:(?:joins?|into|in|the|to)\s+)*(?P<name>.*?[^\d\s])\s+(?P<at>\d+(?:\.\d+)?)\s*(?:ft|')?", re.I | re.A
)
_PLACE_WORDS = re.compile(
    r"\b(?:main|sewer|manhole|tank|alley|street|ditch|creek|river|pond|pit|well|drywell|cesspool|field|septic|cleanout|vault|"
    r"sump|pump|lift station|grinder|outfall|daylight|storm|city|county|lateral|neighbou?r\S*)\b",
    re.I,
)
_STRETCH = re.compile(
    r"(?P<name>.*?)\s*(?:\bfrom\b)?\s*(?P<from>-?\d{1,4}(?:\.\d+)?)\s*(?:-|to|\.\.)\s*(?P<to>-?\d{1,4}(?:\.\d+)?)\s*(?:ft)?",
    re.I | re.A,
)


def line_name(answer: str, key: str, known: Known) -> Got | Unread:
    name = " ".join(re.sub(r"[^\w\s'&/-]", " ", answer).split())
    if not name or not re.search(r"\w", name):
        return Unread.of("“{answer}” is no name: write one such as main or hall bath", answer=answer)
    if name.lower() in COMMANDS and not known.insists:
        return Unread.of("“{name}” is a word of this interview; as a name, type it again", name=name)
    return Got({key: name[:40].strip()})


def material(answer: str, key: str, known: Known) -> Got | Unread:
    shorts = {short: word for short, word in trade_shortenings().items() if word in MATERIALS}
    word = chosen(
        answer, MATERIALS, {**shorts, "iron": "cast iron", "plastic": "PVC", "?": "unknown", "vit clay": "clay"}
    )
    return word if isinstance(word, Unread) else Got({key: word}, word)


def same_name(name: str, names: Sequence[str]) -> str:
    low = name.lower().strip()
    return next((n for n in names if n.lower() in (low, low.removesuffix(" branch"), low.removesuffix(" line"))), "")


def _so_does(end: str, known: Known) -> Say | None:
    """Another line that was said to end there: most often it runs into this one."""
    own = str(known.item.get("name", ""))
    lines = known.data.get("line", ())
    others = [
        str(n.get("name")) for n in lines if isinstance(n, Mapping) and n.get("ends") == end and n.get("name") != own
    ]
    return (
        Say.typed("so does {other}: if it runs into {own}, go {other} joins", other=others[0], own=str(own))
        if others
        else None
    )


def _joined(answer: str, known: Known) -> tuple[str, str] | None:
    """A line's name and a reel reading, in either order; a bare `main 21` only of a line that there is."""
    plain = plain_marks(answer).strip()
    for pattern in (_AT, _AT_FIRST, _NAME_NUMBER):
        if match := pattern.fullmatch(plain):
            name = same_name(match["name"], known.lines)
            if name or pattern is not _NAME_NUMBER:
                return name or match["name"].strip(), match["at"]
    return None


def line_end(answer: str, key: str, known: Known) -> Got | Unread:
    """Where a line ends: `main at 21`, `at 21 on main`, the name of a branch, `city main`. `joins` or `ends` is written,
    the other goes. What names no line, branch or place is asked back once.
    """
    if joined := _joined(answer, known):
        name, at = joined
        if name == known.item.get("name"):
            return Unread.of(
                "{name} cannot run into itself: which line does it run into, and at what reading there", name=name
            )
        into = Say.typed("into {name} at {at}", name=name, at=at)
        said = (
            into if name in known.lines else Say.of("{into}; there is no line {name} yet", into=into, name=Typed(name))
        )
        return Got({"joins": {"line": name, "at": float(at)}, "ends": None}, said)
    plain = re.sub(r"^(?:joins?|into|to|the)\s+", "", answer.strip(), flags=re.I)
    if name := same_name(plain, known.branches):
        return Got({"joins": name, "ends": None}, Say.typed("into the branch {name}", name=name))
    if (name := same_name(plain, known.lines)) and name != known.item.get("name"):
        return Unread.of("where on {name}? write the reel reading, such as {name} at 21", name=name)
    others = {"city": "city main", "sewer": "city main", "septic": "septic tank", "tank": "septic tank",
              "street": "street main", "alley": "alley main", "city sewer": "city main"}  # fmt: skip
    word = chosen(plain, ENDS, others)
    if isinstance(word, str):
        said, also = Say.typed("ends at the {word}", word=word), _so_does(word, known)
        return Got({"ends": word, "joins": None}, chained((said, also)) if also else said)
    if near := nearest(plain, (*names_of(known), *ENDS)):
        return Unread.of("“{answer}” is no line or branch yet", offer=near, answer=answer)
    if not _PLACE_WORDS.search(plain) and not known.insists:
        return Unread.of(
            "“{answer}” is no line, branch or place: write main at 21, city main …; the same again keeps it",
            answer=answer,
        )
    return Got({"ends": plain, "joins": None}, Say.typed("ends at “{plain}”; it joins no other line", plain=plain))


def names_of(known: Known) -> tuple[str, ...]:
    """Every line and branch there is."""
    return tuple(dict.fromkeys((*known.lines, *known.branches)))


def _leg(part: str) -> dict[str, Any] | Unread:
    words = part.split()
    zone = next(
        (w for w in words if w[:1].isalpha() and w.lower() not in ("ft", "feet", "in", "the", "along", "through")), ""
    )
    rest = part.replace(zone, " ", 1) if zone else part
    amount = re.sub(r"\b(?:the|along|through)\b", " ", rest, flags=re.I).strip()
    found = match_length(amount, 0, "ft")
    if not zone or found is None:
        return Unread.of("“{part}” is no leg: write a place and its feet, such as wall 12", part=part)
    word = chosen(zone, LEG_ZONES, {"street": "street", "lawn": "yard", "sidewalk": "walk", "driveway": "drive"})
    if isinstance(word, Unread):
        return Unread.of(
            "“{zone}” is no place known here: {leg_zones}",
            offer=part.replace(zone, word.offer) if word.offer else "",
            zone=zone,
            leg_zones=", ".join(LEG_ZONES),
        )
    return {"zone": word, "length": length_words(amount[: found[1]], found[0], "ft")}


_EXTRA = re.compile(r"(fall|drop|size|turns?|vents?|holes?)\s*:?\s*(.+)|(\d+)\s+(turns?|vents?|holes?)", re.I | re.A)


def _extra(match: re.Match[str]) -> dict[str, Any] | Unread:
    word, amount = (match[1] or match[4]).lower().rstrip("s"), match[2] or match[3]
    if word in ("fall", "drop", "size"):
        feet = parse_length(amount, "in")
        if isinstance(feet, Say):
            return Unread(Say.of("“{part}”: {wrong}", part=Typed(match[0]), wrong=feet))
        return {"size" if word == "size" else "fall_available": length_words(amount, feet, "in")}
    if not re.fullmatch(r"\d{1,3}", amount.strip(), re.A):
        return Unread.of("“{match}”: write a number, such as {word}s 2", match=match[0], word=word)
    return {"penetrations": {"wall": int(amount)}} if word == "hole" else {word + "s": int(amount)}


def way_round(answer: str, key: str, known: Known) -> Got | Unread:
    """`hall: wall 12, yard 26, fall 6.6in, size 3, turns 3, vents 1, holes 2`."""
    name, colon, way = plain_marks(answer).partition(":")
    if not colon:
        name, way = "way round", name
    legs: list[dict[str, Any]] = []
    values: dict[str, Any] = {"name": name.strip() or "way round"}
    parts = [p.strip() for p in re.split(r"[,;]", way) if p.strip()]
    for number, part in enumerate(parts):
        match = _EXTRA.fullmatch(part)
        found = _extra(match) if match else _leg(part)
        if isinstance(found, Unread):
            offer = (
                f"{name.strip()}: {', '.join([*parts[:number], found.offer, *parts[number + 1 :]])}"
                if found.offer
                else ""
            )
            return Unread(found.wrong, offer)
        values |= found if match else {}
        legs += [] if match else [found]
    if not legs:
        return Unread.of("say the way it takes: hall: wall 12, yard 26, fall 6.6in")
    said = ", ".join(f"{leg['zone']} {leg['length']}" for leg in legs)
    fall = (
        Say.typed("fall {fall}", fall=str(values["fall_available"]))
        if "fall_available" in values
        else Say.of("no fall given")
    )
    return Got(
        values | {"legs": legs},
        Say.of("{name}: {legs}, {fall}", name=Typed(str(values["name"])), legs=Typed(said), fall=fall),
    )


def replaced_pipe(answer: str, key: str, known: Known) -> Got | Unread:
    """`kitchen` for the whole line, or `main 6 to 15` for a stretch of it, in stations."""
    match = _STRETCH.fullmatch(plain_marks(answer).strip())
    wanted = (match["name"] if match and match["name"] else answer) if match else answer
    name = same_name(wanted, known.lines) or (
        known.lines[0] if match and not match["name"] and len(known.lines) == 1 else ""
    )
    if not name:
        near = nearest(wanted, known.lines)
        offer = answer.replace(wanted, near) if near else ""
        return Unread(
            Say.of(
                "“{answer}” names no line. Known: {known}",
                answer=Typed(answer),
                known=Typed(", ".join(known.lines)) if known.lines else Say.of("none yet"),
            ),
            offer,
        )
    if not match:
        return Got({key: {"line": name}}, Say.typed("the whole of {name}", name=name))
    low, high = sorted((float(match["from"]), float(match["to"])))
    return Got(
        {key: {"line": name, "from": low, "to": high}},
        Say.typed("{name} from {low} to {high}", name=name, low=f"{low:g}", high=f"{high:g}"),
    )


def tied_into(answer: str, key: str, known: Known) -> Got | Unread:
    match = _AT.fullmatch(plain_marks(answer).strip())
    name = same_name(match["name"], known.lines) if match else ""
    if not match or not name:
        line = known.lines[0] if known.lines else "main"
        near = nearest(match["name"], known.lines) if match else ""
        return Unread.of(
            "write a line and its reel reading, such as {line} at 6",
            offer=f"{near} at {match['at']}" if match and near else "",
            line=line,
        )
    return Got(
        {key: {"line": name, "at": float(match["at"])}},
        Say.typed("into {name} at {at}", name=name, at=match["at"]),
    )
