"""A quote and what it was made from in, the papers of its revision out: bytes by their path below the revision folder."""

from collections.abc import Callable, Iterator

from estimator.model.frozen import Frozen
from estimator.model.offer import Quote
from estimator.model.problem import CannotGoOn, Place
from estimator.papers.budget_letter import budget_letter
from estimator.papers.crew import crew
from estimator.papers.homeowner import homeowner
from estimator.papers.insurer_page import insurer_page
from estimator.papers.message import message
from estimator.papers.office import office, workings
from estimator.papers.reports import inspection_report, water_test_report
from estimator.papers.stop_notice import lines_in_the_bore, stop_notice
from estimator.pipeline.costing import with_job_settings
from estimator.records.problems import CANNOT_HOLD
from estimator.records.record import Inputs
from estimator.records.revisions import INTERNAL, TO_SEND, stem
from estimator.sheets.book import Book
from estimator.sheets.write import write


class Sent(Frozen):
    """A workbook that may leave the house: its first words by language, what makes it, when it is made."""

    names: tuple[tuple[str, str], ...]
    make: Callable[[Quote, str, Inputs], Book]
    when: Callable[[Quote], bool]

    def name(self, language: str) -> str:
        return dict(self.names)[language]


def _in_both(english: str, spanish: str) -> tuple[tuple[str, str], ...]:
    return (("en_US", english), ("es_US", spanish))


SENT: tuple[Sent, ...] = (
    Sent(
        _in_both("Drain quote", "Presupuesto de drenaje"),
        lambda quote, language, inputs: homeowner(quote, language, inputs.pictures),
        lambda quote: bool(quote.options),
    ),
    Sent(
        _in_both("Water test report", "Informe de prueba de agua"),
        lambda quote, language, inputs: water_test_report(quote, language),
        lambda quote: bool(quote.job.water_tests),
    ),
    Sent(
        _in_both("Inspection report", "Informe de inspección"),
        lambda quote, language, inputs: inspection_report(quote, language, inputs.pictures),
        lambda quote: True,
    ),
    Sent(
        _in_both("STOP notice", "Aviso de ALTO"),
        lambda quote, language, inputs: stop_notice(quote, language),
        lambda quote: bool(lines_in_the_bore(quote)),
    ),
    Sent(
        _in_both("Budget letter", "Carta de costo aproximado"),
        lambda quote, language, inputs: budget_letter(quote, language),
        lambda quote: bool(quote.options) and not any(option.fixed for option in quote.options),
    ),
    Sent(
        _in_both("Insurance summary", "Resumen para el seguro"),
        lambda quote, language, inputs: insurer_page(quote, language, inputs.pictures),
        lambda quote: bool(quote.options) and bool(quote.job.customer.claim or quote.job.customer.insurer),
    ),
)
"""What may leave the house: of a house with nothing to repair only reports. The budget letter goes where no price can be fixed yet."""

INSIDE: tuple[tuple[str, Callable[[Quote, Inputs], Book]], ...] = (
    ("Office", lambda quote, inputs: office(quote, inputs.tables)),
    ("Workings", lambda quote, inputs: workings(quote, inputs.tables)),
    ("Crew", lambda quote, inputs: crew(quote, tables=with_job_settings(quote.job, inputs.tables))),
)
"""What stays in the house: the file's first word and the paper."""


def papers(quote: Quote, inputs: Inputs) -> dict[str, bytes]:
    """Every file of the revision but the record. Errors: CannotGoOn for text that no workbook can hold."""
    return {f"{folder}/{name}": data for folder, name, data in _each(quote, inputs)}


def _each(quote: Quote, inputs: Inputs) -> Iterator[tuple[str, str, bytes]]:
    job = quote.job

    def called(kind: str) -> str:
        return stem(kind, job.number, quote.revision, job.customer.site)

    for paper in SENT:
        for language in inputs.languages if paper.when(quote) else ():
            yield (
                TO_SEND,
                f"{called(paper.name(language))}.xlsx",
                _workbook(paper.make(quote, language, inputs), inputs),
            )
    yield TO_SEND, f"{called('Message')}.txt", _messages(quote, inputs).encode("utf-8")
    for kind, make in INSIDE if quote.options else ():
        yield INTERNAL, f"{called(kind)}.xlsx", _workbook(make(quote, inputs), inputs)
    for name, data in inputs.pictures.items():
        yield INTERNAL, f"pictures/{name}", data


def _workbook(book: Book, inputs: Inputs) -> bytes:
    try:
        return write(book)
    except ValueError as error:
        raise CannotGoOn(CANNOT_HOLD(Place(file=inputs.job_file), said=error.args[0])) from None


def _messages(quote: Quote, inputs: Inputs) -> str:
    """The words to send the file with, a paragraph for each language."""
    return "\n\n".join(message(quote, language) for language in inputs.languages) + "\n"
