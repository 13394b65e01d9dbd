"""What can be wrong with one cell, row or sheet by itself; each kind with its words."""

from estimator.model.problem import Kind, Level

E, W = Level.ERROR, Level.WARNING

EMPTY_CELL = Kind("tables/empty-cell", E, "{column} is empty.", "Fill it in ({note}){or_off}.")
NOT_A_NUMBER = Kind("tables/number", E, "{column} is “{text}”.", "Write a number such as {example}{or_off}.")
COMMA_NUMBER = Kind(
    "tables/decimal-comma", E, "{column} is “{text}”, with a comma for the decimal point.", "Write {fixed}."
)
NOT_WHOLE = Kind("tables/whole-number", E, "{column} is “{text}”.", "Write a whole number such as 3.")
NEGATIVE = Kind("tables/negative", E, "{column} is {text}, less than {least}.", "Write {least} or more.")
NOT_ABOVE = Kind(
    "tables/not-above",
    E,
    "{column} is {text}.",
    "Write a number above {above}{or_off}; something is paid or counted by it.",
)
TOO_LARGE = Kind(
    "tables/too-large", E, "{column} is {text}.", "No figure of these tables is above {most}; look for a slip."
)
NOT_YES_NO = Kind("tables/yes-no", E, "{column} is “{text}”.", "Write yes or no.")
NOT_A_DAY = Kind("tables/day", E, "{column} is “{text}”.", "Write a day as year-month-day, such as 2026-03-31.")
NOT_TEXT = Kind("tables/text", E, "{column} holds {text}, not a text.", "Write the word itself.")
NOT_A_CHOICE = Kind("tables/choice", E, "{column} is “{text}”.", "{near} Write one of: {choices}.")
ERROR_VALUE = Kind("tables/error-value", E, "{column} shows {text}.", "Mend the formula, or write the value itself.")
NOT_CALCULATED = Kind(
    "tables/not-calculated",
    E,
    "{column} is a formula whose result was never calculated.",
    "Open the workbook in a spreadsheet program, let it calculate, and save it.",
)
MERGED = Kind("tables/merged", E, "{column} lies in merged cells.", "Unmerge {range} and fill each cell.")
CURRENCY = Kind(
    "tables/currency",
    E,
    "{column} is shown in {text}; all amounts here are U.S. dollars.",
    "Write it in dollars, and show the cell as a plain number.",
)
TYPED_OVER = Kind(
    "tables/typed-over",
    W,
    "{column} is worked out for you to see; what is typed into it is never read.",
    "Write the figure into the columns it is worked out from, and put the formula back.",
)
SHEET_NOT_READ = Kind(
    "tables/sheet-not-read",
    W,
    "the sheet “{sheet}” has the columns of {table} and is not read.",
    "Take it out; if its rows are the right ones, name it {table} and take the other away.",
)
HIDDEN_ROW = Kind("tables/hidden-row", W, "{rows}.", "Show what is hidden, or set active to no.")
STRUCK = Kind(
    "tables/struck-through",
    W,
    "the row, or a cell of it, is struck through, and counts all the same.",
    "Take the line through it away; or set active to no if it is out of use: the rows that still need it are named then.",
)
HIDDEN_COLUMN = Kind(
    "tables/hidden-column", W, "column {column} is hidden, and counts all the same.", "Show the column."
)
HIDDEN_SHEET = Kind(
    "tables/hidden-sheet",
    W,
    "the sheet {table} is hidden, and its rows count all the same.",
    "Show the sheet, so that whoever looks at the workbook sees all that is in the prices.",
)
