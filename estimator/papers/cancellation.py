"""The right to cancel a sale made at the buyer's home, in the words of the law, and its form, twice.

Source: 16 CFR 429.1(a) for the sentence and 429.1(b) for the form, from memory; a state may ask for other words and days, so
the firm's lawyer checks both. The Spanish follows 429.1(a): the language of the sale.
"""

from estimator.model.say import Say
from estimator.papers.letter import Letter
from estimator.papers.page import Page
from estimator.sheets.book import Cell, Sheet

WIDTHS = (31.0, 31.0, 32.0)
ORDINALS: dict[int, Say] = {
    1: Say.of("first"), 2: Say.of("second"), 3: Say.of("third"), 4: Say.of("fourth"), 5: Say.of("fifth"),
    6: Say.of("sixth"), 7: Say.of("seventh"), 10: Say.of("tenth"), 15: Say.of("fifteenth"),
}  # fmt: skip
COUNTS: dict[int, Say] = {
    1: Say.of("ONE"), 2: Say.of("TWO"), 3: Say.of("THREE"), 4: Say.of("FOUR"), 5: Say.of("FIVE"),
    6: Say.of("SIX"), 7: Say.of("SEVEN"), 10: Say.of("TEN"), 15: Say.of("FIFTEEN"),
}  # fmt: skip
FORM: tuple[Say, ...] = (
    Say.of("You may CANCEL this transaction, without any Penalty or Obligation, within {count} BUSINESS DAYS from the above date."),
    Say.of("If you cancel, any property traded in, any payments made by you under the contract or sale, and any negotiable instrument executed by you will be returned within TEN BUSINESS DAYS following receipt by the seller of your cancellation notice, and any security interest arising out of the transaction will be cancelled."),
    Say.of("If you cancel, you must make available to the seller at your residence, in substantially as good condition as when received, any goods delivered to you under this contract or sale, or you may, if you wish, comply with the instructions of the seller regarding the return shipment of the goods at the seller's expense and risk."),
    Say.of("If you do make the goods available to the seller and the seller does not pick them up within 20 days of the date of your Notice of Cancellation, you may retain or dispose of the goods without any further obligation. If you fail to make the goods available to the seller, or if you agree to return the goods to the seller and fail to do so, then you remain liable for performance of all obligations under the contract."),
    Say.of("To cancel this transaction, mail or deliver a signed and dated copy of this Cancellation Notice or any other written notice, or send a telegram, to {firm}, at {address}, NOT LATER THAN MIDNIGHT OF ____________________ (date)."),
)  # fmt: skip
"""The law's own words."""
COPIES = 2


def right_to_cancel(letter: Letter, page: Page) -> None:
    """The sentence beside the signatures, in bold of at least 10 points; nothing where the place has no such right."""
    days = letter.quote.cancel_business_days
    if not days:
        return
    page.line(
        letter.speak(
            "You, the buyer, may cancel this transaction at any time prior to midnight of the {ordinal} business day after the date of this transaction. See the attached notice of cancellation form for an explanation of this right.",
            ordinal=ORDINALS.get(days, str(days)),
        ),
        "cancel",
        starts=True,
    )


def cancellation_sheets(letter: Letter) -> tuple[Sheet, ...]:
    """The form on one page, twice: one to keep, one to send; in bold of at least 10 points, as 429.1(b) asks (from memory)."""
    speak, quote = letter.speak, letter.quote
    days = quote.cancel_business_days
    if not days or not any(option.fixed for option in quote.options):
        return ()
    page = Page(speak("Notice of Cancellation"), WIDTHS)
    letter.say_not_real(page)
    words = {"count": COUNTS.get(days, str(days)), "firm": quote.firm.name, "address": quote.firm.address}
    for copy in range(COPIES):
        page.line(speak("Notice of Cancellation"), "title", starts=copy > 0)
        page.add(Cell("", "write", open=True), Cell(speak("(date of the transaction)"), "quiet", 2))
        for text in FORM:
            page.line(speak(text.text, **{k: v for k, v in words.items() if "{" + k + "}" in text.text}), "law")
        page.line(speak("I HEREBY CANCEL THIS TRANSACTION."), "law")
        page.add(Cell("", "write", open=True), Cell("", "write", open=True), Cell("", "body"), height_pt=24.0)
        page.add(Cell(speak("(Date)"), "quiet"), Cell(speak("(Buyer's signature)"), "quiet", 2))
        page.gap(4)
    page.line(
        speak("Form of 16 CFR 429.1(b). State law may require another form."),
        "quiet",
    )
    return (letter.close(page),)
