"""A quote in, the papers of its revision out: workbooks as bytes by their path below the revision folder."""

from collections.abc import Callable, Iterator

from estimator.model.offer import Quote
from estimator.papers.crew import crew
from estimator.papers.homeowner import homeowner
from estimator.papers.office import office
from estimator.records.names import INTERNAL, TO_SEND, stem
from estimator.sheets.book import Book
from estimator.sheets.write import write
from estimator.tables.tables import Tables

HOMEOWNER_FILE: dict[str, str] = {"en_US": "Drain quote", "es_US": "Presupuesto de drenaje"}
"""The homeowner's file by language."""

INSIDE: tuple[tuple[str, Callable[[Quote, Tables], Book]], ...] = (
    ("Office", office),
    ("Crew", lambda quote, tables: crew(quote)),
)
"""What stays in the house: the file's first word and the paper."""


def papers(quote: Quote, languages: tuple[str, ...], tables: Tables) -> dict[str, bytes]:
    """Every file of the revision but the record. Errors: sheets.write.CannotWrite for text no workbook can carry."""
    return {f"{folder}/{name}": data for folder, name, data in _each(quote, languages, tables)}


def _each(quote: Quote, languages: tuple[str, ...], tables: Tables) -> Iterator[tuple[str, str, bytes]]:
    job = quote.job
    for language in languages:
        name = stem(HOMEOWNER_FILE[language], job.number, quote.revision, job.customer.site)
        yield TO_SEND, f"{name}.xlsx", write(homeowner(quote, language))
    for kind, paper in INSIDE:
        name = stem(kind, job.number, quote.revision, job.customer.site)
        yield INTERNAL, f"{name}.xlsx", write(paper(quote, tables))
