"""The ways over one stretch in, side by side with what decides between them out; a blocked way stays visible with its reason."""

from collections.abc import Callable, Sequence

from estimator.cli.views.break_even import write_turns
from estimator.cli.views.layout import Layout
from estimator.cli.views.options import Answers, drains, floors, main_risk, most, on_site, pipe_left, yard
from estimator.cli.views.problems import write_gas_first
from estimator.cli.views.strip import Bar, draw_line
from estimator.cli.views.words import Words
from estimator.model.comparison import BreakEven, Column, Comparison
from estimator.model.job import Job
from estimator.model.offer import Option
from estimator.model.say import Say

CLASS_WORDS: dict[str, Say] = {
    "find": Say.of("finding out"),
    "reach": Say.of("getting to it"),
    "pipe": Say.of("the pipe"),
    "put back": Say.of("putting back"),
}


def write_comparison(out: Layout, compared: Comparison, job: Job, even: BreakEven | None = None) -> None:
    """The drawing, the columns, what is not the same work, what decides, where it turns, and the ways the rules forbid."""
    write_gas_first(out, job)
    draw_line(out, job.line(compared.line), [Bar(out.stations(compared.stretch), compared.stretch)])
    out.line()
    out.paragraph(out.sentence(compared.does), look="head")
    _side_by_side(out, compared.open)
    for column in compared.open:
        for said in column.differs:
            out.paragraph(f"{out.term(column.method)}: {out.say(said)}", hanging=2)
    if compared.open:
        out.paragraph(
            out.speak("These prices are for this stretch alone. An option of the quote may do more, such as cleaning.")
        )
    if compared.decides:
        out.heading(out.speak("What decides"))
    for said in compared.decides:
        out.paragraph(out.sentence(said))
    if even:
        write_turns(out, even)
    _by_way(out, out.speak("What can go wrong"), compared.open, main_risk)
    _by_way(out, out.speak("In the price all in, for others"), compared.open, _others)
    _against(out, compared)


def _side_by_side(out: Layout, open_: Sequence[Column]) -> None:
    if not open_:
        out.line(out.speak("No way is open here."))
        return
    options = [column.option for column in open_ if column.option]
    body = [(out.say(label), *(answer(option, out) for option in options)) for label, answer in ANSWERS]
    money = [_money(name, open_, out) for name, _ in open_[0].by_class]
    headers = ("", *(out.term(column.method) for column in open_))
    out.table(headers, [*body[:MONEY], *money, *body[MONEY:]], right=tuple(range(1, len(headers))))


def _money(name: str, open_: Sequence[Column], words: Words) -> tuple[str, ...]:
    """What one class of work costs by each way."""
    label = words.say(CLASS_WORDS[name]) if name in CLASS_WORDS else name
    return "  " + label, *(words.dollars(dict(c.by_class)[name], whole=True) for c in open_)


ANSWERS: Answers = (
    (Say.of("all in, about"), lambda option, words: words.dollars(option.all_in, whole=True)),
    (Say.of("our price"), lambda option, words: words.dollars(option.price.total, whole=True)),
    (Say.of("never above"), most),
    (Say.of("days on site"), on_site),
    (Say.of("without drains"), drains),
    (Say.of("floor opened"), floors),
    (Say.of("yard dug"), yard),
    (Say.of("old pipe left"), pipe_left),
)
"""The all-in price stands first: never a price alone."""
MONEY = 3
"""So many of these stand before what each class of work costs."""


def _by_way(out: Layout, head: str, open_: Sequence[Column], what: Callable[[Option, Words], str]) -> None:
    """One sentence a way, under a heading; nothing where no way has one."""
    cells = [(out.term(c.method), text) for c in open_ if c.option and (text := what(c.option, out))]
    if cells:
        out.heading(head)
        out.pairs(cells)


def _others(option: Option, words: Words) -> str:
    """What is not ours: about how much, or that a price has to be asked."""
    ask = words.speak("ask for a price")
    return "; ".join(
        f"{words.pick(o.text_en, o.text_es)}: {ask if o.amount is None else words.dollars(o.amount, whole=True)}"
        for o in option.to_others
    )


def _against(out: Layout, compared: Comparison) -> None:
    shut = [(column.method, column.against) for column in compared.columns if column.against is not None]
    if shut:
        out.heading(out.speak("Not open here"))
        out.pairs([(out.term(method), f"{out.sentence(why.estimator)} ({why.rule})") for method, why in shut])


def as_data(compared: Comparison, even: BreakEven | None) -> dict[str, object]:
    """The comparison and the turns for other programs."""
    turns = [
        {"axis": str(along.axis.name), "unit": along.axis.unit, "now": along.axis.now, "turns": along.turns}
        for along in (even.along if even else ())
    ]
    return {"comparison": compared, "break_even": turns}
