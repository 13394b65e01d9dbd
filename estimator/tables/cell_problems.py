"""What can be wrong with one cell, row, setting or sheet by itself; each kind with its words."""

from collections.abc import Iterable
from difflib import get_close_matches

from estimator.model.problem import error, warning
from estimator.model.say import Say, Typed

EMPTY_CELL = error("tables/empty-cell", "{column} is empty.", "Fill it in ({note}){or_off}.")
NOT_A_NUMBER = error("tables/number", "{column} is “{text}”.", "Write a number such as {example}{or_off}.")
COMMA_NUMBER = error(
    "tables/decimal-comma", "{column} is “{text}”, with a comma for the decimal point.", "Write {fixed}."
)
NOT_WHOLE = error("tables/whole-number", "{column} is “{text}”.", "Write a whole number such as 3.")
NEGATIVE = error("tables/negative", "{column} is {text}, less than {least}.", "Write {least} or more.")
NOT_ABOVE = error(
    "tables/not-above",
    "{column} is {text}.",
    "Write a number above {above}{or_off}; something is paid or counted by it.",
)
TOO_LARGE = error(
    "tables/too-large", "{column} is {text}.", "No figure of these tables is above {most}; look for a slip."
)
NOT_YES_NO = error("tables/yes-no", "{column} is “{text}”.", "Write yes or no.")
NOT_A_DAY = error("tables/day", "{column} is “{text}”.", "Write a day as year-month-day, such as 2026-03-31.")
NOT_TEXT = error("tables/text", "{column} holds {text}, not a text.", "Write the word itself.")
NOT_A_CHOICE = error("tables/choice", "{column} is “{text}”.", "{near} Write one of: {choices}.")
ERROR_VALUE = error("tables/error-value", "{column} shows {text}.", "Mend the formula, or write the value itself.")
NOT_CALCULATED = error(
    "tables/not-calculated",
    "{column} is a formula whose result was never calculated.",
    "Open the workbook in a spreadsheet program, let it calculate, and save it.",
)
MERGED = error("tables/merged", "{column} lies in merged cells.", "Unmerge {range} and fill each cell.")
CURRENCY = error(
    "tables/currency",
    "{column} is shown in {text}; all amounts here are U.S. dollars.",
    "Write it in dollars, and show the cell as a plain number.",
)
TYPED_OVER = warning(
    "tables/typed-over",
    "{column} is worked out for you to see; what is typed into it is never read.",
    "Write the figure into the columns it is worked out from, and put the formula back.",
)
SHEET_NOT_READ = warning(
    "tables/sheet-not-read",
    "the sheet “{sheet}” has the columns of {table} and is not read.",
    "Take it out; if its rows are the right ones, name it {table} and take the other away.",
)
HIDDEN_ROW = warning("tables/hidden-row", "{rows}.", "Show what is hidden, or set active to no.")
STRUCK = warning(
    "tables/struck-through",
    "the row, or a cell of it, is struck through, and counts all the same.",
    "Take the line through it away; or set active to no if it is out of use: the rows that still need it are named then.",
)
HIDDEN_COLUMN = warning(
    "tables/hidden-column", "column {column} is hidden, and counts all the same.", "Show the column."
)
HIDDEN_SHEET = warning(
    "tables/hidden-sheet",
    "the sheet {table} is hidden, and its rows count all the same.",
    "Show the sheet, so that whoever looks at the workbook sees all that is in the prices.",
)

# ── a setting, or a place's list of trap arms ─────────────────────────────────────────────────
SETTING_RANGE = error(
    "tables/setting-range",
    "{key} is {text}, outside {low} to {high}.",
    "Write a value within these limits, or change the limits.",
)
SIZE_TEXT = error(
    "tables/pipe-sizes", "pipe_sizes is “{text}”.", "Write the sizes in inches with commas between, such as 2, 3, 4, 6."
)
COLOR = error(
    "tables/color", "accent_colour is “{text}”.", "Write six hex digits, red, green and blue, such as 2F5D50."
)
TRAP_ARM = error(
    "tables/trap-arms",
    "trap_arms has “{text}”.",
    "Write the trap's size in inches and its longest arm in feet, each above 0, a comma between two: 1.25 5, 1.5 6, 2 8.",
)
PAYMENTS = error(
    "tables/payments",
    "payments reads “{text}”, which is no list of names and shares that make 100.",
    "Write each payment as a name and its share of the price: deposit 10, start 30, pipe in before cover 40, done 20.",
)
CREWS_AT_ONCE = error(
    "tables/crews-at-once",
    "crews_at_once has “{text}”, which is no crew of yours and a whole number.",
    "Write a crew and how many of it can work side by side, such as labor 2. Crews are {known}.",
)
SETTING_UNIT = error(
    "tables/setting-unit",
    "{key} is counted in “{text}”; the program reads it in {unit}.",
    "Write the unit {unit}, and the value in it.",
)


def near(word: str, known: Iterable[str]) -> Say | str:
    """A sentence that names up to three known words like this one, or an empty text.

    >>> str(near("recips", ["recipes", "roles"])), near("x", ["recipes"])
    ('Perhaps “recipes” is meant.', '')
    """
    lower = {k.lower(): k for k in known}
    found = [lower[m] for m in get_close_matches(word.strip().lower(), lower, n=3, cutoff=0.6)]
    match [Typed(f"“{word}”") for word in found]:
        case [one]:
            return Say.of("Perhaps {one} is meant.", one=one)
        case [one, two]:
            return Say.of("Perhaps {one} or {two} is meant.", one=one, two=two)
        case [one, two, three]:
            return Say.of("Perhaps {one} or {two} or {three} is meant.", one=one, two=two, three=three)
    return ""


def near_or_all(word: str, known: Iterable[str], most: int = 8) -> Say:
    """The nearest words; where none is near, the first of all known."""
    words = list(known)
    if isinstance(meant := near(word, words), Say):
        return meant
    shown, more = Typed(", ".join(words[:most])), len(words) - most
    if more > 0:
        return Say.of("Known are: {words} and {count} more.", words=shown, count=more)
    return Say.of("Known are: {words}.", words=shown)
