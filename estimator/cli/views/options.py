"""A quote in, its options side by side out: one column an option where there is room, else one block an option."""

from collections.abc import Callable
from decimal import Decimal

from estimator.cli.views.layout import Layout
from estimator.cli.views.problems import write_gas_first
from estimator.cli.views.schedule_bars import write_schedule
from estimator.cli.views.strip import Bar, draw_line
from estimator.cli.views.words import Words
from estimator.model.offer import Option, Quote
from estimator.model.say import Say
from estimator.model.work import Repair
from estimator.quote.recommend import compared, recommended

LABEL_WIDTH, LEAST_COLUMN, ROOMY_COLUMN = 16, 10, 14
Answers = tuple[tuple[Say, Callable[[Option, Words], str]], ...]
TEST_WORDS: dict[str, Say] = {
    "yes": Say.of("yes"),
    "only this part": Say.of("new part only"),
    "not promised": Say.of("not promised"),
}


def write_options(out: Layout, quote: Quote) -> None:
    """The drawing of each line with the repairs of the options, the comparison, what is not offered and why."""
    write_gas_first(out, quote.job)
    out.line(f"{quote.job.number}  {quote.job.customer.site}", "head")
    out.line(out.speak("{place}; prices of {day}", place=quote.place, day=out.day(quote.day)))
    out.line()
    _recommended(out, quote)
    for line in quote.job.lines:
        draw_line(out, line, _bars(quote, line.name, out))
        out.line()
    _comparison(out, quote)
    if len(quote.options) == 1:  # of several it would be longer than all the rest
        write_schedule(out, quote.options[0].schedule)
    _not_offered(out, quote)
    _closing(out, quote)


def _recommended(out: Layout, quote: Quote) -> None:
    """The answer first: what the quote recommends, as its first page does."""
    if not quote.options:
        return
    option = recommended(quote)
    if option is None:
        said = out.speak("No price is firm yet, so we do not recommend a repair yet.")
    else:
        words = {"title": heading(option, out), "price": price(option, out)}
        said = out.speak("We recommend {letter}: {title}, {price}.", letter=option.letter, **words)
    out.paragraph(said, look="head")
    out.line()


def _bars(quote: Quote, line: str, words: Words) -> list[Bar]:
    return [
        Bar(f"{option.letter} {words.term(repair.method)}", repair.stretch)
        for option in quote.options
        for repair in all_repairs(option)
        if repair.line == line
    ]


def all_repairs(option: Option) -> list[Repair]:
    """The repairs of an option, those that must come first before the ones that need them."""
    return [r for repair in option.scope.repairs for r in (*repair.first, repair)]


def _comparison(out: Layout, quote: Quote) -> None:
    """Side by side as long as the columns hold a short answer; long answers move under them, then all into blocks."""
    if not quote.options:
        out.line(out.speak("No way of repair can be offered on these notes."), "head")
        return
    beside = compared(quote)
    column = (out.columns - LABEL_WIDTH) // len(beside) - 2
    if column < LEAST_COLUMN:
        for option in beside:
            _block(out, option)
        return
    roomy = column >= ROOMY_COLUMN
    answers = (*SHORT, *LONG) if roomy else SHORT
    body = [(out.say(label), *(answer(o, out) for o in beside)) for label, answer in answers]
    out.table(("", *(o.letter for o in beside)), [("", *(heading(o, out) for o in beside)), *body])
    for label, answer in UNDER if roomy else (*LONG, *UNDER):
        out.heading(out.sentence(label))
        out.pairs([(option.letter, answer(option, out)) for option in beside])


def _block(out: Layout, option: Option) -> None:
    write_title(out, option)
    out.pairs([(out.say(label), answer(option, out)) for label, answer in (*SHORT, *LONG, *UNDER)])
    out.line()


def write_title(out: Layout, option: Option) -> None:
    """`A  Reline the main`."""
    out.paragraph(f"{option.letter}  {heading(option, out)}", hanging=3, look="head")


# ── what is answered of an option ─────────────────────────────────────────────────────────────


