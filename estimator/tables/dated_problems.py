"""What can be wrong with the days from and until which rows and prices hold; each kind with its words."""

from estimator.model.problem import error, warning

STALE = warning(
    "tables/old-price",
    "the price of “{item}” was learned {days} days ago.",
    "Ask the supplier, write the price and the day in price_day.",
)
NO_PRICE_DAY = warning(
    "tables/no-price-day", "nobody wrote down when the price of “{item}” was learned.", "Write the day in price_day."
)
ENDED = warning(
    "tables/price-ended",
    "the price of “{item}” was good until {until}.",
    "Ask for the new price and add a row with its first day in `from`.",
)
GAP = warning(
    "tables/gap",
    "the price of “{item}” ends on {until}, the next one begins on {starts}.",
    "Give the next row an earlier day in `from`, or ask how long the old price holds.",
)
BEFORE = error(
    "tables/before-they-begin",
    "on {day} these tables do not hold yet; they hold from {first}.",
    "Name that day or a later one, or give the rows that held before an earlier day in `from`.",
)
LATER = warning(
    "tables/not-yet",
    "no row of “{name}” has begun by {day}; the first begins {first}.",
    "Add a row that begins earlier, if it is used now.",
)
EARLIER = warning(
    "tables/begins-earlier",
    "“{name}” begins on {day}, before row {other}, which began on {newer} and counts instead.",
    "Is the year right? A row begun earlier counts only for days before the later one.",
)
