"""What can be wrong with a workbook somebody hands in, before any cell is read."""

from estimator.model.problem import error, kinds_in

OLD_FORMAT = error(
    "sheet/old-format", "this is an old spreadsheet (.xls).", "Open it and save it as a workbook of the kind .xlsx."
)
PASSWORD = error("sheet/password", "this workbook is locked with a password.", "Save it without the password to open.")
OTHER_FORMAT = error(
    "sheet/other-format", "this is a spreadsheet of another kind.", "Save it as a workbook of the kind .xlsx."
)
NOT_A_WORKBOOK = error(
    "sheet/not-a-workbook", "this is no workbook.", "Hand in a workbook of the kind .xlsx, or a folder of CSV files."
)
DAMAGED = error(
    "sheet/damaged",
    "the workbook is damaged: {why}.",
    "Open it in a spreadsheet program, let it repair the file, and save it again.",
)
TOO_LARGE = error(
    "sheet/too-large",
    "the workbook unpacks to {size} MB; {most} MB is the most.",
    "Take out pictures and sheets that do not belong in it.",
)
DOCTYPE = error(
    "sheet/doctype",
    "part {part} declares a document type, which no spreadsheet program writes.",
    "Make the workbook anew; this one is not safe to read.",
)
FAR_CELL = error(
    "sheet/far-cell",
    "the sheet {part} has something in cell {cell}.",
    "Delete the rows and columns beyond your table, then save.",
)
TOO_MANY = error(
    "sheet/too-many",
    "the sheet or part {part} holds more of {what} than any price table.",
    "Copy your table alone into a new workbook and use that.",
)
UNREADABLE = error(
    "sheet/unreadable", "the file cannot be opened: {why}.", "Close it elsewhere and see that you may read it."
)

PROBLEMS = kinds_in(globals())