def price(option: Option, words: Words) -> str:
    amount = words.dollars(option.price.total, whole=True)
    return amount if option.fixed else words.speak("{amount}, not fixed", amount=amount)


def most(option: Option, words: Words) -> str:
    return words.dollars(option.most, whole=True) if option.fixed else words.speak("to be confirmed")


def heading(option: Option, words: Words) -> str:
    """The estimator's own name for it, else what it does."""
    return option.name or words.sentence(option.title)


def drains(option: Option, words: Words) -> str:
    if not option.days_without_drains:
        return words.speak("some hours")
    return _days(option.days_without_drains, words)


def on_site(option: Option, words: Words) -> str:
    return _days(option.days_on_site, words)


def _days(count: Decimal, words: Words) -> str:
    """`1 day`, `7.5 days`."""
    return words.speak("1 day") if count == 1 else words.speak("{count} days", count=words.number(count))


def floors(option: Option, words: Words) -> str:
    rooms = [words.term(room) for room in option.floors_opened]
    if not option.floor_sf:
        return ", ".join(rooms) or words.speak("none cut")
    return "; ".join([_area(option.floor_sf, words), *rooms])


def yard(option: Option, words: Words) -> str:
    return _area(option.yard_sf, words) if option.yard_sf else words.speak("none")


def _area(square_ft: float, words: Words) -> str:
    return words.speak("{number} sq ft", number=words.number(square_ft, 0))


def pipe_left(option: Option, words: Words) -> str:
    return words.feet(option.old_pipe_left_ft)


def _life(option: Option, words: Words) -> str:
    if not option.life_high:
        return words.speak("not said")
    return words.speak("{years} yr, typical", years=f"{option.life_low}–{option.life_high}")


def _papers(option: Option, words: Words) -> str:
    """Permits, letters and tests that the work needs."""
    return " ".join(map(words.say, option.needs_papers)) or words.speak("none known yet: ask")


def main_risk(option: Option, words: Words) -> str:
    return words.sentence(option.main_risk)


SHORT: Answers = (
    (Say.of("way"), lambda o, words: words.terms(dict.fromkeys(repair.method for repair in all_repairs(o)))),
    (Say.of("price"), price),
    (Say.of("never above"), most),
    (Say.of("days on site"), on_site),
    (Say.of("without drains"), drains),
    (Say.of("floors opened"), floors),
    (Say.of("yard dug"), yard),
    (Say.of("old pipe left"), pipe_left),
    (Say.of("water test"), lambda o, words: words.say(TEST_WORDS[o.water_test])),
    (Say.of("lasts"), _life),
)
LONG: Answers = ((Say.of("main risk"), main_risk),)
UNDER: Answers = (
    (Say.of("warranty"), lambda o, words: words.pick(o.warranty_en, o.warranty_es)),
    (Say.of("papers needed"), _papers),
)
"""What is compared, in the order people ask for it. The homeowner's file has the whole list."""


def _not_offered(out: Layout, quote: Quote) -> None:
    if quote.blocked:
        out.heading(out.speak("Not offered"))
        out.pairs([(out.terms(g.methods), out.sentence(g.why)) for g in quote.not_offered])


def _closing(out: Layout, quote: Quote) -> None:
    open_: dict[str, list[str]] = {}
    for option in quote.options:
        for why in option.not_fixed_because:
            open_.setdefault(out.sentence(why), []).append(option.letter)
    out.line()
    for reason, letters in open_.items():
        out.paragraph(out.speak("No fixed price yet for {letters}: {why}", letters=", ".join(letters), why=reason))
    for visit in quote.options:
        if waiting := [o.letter for o in quote.options if o.firm_after == visit.letter]:
            start = out.speak(
                "To get a firm price for {letters}, start with Option {letter} ({price}).",
                letters=", ".join(waiting), letter=visit.letter, price=price(visit, out),
            )  # fmt: skip
            out.paragraph(start)
            for one in visit.does:
                out.paragraph(out.sentence(one))
    out.paragraph(
        out.speak(
            "Digging, tunnels and saw cuts can kill: a competent person decides on protection at the site, and the local code and the licensed plumber stand over everything printed here."
        )
    )
