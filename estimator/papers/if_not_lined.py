"""An option that lines in; what its owner pays where the cleaned pipe turns out not to hold a liner, and what then repairs it, out."""

from decimal import Decimal

from estimator.model.offer import Option
from estimator.model.price import LineItem
from estimator.papers.crew_plan import tasks_of
from estimator.papers.letter import Letter
from estimator.quote.recommend import cures_all_now, only_prepares
from estimator.wording.numbers import money

NO_LINER = "ass-lines"
"""The firm's own sentence on whom the work so far is charged to."""
BEFORE_THE_LINER = frozenset({"site", "look", "uncover", "clean"})
"""Steps that are done when the cleaned pipe is looked at."""
PAID_OUT = "pass-through"
"""Class of price of what is paid to the city before work."""


def if_not_lined(letter: Letter, option: Option) -> list[str]:
    """The firm's sentence, what it comes to, and the least firm price without a liner; one text. Nothing where no firm price lines."""
    if not option.works.lined or not option.fixed:
        return []
    speak, amount = letter.speak, money(before_the_liner(option), letter.language)
    says = letter.terms([term for term in option.terms if term.id == NO_LINER], "assumption")
    comes_to = [speak("Up to {amount}.", amount=amount)] if says else []
    return [" ".join([*says, *comes_to, *_instead(letter)])] if says or _instead(letter) else []


def before_the_liner(option: Option) -> Decimal:
    """Return what the lines come to whose work is done before the first liner goes in, and what the city was paid."""
    return sum((line.amount for line in option.price.lines if line.price_class == PAID_OUT or _is_before(option, line)), Decimal(0))  # fmt: skip


def _is_before(option: Option, line: LineItem) -> bool:
    tasks = tasks_of(option, line)
    return bool(tasks) and {task.step for task in tasks} <= BEFORE_THE_LINER


def _instead(letter: Letter) -> list[str]:
    """The least firm price of a repair of all that must be that lines nothing."""
    quote = letter.quote
    others = [
        o for o in quote.options if o.fixed and not o.works.lined and cures_all_now(quote, o) and not only_prepares(o)
    ]
    if not others:
        return []
    other = min(others, key=lambda o: o.price.total)
    price = money(other.price.total, letter.language)
    return [letter.speak("Option {letter} needs no liner; its {price} comes on top.", letter=other.letter, price=price)]
