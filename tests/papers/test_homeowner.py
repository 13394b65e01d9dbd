"""The homeowner's workbook: phone first, adds up, both languages, and nothing in it that may not leave the house."""

import io
import re
import zipfile
from dataclasses import replace
from decimal import Decimal

import pytest
from openpyxl import load_workbook

from estimator.model.likely_range import LikelyRange
from estimator.model.offer import Quote, Term
from estimator.model.say import Dollars, Say
from estimator.papers import option_words
from estimator.papers.example import example_quote
from estimator.papers.homeowner import homeowner
from estimator.papers.letter import Letter
from estimator.papers.option_sheet import LinesDoNotAdd
from estimator.sheets.verify import parts_not_allowed
from estimator.sheets.write import write

LANGUAGES = ("en_US", "es_US")


def texts(data: bytes) -> str:
    """Every part of the file, unzipped, one after another."""
    with zipfile.ZipFile(io.BytesIO(data)) as archive:
        return "\n".join(archive.read(name).decode("utf-8", "replace") for name in archive.namelist())


def numbers(data: bytes) -> set[float]:
    """Every number that stands in a cell, a chart or a text of the file, whatever way it is written."""
    return {round(float(n), 4) for n in re.findall(r"(?<![\w.])-?\d+(?:\.\d+)?", texts(data))}


ODD_AMOUNTS = {7319.37, 8823.71, 733.19, 9911.13, 6617.29, 5529.83, 13.37, 0.1337, 4417.79, 0.4177, 41.77}
ODD_AMOUNTS |= {6271.31, 6272.33, 6273.35, 6274.39, 61.31, 62.33, 63.35, 64.39, 27.17, 19.73, 43.19}


def odd_range() -> LikelyRange:
    """A range of odd amounts, for the office alone."""
    return LikelyRange(
        seed=5557771, draws=7331, cost={10: 6271.31, 50: 6272.33, 80: 6273.35, 90: 6274.39},
        days={10: 61.31, 50: 62.33, 80: 63.35, 90: 64.39}, mean_cost=6272.33, drivers=(("CANARYdriver", 100.0),),
        confidence_percent=80.0, contingency_needed_percent=27.17, contingency_percent=19.73, held_chance_percent=43.19,
        curve=((10, 6271.31, 61.31), (50, 6272.33, 62.33), (80, 6273.35, 63.35), (90, 6274.39, 64.39)),
    )  # fmt: skip


def words(data: bytes) -> str:
    book = load_workbook(io.BytesIO(data), data_only=True)
    cells = (c.value for sheet in book for row in sheet.iter_rows() for c in row if c.value is not None)
    return "\n".join(map(str, cells))


def with_canaries(quote: Quote) -> Quote:
    """The same quote with odd words and odd amounts wherever the inside of the firm is kept."""
    options = []
    for option in quote.options:
        price = option.price
        costs = tuple(
            replace(
                c,
                text="CANARYcost",
                ref="CANARYref",
                cell="CANARYcell",
                formula="CANARYform",
                rate=Decimal("7319.37"),
                amount=Decimal("8823.71"),
            )
            for c in price.costs
        )
        crews = tuple(
            replace(c, crew="CANARYcrew", rate=Decimal("7319.37"), amount=Decimal("8823.71"), work_hours=733.19)
            for c in price.crews
        )
        tasks = tuple(
            replace(t, task="CANARYtask", factors=("CANARYfactor",), hours=733.19, cell="CANARYcell")
            for t in price.tasks
        )
        steps = tuple(
            replace(s, text="CANARYstep", formula="CANARYform", amount=Decimal("9911.13")) for s in price.steps
        )
        lines = tuple(replace(line, cost_share=Decimal("6617.29"), work_item="CANARYitem") for line in price.lines)
        hidden = replace(price, costs=costs, crews=crews, tasks=tasks, steps=steps, lines=lines, direct=Decimal("5529.83"),
                         contingency_percent=Decimal("13.37"), before_rounding=Decimal("4417.79"), margin=Decimal("0.4177"))  # fmt: skip
        add_ons = tuple(
            replace(a, work_item="CANARYitem", tasks=tasks, costs=costs, steps=steps, cost=Decimal("6617.29"))
            for a in option.add_ons
        )
        options.append(replace(option, price=hidden, likely_range=odd_range(), add_ons=add_ons))
    blocked = tuple(
        replace(v, rule="CANARYrule", estimator=replace(v.estimator, text="CANARYwhy", words=())) for v in quote.blocked
    )
    job = replace(
        quote.job,
        notes=("CANARYnote",),
        customer=replace(quote.job.customer, insurer="CANARYinsurer", policy="CANARYpolicy"),
    )
    warnings = (replace(quote.found[0], text="CANARYwarning", words=()),)
    return replace(
        quote,
        options=tuple(options),
        blocked=blocked,
        job=job,
        tables_fingerprint="CANARYprint",
        paper_warnings=warnings,
    )


