"""What can be wrong with the options an estimator asks for by hand, each kind declared once."""

from estimator.model.problem import Kind, error

NOTHING_THERE = error(
    "scopes/nothing-there",
    "{method} on line {line} is wanted by hand and would be priced on nothing: {why}.",
    'Write where it begins and ends, such as where = "2-29", or take that [[option]] out.',
    "An option is never priced on nothing.",
)
PROBLEMS: tuple[Kind, ...] = (NOTHING_THERE,)
