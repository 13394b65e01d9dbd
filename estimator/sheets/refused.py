"""The one refusal of this room: what a workbook cannot carry."""


class CannotWrite(ValueError):
    """The book holds something a workbook cannot carry; the message says where."""
