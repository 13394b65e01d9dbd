"""Findings, stretches, lengths, money, days and sentences in, the words a person reads in a terminal out, by language."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from estimator.cli.views import vocabulary
from estimator.model.line import Finding, Mark
from estimator.model.say import Say
from estimator.model.stretch import Stretch
from estimator.wording import numbers
from estimator.wording.say import capital, pick, say, spoken

ENGLISH = "en_US"


@dataclass(slots=True)
class Words:
    """Everything a terminal says, in one reader's language."""

    language: str = ENGLISH

    def speak(self, text: str, **words: object) -> str:
        """The text with its gaps filled."""
        return say(Say.of(text, **words), self.language)

    def say(self, said: Say) -> str:
        return say(said, self.language)

    def sentence(self, said: Say | str) -> str:
        """A sentence of the program with a capital; text is taken as said already."""
        return capital((said if isinstance(said, str) else say(said, self.language)).strip())

    def spoken(self, text: str) -> str:
        """A text without gaps where the catalog has it; else as it stands."""
        return spoken(text, self.language)

    def pick(self, english: str, spanish: str) -> str:
        """The text of a table row in the reader's language."""
        return pick(self.language, english, spanish)

    # ── words of the notes ────────────────────────────────────────────────────────────────────

    def term(self, word: str) -> str:
        return vocabulary.term(word, self.language)

    def terms(self, words: Iterable[str]) -> str:
        """`tunnel, reline`."""
        return ", ".join(map(self.term, words))

    def formula(self, text: str) -> str:
        return vocabulary.formula(text, self.language)

    def unit(self, word: str) -> str:
        return vocabulary.unit(word, self.language)

    def finding_term(self, kind: str) -> str:
        return vocabulary.finding_term(kind, self.language)

    def finding(self, found: Finding) -> str:
        """`hole 3 in, soil seen, at 5–7 o'clock, photo 3`."""
        head = " ".join(part for part in (self.finding_term(found.kind), *self._amounts(found)) if part)
        parts = [head, *map(self.term, found.signs)]
        if found.direction:
            parts.append(self.term(found.direction))
        if found.clock:
            a, b = found.clock
            parts.append(self.speak("at {hour} o'clock", hour=str(a) if a == b else f"{a}–{b}"))
        if found.grade != "seen":
            parts.append(self.term(found.grade))
        if found.after_cleaning:
            parts.append(self.speak("after cleaning"))
        if found.photo is not None:
            parts.append(self.speak("photo {number}", number=found.photo))
        return ", ".join(parts)

    def _amounts(self, found: Finding) -> Iterable[str]:
        if found.percent:
            low, high = map(self.number, found.percent)
            yield f"{high} %" if low == high else f"{low}–{high} %"
        if found.size_in is not None:
            yield self.inches(found.size_in)
        if found.count is not None:
            yield f"({found.count})"
        if found.grade_word:
            yield self.term(found.grade_word)

    def mark(self, seen: Mark) -> str:
        """`branch 3 in left, live, hall bath`."""
        size = self.inches(seen.size_in) if seen.size_in else ""
        head = [self.term(seen.word), self.term(seen.choice or ""), size, self.term(seen.side or "")]
        parts = [" ".join(part for part in head if part), self.term(seen.live or ""), self.term(seen.name or "")]
        if seen.live and seen.proven is False:
            parts.insert(2, self.speak("not proven"))
        return ", ".join(part for part in parts if part)

    # ── figures ───────────────────────────────────────────────────────────────────────────────

    def number(self, value: float | Decimal, places: int = 1) -> str:
        """Rounded to so many places, noughts at the end left off, marks as the language sets them.

        >>> words = Words()
        >>> words.number(12.50), words.number(3.0), words.number(-0.04), words.number(29.1667, 3)
        ('12.5', '3', '0', '29.167')
        >>> Words("es_US").number(1234.5)
        '1,234.5'
        """
        text = numbers.number(value, self.language, places)
        return "0" if text == "-0" else text

    def feet(self, value: float) -> str:
        """`12.5 ft`, without a nought too many."""
        shown, (word, _) = self.number(value), numbers.FEET[numbers.family(self.language)]
        return f"{shown} {'pie' if shown == '1' and word == 'pies' else word}"

    def inches(self, size_in: float) -> str:
        """`1.625 in`."""
        return f"{self.number(size_in, 3)} {numbers.FEET[numbers.family(self.language)][1]}"

    def at(self, stretch: Stretch) -> str:
        """`12.5` for a point, `12.5 – 18` for a stretch."""
        if stretch.length_ft < 0.05:
            return self.number(stretch.from_ft)
        return f"{self.number(stretch.from_ft)} – {self.number(stretch.to_ft)}"

    def stations(self, stretch: Stretch) -> str:
        """`12.5 – 18 ft`."""
        return f"{self.at(stretch)} {self.speak('ft')}"

    def dollars(self, amount: Decimal, whole: bool = False) -> str:
        """`$4,200.00`, or `$4,200` where whole."""
        from babel.numbers import format_currency

        pattern = "¤#,##0" if whole else "¤#,##0.00"
        return format_currency(amount, "USD", pattern, locale=self.language, currency_digits=False)

    def moved_by(self, difference: Decimal | None) -> str:
        """`+$50`, `−$25`, or a dash where it did not move or nobody can say."""
        if not difference:
            return "—"
        return f"{'+' if difference > 0 else '−'}{self.dollars(abs(difference), whole=True)}"

    def day(self, when: date) -> str:
        """`Nov 18, 2026`.

        >>> Words().day(date(2026, 11, 18)), Words("es_US").day(date(2026, 11, 18))
        ('Nov 18, 2026', '18 nov 2026')
        """
        from babel.dates import format_date

        return format_date(when, "medium", locale=self.language)


AS_NOTED = Words(ENGLISH)
"""Figures and words as the notes have them, whoever reads."""
