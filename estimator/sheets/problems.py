"""What can be wrong with a workbook somebody hands in, before any cell is read."""

from estimator.model.problem import Kind, Level

E = Level.ERROR

OLD_FORMAT = Kind(
    "sheet/old-format", E, "this is an old spreadsheet (.xls).", "Open it and save it as a workbook of the kind .xlsx."
)
PASSWORD = Kind(
    "sheet/password", E, "this workbook is locked with a password.", "Save it without the password to open."
)
OTHER_FORMAT = Kind(
    "sheet/other-format", E, "this is a spreadsheet of another kind.", "Save it as a workbook of the kind .xlsx."
)
NOT_A_WORKBOOK = Kind(
    "sheet/not-a-workbook", E, "this is no workbook.", "Hand in a workbook of the kind .xlsx, or a folder of CSV files."
)
DAMAGED = Kind(
    "sheet/damaged",
    E,
    "the workbook is damaged: {why}.",
    "Open it in a spreadsheet program, let it repair the file, and save it again.",
)
TOO_LARGE = Kind(
    "sheet/too-large",
    E,
    "the workbook unpacks to {size} MB; {most} MB is the most.",
    "Take out pictures and sheets that do not belong in it.",
)
DOCTYPE = Kind(
    "sheet/doctype",
    E,
    "part {part} declares a document type, which no spreadsheet program writes.",
    "Make the workbook anew; this one is not safe to read.",
)
FAR_CELL = Kind(
    "sheet/far-cell",
    E,
    "the sheet {part} has something in cell {cell}.",
    "Delete the rows and columns beyond your table, then save.",
)
TOO_MANY = Kind(
    "sheet/too-many",
    E,
    "the sheet or part {part} holds more of {what} than any price table.",
    "Copy your table alone into a new workbook and use that.",
)
UNREADABLE = Kind(
    "sheet/unreadable", E, "the file cannot be opened: {why}.", "Close it elsewhere and see that you may read it."
)

PROBLEMS: tuple[Kind, ...] = (
    OLD_FORMAT,
    PASSWORD,
    OTHER_FORMAT,
    NOT_A_WORKBOOK,
    DAMAGED,
    TOO_LARGE,
    DOCTYPE,
    FAR_CELL,
    TOO_MANY,
    UNREADABLE,
)
