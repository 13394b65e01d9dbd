"""Everything that can be wrong with a set of tables; each kind with its words."""

from estimator.model.problem import error, kinds_in, warning
from estimator.model.say import Say
from estimator.tables import cell_problems

OR_OFF = Say.of(", or set active to no if the row is not in use")
MAY_BE_OFF = ("materials", "equipment", "subs_and_fees", "extras", "add_ons", "methods", "soils", "places")
"""Tables whose rows a firm may do without. A setting, a wage, a crew member or a recipe's part left out would be missed,
or would make every price lower without a word."""

# ── the file or folder itself ─────────────────────────────────────────────────────────────────
NO_TABLES = error(
    "tables/nothing-there",
    "there are no price tables at {path}.",
    "Name a folder of CSV files or a workbook (.xlsx), or leave the option out to use the demo tables.",
)
NO_TABLE = error(
    "tables/missing-table", "table {table} is missing.", "{near} Put back {name}; its columns are: {columns}."
)
EMPTY_TABLE = error("tables/empty-table", "table {table} has no rows.", "Write at least one row under the headers.")
UNREADABLE = error(
    "tables/unreadable", "the file cannot be opened: {why}.", "Close it elsewhere and see that you may read it."
)
ENCODING = error(
    "tables/encoding", "byte {at} is no UTF-8 text.", "Save the file again as “CSV UTF-8” in your spreadsheet program."
)
NOT_CSV = error("tables/not-csv", "this is no table of text: {why}.", "Save the sheet as “CSV UTF-8”.")

# ── headers ───────────────────────────────────────────────────────────────────────────────────
NO_COLUMN = error("tables/missing-column", "column {column} is missing.", "Add a column headed {column}: {note}.")
ODD_COLUMN = warning("tables/unknown-column", "column “{column}” is not read.", "{near}")
TWICE_COLUMN = error("tables/column-twice", "column {column} stands there twice.", "Keep one of the two.")
STRAY = error(
    "tables/stray-cell",
    "the row holds nothing but {text} in {cells}, which is no row of {table}.",
    "Take it out, put a remark into the note of the row it belongs to, or fill in the rest of the row.",
)
LONG_ROW = error(
    "tables/row-too-long",
    "the row has {cells} cells, the header {headers}.",
    "Put quotation marks around a text with a comma in it, or take the extra cell out.",
)

