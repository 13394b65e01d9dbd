"""What the rest of the program knows and the tables refer to, handed in by the caller: None means not checked."""

from collections.abc import Collection, Mapping
from typing import TYPE_CHECKING

from estimator.model.frozen import Frozen

if TYPE_CHECKING:
    from estimator.tables.tables import Tables


class Known(Frozen):
    """quantities: name to unit; facts and methods: names; settings: key to the demo's value with its unit.

    Tables do not import the rooms that own them.
    """

    quantities: Mapping[str, str] | None = None
    facts: Collection[str] | None = None
    methods: Collection[str] | None = None
    settings: Mapping[str, str] | None = None
    usual: "Tables | None" = None
    """The tables whose figures a new one is held against: the invented ones."""
    before: "Tables | None" = None
    """The firm's own tables as they were, where somebody says which."""
