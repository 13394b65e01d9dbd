"""What a question leans on: default answers in words from what is known, and whether it is asked of this job at all."""

import re
from collections.abc import Callable, Mapping
from typing import Any

from estimator.fieldnotes import house_answers as house
from estimator.fieldnotes import line_answers as lines
from estimator.fieldnotes import watertest_answers as tests
from estimator.fieldnotes.answers import Known
from estimator.model.lengths import IN_PER_FT
from estimator.model.say import Say

Data = Mapping[str, Any]
INVENTED_PLACE = "demo"
CLEAR_DROP_IN = 0.25  # far above what a tape is misread by; between 0 and this the person says it
_LEAVES = re.compile(r"\b(?:yard|street|city|sewer|lateral|septic|tank|alley)\b")


def table_of(data: Data, name: str) -> Data:
    """A table of the job file as far as it is; an empty one where there is none."""
    found = data.get(name)
    return found if isinstance(found, Mapping) else {}


def nothing(known: Known) -> str:
    return ""


def always(data: Data, item: Data) -> bool:
    return True


def by_all(known: Known) -> bool:
    return True


def has_own_facts(known: Known) -> bool:
    return bool(known.own_facts)


def own_facts(known: Known) -> Say | str:
    """The facts to choose from, said before the question."""
    return Say.typed("Your own facts: {facts}.", facts=", ".join(known.own_facts)) if known.own_facts else ""


def last(table: str, key: str, otherwise: str = "") -> Callable[[Known], str]:
    """What the last job said, in words."""

    def default(known: Known) -> str:
        value = table_of(known.last, table).get(key)
        if isinstance(value, bool):
            return "yes" if value else "no"
        return str(value) if isinstance(value, str | int) else otherwise

    return default


def fixed(words: str) -> Callable[[Known], str]:
    return lambda known: words


def language(known: Known) -> str:
    job = table_of(known.last, "job")
    spoken = job.get("language") or job.get("languages")
    codes = [spoken] if isinstance(spoken, str) else spoken
    return next((word for word, these in house.LANGUAGES.items() if these == codes), "English")


def place(known: Known) -> str:
    """The last job's place where the tables have it; else the row for a place nobody has asked about yet."""
    before = last("house", "jurisdiction")(known)
    return before if before in known.places else "unknown" if "unknown" in known.places else ""


def line_end(known: Known) -> str:
    """A branch of the line's own name; the main or the tank for the only line, and for one through the yard."""
    name = str(known.item.get("name", "")).lower()
    own = next((branch for branch in known.branches if branch.lower() == name), "")
    if own or not (len(known.lines) == 1 or _LEAVES.search(name)):
        return own
    return "septic tank" if table_of(known.data, "house").get("sewer") == "septic" else "city main"


def pipe_size(known: Known) -> str:
    return "4 in" if len(known.lines) < 2 else ""


def pipe_material(known: Known) -> str:
    return last("line", "pipe")(known) if len(known.lines) < 2 else ""


def line_name(known: Known) -> str:
    return "" if known.lines else "main"


def on_slab(data: Data, item: Data) -> bool:
    return table_of(data, "house").get("floor") not in ("crawl space", "basement")


def on_crawl_space(data: Data, item: Data) -> bool:
    return table_of(data, "house").get("floor") == "crawl space"


def on_plain_slab(data: Data, item: Data) -> bool:
    """Somebody said that it has no tendons."""
    return table_of(data, "house").get("floor") == "slab"


def insured(data: Data, item: Data) -> bool:
    return bool(item.get("insurer"))


def invented_place(data: Data, item: Data) -> bool:
    return table_of(data, "house").get("jurisdiction") == INVENTED_PLACE


def lifted(data: Data, item: Data) -> bool:
    return table_of(data, "foundation").get("work") in ("planned", "done")


def filmed(data: Data, item: Data) -> bool:
    return item.get("filmed") is not False


def not_logged(data: Data, item: Data) -> bool:
    return not item.get("log")


def not_filmed(data: Data, item: Data) -> bool:
    return item.get("filmed") is False


def test_date(known: Known) -> str:
    return str(table_of(known.data, "job").get("date") or known.today.isoformat())


def whole_house(item: Data) -> bool:
    return bool(
        re.search(r"\b(?:whole|all|everything|house|under slab)\b", str(item.get("section", "")), re.IGNORECASE)
    )


def _tested(known: Known) -> str:
    """The one line or branch that the section's own words name."""
    section = str(known.item.get("section", "")).lower()
    return next((name for name in sorted(lines.names_of(known), key=len, reverse=True) if name.lower() in section), "")


def test_kind(known: Known) -> str:
    """Of a section that a line or branch is named in, isolated; nothing where its words say neither."""
    return "whole" if whole_house(known.item) else "isolated" if _tested(known) else ""


def test_covers(known: Known) -> str:
    return "all" if known.item.get("kind") == "whole" and lines.names_of(known) else _tested(known)


def test_result(known: Known) -> str:
    """What the readings say by themselves: water that held, or fell a quarter inch and more."""
    if known.item.get("sealed") is False:
        return "could not be sealed"
    last = tests.last_drop(known.item)
    return "" if last is None else "failed" if last[1] * IN_PER_FT >= CLEAR_DROP_IN else "passed" if not last[1] else ""


def result_text(known: Known) -> Say | str:
    return tests.drop_words(known.item)
