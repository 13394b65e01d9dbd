"""A line's log as it reads in; what a price needs and the log does not say out, each as a question with its readings.

An answer becomes part of the log, so that nothing is kept in two places. Enter leaves it open; `check` then names it.
"""

import re
from collections.abc import Callable, Iterator, Sequence

from estimator.cli.interview.sheet import Sheet
from estimator.cli.views.words import AS_NOTED
from estimator.fieldnotes.answers import Unread, chosen
from estimator.fieldnotes.zero import STATION_DECIMALS
from estimator.model.answers import taken_indoors
from estimator.model.frozen import Frozen
from estimator.model.lengths import match_length, parse_length, plain_marks, show_inches
from estimator.model.line import ZONES
from estimator.model.profile import Profile
from estimator.model.say import Feet, Say, Typed

number = AS_NOTED.number
DIPS = ("sag", "reverse fall", "backfall")
DIRT = ("scale", "grease", "mud", "insects")  # cleaned from inside: nobody digs for it
INDOORS, OUTDOORS = ("slab", "basement"), ("yard", "drive", "walk", "street")
OTHER_ZONES = {"lawn": "yard", "grass": "yard", "dirt": "yard", "floor": "slab", "house": "slab", "driveway": "drive",
               "sidewalk": "walk", "road": "street", "crawl space": "crawl"}  # fmt: skip
PICTURES = (".jpg", ".jpeg", ".png")
BESIDE_FT = 0.5  # a still is taken while the camera stands at the finding; two people read a reel half a foot apart
_AT = re.compile(r"\s*(?:\bat\b|@)\s*(\d+(?:\.\d+)?)\s*(?:ft)?\s*\Z", re.IGNORECASE)

Rows = tuple[str, ...]


class Gap(Frozen):
    """`rows` makes the whole log, with the answer in it, of an answer."""

    text: Say
    example: Say
    why: Say
    rows: Callable[[str], Rows | Unread]


def gaps(sheet: Sheet, pictures: Sequence[str] = ()) -> Iterator[Gap]:
    """In the order they are asked: what lies over the start, depths inside and outside, levels of each dip, stills."""
    if sheet.line.passes:
        yield from _zone(sheet)
        yield from _depths(sheet)
        yield from _levels(sheet)
        yield from _stills(sheet, pictures)


def _zone(sheet: Sheet) -> Iterator[Gap]:
    entries = [entry for entry in sheet.log.passes[0].entries if entry.leg != "ends"]
    zones = [entry.from_ft for entry in entries if entry.thing.word.kind == "zone"]
    profile, run = Profile(sheet.line), sheet.line.passes[0]
    start = min((entry.from_ft for entry in entries), default=0.0)
    told_at_start = bool(zones) and min(zones) <= start  # at the lip of the riser, before the pipe begins
    if not entries or told_at_start or profile.zone(round(run.station(start), STATION_DECIMALS)).value is not None:
        return

    def rows(answer: str) -> Rows | Unread:
        zone = chosen(answer, ZONES, OTHER_ZONES)
        return zone if isinstance(zone, Unread) else with_rows(sheet, 1, f"{number(start)} {zone}")

    words = {"start": number(start), "zones": Typed(", ".join(ZONES))}
    text = (
        Say.of("What lies over the pipe from {start} ft to {until} ft: {zones}", until=number(min(zones)), **words)
        if zones
        else Say.of("What lies over the pipe from {start} ft on: {zones}", **words)
    )
    yield Gap(text, Say.of("yard"), Say.of("A dig in a lawn and one under a slab are different work."), rows)


def _depths(sheet: Sheet) -> Iterator[Gap]:
    """Trouble under the floor and no depth read from there, or outside and none there: ground inside and out differ in height."""
    line, profile = sheet.line, Profile(sheet.line)
    read = [mark for mark in line.marks if mark.depth_ft is not None]
    for zones, where, surface in ((INDOORS, Say.of("under the floor"), "tile"), (OUTDOORS, Say.of("outside"), "lawn")):
        found = [f for f in line.findings if f.kind not in DIRT and profile.zone(f.stretch.middle_ft).value in zones]
        here = [mark for mark in read if taken_indoors(mark) in (zones is INDOORS, None)]
        if not found or here or found[0].origin.reading_ft is None:
            continue
        known = (
            Say.of(
                "(known: {depth} under the {surface})",
                depth=Feet(read[0].depth_ft or 0.0),
                surface=Typed(read[0].surface or "ground"),
            )
            if read
            else ""
        )
        near = number(found[0].origin.reading_ft)
        yield Gap(
            Say.of(
                "How deep is the pipe {where} at {near} ft, or at another reading there {known}",
                where=where,
                near=near,
                known=known,
            ),
            Say.of("28 in under {surface}, or 28 in at {near}", surface=Typed(surface), near=near),
            Say.of("The dig, its shoring and the choice between floor and tunnel depend on it."),
            _with_depth(sheet, found[0].origin.pass_number, surface, near),
        )


