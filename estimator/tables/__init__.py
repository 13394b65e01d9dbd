"""The firm's price tables: what a row is, reading, checking, writing, comparing."""

from estimator.tables.read import TablesReading, demo_folder, read_tables
from estimator.tables.tables import Tables

__all__ = ["Tables", "TablesReading", "demo_folder", "read_tables"]
