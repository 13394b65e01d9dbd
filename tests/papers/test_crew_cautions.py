"""No caution is lost on the way to the crew: it stands in the crew's book word for word, or by what is listed for it.

The hazards are those of 29 CFR 1926 Subpart P (excavations), Subpart AA (confined spaces), 1926.800 (underground) and
1926.1153 (silica), as far as the rules and the takeoff speak of them; that each is carried to the crew is asked of whole jobs.
"""

import ast
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest

import estimator.scopes
import estimator.takeoff
from estimator.fieldnotes import read_job
from estimator.model.judgement import Effect, Verdict
from estimator.model.offer import Option, Quote
from estimator.model.problem import CannotGoOn
from estimator.model.say import Feet, Say
from estimator.model.work import all_repairs
from estimator.papers.crew import crew
from estimator.papers.crew_boxes import DOCUMENTS, SHIFT, Box, boxes
from estimator.papers.hazards import hazards
from estimator.papers.hazards_of_a_dig import of_each_dig
from estimator.papers.letter import Letter
from estimator.papers.rules_for_the_crew import FOR_THE_CREW, FOR_THE_OFFICE, MONEY
from estimator.papers.said_elsewhere import ELSEWHERE
from estimator.pipeline import run
from estimator.tables.read import demo_folder, read_tables
from estimator.takeoff.quantities import FACTS, QUANTITIES
from estimator.wording.say import say
from estimator.works.methods import names
from tests.made_up.quote import example_quote
from tests.made_up.stretch import demo_tables

ROOT = Path(__file__).parents[2]
JOBS = (ROOT / "estimator" / "demo" / "job.toml", *sorted((ROOT / "tests" / "jobs").glob("*/job.toml")))
UNITS = {name: unit for name, (unit, _) in QUANTITIES.items()}
TOLD = ("caution", "adds work", "requires first", "until approved", "no fixed price")


def quote_of(path: Path) -> Quote | None:
    """None where the job cannot be offered anything. Somebody is named, so that no notice stands in a sheet's place."""
    job = read_job(path).job
    assert job is not None
    job = replace(job, site=replace(job.site, competent_person="Teo Marlow"))
    tables = read_tables(demo_folder(), job.day, UNITS, FACTS, (*names(), "job")).tables
    assert tables is not None
    try:
        return run(job, tables, job.day).quote
    except CannotGoOn:
        return None


def cautions(option: Option) -> Iterator[Say]:
    """All that the rules and the takeoff say to those who do the work."""
    found = [v for r in all_repairs(option.scope.repairs) for v in r.verdicts]
    found += [v for takeoff in option.takeoffs for v in takeoff.finds]
    yield from (v.estimator for v in found if v.effect.value in TOLD and not v.overruled)
    yield from (caution for takeoff in option.takeoffs for caution in takeoff.cautions)


def in_other_words(caution: Say) -> tuple[str, ...]:
    """What is listed for it, in English; nothing where it must stand word for word."""
    if caution.text in FOR_THE_CREW:
        return (say(replace(caution, text=FOR_THE_CREW[caution.text].text), "en_US"),)
    return ELSEWHERE.get(say(caution, "en_US"), ())


def lost(quote: Quote, option: Option) -> list[str]:
    sheets = crew(quote, letter=option.letter).sheets
    page = "\n".join(str(c.value) for sheet in sheets for row in sheet.rows for c in row.cells).lower()
    ids = {t.id for t in option.terms if t.kind == "crew caution"}
    page += "\n".join(box.what.text.lower() for box in (*DOCUMENTS, *SHIFT) if box.said_by & ids)
    out = [t.text_en for t in option.terms if t.kind == "crew caution" and t.text_en.lower() not in page]
    for caution in cautions(option):
        text = say(caution, "en_US")
        others = in_other_words(caution)
        told = all(part in page for part in parts(text)) or (
            others and all(o.lower().rstrip(".") in page for o in others)
        )
        if not told and caution.text not in FOR_THE_OFFICE:
            out.append(text)
    return out


def parts(text: str) -> list[str]:
    """What is said of one dig: its name with its depth once, and each thing that is asked for; other texts are one part."""
    head, found, rest = text.lower().rstrip(".").partition(" with tolerance")
    return [head + found, rest.lstrip(":, ")] if found else [head]


@pytest.mark.parametrize("path", JOBS, ids=lambda path: path.parent.name)
def test_every_caution_of_a_whole_job_is_in_the_crews_book(path: Path) -> None:
    quote = quote_of(path)
    for option in quote.options if quote else ():
        assert lost(quote, option) == []


def test_the_jobs_asked_are_many() -> None:
    offered = [quote for quote in map(quote_of, JOBS[:12]) if quote]
    assert sum(len(list(cautions(option))) for quote in offered for option in quote.options) > 200


def told_to_the_crew(rule: str, caution: Say) -> list[str]:
    """The safety page's sentences of the example's first option where one rule more speaks."""
    quote = example_quote()
    option = quote.options[0]
    first, *rest = option.takeoffs
    repair = first.repair
    said = Verdict(
        rule=rule,
        method=repair.method,
        line=repair.line,
        stretch=repair.stretch,
        effect=Effect.CAUTION,
        homeowner=Say.of("-"),
        estimator=caution,
    )
    with_it = replace(option, takeoffs=(replace(first, finds=(*first.finds, said)), *rest))
    letter = Letter(quote, "en_US")
    return [*(text for texts in hazards(letter, with_it).values() for text in texts), *of_each_dig(letter, with_it)]


