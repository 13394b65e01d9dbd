"""A number whose cell shows it as a percent: 0.0825 that reads 8.25 % on the sheet."""


class Percent(float):
    """The number as the file holds it, 0.0825; whoever reads it knows that people see a hundred times as much."""

    __slots__ = ()
