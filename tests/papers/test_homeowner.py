"""The homeowner's workbook: phone first, adds up, both languages, and nothing in it that may not leave the house."""

import io
import re
import zipfile
from dataclasses import replace
from decimal import Decimal

import pytest
from openpyxl import load_workbook
from PIL import Image

from estimator.model.likely_range import LikelyRange
from estimator.model.offer import Quote, Term
from estimator.model.say import Dollars, Say
from estimator.papers.homeowner import homeowner
from estimator.papers.line_items import LinesDoNotAdd
from estimator.sheets.verify import parts_not_allowed
from estimator.sheets.write import write
from tests.made_up.quote import example_quote

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
    warnings = (Say.of("CANARYwarning"),)
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
    from estimator.papers.office import workings

    data = write(workings(with_canaries(example_quote())))
    assert all(canary in texts(data) for canary in ("CANARYcost", "CANARYtask", "CANARYrule", "CANARYdriver"))
    assert {8823.71, 6617.29, 9911.13, 7319.37, 6271.31, 64.39} <= numbers(data)


@pytest.mark.parametrize("language", LANGUAGES)
def test_all_that_matters_stands_in_columns_a_to_c_and_the_first_sheet_is_narrow(language: str) -> None:
    data = write(homeowner(example_quote(), language))
    book = load_workbook(io.BytesIO(data))
    first = book.worksheets[0]
    assert first.max_column == 3 and sum(d.width for d in first.column_dimensions.values()) <= 75
    assert first.freeze_panes is None
    options = [s for s in book.worksheets if s.title.startswith(("Option ", "Opción ", "Agreement", "Contrato"))]
    assert len(options) == 3 and all(sheet.max_column == 3 for sheet in options)


def test_the_price_of_what_we_recommend_stands_within_the_first_screen() -> None:
    """A phone in portrait shows about 30 rows of 15 points."""
    data = write(homeowner(example_quote(), "en_US"))
    sheet = load_workbook(io.BytesIO(data), data_only=True).worksheets[0]
    [row, *_] = [c.row for r in sheet.iter_rows() for c in r if c.value == 16525]
    assert sum(sheet.row_dimensions[n].height or 15 for n in range(1, row + 1)) < 30 * 15


def test_each_option_has_its_price_and_the_most_it_can_be() -> None:
    data = write(homeowner(example_quote(), "en_US"))
    sheet = load_workbook(io.BytesIO(data), data_only=True).worksheets[0]
    shown = [tuple(c.value for c in row) for row in sheet.iter_rows()]
    assert [row[2] for row in shown if isinstance(row[2], int)] == [
        16525,
        16525,
        9875,
    ]  # recommended, then both options
    said = [str(row[0]) for row in shown]
    assert [text for text in said if "$18,055" in text] and [text for text in said if "$11,405" in text]


def test_the_line_items_add_up_to_the_total_and_the_total_is_a_live_sum() -> None:
    data = write(homeowner(example_quote(), "en_US"))
    values, formulas = (load_workbook(io.BytesIO(data), data_only=flag)["Option A"] for flag in (True, False))
    [total] = [row[2] for row in formulas.iter_rows() if row[0].value == "Total"]
    first, last = re.fullmatch(r"=ROUND\(SUM\(C(\d+):C(\d+)\),2\)", str(total.value)).groups()  # type: ignore[union-attr]
    amounts = [Decimal(str(values[f"C{row}"].value)) for row in range(int(first), int(last) + 1)]
    assert sum(amounts) == Decimal(16525) == Decimal(str(values[total.coordinate].value))
    how_much = [formulas[f"B{row}"].value for row in range(int(first), int(last) + 1)]
    assert "29 ft × $92" in how_much and None in how_much  # of a lump sum without a size nothing is counted


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
    assert "Neighbour's job on the same day" in words(data) and "-500" in words(data)


def test_tax_on_the_homeowner_s_side_stands_below_the_subtotal() -> None:
    quote = example_quote()
    option = quote.options[0]
    text = "sales tax {rate}% on materials sold for {amount}; ask a tax adviser if you are unsure"
    said = Say.of(text, rate="8.25", amount=Dollars(Decimal(1069)))
    price = replace(
        option.price,
        tax=Decimal("88.19"),
        tax_says=(said,),
        total=option.price.total + Decimal("88.19"),
    )
    text = words(write(homeowner(replace(quote, options=(replace(option, price=price),)), "en_US")))
    assert "Subtotal" in text and "sales tax 8.25% on materials sold for $1,069" in text and "16613.19" in text
    spanish = words(write(homeowner(replace(quote, options=(replace(option, price=price),)), "es_US")))
    assert "impuesto" in spanish and "sales tax" not in spanish


