"""From a filmed drain to a quote that can be signed."""

__version__ = "0.1.0"
