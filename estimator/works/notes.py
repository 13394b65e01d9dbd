"""What planning the works finds out on the way: yes/no facts, what was assumed, what the crew is warned of."""

from estimator.model.say import Say

Given = tuple[str, float | str, str] | tuple[str, float | str]
"""A number that went into a length or a quantity: its name, its value and its unit."""


class Notes:
    """The sheet of paper beside a plan.

    >>> notes = Notes()
    >>> notes.assume("one located depth applies to {length}", length=9)
    >>> len(notes.assumptions), notes.cautions
    (1, [])
    """

    def __init__(self) -> None:
        self.facts: set[str] = set()
        self.assumptions: list[Say] = []
        self.cautions: list[Say] = []

    def assume(self, text: str, **words: object) -> None:
        self.take(Say.of(text, **words))

    def take(self, said: Say) -> None:
        """Note an assumption that is said elsewhere too."""
        if said not in self.assumptions:
            self.assumptions.append(said)

    def warn(self, text: str, **words: object) -> None:
        said = Say.of(text, **words)
        if said not in self.cautions:
            self.cautions.append(said)
