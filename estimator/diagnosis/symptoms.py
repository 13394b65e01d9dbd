"""What people of the house report in; what can be behind it and how it is found out, out. Gas comes before everything.

Common practice: a smell without a leak comes from a dry trap, a vent or a seal; what backs up is held back further down.
"""

from collections.abc import Iterable

from estimator.diagnosis.case import Case
from estimator.diagnosis.reading import Hit, Reading
from estimator.model.gas import GAS_SMELL, fuel_gas, gas_signs
from estimator.model.job import Sign
from estimator.model.say import Say

SMELL = ("smell", "odor", "odour", "stink", "stench", "sewer gas", "drain gas")
BACKS_UP = ("backs up", "back up", "backing up", "backup", "backed up", "comes up", "coming up", "overflow")
SLOW = ("slow", "gurgl", "bubbl", "drains badly")
ANIMALS = ("rat", "rodent", "mouse", "mice", "roach", "drain fl")


def _told(case: Case, words: Iterable[str]) -> tuple[Sign, ...]:
    every = tuple(words)
    return tuple(s for s in case.job.signs if any(word in _text(s) for word in every))


def _text(sign: Sign) -> str:
    return f" {sign.what} {sign.note}".lower()


def _places(signs: Iterable[Sign]) -> tuple[Hit, ...]:
    where = tuple(dict.fromkeys(s.where or s.what for s in signs))
    return (Hit(None, (), (("where", where),)),) if where else ()


def _gas(case: Case) -> Iterable[Hit]:
    return _places(gas_signs(case.job))


def _smell(case: Case) -> Iterable[Hit]:
    return _places(s for s in _told(case, SMELL) if not fuel_gas(s))


def _backs_up(case: Case) -> Iterable[Hit]:
    return _places(_told(case, BACKS_UP))


def _slow(case: Case) -> Iterable[Hit]:
    return _places(_told(case, SLOW))


def _animals(case: Case) -> Iterable[Hit]:
    words = tuple(f" {word}" for word in ANIMALS)  # a word's beginning: “rat”, never “generator”
    return _places(_told(case, words))


READINGS = (
    Reading(
        id=GAS_SMELL,
        numbers=(),
        evidence="somebody smells gas",
        effect="before anything else: everybody leaves, 911 and the gas company from outside",
        meaning=Say.of(
            "Gas smell reported ({where}). Leave the house now, touch no switch and no flame, and call 911 and the gas company from outside. No drain work before they say it is safe."
        ),
        confirm=Say.of("Has the gas company checked the house and said in writing that it is safe?"),
        asks=True,
        source="common practice of gas companies, from memory",
        sees=_gas,
    ),
    Reading(
        id="sewer-smell",
        numbers=("D22",),
        evidence="a smell of sewer in the house or beside it",
        effect="a cause to look for: dry trap, vent, seal of a toilet, open pipe; a smoke test finds it",
        meaning=Say.of(
            "Sewer smell ({where}): a dry trap, a broken or blocked vent, a toilet seal or an open pipe lets sewer gas out. Sound drains do not rule these out."
        ),
        confirm=Say.of("Fill every trap, then smoke test drains and vents while the smell is there."),
        asks=True,
        sees=_smell,
    ),
    Reading(
        id="backs-up",
        numbers=(),
        evidence="water or sewage backs up at a fixture",
        effect="what holds it back lies downstream of the lowest fixture that fills",
        meaning=Say.of(
            "Sewage backs up ({where}): the stoppage is downstream of the lowest fixture that fills, or the city main is full."
        ),
        confirm=Say.of(
            "Which fixture fills first, and when which other is used? Clear the line from there to the street and inspect it; ask the city about its main."
        ),
        asks=True,
        sees=_backs_up,
    ),
    Reading(
        id="drains-slowly",
        numbers=(),
        evidence="slow or gurgling drains",
        effect="one fixture: its trap or branch; several: the main or a vent",
        meaning=Say.of(
            "Slow or gurgling drains ({where}): one fixture alone points to its trap or branch, several to the main or a blocked vent."
        ),
        confirm=Say.of("Which fixtures are slow, all or one? Inspect the line they share, and check the vents."),
        asks=True,
        sees=_slow,
    ),
    Reading(
        id="animals-in-the-house",
        numbers=("D20",),
        evidence="rats, roaches or drain flies in the house",
        effect="an open pipe to look for: dead branch, missing cap, dry trap, broken joint",
        meaning=Say.of(
            "Rats or insects ({where}) come in by an open pipe: a dead branch, a missing cleanout cap, a dry trap or a broken joint."
        ),
        confirm=Say.of("Smoke test the drains, look for open and dead branches, and check every cleanout cap."),
        asks=True,
        sees=_animals,
    ),
)
