"""A style's name and the accent colour in, the properties of a cell format out."""

from collections.abc import Mapping

FONT = "Arial"  # every phone and office program has it, or one of the same widths
MONOSPACE = "Courier New"  # letters of one width, so that bars stand under their days
INK = "#222B33"
QUIET = "#5B6770"
RED = "#A61B1B"
MONEY = "$#,##0.00"
WHOLE_MONEY = "$#,##0"


def tint(colour: str, share: float) -> str:
    """A colour mixed with white: share 0 is white, 1 the colour itself.

    >>> tint("000000", 0.5)
    '#808080'
    """
    parts = [int(colour.lstrip("#")[i : i + 2], 16) for i in (0, 2, 4)]
    return "#" + "".join(f"{round(255 - (255 - p) * share):02X}" for p in parts)


def styles(accent: str) -> Mapping[str, Mapping[str, object]]:
    """Every named style of a book in this accent colour."""
    main, pale = tint(accent, 1), tint(accent, 0.10)
    text = {
        "font_name": FONT,
        "font_size": 9.5,
        "font_color": INK,
        "valign": "top",
        "align": "left",
        "indent": 1,
        "text_wrap": True,
    }
    number = {**text, "align": "right", "text_wrap": False}
    line = {"bottom": 1, "bottom_color": "#D5DBDF"}
    head = {
        **text,
        "bold": True,
        "font_size": 9.3,
        "bg_color": pale,
        "bottom": 1,
        "bottom_color": main,
        "valign": "vcenter",
    }
    total = {**number, "bold": True, "font_size": 11, "top": 1, "bottom": 6, "top_color": main, "bottom_color": main}
    centre = {"align": "center", "indent": 0}
    return {
        "body": text,
        "bold": {**text, "bold": True},
        "red": {**text, "bold": True, "font_color": RED},
        "quiet": {**text, "font_size": 9.3, "font_color": QUIET},
        "small": {**text, "font_size": 9.3},
        "letter": {**text, "font_size": 9.3, "bold": True},
        "first page": {**text, "font_size": 15},  # 12 points on paper from a sheet that prints at four fifths
        "firm": {**text, "bold": True, "font_size": 14, "font_color": main},
        "title": {**text, "bold": True, "font_size": 13},
        "heading": {**text, "bold": True, "font_size": 11.5, "font_color": main, "bottom": 1, "bottom_color": main},
        "label": {**text, "font_color": QUIET, **line},
        "value": {**text, **line},
        "value bold": {**text, "bold": True, **line},
        "price": {**text, "bold": True, "font_size": 18, "align": "left", "text_wrap": False, "num_format": WHOLE_MONEY},
        "price small": {**text, "bold": True, "font_size": 13, "align": "left", "text_wrap": False, "num_format": WHOLE_MONEY},
        "option": {**text, "bold": True, "font_size": 12, "font_color": "#FFFFFF", "bg_color": main, "valign": "vcenter"},
        "under": {**text, "bg_color": pale, "italic": True},
        "box": {**text, "bg_color": "#FFF6DC", "left": 5, "left_color": "#D9A400"},
        # 10 points and bold on paper from a sheet that prints at 97 percent: 16 CFR 429.1(a)
        "law": {**text, "bold": True, "font_size": 10.4},
        "cancel": {**text, "bold": True, "font_size": 10.5, "bg_color": "#FFF6DC", "left": 5, "left_color": "#D9A400"},
        "alarm": {**text, "bold": True, "font_color": "#FFFFFF", "bg_color": RED, "font_size": 13, "valign": "vcenter"},
        "head": head,
        "head right": {**head, "align": "right"},
        "head centre": {**head, **centre},
        "cell": {**text, **line},
        "cell bold": {**text, **line, "bold": True},
        "cell quiet": {**text, **line, "font_color": QUIET, "font_size": 9.3},
        "number": {**number, **line},
        "bars": {**text, **line, "font_name": MONOSPACE, "text_wrap": False},
        "figure": {**number, **line, "num_format": "#,##0.00"},
        "hours": {**number, **line, "num_format": "0.00"},
        "percent": {**number, **line, "num_format": "0.0%"},
        "money": {**number, **line, "num_format": MONEY},
        "whole money": {**number, **line, "num_format": WHOLE_MONEY},
        "whole money left": {**text, **line, "align": "left", "bold": True, "num_format": WHOLE_MONEY},
        "total words": {**total, "align": "left", "text_wrap": True},
        "total": {**total, "num_format": MONEY},
        "sum words": {**text, "bold": True, "top": 1},
        "sum": {**number, "bold": True, "top": 1, "num_format": MONEY},
        "write": {**text, "bottom": 1, "bottom_color": INK},
        "tick": {**text, **centre, "border": 1, "bg_color": "#FFFFFF"},
        "input": {**number, "bg_color": "#FFF6DC", "border": 1, "border_color": "#D9A400", "num_format": "0.00"},
        "input percent": {**number, "bg_color": "#FFF6DC", "border": 1, "border_color": "#D9A400", "num_format": "0.0%"},
        "empty box": {**text, "border": 1, "border_color": "#C3CBD0"},
    }  # fmt: skip


class Percent(float):
    """The number as the file holds it, 0.0825; whoever reads it knows that people see a hundred times as much."""

    __slots__ = ()
