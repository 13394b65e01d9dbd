"""The firm's price tables: what a row is, reading, checking, writing, comparing."""

from typing import TYPE_CHECKING

from estimator.model.on_demand import on_demand

if TYPE_CHECKING:
    from estimator.tables.read import TablesReading, demo_folder, read_tables
    from estimator.tables.tables import Tables

__all__ = ["Tables", "TablesReading", "demo_folder", "read_tables"]
HOMES = {"TablesReading": "read", "demo_folder": "read", "read_tables": "read", "Tables": "tables"}
__getattr__ = on_demand(__name__, HOMES)