@pytest.mark.parametrize(
    ("rule", "text", "words"),
    [
        ("locate-utilities", "Private lines cross: {what}; located by the firm.", {"what": "irrigation, propane"}),
        ("lead-paint", "{area} sq ft of paint in a house built before 1978: lead-safe certified firm and pamphlet (40 CFR 745.83).", {"area": "40"}),
        ("asbestos-before-cutting", "Later mastic with asbestos happens: test before cutting, any year, unless proven.", {}),
    ],
)  # fmt: skip
def test_what_was_found_on_this_house_stays_beside_the_boxes(rule: str, text: str, words: dict[str, str]) -> None:
    caution = Say.of(text, **words)
    assert say(caution, "en_US") in told_to_the_crew(rule, caution)


def test_a_low_crawl_space_is_a_hazard_and_no_surcharge() -> None:
    money = next(text for text in FOR_THE_CREW if text.startswith("Crawl space"))
    told = told_to_the_crew("crawl-space-is-tight", Say.of(money))
    assert FOR_THE_CREW[money].text in told
    assert not any("surcharge" in text for text in told)


def test_a_caution_comes_back_where_a_firm_words_its_own_sentence_anew() -> None:
    quote = example_quote()
    option = quote.options[0]
    first, *rest = option.takeoffs
    back = Say.of("spoil, tools and machines stay at least {back} from the edge", back=Feet(2.0))
    listed = ELSEWHERE[say(back, "en_US")][0]
    row = next(row for row in demo_tables().terms if row.text_en == listed)
    term = replace(option.terms[0], id="crw-spoil", kind="crew caution", text_en=row.text_en)
    letter = Letter(quote, "en_US")

    def safety(said: Say, own: str) -> list[str]:
        takeoffs = (replace(first, cautions=(said,)), *rest)
        mine = replace(option, takeoffs=takeoffs, terms=(replace(term, text_en=own),))
        return [text for texts in hazards(letter, mine).values() for text in texts]

    words = say(back, "en_US")[1:]
    assert not any(words in text for text in safety(back, listed))
    assert any(words in text for text in safety(back, "Keep the edge clear"))
    farther = replace(back, words=(("back", Feet(3.0)),))
    assert any(say(farther, "en_US")[1:] in text for text in safety(farther, listed))


def test_what_is_listed_is_really_said_by_the_tables_and_the_boxes() -> None:
    firm = {row.text_en for row in demo_tables().terms if row.kind == "crew caution"} | {
        box.what.text for box in (*DOCUMENTS, *SHIFT)
    }
    files = Path(estimator.scopes.__file__).parent.rglob("*.py")
    rules = {n.value for f in files for n in ast.walk(ast.parse(f.read_text("utf-8"))) if isinstance(n, ast.Constant)}
    listed = {text for others in ELSEWHERE.values() for text in others}
    assert listed <= firm | rules
    assert not listed & set(ELSEWHERE)  # else two that name each other would both be left out


@pytest.mark.parametrize("box", [box for box in SHIFT if box.said_by], ids=lambda box: min(box.said_by))
def test_a_box_is_not_printed_beside_the_firms_caution_that_says_the_same(box: Box) -> None:
    quote = example_quote()
    option = quote.options[0]
    here = replace(box, when=lambda quote, option: True)
    assert boxes(quote, replace(option, terms=()), (here,)) == [box.what]
    for by in box.said_by:
        term = replace(option.terms[0], id=by, kind="crew caution")
        assert boxes(quote, replace(option, terms=(term,)), (here,)) == []
        assert by in {row.id for row in demo_tables().terms}


FEDERAL = ("Subpart P", "1926.800", "AA", "rescue plan", "1926.1153", "1926.651(i)", "40 CFR 745", "APF 10", "811")


@pytest.mark.parametrize("word", FEDERAL)
def test_no_rule_or_number_of_a_caution_is_lost_in_its_other_words(word: str) -> None:
    for caution, others in ELSEWHERE.items():
        assert word not in caution or any(word.lower() in other.lower() for other in others), caution


def said_by_rules() -> Iterator[str]:
    for package in (estimator.scopes, estimator.takeoff):
        for file in Path(package.__path__[0]).rglob("*.py"):
            for call in (n for n in ast.walk(ast.parse(file.read_text("utf-8"))) if isinstance(n, ast.Call)):
                for given in (k.value for k in call.keywords if k.arg == "estimator"):
                    yield from (
                        c.value for c in ast.walk(given) if isinstance(c, ast.Constant) and isinstance(c.value, str)
                    )


def test_a_sentence_about_money_is_listed_with_its_half_for_the_crew_or_for_the_office_alone() -> None:
    said = set(said_by_rules())
    about_money = {text for text in said if any(word in text.lower() for word in MONEY)}
    assert about_money <= set(FOR_THE_CREW) | FOR_THE_OFFICE
    assert set(FOR_THE_CREW) | FOR_THE_OFFICE <= said


def test_the_crews_half_speaks_of_no_money() -> None:
    assert not [
        half.text
        for half in FOR_THE_CREW.values()
        if any(word in half.text.lower() for word in MONEY if word != "allowance")
    ]
