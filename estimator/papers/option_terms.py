"""An option's terms in sentences by label: what is included and what is not, unit prices, papers; what several options share.

What more than one option has stands once, in the agreement, with the letters of the options it is for.
"""

from estimator.model.found import runs
from estimator.model.offer import Extra, Option
from estimator.papers import option_words
from estimator.papers.cautions import limits
from estimator.papers.crew_boxes import TESTS
from estimator.papers.if_not_lined import NO_LINER, if_not_lined
from estimator.papers.letter import Letter
from estimator.papers.lift import warranty_begins
from estimator.papers.line_items import short
from estimator.papers.page import Page, ended, run_in
from estimator.papers.sizes import size
from estimator.quote.recommend import only_prepares
from estimator.wording.numbers import feet, money, number
from estimator.wording.plain import PER, in_plain_words


def unit_prices(letter: Letter, option: Option) -> list[str]:
    """Each condition with its price and limit; none of an option whose price is not firm yet."""
    if not option.fixed:
        return []
    return [f"{short(letter.text(extra))}: {unit_price(letter, extra)}." for extra in option.extras]


def unit_price(letter: Letter, extra: Extra) -> str:
    """`$95 per foot, up to 10 ft ($950)`; `$290 each, up to 1 ($290)`."""
    price, cap = money(extra.price, letter.language), money(extra.cap_amount, letter.language)
    if extra.unit == "each" and extra.cap_quantity == 1:
        return letter.speak("{price}, once", price=price)
    if extra.unit == "each":
        most = number(extra.cap_quantity, letter.language)
        return letter.speak("{price} each, up to {most} ({cap})", price=price, most=most, cap=cap)
    unit, amount = letter.say(in_plain_words(PER, extra.unit)), float(extra.cap_quantity)
    most = feet(amount, letter.language) if extra.unit == "ft" else size(letter, amount, extra.unit)
    return letter.speak("{price} per {unit}, up to {most} ({cap})", price=price, unit=unit, most=most, cap=cap)


def terms_of(letter: Letter, option: Option) -> dict[str, list[str]]:
    """Return the sentences by label: included, not included, other costs, assumptions, papers."""
    speak = letter.speak
    return {
        speak("Included"): [*letter.terms(option.terms, "includes"), *received(letter, option)],
        speak("Not included"): letter.terms(option.terms, "excludes"),
        speak("Other costs, not in our price"): [
            *option_words.others(letter, option),
            *letter.terms(option.terms, "to others"),
        ],
        speak("Limits of the repair"): limits(letter, option),
        speak("We assume"): [
            *letter.all(option.assumptions),
            *letter.terms([t for t in option.terms if t.id != NO_LINER], "assumption"),
        ],
        speak("Risk"): if_not_lined(letter, option),
        speak("Permits and papers"): letter.all(option.needs_papers),
        speak("Warranty"): list(filter(None, [warranty_begins(letter, option)])),
        speak("Unit prices"): unit_prices(letter, option),
    }


def shared(letter: Letter) -> dict[str, list[tuple[str, str]]]:
    """Return, by label, each sentence that more than one option has, with their letters; "" where every option has it."""
    options = letter.quote.options
    found: dict[str, dict[str, list[str]]] = {}
    for option in options:
        for label, texts in terms_of(letter, option).items():
            for text in texts:
                found.setdefault(label, {}).setdefault(text, []).append(option.letter)
    return {
        label: [
            (text, "" if len(those) == len(options) else runs(those)) for text, those in texts.items() if len(those) > 1
        ]
        for label, texts in found.items()
    }


def own_terms(letter: Letter, option: Option) -> dict[str, list[str]]:
    """Return, by label, the sentences that no other option has."""
    common = {label: {text for text, _ in texts} for label, texts in shared(letter).items()}
    return {label: [t for t in texts if t not in common[label]] for label, texts in terms_of(letter, option).items()}


def deal_in_common(letter: Letter, page: Page) -> None:
    """What several options include, exclude and warrant, for the agreement; how far extra work may go."""
    _in_common(letter, page, {label: t for label, t in shared(letter).items() if label not in _of_the_work(letter)})


def work_in_common(letter: Letter, page: Page) -> None:
    """What several options assume and leave, and their papers, for the page on the work itself."""
    _in_common(letter, page, {label: t for label, t in shared(letter).items() if label in _of_the_work(letter)})


def _of_the_work(letter: Letter) -> frozenset[str]:
    speak = letter.speak
    others = speak("Other costs, not in our price")
    return frozenset({speak("Limits of the repair"), speak("We assume"), speak("Permits and papers"), others})


def _in_common(letter: Letter, page: Page, kept: dict[str, list[tuple[str, str]]]) -> None:
    """A paragraph a label: the sentences of every option first, then those of some behind their letters."""
    if not any(kept.values()):
        return
    page.heading(letter.speak("Terms in common"), starts=True)
    for label, texts in kept.items():
        by: dict[str, list[str]] = {"": []} if any(not those for _, those in texts) else {}
        for text, those in texts:
            by.setdefault(those, []).append(text)
        if len(by) == 1 and "" not in by:
            run_in(page, f"{label} ({next(iter(by))})", [text for text, _ in texts])
            continue
        said = [
            f"{those}: {' '.join(map(ended, ts))}" if those else " ".join(map(ended, ts)) for those, ts in by.items()
        ]
        run_in(page, label, said)


def received(letter: Letter, option: Option) -> list[str]:
    """What the homeowner has in hand when all is done; only what is in the work."""
    speak = letter.speak
    some = {
        name: any(t.value(name) for t in option.takeoffs) for name in ("films_before", "films_after", "permits", *TESTS)
    }
    built = not only_prepares(option)
    papers = {
        speak("Camera video before"): some["films_before"],
        speak("Camera video after"): some["films_after"],
        speak("Water test reading"): any(some[name] for name in TESTS),
        speak("As-built sketch"): built,
        speak("Signed permit card"): some["permits"],
    }
    return [text for text, given in papers.items() if given]
