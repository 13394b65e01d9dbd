"""What a reading of the findings is: a line in its job in, the places where it was seen together out."""

from collections.abc import Callable, Iterable

from estimator.diagnosis.case import Case
from estimator.model.frozen import Frozen
from estimator.model.judgement import Evidence
from estimator.model.line import Finding
from estimator.model.say import Say
from estimator.model.stretch import Stretch

COMMON_PRACTICE = "common practice"


class Hit(Frozen):
    """Where a reading holds: the stretch (None: the whole line or system), the findings, words for the gaps."""

    stretch: Stretch | None = None
    findings: tuple[Finding, ...] = ()
    words: tuple[tuple[str, object], ...] = ()
    confirm: Say | None = None  # what must be confirmed just here, in place of the reading's own


class Reading(Frozen, kw_only=True):
    """One line of diagnosis: what is seen together, what it means, what must be confirmed, what follows.

    `asks`: the confirmation is a question for a return visit. `not_fixed`: what the homeowner
    is told where no price is fixed until it is answered.
    `numbers` are its numbers in docs/rules.md (D01 ...).
    """

    id: str
    numbers: tuple[str, ...]
    evidence: str
    effect: str
    meaning: Say
    sees: Callable[[Case], Iterable[Hit]]
    confirm: Say | None = None
    asks: bool = False
    not_fixed: Say | None = None
    source: str = COMMON_PRACTICE
    reads: tuple[str, ...] = ()

    def found(self, case: Case) -> tuple[Evidence, ...]:
        """The evidence this reading gives on one line."""
        return tuple(
            Evidence(
                rule=self.id,
                line=case.line.name,
                stretch=hit.stretch,
                findings=tuple(f.id for f in hit.findings),
                meaning=Say(self.meaning.text, (*self.meaning.words, *hit.words)),
                confirm=hit.confirm or self.confirm,
                asks=self.asks,
            )
            for hit in self.sees(case)
        )


def each(findings: Iterable[Finding]) -> tuple[Hit, ...]:
    """One hit a finding."""
    return tuple(Hit(f.stretch, (f,)) for f in findings)
