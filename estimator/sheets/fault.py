"""What a cell can hold besides a value: nothing that can be used."""

from estimator.model.frozen import Frozen


class Fault(Frozen):
    """A cell without a value that can be used.

    kind "error": it shows `text`, such as #N/A; "uncalculated": a formula without a result; "merged": `text` is the range;
    "currency": an amount shown in `text`, such as €.
    """

    kind: str
    text: str = ""

    def __str__(self) -> str:
        return self.text
