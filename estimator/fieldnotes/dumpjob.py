"""A Job comes in; a job file and one log a line, which read back as the same Job, go out."""

import re
from collections.abc import Mapping
from typing import Any

import tomlkit

from estimator.fieldnotes.dumplog import dump_log, number
from estimator.fieldnotes.written import written
from estimator.model.frozen import Frozen
from estimator.model.job import Job, Reroute, WaterTest
from estimator.model.lengths import show
from estimator.model.line import Line
from estimator.model.wanted import WantedOption


class Dump(Frozen):
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


def _line(line: Line, log: str) -> dict[str, Any]:
    joins = {"line": line.joins.line, "station": line.joins.station_ft} if line.joins else None
    same = {key: getattr(line, key) for key in ("pipe", "zero", "ends", "filmed", "note")}
    return {
        "name": line.name,
        "size": _in(line.size_in),
        "length": _ft(line.length_ft),
        "joins": joins,
        "log": log,
    } | same


def _test(test: WaterTest) -> dict[str, Any]:
    values = {name: getattr(test, name) for name in WaterTest.__dataclass_fields__}
    inches, held, settled, part = (values.pop(n) for n in ("open_risers_in", "held_at_in", "settled_min", "part"))
    plain = {key: list(value) if isinstance(value, tuple) else value for key, value in values.items()}
    return plain | {
        "from": part and part.from_ft,
        "to": part and part.to_ft,
        "open_risers": [_in(riser) for riser in inches],
        "readings": {number(minutes): _in(drop) for minutes, drop in test.readings},
        "held_at": _in(held),
        "settled": None if settled is None else f"{number(settled)} min",
    }


def _reroute(r: Reroute) -> dict[str, Any]:
    same = {key: getattr(r, key) for key in ("name", "turns", "vents")}
    return same | {
        "replaces": _kept({"line": r.replaces_line, "from": r.replaces_from_ft, "to": r.replaces_to_ft}),
        "legs": [written(leg) for leg in r.legs],
        "fall_available": _ft(r.fall_available_ft),
        "ties_into": _kept({"line": r.ties_into_line, "station": r.ties_into_ft}),
        "size": _in(r.size_in),
        "serves": dict(r.serves),
        "penetrations": dict(r.penetrations),
    }


def _option(option: WantedOption) -> dict[str, Any]:
    repairs = []
    for r in option.repairs:
        where = None if r.from_ft is None or r.to_ft is None else f"{number(r.from_ft)} to {number(r.to_ft)}"
        repairs.append(_kept({"method": r.method, "line": r.line, "where": where, "entry": r.entry}))
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
    more = {"inspected_on": job.inspected_on, "languages": list(job.languages), "notes": list(job.notes)}
    tables: dict[str, Any] = {"job": head | _kept(more)}
    tables |= {key: written(getattr(job, key)) for key in ("customer", "house", "site", "wishes", "foundation")}
    tables["settings"] = dict(job.settings)
    lines = zip(job.lines, names, texts, strict=True)
    tables["line"] = [{"name": line.name} | _kept(_line(line, name if text else "")) for line, name, text in lines]
    tables["water_test"] = [{"section": test.section} | _kept(_test(test)) for test in job.water_tests]
    tables["reroute"] = [{"name": way.name} | _kept(_reroute(way)) for way in job.reroutes]
    tables["option"] = [_kept(_option(option)) for option in job.options]
    for key in ("sign", "approval", "override", "allowance", "discount", "add_on"):
        tables[key] = [written(one) for one in getattr(job, f"{key}s")]
    document = tomlkit.document()
    for name, values in tables.items():
        if values:
            document.add(name, tomlkit.item(values))
    return Dump(tomlkit.dumps(document), tuple((n, t) for n, t in zip(names, texts, strict=True) if t))
