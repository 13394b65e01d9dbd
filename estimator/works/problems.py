"""What can be wrong with the tables only once something is measured: a row takeoff needs, a word it does not know."""

from estimator.model.problem import error, kinds_in

NO_SETTING = error(
    "takeoff/no-setting",
    "the settings have no row {key}, and quantities need it.",
    "Add the row; the demo tables show its unit and what it does.",
    "A number left out would count as nothing.",
)
NO_SOIL = error(
    "takeoff/no-soil",
    "the soils have neither {word} nor a row unknown to count with.",
    "Add a row for one of them; unknown stands for soil nobody has named.",
    "Earth cannot be measured without its swell and weight.",
)
SETTING_WORD = error(
    "takeoff/setting-word",
    "{key} is “{value}”.",
    "Write one of: {choices}.",
    "Some settings choose between ways of working.",
)
PROBLEMS = kinds_in(globals())
