"""What the rest of the program knows and the tables refer to, handed in by the caller: None means not checked."""

from collections.abc import Collection, Mapping
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Known:
    """quantities: name to unit; facts and methods: names; settings: key to the demo's value with its unit.

    Tables do not import the rooms that own them.
    """

    quantities: Mapping[str, str] | None = None
    facts: Collection[str] | None = None
    methods: Collection[str] | None = None
    settings: Mapping[str, str] | None = None