@pytest.mark.parametrize("language", LANGUAGES)
def test_nothing_of_the_inside_leaks(language: str) -> None:
    data = write(homeowner(with_canaries(example_quote()), language))
    assert "CANARY" not in texts(data)
    assert numbers(data).isdisjoint(ODD_AMOUNTS)
    assert parts_not_allowed(data) == []


def test_the_canaries_would_be_found() -> None:
    from estimator.papers.office import office

    data = write(office(with_canaries(example_quote())))
    assert all(canary in texts(data) for canary in ("CANARYcost", "CANARYtask", "CANARYrule", "CANARYdriver"))
    assert {8823.71, 6617.29, 9911.13, 7319.37, 6271.31, 64.39} <= numbers(data)


@pytest.mark.parametrize("language", LANGUAGES)
def test_the_first_sheet_is_two_columns_and_forty_characters_wide_without_frozen_panes(language: str) -> None:
    data = write(homeowner(example_quote(), language))
    sheet = load_workbook(io.BytesIO(data)).worksheets[0]
    widths = [d.width for d in sheet.column_dimensions.values()]
    assert sheet.max_column == 2
    assert sum(widths) <= 42
    assert sheet.freeze_panes is None


def test_options_stand_one_under_another_with_price_and_the_most_it_can_be() -> None:
    data = write(homeowner(example_quote(), "en_US"))
    sheet = load_workbook(io.BytesIO(data), data_only=True).worksheets[0]
    shown = [tuple(c.value for c in row) for row in sheet.iter_rows()]
    prices = [value for label, value in shown if label == "Price"]
    most = [value for label, value in shown if label == "At most"]
    assert prices == [16525, 9875]
    assert most == [f"It cannot go above {m} unless you sign a change." for m in ("$18,055", "$11,405")]


def test_measured_amounts_are_live_lump_sums_stand_and_all_add_up_to_the_total() -> None:
    data = write(homeowner(example_quote(), "en_US"))
    values, formulas = (load_workbook(io.BytesIO(data), data_only=flag)["Option A"] for flag in (True, False))
    rows = [row for row in formulas.iter_rows() if re.fullmatch(r"A\d", str(row[0].value))]
    live = [row for row in rows if re.fullmatch(r"=ROUND\(D\d+\*E\d+,2\)", str(row[5].value))]
    lump = [row for row in rows if row[3].value == "one price"]
    assert len(live) >= 1 <= len(lump)
    assert len(live) + len(lump) == len(rows)
    assert sum(Decimal(str(values[row[5].coordinate].value)) for row in rows) == Decimal(16525)


def test_lines_that_do_not_add_up_are_never_printed() -> None:
    quote = example_quote()
    option = quote.options[0]
    wrong = replace(option, price=replace(option.price, total=option.price.total + 1))
    with pytest.raises(LinesDoNotAdd):
        homeowner(replace(quote, options=(wrong,)), "en_US")


def test_a_discount_is_a_line_of_its_own_and_the_sum_still_holds() -> None:
    quote = example_quote()
    option = quote.options[0]
    off = replace(
        option.price.lines[0],
        id="A7",
        work_class="",
        price_class="discount",
        unit_price=Decimal(-500),
        amount=Decimal(-500),
        text_en="Neighbour's job on the same day",
    )
    price = replace(option.price, lines=(*option.price.lines, off), total=option.price.total - 500)
    data = write(homeowner(replace(quote, options=(replace(option, price=price),)), "en_US"))
    assert "Taken off" in words(data)


