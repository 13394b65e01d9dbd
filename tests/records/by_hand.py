"""A quote whose first option has a number that the owner set by hand."""

from dataclasses import replace
from decimal import Decimal

from estimator.model.offer import Quote
from estimator.model.price import Overruled
from tests.made_up.quote import example_quote


def with_own_tunnel(ours: Decimal) -> Quote:
    """The hand-made example with a tunnel of 26 ft where the program has `ours`."""
    quote = example_quote()
    own = Overruled(what="quantity of tunnel", ours=ours, mine=Decimal(26), unit="ft", reason="measured by tape")
    first = quote.options[0]
    return replace(quote, options=(replace(first, price=replace(first.price, overruled=(own,))), *quote.options[1:]))
