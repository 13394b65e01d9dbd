"""An amount of money in, the same in words as on a cheque, English or Spanish, out."""

from decimal import Decimal

from estimator.model.money import cents
from estimator.wording.numbers import family

ONES = [
    "zero",
    "one",
    "two",
    "three",
    "four",
    "five",
    "six",
    "seven",
    "eight",
    "nine",
    "ten",
    "eleven",
    "twelve",
    "thirteen",
    "fourteen",
    "fifteen",
    "sixteen",
    "seventeen",
    "eighteen",
    "nineteen",
]
TENS = ["_", "_", "twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"]
UNOS = [
    "cero",
    "un",
    "dos",
    "tres",
    "cuatro",
    "cinco",
    "seis",
    "siete",
    "ocho",
    "nueve",
    "diez",
    "once",
    "doce",
    "trece",
    "catorce",
    "quince",
    "dieciséis",
    "diecisiete",
    "dieciocho",
    "diecinueve",
    "veinte",
    "veintiún",
    "veintidós",
    "veintitrés",
    "veinticuatro",
    "veinticinco",
    "veintiséis",
    "veintisiete",
    "veintiocho",
    "veintinueve",
]
DIECES = ["_", "_", "_", "treinta", "cuarenta", "cincuenta", "sesenta", "setenta", "ochenta", "noventa"]
CIENTOS = [
    "_",
    "ciento",
    "doscientos",
    "trescientos",
    "cuatrocientos",
    "quinientos",
    "seiscientos",
    "setecientos",
    "ochocientos",
    "novecientos",
]
MILLION = 1_000_000
MOST = Decimal(1_000_000_000)


def in_words(amount: Decimal, language: str) -> str:
    """Dollars in words, cents as hundredths.

    >>> in_words(Decimal("16525.00"), "en_US"), in_words(Decimal("4200.50"), "es_US")
    ('Sixteen thousand five hundred twenty-five and 00/100 dollars', 'Cuatro mil doscientos dólares con 50/100')

    >>> in_words(Decimal(1_200_000), "en_US"), in_words(Decimal(2_000_001), "es_US")
    ('One million two hundred thousand and 00/100 dollars', 'Dos millones un dólares con 00/100')
    >>> in_words(Decimal(1_000_000), "es_US"), in_words(Decimal(1_000_250), "es_US")
    ('Un millón de dólares con 00/100', 'Un millón doscientos cincuenta dólares con 00/100')

    Errors: ValueError below zero and from a billion dollars on.
    """
    exact = cents(amount)
    if not 0 <= exact < MOST:
        raise ValueError(f"no words for {amount}")
    whole, part = int(exact), int((exact % 1) * 100)
    if family(language) == "es":
        of = " de" if whole and whole % MILLION == 0 else ""
        return _capital(f"{_spanish(whole)}{of} {'dólar' if whole == 1 else 'dólares'} con {part:02d}/100")
    return _capital(f"{_english(whole)} and {part:02d}/100 dollars")


def _capital(text: str) -> str:
    return text[0].upper() + text[1:]


def _english(n: int) -> str:
    if n >= MILLION:
        return _joined(f"{_english(n // MILLION)} million", n % MILLION, _english)
    if n >= 1000:
        return _joined(f"{_english(n // 1000)} thousand", n % 1000, _english)
    if n >= 100:
        return _joined(f"{ONES[n // 100]} hundred", n % 100, _english)
    if n < 20:
        return ONES[n]
    return TENS[n // 10] + (f"-{ONES[n % 10]}" if n % 10 else "")


def _spanish(n: int) -> str:
    if n >= MILLION:
        head = "un millón" if n // MILLION == 1 else f"{_spanish(n // MILLION)} millones"
        return _joined(head, n % MILLION, _spanish)
    if n >= 1000:
        head = "mil" if n // 1000 == 1 else f"{_spanish(n // 1000)} mil"
        return _joined(head, n % 1000, _spanish)
    if n == 100:
        return "cien"
    if n > 100:
        return _joined(CIENTOS[n // 100], n % 100, _spanish)
    if n < 30:
        return UNOS[n]
    return DIECES[n // 10] + (f" y {UNOS[n % 10]}" if n % 10 else "")


def _joined(head: str, rest: int, words: object) -> str:
    return f"{head} {words(rest)}" if rest else head  # type: ignore[operator]