def test_tax_on_the_homeowner_s_side_stands_below_the_subtotal() -> None:
    quote = example_quote()
    option = quote.options[0]
    text = "sales tax {rate} % on materials sold for {amount}; ask a tax adviser if you are unsure"
    said = Say.of(text, rate="8.25", amount=Dollars(Decimal(1069)))
    price = replace(
        option.price,
        tax=Decimal("88.19"),
        tax_says=(said,),
        total=option.price.total + Decimal("88.19"),
    )
    text = words(write(homeowner(replace(quote, options=(replace(option, price=price),)), "en_US")))
    assert "Subtotal" in text and "sales tax 8.25 % on materials sold for $1,069" in text and "16613.19" in text
    spanish = words(write(homeowner(replace(quote, options=(replace(option, price=price),)), "es_US")))
    assert "impuesto" in spanish and "sales tax" not in spanish


def test_the_agreement_says_the_total_in_words_and_the_check_code() -> None:
    quote = example_quote()
    data = write(homeowner(quote, "en_US"))
    sheet = load_workbook(io.BytesIO(data), data_only=True)["Agreement A"]
    text = "\n".join(str(c.value) for row in sheet.iter_rows() for c in row if c.value is not None)
    assert "Sixteen thousand five hundred twenty-five and 00/100 dollars" in text
    assert re.search(r"\b[A-Z2-7]{4}-[A-Z2-7]{4}\b", text)


def test_spanish_papers_say_nothing_of_the_program_s_own_in_english() -> None:
    from estimator.wording.say import catalog
    from estimator.wording.sweep import texts as all_texts

    spanish = words(write(homeowner(example_quote(), "es_US")))
    same = {t for t in all_texts() if catalog("es_US").gettext(t) == t}
    english = [
        t
        for t, room in all_texts().items()
        if room.startswith("papers/") and "{" not in t and t not in same and len(t) > 12
    ]
    assert [t for t in english if t in spanish] == []


def test_ways_not_offered_say_why() -> None:
    assert "there is nothing to line" in words(write(homeowner(example_quote(), "en_US")))


def test_a_price_that_is_not_fixed_says_so_in_place_of_the_most() -> None:
    quote = example_quote()
    loose = replace(quote.options[0], fixed=False, not_fixed_because=(quote.found[2],))
    text = words(write(homeowner(replace(quote, options=(loose,)), "en_US")))
    assert "Not a fixed price yet. Roots beyond the dip" in text
    assert "cannot go above $18,055 unless you sign a change." not in text


@pytest.mark.parametrize("name", ["=2+5", "+1 Elm", "@home", "-Ana", "🏠 Ana", "אנה", "A & B <c>", "x" * 300])
def test_odd_names_are_shown_as_typed(name: str) -> None:
    quote = example_quote()
    odd = replace(quote, job=replace(quote.job, customer=replace(quote.job.customer, name=name, site=name)))
    assert name in words(write(homeowner(odd, "en_US")))


@pytest.mark.parametrize("count", [1, 12])
def test_one_option_and_twelve_both_fit(count: int) -> None:
    quote = example_quote()
    letters = "ABCDEFGHIJKL"[:count]
    options = tuple(replace(quote.options[i % 2], letter=letter) for i, letter in enumerate(letters))
    assert write(homeowner(replace(quote, options=options), "en_US"))


def test_a_hundred_and_fifty_lines_fit() -> None:
    quote = example_quote()
    option = quote.options[0]
    lines = tuple(
        replace(option.price.lines[0], id=f"A{i}", work_class="reach", unit_price=Decimal(10), amount=Decimal(10))
        for i in range(1, 151)
    )
    big = replace(option, price=replace(option.price, lines=lines, total=Decimal(1500)), payments=())
    assert write(homeowner(replace(quote, options=(big,)), "en_US"))


def test_a_picture_named_in_the_notes_is_shown_with_its_place_in_plain_words() -> None:
    quote = example_quote()
    line = quote.job.lines[0]
    hole = replace(line.findings[1], photo_file="hole.jpg")
    job = replace(quote.job, lines=(replace(line, findings=(hole,)),))
    frame = (
        b"\xff\xd8\xff\xc0\x00\x0b\x08\x00\x06\x00\x08\x01\x01\x11\x00\xff\xda\x00\x08\x01\x01\x00\x00\x3f\x00"
        + b"data" * 20
        + b"\xff\xd9"
    )
    with_picture = homeowner(replace(quote, job=job), "en_US", {"hole.jpg": frame})
    assert "A hole in the pipe, main line, at 14 ft 5 in" in words(write(with_picture))
    assert "Pictures" not in [sheet.name for sheet in homeowner(replace(quote, job=job), "en_US").sheets]