def test_the_agreement_carries_the_check_code_and_a_box_for_each_option() -> None:
    data = write(homeowner(example_quote(), "en_US"))
    sheet = load_workbook(io.BytesIO(data), data_only=True)["Agreement"]
    assert re.search(r"\b[A-Z2-7]{4}-[A-Z2-7]{4}\b", str(sheet.oddFooter.left.text))
    boxes = [row[0] for row in sheet.iter_rows() if row[2].value in (16525, 9875)]
    assert len(boxes) == 2 and all(box.value is None and not box.protection.locked for box in boxes)


def test_the_right_to_cancel_is_said_in_the_words_of_the_law_and_its_form_comes_twice() -> None:
    """16 CFR 429.1(a) and (b), from memory."""
    data = write(homeowner(example_quote(), "en_US"))
    said = words(data)
    assert "You, the buyer, may cancel this transaction at any time prior to midnight of the third business day" in said
    form = load_workbook(io.BytesIO(data), data_only=True)["Notice of Cancellation"]
    lines = [str(c.value) for row in form.iter_rows() for c in row if c.value]
    assert lines.count("I HEREBY CANCEL THIS TRANSACTION.") == 2
    assert sum("within THREE BUSINESS DAYS" in line for line in lines) == 2
    none = replace(example_quote(), cancel_business_days=None)
    assert "cancel" not in words(write(homeowner(none, "en_US"))).lower().replace("permits and cancellation", "")


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
    loose = replace(quote.options[0], fixed=False, not_fixed_because=(quote.found[2].text,))
    text = words(write(homeowner(replace(quote, options=(loose,)), "en_US")))
    assert "This price is not firm yet. Roots beyond the dip" in text
    assert "$18,055" not in text


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


def test_a_still_stands_beside_the_finding_it_shows() -> None:
    quote = example_quote()
    first = quote.found[0]
    hole = replace(first.findings[1], photo_file="hole.jpg")
    found = (replace(first, findings=(hole,)), *quote.found[1:])
    out = io.BytesIO()
    Image.new("RGB", (8, 6), "gray").save(out, "JPEG")
    sheets = homeowner(replace(quote, found=found), "en_US", {"hole.jpg": out.getvalue()}).sheets
    pipe = next(sheet for sheet in sheets if sheet.name == "Your pipe")
    [still] = [p for p in pipe.pictures if p.data == out.getvalue()]
    assert pipe.rows[still.row].cells[0].value == "a" and still.alt == "main line: rusted through"
    without = homeowner(replace(quote, found=found), "en_US").sheets
    assert len(next(s for s in without if s.name == "Your pipe").pictures) == len(pipe.pictures) - 1


def test_where_two_languages_go_out_one_is_named_as_the_one_that_counts() -> None:
    quote = example_quote()
    spanish_first = replace(quote, job=replace(quote.job, languages=("es_US", "en_US")))
    assert "the Spanish version applies" in words(write(homeowner(spanish_first, "en_US")))
    assert "vale la versión en español" in words(write(homeowner(spanish_first, "es_US")))
    alone = replace(quote, job=replace(quote.job, languages=("en_US",)))
    assert "two languages" not in words(write(homeowner(alone, "en_US")))


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
    for sheet in (book.worksheets[0], book["Agreement"]):
        [cell] = [c for row in sheet.iter_rows(max_row=8) for c in row if c.value == board.text_en]
        assert cell.font.sz * (sheet.page_setup.scale or 100) / 100 >= 12
    assert board.text_en not in words(write(homeowner(example_quote(), "en_US")))


@pytest.mark.parametrize(("language", "year"), [("en_US", "$210–$330"), ("es_US", "$210–$330")])
def test_options_are_compared_by_the_year_where_a_life_is_stated(language: str, year: str) -> None:
    quote = example_quote()
    lasting = replace(quote.options[0], cost_a_year=(Decimal("210.20"), Decimal("329.50")))
    assert year in words(write(homeowner(replace(quote, options=(lasting, *quote.options[1:])), language)))
    assert year not in words(write(homeowner(quote, language)))
