"""What a question leans on: default answers in words from what is known, and whether it is asked of this job at all."""

import re
from collections.abc import Callable, Mapping
from typing import Any

from estimator.fieldnotes import house_answers as house
from estimator.fieldnotes.answers import Known

Data = Mapping[str, Any]
INVENTED_PLACE = "demo"
_LEAVES = re.compile(r"\b(?:yard|street|city|sewer|lateral|septic|tank|alley)\b")


def nothing(known: Known) -> str:
    return ""


def always(data: Data, item: Data) -> bool:
    return True


def last(table: str, key: str, otherwise: str = "") -> Callable[[Known], str]:
    """What the last job said, in words."""

    def default(known: Known) -> str:
        found = known.last.get(table)
        value = found.get(key) if isinstance(found, Mapping) else None
        if isinstance(value, bool):
            return "yes" if value else "no"
        return str(value) if isinstance(value, str | int) else otherwise

    return default


def fixed(words: str) -> Callable[[Known], str]:
    return lambda known: words


def language(known: Known) -> str:
    job = known.last.get("job")
    spoken = job.get("language") or job.get("languages") if isinstance(job, Mapping) else None
    codes = [spoken] if isinstance(spoken, str) else spoken
    return next((word for word, these in house.LANGUAGES.items() if these == codes), "English")


def place(known: Known) -> str:
    """The last job's place where the tables have it; else the row for a place nobody has asked about yet."""
    before = last("house", "jurisdiction")(known)
    return before if before in known.places else "unknown" if "unknown" in known.places else ""


def soil(known: Known) -> str:
    before = last("house", "soil")(known)
    return before if before in known.soils else ""


def line_end(known: Known) -> str:
    """A branch of the line's own name; the main or the tank for the only line, and for one through the yard."""
    name = str(known.item.get("name", "")).lower()
    own = next((branch for branch in known.branches if branch.lower() == name), "")
    if own or not (len(known.lines) == 1 or _LEAVES.search(name)):
        return own
    found = known.data.get("house")
    septic = isinstance(found, Mapping) and found.get("sewer") == "septic"
    return "septic tank" if septic else "city main"


def pipe_size(known: Known) -> str:
    return "4 in" if len(known.lines) < 2 else ""


def pipe_material(known: Known) -> str:
    return last("line", "pipe")(known) if len(known.lines) < 2 else ""


def line_name(known: Known) -> str:
    return "" if known.lines else "main"


def on_slab(data: Data, item: Data) -> bool:
    found = data.get("house")
    return not (isinstance(found, Mapping) and found.get("floor") in ("crawl space", "basement"))


def on_plain_slab(data: Data, item: Data) -> bool:
    """Somebody said that it has no tendons."""
    found = data.get("house")
    return isinstance(found, Mapping) and found.get("floor") == "slab"


def insured(data: Data, item: Data) -> bool:
    return bool(item.get("insurer"))


def invented_place(data: Data, item: Data) -> bool:
    found = data.get("house")
    return isinstance(found, Mapping) and found.get("jurisdiction") == INVENTED_PLACE


def lifted(data: Data, item: Data) -> bool:
    found = data.get("foundation")
    return isinstance(found, Mapping) and found.get("work") in ("planned", "done")


def filmed(data: Data, item: Data) -> bool:
    return item.get("filmed") is not False


def not_logged(data: Data, item: Data) -> bool:
    return not item.get("log")


def not_filmed(data: Data, item: Data) -> bool:
    return item.get("filmed") is False


def test_date(known: Known) -> str:
    job = known.data.get("job")
    return str(job["date"]) if isinstance(job, Mapping) and job.get("date") else known.today.isoformat()