def test_where_two_languages_go_out_one_is_named_as_the_one_that_counts() -> None:
    quote = example_quote()
    spanish_first = replace(quote, job=replace(quote.job, languages=("es_US", "en_US")))
    assert "the one in Spanish counts" in words(write(homeowner(spanish_first, "en_US")))
    assert "vale la versión en español" in words(write(homeowner(spanish_first, "es_US")))
    alone = replace(quote, job=replace(quote.job, languages=("en_US",)))
    assert "two languages" not in words(write(homeowner(alone, "en_US")))


@pytest.mark.parametrize(("language", "ask", "year"), [("en_US", "ask its building department, a tax adviser or a lawyer", "$210 to $330 a year"), ("es_US", "pregunte al departamento de construcción", "de $210 a $330 al año")])  # fmt: skip
def test_the_side_by_side_compares_by_the_year_and_says_whom_to_ask(language: str, ask: str, year: str) -> None:
    quote = example_quote()
    lasting = replace(quote.options[0], cost_a_year=(Decimal("210.20"), Decimal("329.50")))
    text = words(write(homeowner(replace(quote, options=(lasting, *quote.options[1:])), language)))
    assert year in text
    assert text.count(ask) >= 2  # beside the options and on the agreement
    assert year not in words(write(homeowner(quote, language)))


def test_what_is_missing_from_a_price_stands_in_red_on_the_office_s_sheet_and_on_no_other() -> None:
    from estimator.papers.office import office

    quote = example_quote()
    warning = Say.of("no hours for “{work}” in {method}: look for what is missing", work="put back", method="tunnel")
    options = tuple(replace(o, price=replace(o.price, warnings=(warning,))) for o in quote.options)
    data = write(office(replace(quote, options=options, paper_warnings=(warning,))))
    sheet = load_workbook(io.BytesIO(data)).worksheets[0]
    said = [c for row in sheet.iter_rows() for c in row if "no hours for" in str(c.value)]
    assert [c.value for c in said] == ["• A, B: no hours for “put back” in tunnel: look for what is missing"]
    assert said[0].font.color.rgb == "FFA61B1B"
    assert "no hours for" not in words(write(homeowner(replace(quote, options=options), "en_US")))


def test_a_long_reason_goes_on_in_further_rows_and_loses_no_word() -> None:
    quote = example_quote()
    reason = " ".join(f"word{i}" for i in range(600))
    long = replace(quote, job=replace(quote.job, wishes=replace(quote.job.wishes, because=reason)))
    shown = words(write(homeowner(long, "en_US"))).split()
    assert [w for w in shown if w.startswith("word")] == reason.split()


def test_what_a_place_wants_on_the_first_page_stands_there_in_letters_of_twelve_points() -> None:
    """22 Texas Administrative Code 367.10(b), as an example of such a place: first page of a proposal or contract, 12-point."""
    board = Term(id="board", kind="first page", text_en="Regulated by the board.", text_es="Regulado por la junta.")
    data = write(homeowner(replace(example_quote(), notices=(board,)), "en_US"))
    book = load_workbook(io.BytesIO(data))
    for sheet in (book.worksheets[0], *(s for s in book.worksheets if s.title.startswith("Agreement"))):
        [cell] = [c for row in sheet.iter_rows(max_row=8) for c in row if c.value == board.text_en]
        assert cell.font.sz * (sheet.page_setup.scale or 100) / 100 >= 12
    assert board.text_en not in words(write(homeowner(example_quote(), "en_US")))


def test_a_phone_shows_every_row_but_the_papers_needed() -> None:
    quote = example_quote()
    letter = Letter(quote, "en_US")
    option = quote.options[0]
    shown, every = option_words.rows_on_a_phone(letter, option), option_words.rows(letter, option)
    assert [row for row in every if row not in shown] == [option_words.papers_needed(letter, option)]
    assert ("Main risk", letter.say(option.main_risk)) in shown
