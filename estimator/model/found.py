"""What was found, as the papers name it: one entry a defect, with the letter it has in the picture and the rows."""

from typing import Literal

from estimator.model.frozen import Frozen
from estimator.model.line import Finding
from estimator.model.say import Say
from estimator.model.stretch import Stretch

Act = Literal["now", "later"]


class Found(Frozen, kw_only=True):
    """One defect. `text` is the whole sentence, `name` its name alone, `of_line` its line; `needs` are ids of the needs it is part of.

    `beside` is the sentence beside a drawing that says what its feet are counted from; None: the whole one.

    `act`: repair now, or it can wait. `places` are its stations; empty where a test failed and nothing was seen.
    """

    letter: str
    text: Say
    name: Say
    of_line: Say
    line: str
    act: Act = "later"
    places: tuple[Stretch, ...] = ()
    findings: tuple[Finding, ...] = ()
    needs: tuple[str, ...] = ()
    beside: Say | None = None

    @property
    def short(self) -> Say:
        """Its line and name alone."""
        return Say.of("{line}: {what}", line=self.of_line, what=self.name)

    @property
    def photo_files(self) -> tuple[str, ...]:
        """Pictures that show it, by the names in the notes."""
        return tuple(dict.fromkeys(f.photo_file for f in self.findings if f.photo_file))


def letter(number: int) -> str:
    """Return the letter of the entry with this number, from 0: a to z, then a2 to z2.

    >>> letter(0), letter(25), letter(26)
    ('a', 'z', 'a2')
    """
    round_, place = divmod(number, 26)
    return chr(ord("a") + place) + (str(round_ + 1) if round_ else "")


def runs(letters: list[str]) -> str:
    """Return letters in order, neighbours as a run.

    >>> runs(["a", "b", "c", "e", "f"]), runs(["a"])
    ('a–c, e, f', 'a')
    """
    groups: list[list[str]] = []
    for one in letters:
        after = groups and len(one) == 1 == len(groups[-1][-1]) and ord(one) == ord(groups[-1][-1]) + 1
        groups[-1].append(one) if after else groups.append([one])
    return ", ".join(f"{g[0]}–{g[-1]}" if len(g) > 2 else ", ".join(g) for g in groups)
