"""A takeoff of a size that the tables have no row for in, what stands against its repair out."""

from estimator.model.judgement import Effect, Verdict
from estimator.model.say import Say
from estimator.model.work import Takeoff

NO_ROW_FOR_SIZE = "pricing/size-without-price"
"""The code of the one problem of pricing that puts a single repair aside and stops nothing else."""


def no_price(takeoff: Takeoff) -> Verdict:
    repair = takeoff.repair
    return Verdict(
        rule="no-price-for-this-size",
        effect=Effect.BLOCKS,
        method=repair.method,
        line=repair.line,
        stretch=repair.stretch,
        homeowner=Say.of("We do not carry what this method needs for a pipe of this size."),
        estimator=Say.of(
            "The tables have no price for {size} in pipe here: add the row, or leave this way out.", size=takeoff.size
        ),
    )
