"""Two quotes of one job in, as the file says and with the changes, the difference in every option out."""

from collections.abc import Sequence

from estimator.cli.views.layout import Layout
from estimator.cli.views.options import all_repairs, price
from estimator.cli.views.words import Words
from estimator.model.offer import Option, Quote


def write_what_if(out: Layout, as_filed: Quote, changed: Quote, changes: Sequence[str]) -> None:
    """One row a way of repair; a way that only one of them offers stands alone."""
    speak = out.speak
    before, after = _by_way(as_filed, out), _by_way(changed, out)
    out.line(speak("What if {changes} — nothing is saved", changes=", ".join(changes)), "head")
    headers = (speak("way"), speak("as in the file"), speak("with the change"), speak("moves by"))
    cells = [_cells(way, before.get(way), after.get(way), out) for way in dict.fromkeys([*before, *after])]
    out.table(headers, cells, right=(1, 2, 3))
    out.line()


def _by_way(quote: Quote, words: Words) -> dict[str, Option]:
    """Options by what they do, since letters may move."""
    return {
        "; ".join(sorted({f"{words.term(r.method)} {words.term(r.line)}" for r in all_repairs(o)})): o
        for o in quote.options
    }


def _cells(way: str, before: Option | None, after: Option | None, words: Words) -> tuple[str, str, str, str]:
    moved, never = "", words.speak("not offered")
    if before and after:
        difference = after.price.total - before.price.total
        moved = words.moved_by(difference) if difference else words.dollars(difference, whole=True)
    return way, price(before, words) if before else never, price(after, words) if after else never, moved
