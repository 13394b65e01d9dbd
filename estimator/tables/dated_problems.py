"""What can be wrong with the days from and until which rows and prices hold; each kind with its words."""

from estimator.model.problem import Kind, Level

E, W = Level.ERROR, Level.WARNING

STALE = Kind(
    "tables/old-price",
    W,
    "the price of “{item}” was learned {days} days ago.",
    "Ask the supplier, write the price and the day in price_day.",
)
NO_PRICE_DAY = Kind(
    "tables/no-price-day", W, "nobody wrote down when the price of “{item}” was learned.", "Write the day in price_day."
)
ENDED = Kind(
    "tables/price-ended",
    W,
    "the price of “{item}” was good until {until}.",
    "Ask for the new price and add a row with its first day in `from`.",
)
GAP = Kind(
    "tables/gap",
    W,
    "the price of “{item}” ends on {until}, the next one begins on {starts}.",
    "Give the next row an earlier day in `from`, or ask how long the old price holds.",
)
BEFORE = Kind(
    "tables/before-they-begin",
    E,
    "on {day} these tables do not hold yet; they hold from {first}.",
    "Name that day or a later one, or give the rows that held before an earlier day in `from`.",
)
LATER = Kind(
    "tables/not-yet",
    W,
    "no row of “{name}” has begun by {day}; the first begins {first}.",
    "Add a row that begins earlier, if it is used now.",
)
EARLIER = Kind(
    "tables/begins-earlier",
    W,
    "“{name}” begins on {day}, before row {other}, which began on {newer} and counts instead.",
    "Is the year right? A row begun earlier counts only for days before the later one.",
)
