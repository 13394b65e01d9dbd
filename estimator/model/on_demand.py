"""The name of a package and where its names come from, in; a module `__getattr__` that imports each when it is asked for, out."""

from collections.abc import Callable, Mapping
from importlib import import_module


def on_demand(package: str, homes: Mapping[str, str]) -> Callable[[str], object]:
    """Return what a package's `__getattr__` is, so that one module of it can be imported without all the others.

    >>> on_demand("estimator.model", {"cents": "money"})("cents")("2.675")
    Decimal('2.68')
    """

    def find(name: str) -> object:
        if name not in homes:
            raise AttributeError(f"module {package!r} has no attribute {name!r}")
        return getattr(import_module(f"{package}.{homes[name]}"), name)

    return find
