"""What every sheet of a quote shares: the reader's language, the firm's head, the foot of the page."""

from collections.abc import Iterable, Mapping

from msgspec import field

from estimator.model.frozen import Frozen
from estimator.model.gas import first_warnings
from estimator.model.offer import Extra, Quote, Term
from estimator.model.price import LineItem
from estimator.model.say import Say
from estimator.papers.check_code import check_code
from estimator.papers.page import Page
from estimator.sheets.book import Sheet
from estimator.wording.say import Speaker, capital, pick, say, speaker
from estimator.wording.typed_words import as_typed

LOGO, LOGO_HEIGHT_PX = "logo", 56


def not_real(quote: Quote, language: str) -> str:
    """Return what every paper of a quote says first where its house or its prices are invented; "" where they are not."""
    if quote.job.demo:
        return speaker(language)("Example only. The house and the prices are invented.")
    if quote.invented:
        return speaker(language)(
            "DEMO. The prices and papers are invented. This is not an offer and cannot be accepted."
        )
    return ""


class Letter(Frozen, dict=True):
    """A quote and the language it is written in."""

    quote: Quote
    language: str
    pictures: Mapping[str, bytes] = field(default_factory=dict)  # by the name in the notes; "logo" is the firm's

    @property
    def speak(self) -> Speaker:
        return speaker(self.language)

    def say(self, what: Say) -> str:
        return say(what, self.language)

    def all(self, what: Iterable[Say]) -> list[str]:
        """The sentences, each with a capital at its beginning."""
        return [capital(text) for text in map(self.say, what)]

    def typed(self, text: str) -> str:
        """What people typed, in the reader's language where its words are known, else in quotes."""
        return as_typed(text, self.language)

    def text(self, row: LineItem | Extra | Term) -> str:
        """The row's text in the reader's language."""
        return pick(self.language, row.text_en, row.text_es)

    @property
    def number(self) -> str:
        return f"{self.quote.job.number} r{self.quote.revision}"

    @property
    def footer(self) -> str:
        speak = self.speak
        check = speak("check code {code}", code=check_code(self.quote))
        example = f" · {speak('example only')}" if self.quote.job.demo else ""
        return f"{self.quote.firm.name} · {speak('quote {number}', number=self.number)} · {check}{example}"[:200]

    @property
    def page_words(self) -> tuple[str, str]:
        return self.speak("Page"), self.speak("of")

    def head(self, page: Page, *, reach: bool = True, who: bool = True) -> None:
        """The firm's name and license, and what the place wants on a first page; any sheet may be the first one read.

        `reach`: how to reach it, which the agreement says beside the signatures. `who`: its address and insurance, which
        the first page leaves to the agreement.
        """
        firm, speak = self.quote.firm, self.speak
        self.gas_first(page)
        if LOGO in self.pictures:
            page.picture(self.pictures[LOGO], firm.name, LOGO_HEIGHT_PX)
        page.line(firm.name, "firm")
        licence = [speak("License {number}", number=firm.licence)] if firm.licence else []
        insurance = [speak("Insurance {number}", number=firm.insurance)] if firm.insurance and who else []
        address, call = [firm.address] if who else [], [firm.phone, firm.email] if reach else []
        page.line(" · ".join(filter(None, [*address, *call, *licence, *insurance])), "quiet")
        for text in self.terms(self.quote.notices, "first page"):
            page.line(text, "first page")
        self.say_not_real(page)
        page.gap()

    def say_not_real(self, page: Page) -> None:
        """In a box, where the house or the prices are invented; on every page that somebody could sign or send back."""
        if text := not_real(self.quote, self.language):
            page.line(text, "box")

    def gas_first(self, page: Page) -> None:
        """Where there may be gas or a gas line is near, what comes before anything else."""
        for warning in first_warnings(self.quote.job):
            page.line(self.say(warning), "alarm")

    def not_an_offer(self, page: Page) -> None:
        """On the tabs after the first, where the prices are invented, that nobody can accept them; the foot tells whose quote it is."""
        if self.quote.invented and not self.quote.job.demo:
            page.line(not_real(self.quote, self.language), "box")

    def which_counts(self) -> list[str]:
        """Where the quote goes out in two languages, which of them counts: the first of the job."""
        languages = self.quote.job.languages
        if len(languages) < 2:
            return []
        first = {"en": self.speak("English"), "es": self.speak("Spanish")}[languages[0].split("_")[0]]
        return [
            self.speak("If the two languages of this quote differ, the {language} version applies.", language=first)
        ]

    def terms(self, terms: Iterable[Term], *kinds: str) -> list[str]:
        """The texts of these kinds, each once, in order."""
        return list(dict.fromkeys(self.text(t) for t in terms if t.kind in kinds))

    def close(self, page: Page, *, repeat: tuple[int, int] | None = None) -> Sheet:
        """The page as a protected sheet with the quote's footer, printed at 97 percent at the least: no type under 9 points."""
        return page.sheet(footer=self.footer, page_words=self.page_words, smallest=97, repeat=repeat, protect=True)
