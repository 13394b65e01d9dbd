"""The firm's price tables: what a row is, reading, checking, writing, comparing."""
