"""Two quotes of one job in, as the file says and with the changes, the difference in every option out."""

from collections.abc import Sequence

from estimator.cli.views.options import all_repairs, price
from estimator.cli.views.screen import Row
from estimator.cli.views.table import table
from estimator.cli.views.vocabulary import term
from estimator.cli.views.words import ENGLISH, dollars
from estimator.model.offer import Option, Quote
from estimator.model.work import Repair
from estimator.wording.say import speaker


def rows(as_filed: Quote, changed: Quote, changes: Sequence[str], columns: int, language: str = ENGLISH) -> list[Row]:
    """One row a way of repair; a way that only one of them offers stands alone."""
    speak = speaker(language)
    before, after = _by_way(as_filed, language), _by_way(changed, language)
    cells = [_cells(w, before.get(w), after.get(w), language) for w in dict.fromkeys([*before, *after])]
    head = speak("What if {changes} — nothing is saved", changes=", ".join(changes))
    headers = (speak("way"), speak("as in the file"), speak("with the change"), speak("moves by"))
    body = table(headers, cells, columns, right=(1, 2, 3))
    return [Row(head, "head"), *(Row(text) for text in body), Row("")]


def _by_way(quote: Quote, language: str) -> dict[str, Option]:
    """Options by what they do, since letters may move."""
    return {"; ".join(sorted({_does(r, language) for r in all_repairs(o)})): o for o in quote.options}


def _does(repair: Repair, language: str) -> str:
    return f"{term(repair.method, language)} {term(repair.line, language)}"


def _cells(way: str, before: Option | None, after: Option | None, language: str) -> tuple[str, str, str, str]:
    moved = ""
    if before and after:
        difference = after.price.total - before.price.total
        sign = "+" if difference > 0 else "−" if difference < 0 else ""
        moved = sign + dollars(abs(difference), whole=True, language=language)
    never = speaker(language)("not offered")
    return way, price(before, language) if before else never, price(after, language) if after else never, moved
