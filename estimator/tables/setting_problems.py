"""What can be wrong with a setting, or with a place's list of trap arms; each kind with its words."""

from estimator.model.problem import error

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
