"""What can stop a price: every problem of pricing, declared once, with what to write instead."""

from estimator.model.problem import CannotGoOn, Place, Problem, error, kinds_in, warning
from estimator.tables.rows import TableRow

UNKNOWN_ROW = error(
    "pricing/unknown-row",
    "the recipe of {item} asks for {ref}, and table {table} has no such row that counts today.",
    "Add the row {ref} to {table}, or mend the recipe.",
    "A thing without a row would be priced at nothing.",
)
NO_ROW_FOR_SIZE = error(
    "pricing/size-without-price",
    "the recipe of {item} asks for {ref}, and table {table} has no row for pipe of {size} in.",
    "Add the row {ref} to {table}; until then such a repair is left out of the options.",
    "A pipe of an odd size must not stop the repairs of all other lines.",
)
CONTINGENCY_SHORT = warning(
    "pricing/contingency-short",
    "option {letter}: a contingency of {given}% holds in {held} of 100 such jobs; for {sure}, as your settings want, it takes {wanted}%.",
    "Raise contingency_percent of the method, or write yes in the setting contingency_reaches_confidence.",
    "A firm that sells below its own confidence should know that it does.",
)
NO_CREW = error(
    "pricing/no-crew",
    "task {task} is done by crew “{crew}”, and table crews has nobody in it.",
    "Write a crew of table crews in the column crew, or add its members.",
    "Hours without a crew would cost nothing.",
)
NO_COST = error(
    "pricing/no-cost",
    "{item} is on this job ({quantity}) and none of its recipe rows holds here, so it would cost nothing.",
    "Add a recipe row for {item} that holds here, or narrow its column when.",
    "Nothing is ever priced at a silent zero.",
)
NO_SIZE = error(
    "pricing/no-size",
    "the recipe of {item} asks for {ref}, and this repair has no pipe size.",
    "Write the size of the line in the notes.",
    "A recipe with {size} needs one.",
)
SET_UP_EATS_THE_DAY = error(
    "pricing/set-up-eats-the-day",
    "a crew sets up for {set_up} h of a day of {day} h, so no day is long enough.",
    "Write fewer hours in the production row “daily set-up”, or more in the setting crew_day_hours.",
    "Days hang on set-up and set-up on days.",
)
MARGIN_TOO_HIGH = error(
    "pricing/margin-too-high",
    "the margin of class {price_class} is {margin}%, and a margin is a share of the price.",
    "Write a margin below 100, such as 40: price = cost ÷ (1 − 0.40).",
    "A margin of 100 % or more has no price.",
)
NO_METHOD = error(
    "pricing/no-method",
    "table methods has no row for {method}, so its contingency and minimum are not known.",
    "Add the row {method} to methods.",
    "An unknown contingency is not a contingency of nothing.",
)
NOTHING_TO_SELL = error(
    "pricing/nothing-to-sell",
    "no work item fits {methods}.",
    "Write the method in the column methods of table work_items.",
    "A price of nothing is no price.",
)
NO_LUMP_LINE = error(
    "pricing/no-lump-line",
    "the lines sum to {lines} and the price is {total}: no lump line is large enough to take the difference.",
    "Keep a lump line for mobilizing (quantity jobs) among the work items of method job.",
    "What is left by rounding goes on mobilizing, which must stay above nothing.",
)
BELOW_FLOOR = error(
    "pricing/below-floor",
    "with {what} the margin is {margin}%, below the floor of {floor}% in table pricing.",
    'Take less off (for a visit: setting visit_credit_percent), or have the owner overrule it: [[override]] rule = "floor-margin" with a reason.',
    "A discount must not eat what the firm lives on.",
)
ADD_ON_TOO_LOW = error(
    "pricing/add-on-too-low",
    "the add-on {code} would be sold at {amount}; the floor margin asks for {least} at least.",
    'Give it a higher price in [[add_on]], or have the owner overrule it: [[override]] rule = "floor-margin" with a reason. '
    "Nothing is sold for nothing: quantity = 0 leaves it out.",
    "What is chosen beside the work must not eat what the firm lives on.",
)
OVERRIDE_UNIT = error(
    "pricing/override-unit",
    "the override “{reason}” gives “{quantity}”, and {item} is counted in {unit}.",
    "Write the number in {unit}.",
    "A number in another unit would go straight into the price.",
)
BAD_OVERRIDE = error(
    "pricing/bad-override",
    "the override “{reason}” names {item}, which this option does not have.",
    "Name a work item, a task or a quantity of this option: {known}.",
    "An override that hits nothing would be lost in silence.",
)
PRICE_TOO_LOW = error(
    "pricing/price-too-low",
    "the price of {price} set by hand (“{reason}”) leaves nothing for the work: {passed} of it is passed on to others.",
    "Write a price well above that, or none to have it worked out.",
    "Permits and allowances are paid to others whatever the work is sold for.",
)
PROBLEMS = kinds_in(globals())


def at(table: str, row: TableRow, column: str) -> Place:
    """The cell of a table a problem points to."""
    return Place(table=table, cell=row.cell(column))


def cell(table: str, row: TableRow, column: str) -> str:
    """The same as one text, for the trail of a cost: as the first sheet of a workbook names it, or as a file and its row.

    >>> from estimator.tables.rows_of_hours import Role
    >>> from decimal import Decimal
    >>> helper = Role(role="helper", wage=Decimal(22), burden_percent=Decimal(32), cell_row=3)
    >>> cell("roles", helper, "wage")
    'roles.csv row 3, wage'
    >>> from dataclasses import replace
    >>> cell("roles", replace(helper, sheet_columns={"wage": "B"}), "wage")
    'roles!B3'
    """
    if row.sheet_columns:
        return f"{table}!{row.cell(column)}"
    return f"{table}.csv {row.cell(column)}" if row.cell_row else f"{table}, {column}"


def stop(problems: list[Problem]) -> None:
    """Raise all of them together, each once. Errors: CannotGoOn when there is any."""
    if problems:
        raise CannotGoOn(*dict.fromkeys(problems))
