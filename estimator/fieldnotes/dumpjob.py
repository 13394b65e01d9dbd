"""A Job comes in; a job file and one log a line, which read back as the same Job, go out."""

import re
from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal
from typing import Any

import tomlkit
from tomlkit.items import Item

from estimator.fieldnotes.dumplog import dump_log, number
from estimator.model.job import EdgeBeam, Job, Reroute, WantedOption, WaterTest
from estimator.model.lengths import show
from estimator.model.line import Line


@dataclass(frozen=True, slots=True)
class Dump:
    """`job` is the job file's text; `logs` are (file name, text) beside it."""

    job: str
    logs: tuple[tuple[str, str], ...]


def _kept(values: Mapping[str, Any]) -> dict[str, Any]:
    """What says something: no None, no empty text or list."""
    return {key: value for key, value in values.items() if value is not None and value not in ("", (), [], {})}


def _ft(value: float | None) -> str | None:
    return None if value is None else show(value)


def _in(value: float | None) -> str | None:
    return None if value is None else f"{number(value)} in"


def _edge_beam(beam: EdgeBeam | None) -> str | None:
    """As it is written: `none`, or how deep and wide; None where nobody said."""
    if beam is None:
        return None
    return f"{show(beam.deep_ft)} deep {show(beam.wide_ft)} wide" if beam.there else "none"


def _dollars(value: Decimal | None) -> Item | None:
    return None if value is None else tomlkit.value(format(value, "f"))


def _house(job: Job) -> dict[str, Any]:
    h = job.house
    return {
        "floor": h.floor,
        "jurisdiction": h.jurisdiction,
        "built": h.built,
        "slab_thickness": _ft(h.slab_thickness_ft),
        "slab_above_grade": _ft(h.slab_above_grade_ft),
        "soil": h.soil,
        "expansive_soil": h.expansive_soil,
        "sewer": h.sewer,
        "lived_in": h.lived_in,
        "exits": h.exits,
        "water_lines": h.water_lines,
        "in_slab": h.in_slab,
        "edge_beam": _edge_beam(h.edge_beam),
        "tendons": h.tendons,
        "bathrooms": h.bathrooms,
        "floor_finish": h.floor_finish,
        "floor_price": _dollars(h.floor_price_sf),
        "fixtures": dict(h.fixtures),
    }


def _site(job: Job) -> dict[str, Any]:
    s = job.site
    return {
        "gate": _ft(s.gate_ft),
        "carry": _ft(s.carry_ft),
        "machine": s.machine,
        "located": s.located,
        "caving_signs": s.caving_signs,
        "water_table": _ft(s.water_table_ft),
        "paint_sqft": s.paint_sqft,
        "roots_in_soil": s.roots_in_soil,
        "competent_person": s.competent_person,
    }


def _plain(record: object) -> dict[str, Any]:
    """A record whose fields are keys as they stand."""
    values = {name: getattr(record, name) for name in record.__dataclass_fields__}  # type: ignore[attr-defined]
    return {
        k: list(v) if isinstance(v, tuple) else _dollars(v) if isinstance(v, Decimal) else v for k, v in values.items()
    }


def _line(line: Line, log: str) -> dict[str, Any]:
    joins = {"line": line.joins.line, "station": line.joins.station_ft} if line.joins else None
    return {
        "name": line.name,
        "size": _in(line.size_in),
        "pipe": line.pipe,
        "zero": line.zero,
        "length": _ft(line.length_ft),
        "ends": line.ends,
        "filmed": line.filmed,
        "joins": joins,
        "note": line.note,
        "log": log,
    }


def _test(test: WaterTest) -> dict[str, Any]:
    return _plain(test) | {
        "open_risers_in": None,
        "held_at_in": None,
        "settled_min": None,
        "open_risers": [_in(r) for r in test.open_risers_in],
        "readings": {number(minutes): _in(drop) for minutes, drop in test.readings},
        "held_at": _in(test.held_at_in),
        "settled": None if test.settled_min is None else f"{number(test.settled_min)} min",
    }


def _reroute(r: Reroute) -> dict[str, Any]:
    return {
        "name": r.name,
        "replaces": _kept({"line": r.replaces_line, "from": r.replaces_from_ft, "to": r.replaces_to_ft}),
        "legs": [{"zone": leg.zone, "length": _ft(leg.length_ft)} for leg in r.legs],
        "fall_available": _ft(r.fall_available_ft),
        "ties_into": _kept({"line": r.ties_into_line, "station": r.ties_into_ft}),
        "size": _in(r.size_in),
        "serves": dict(r.serves),
        "penetrations": dict(r.penetrations),
        "turns": r.turns,
        "vents": r.vents,
    }


def _option(option: WantedOption) -> dict[str, Any]:
    repairs = [
        _kept(
            {
                "method": r.method,
                "line": r.line,
                "where": None if r.from_ft is None or r.to_ft is None else f"{number(r.from_ft)} to {number(r.to_ft)}",
                "entry": r.entry,
            }
        )
        for r in option.repairs
    ]
    return {"do": option.do, "name": option.name, "new_name": option.new_name, "repairs": repairs}


def _file_names(job: Job) -> list[str]:
    """A name for each line's log: its words and its number, so that no two are alike on any disk."""
    return [
        f"{number + 1}-{re.sub(r'[^a-z0-9]+', '-', line.name.lower()).strip('-') or 'line'}.txt"
        for number, line in enumerate(job.lines)
    ]


def dump_job(job: Job) -> Dump:
    """The job in the words of the notes. Reading it gives an equal Job; where things were written is not kept."""
    names = _file_names(job)
    texts = [dump_log(line) for line in job.lines]
    head = {"number": job.number, "date": job.day, "prepared_by": job.prepared_by, "demo": job.demo}
    head |= {"languages": list(job.languages), "notes": list(job.notes)}
    tables: dict[str, Any] = {
        "job": _needed(head, "number", "prepared_by"),
        "customer": _needed(_plain(job.customer), "name", "site"),
        "house": _needed(_house(job), "jurisdiction"),
        "site": _kept(_site(job)),
        "wishes": _kept(_plain(job.wishes)),
        "foundation": _kept(_plain(job.foundation)),
        "settings": dict(job.settings),
    }
    lists: dict[str, list[dict[str, Any]]] = {
        "line": [
            _needed(_line(line, n if t else ""), "name") for line, n, t in zip(job.lines, names, texts, strict=True)
        ],
        "water_test": [_needed(_test(t), "section") for t in job.water_tests],
        "reroute": [_needed(_reroute(r), "name") for r in job.reroutes],
        "sign": [_needed(_plain(s), "what") for s in job.signs],
        "approval": [_needed(_plain(a), "what", "by") for a in job.approvals],
        "override": [_needed(_plain(o), "reason") for o in job.overrides],
        "option": [_kept(_option(o)) for o in job.options],
        "allowance": [_needed(_plain(a), "text") for a in job.allowances],
        "discount": [_needed(_plain(d), "reason") for d in job.discounts],
        "add_on": [_needed(_plain(a), "code") for a in job.add_ons],
    }
    document = tomlkit.document()
    for name, values in tables.items():
        if values:
            document.add(name, tomlkit.item(values))
    for name, rows in lists.items():
        if rows:
            document.add(name, tomlkit.item(rows))
    return Dump(tomlkit.dumps(document), tuple((n, t) for n, t in zip(names, texts, strict=True) if t))


def _needed(values: Mapping[str, Any], *needed: str) -> dict[str, Any]:
    """What says something, and what the form asks for even where it is empty."""
    return {key: values[key] for key in needed} | _kept(values)