def _with_depth(sheet: Sheet, pass_number: int, surface: str, near: str) -> Callable[[str], Rows | Unread]:
    def rows(answer: str) -> Rows | Unread:
        plain = re.sub(r"^(?:about|abt|~)\s*", "", plain_marks(answer), flags=re.IGNORECASE)
        at = _AT.search(plain)
        words = plain[: at.start()].strip() if at else plain.strip()
        found = match_length(words, 0, "in")
        if found is None:
            return Unread.of("write a depth, such as 28 in under {surface} at {near}", surface=surface, near=near)
        said = re.sub(r"^[\s,]*(?:deep|down|below|under|from|the|\s)*\b", "", words[found[1] :]).strip()
        return with_rows(
            sheet, pass_number, f"{at[1] if at else near} depth {_inches(found[0])} from {said or surface}"
        )

    return rows


def _levels(sheet: Sheet) -> Iterator[Gap]:
    profile = Profile(sheet.line)
    for dip in sheet.line.findings:
        first, last = dip.origin.reading_ft, dip.origin.reading_to_ft
        known = profile.fall_ft(dip.stretch.from_ft, dip.stretch.to_ft).value is not None
        if dip.kind not in DIPS or first is None or last is None or known:
            continue
        yield Gap(
            Say.of(
                "How far is the pipe's bottom below the slab top (or one fixed mark) at {first} ft and at {last} ft",
                first=number(first),
                last=number(last),
            ),
            Say.of("30 in, 31 1/2 in"),
            Say.of(
                "Only levels at both ends of the standing water say how far the pipe has to be laid anew; without them no fixed price."
            ),
            _with_levels(sheet, dip.origin.pass_number, (first, last)),
        )


def _with_levels(sheet: Sheet, pass_number: int, ends: tuple[float, float]) -> Callable[[str], Rows | Unread]:
    def rows(answer: str) -> Rows | Unread:
        parts = [part.strip() for part in re.split(r"[,;]|\band\b", plain_marks(answer)) if part.strip()]
        feet = [parse_length(re.sub(r"\s*(?:\bat\b|@).*", "", part), "in") for part in parts]
        read = [ft for ft in feet if isinstance(ft, float)]
        if len(parts) != 2 or len(read) != 2:
            first, last = map(number, ends)
            return Unread.of(
                "write two lengths: at {first} ft, then at {last} ft, such as 30 in, 31 1/2 in", first=first, last=last
            )
        new = [f"{number(at)} invert {_inches(ft)} below slab" for at, ft in zip(ends, read, strict=True)]
        return with_rows(sheet, pass_number, *new)

    return rows


def _inches(feet: float) -> str:
    return show_inches(feet).replace(" in", "in")


def _stills(sheet: Sheet, pictures: Sequence[str]) -> Iterator[Gap]:
    """Pictures beside the job that no line names yet, one by one."""
    named = {found.photo_file for found in (*sheet.line.findings, *sheet.line.superseded)}
    named |= {mark.photo_file for mark in sheet.line.marks}
    taken = [found.photo or 0 for found in sheet.line.findings]
    for name in (picture for picture in pictures if picture not in named):

        def rows(answer: str, name: str = name) -> Rows | Unread:
            at = re.fullmatch(r"(?:at\s*)?(\d+(?:\.\d+)?)\s*(?:ft)?", answer.strip(), re.IGNORECASE)
            if at is None:
                return Unread.of("write the reading that {name} shows, such as 18.6", name=name)
            entries = [entry for run in sheet.log.passes for entry in run.entries]
            near = sorted(entries, key=lambda entry: abs(entry.from_ft - float(at[1])))
            if not near or abs(near[0].from_ft - float(at[1])) > BESIDE_FT:
                return Unread.of("no line of this log is at {at}", at=at[1])
            row = (near[0].place.line or 1) - 1
            line, semicolon, remark = sheet.rows[row].partition(";")
            with_photo = f"{line.rstrip()}, photo {max(taken, default=0) + 1} {name}"
            return (*sheet.rows[:row], f"{with_photo} {semicolon}{remark}".rstrip(), *sheet.rows[row + 1 :])

        yield Gap(
            Say.typed("{name} is beside the job: which reading of this log does it show", name=name),
            Say(text="18.6"),
            Say.of(
                "A still is printed with the finding it shows, for the homeowner and the insurer; Enter: none of this log."
            ),
            rows,
        )


def with_rows(sheet: Sheet, pass_number: int, *new: str) -> Rows:
    """The log with new lines at the end of that camera run."""
    runs = sheet.log.passes
    following = (runs[pass_number].heading.place.line or 1) - 1 if pass_number < len(runs) else len(sheet.rows)
    return (*sheet.rows[:following], *new, *sheet.rows[following:])