# ── rows against each other ───────────────────────────────────────────────────────────────────
TWICE = error(
    "tables/twice",
    "“{name}” stands in row {first} already, from the same day.",
    "Keep one of the two, or give the newer one a later day in `from`.",
)
NO_FIRST_DAY = warning(
    "tables/no-first-day",
    "“{name}” has no day in `from`, so it does not count: row {other} does, since {day}.",
    "Write the day this row begins in `from`; without one it counts only until a dated row begins.",
)
UNKNOWN = error("tables/unknown-reference", "{column} “{text}” is in no row of {refers}.", "{near}")
OUT_OF_USE = error(
    "tables/out-of-use",
    "{column} “{text}” is out of use: its row of {refers} has active no.",
    "Set it to yes there, or name here what is used instead. Work that nobody of yours does: active no at its row of work_items.",
)
UNKNOWN_QUANTITY = error("tables/unknown-quantity", "{column} “{text}” is no quantity of a takeoff.", "{near}")
UNKNOWN_FACT = error("tables/unknown-fact", "{column} “{text}” is no fact, nor one of your own_facts.", "{near}")
UNKNOWN_METHOD = error("tables/unknown-method", "{column} “{text}” is no method the program knows.", "{near}")
MISSING_METHOD = error(
    "tables/missing-method",
    "method “{method}” has no row.",
    "Add a row for it; set active to no if the firm does not do it.",
)
MISSING_SETTING = error(
    "tables/missing-setting", "setting “{key}” has no row.", "{near} Add a row for it; the demo tables say {value}."
)
ORDER = error(
    "tables/low-likely-high",
    "low {low}, likely {likely}, high {high} do not rise.",
    "Write low no larger than likely, and likely no larger than high.",
)
NO_HOURS = error(
    "tables/no-hours",
    "task “{task}” takes {likely} crew-hours.",
    "Write how long one of it takes; nothing is done in no time.",
)
HOURS_WORKED = error(
    "tables/hours-worked",
    "“{role}” is paid for {paid} hours a year and works {worked}.",
    "Write both, worked no more than paid (leave is paid and not worked), or leave both empty.",
)
NO_PRICE = error("tables/no-price", "{column} of “{item}” is 0.", "Write what it costs{or_off}.")
UNITS = error(
    "tables/units",
    "“{ref}” is counted in {unit}, but {quantity} in {other}.",
    "Use a quantity in {unit}, or write in per how many {unit} go with one {other}.",
)
MARGIN_100 = error(
    "tables/margin-100",
    "a margin of {percent}% cannot be: price = cost ÷ (1 − margin).",
    "Write the share of the price that is left over, such as 40.",
)
MARGIN_SMALL = error(
    "tables/percent-share", "{column} is {text} percent.", "Write {fixed} if you mean {fixed} percent, or 0."
)
PERCENT_SMALL = warning(
    "tables/percent-typed-as-share",
    "{column} of “{item}” is {text} percent.",
    "Write {fixed} if you mean {fixed} percent; if it is right, write “checked {text}” in the row's note.",
)
UNUSUAL = warning(
    "tables/unusual",
    "{column} of “{item}” is {text}; as a rule it lies from {low} to {high} ({why}).",
    "Mend it, or write “checked {text}” in the row's note if it is right.",
)
FAR = warning(
    "tables/far-from-before",
    "{column} of “{item}” is {text}, {times} times {which} {before}.",
    "Is it for another unit, a slip of the decimal point, or in the wrong row? If it is right, write “checked {text}” "
    "in the row's note.",
)
SHIFTED = warning(
    "tables/shifted",
    "{count} figures of {column} in a row are those of the row {side}, from “{first}” to “{last}”.",
    "Look whether a column was pasted one row off.",
)
CHANGED_PLACES = warning(
    "tables/changed-places",
    "each of these rows has the {column} another of them had: {items}.",
    "Look whether rows were sorted without this column or two prices pasted in each other's row; where one is right, write "
    "“checked” and the figure in its note.",
)
DAY_TO_COME = warning(
    "tables/day-to-come", "{column} of “{item}” is {text}, a day to come.", "Write the day it was learned."
)
NOBODY_PAID = error(
    "tables/nobody-paid",
    "task “{task}” names no crew, so nobody would be paid for it.",
    "Write the crew in production, or in each recipe that uses it.",
)
NO_CREW_DAYS = error(
    "tables/no-crew-days",
    "“{item}” is paid by the day and follows no crew.",
    "Write the crew whose days it follows, or give its recipe a quantity in days.",
)
ITEM_OFF = warning(
    "tables/work-item-off",
    "work item “{item}” is out of use: a way of repair that needs it is not offered, and what is done once a job is not charged ({text}).",
    "Set active to yes, unless nobody of yours ever does it.",
)
FOLLOWS_WHICH = error(
    "tables/follows-which",
    "the row from {day} follows several rows of “{name}”, and nobody can tell which.",
    "Give it the quantity, facts or tasks of the row it replaces, or set the others to active no from that day.",
)
MARGIN_MARKUP = warning(
    "tables/margin-or-markup",
    "a margin of {percent}% is a markup of {markup}%.",
    "If you meant a markup of {percent}%, write a margin of {margin}.",
)
FLOOR = error(
    "tables/floor-margin",
    "the floor {floor}% is above the margin {margin}%.",
    "Write a floor no larger than the margin.",
)
MARKED_UP = error(
    "tables/passed-on-at-cost",
    "pass-through is what the firm hands on at its cost, and {column} adds to it.",
    "Write 0 and no. To earn on a fee, give its row the class sub.",
    "The homeowner reads that the city's fee is the city's, and sales tax leaves it out.",
)
NO_SPANISH = warning(
    "tables/no-spanish",
    "{column} is empty.",
    "Write the Spanish text; until then a Spanish quote cannot be sent with it.",
)
UNUSED = warning("tables/unused", "nothing uses {what} “{item}”.", "Use it in {where}, or set active to no.")
NO_RECIPE = error(
    "tables/no-recipe",
    "work item “{item}” has no recipe, so it would be sold for nothing.",
    "Add a row for it in recipes, or set active to no.",
)
NO_COST_CLASS = error(
    "tables/missing-class",
    "price class “{name}” has no row.",
    "Add it with its margin: own, sub, allowance and pass-through are needed.",
)
OTHER_UNIT = warning(
    "tables/other-unit",
    "“{item}” is counted in {unit} at {text}, the invented figure in {other}.",
    "Write what it is in {unit}, or put the unit back.",
)
BRACES = error("tables/braces", "{column} has “{text}” in braces.", "Only {gap} may stand in braces.")

# ── the days from and until which rows and prices hold ────────────────────────────────────────
STALE = warning(
    "tables/old-price",
    "the price of “{item}” was learned {days} days ago.",
    "Ask the supplier, write the price and the day in price_day.",
)
NO_PRICE_DAY = warning(
    "tables/no-price-day", "nobody wrote down when the price of “{item}” was learned.", "Write the day in price_day."
)
PRICE_ENDED = warning(
    "tables/price-ended",
    "the price of “{item}” was good until {until}.",
    "Ask for the new price and add a row with its first day in `from`.",
)
PRICE_GAP = warning(
    "tables/gap",
    "the price of “{item}” ends on {until}, the next one begins on {starts}.",
    "Give the next row an earlier day in `from`, or ask how long the old price holds.",
)
BEFORE_THEY_BEGIN = error(
    "tables/before-they-begin",
    "on {day} these tables do not hold yet; they hold from {first}.",
    "Name that day or a later one, or give the rows that held before an earlier day in `from`.",
)
NOT_YET = warning(
    "tables/not-yet",
    "no row of “{name}” has begun by {day}; the first begins {first}.",
    "Add a row that begins earlier, if it is used now.",
)
BEGINS_EARLIER = warning(
    "tables/begins-earlier",
    "“{name}” begins on {day}, before row {other}, which began on {newer} and counts instead.",
    "Is the year right? A row begun earlier counts only for days before the later one.",
)

PROBLEMS = kinds_in({**globals(), **vars(cell_problems)})
"""Every kind of this package, for docs/problems.md and the broken cases."""
