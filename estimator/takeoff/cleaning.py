"""A stretch to clean or scrape in; the feet the tool has to go, films and toilets, out."""

from estimator.model.tool_reach import passed
from estimator.takeoff.case import Case

SCALE_KINDS = ("scale", "channel")


def clean(case: Case) -> None:
    """Jet or cut what is in the way and look again: only that shows what the pipe is like."""
    feet = passed(case.profile, case.stretch).length_ft
    case.paper.put(
        "clean_ft",
        feet,
        "from the nearest way in to the far end",
        ("stretch", case.stretch.length_ft, "ft"),
        ("reach", feet, "ft"),
    )
    case.paper.put("films_before", 1, "look again after cleaning")
    if case.is_iron() and any(f.kind in SCALE_KINDS and f.stretch.touches(case.stretch) for f in case.line.findings):
        descale(case)


def descale(case: Case) -> None:
    """Iron is scraped to bare wall over what will be lined or looked at."""
    case.paper.put(
        "descale_ft", case.stretch.length_ft, "iron pipe of the stretch", ("stretch", case.stretch.length_ft, "ft")
    )
    case.paper.warn("old iron can have holes under the rust: scraping shows them, it does not make them")
