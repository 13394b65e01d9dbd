"""A Chart or a Picture in; drawn on the worksheet, with its words for those who cannot see it."""

import io
from typing import Any

from estimator.sheets.book import Chart, Picture, Series, Sheet
from estimator.sheets.fault import CannotWrite
from estimator.sheets.images import cleaned, size_px
from estimator.sheets.style import FONT

KINDS: dict[str, dict[str, str]] = {
    "scatter": {"type": "scatter", "subtype": "straight"},
    "bar": {"type": "bar"},
    "column": {"type": "column"},
    "stacked bar": {"type": "bar", "subtype": "stacked"},
}
LYING = ("bar", "stacked bar")  # their numbers run along the bottom
SMALL = {"name": FONT, "size": 8, "color": "#222B33"}


def add_chart(workbook: Any, worksheet: Any, sheet: Sheet, chart: Chart) -> None:
    """Draw it. Errors: CannotWrite when the library refuses it."""
    drawn = workbook.add_chart(KINDS[chart.kind])
    for series in chart.series:
        drawn.add_series(_series(sheet, chart, series))
    drawn.set_title({"name": chart.title, "name_font": {**SMALL, "size": 10, "bold": True}, "overlay": False})
    x: dict[str, object] = {
        "name": chart.x_title,
        "name_font": SMALL,
        "num_font": SMALL,
        "major_gridlines": {"visible": False},
    }
    y: dict[str, object] = {
        "name": chart.y_title,
        "name_font": SMALL,
        "num_font": SMALL,
        "num_format": chart.number_format,
    }
    y["major_gridlines"] = {"visible": True, "line": {"color": "#E1E5E8", "width": 0.75}}
    if chart.y_reversed:
        y["reverse"] = True
    if chart.y_most is not None:
        y["max"] = chart.y_most
    if chart.kind == "scatter":
        y["crossing"] = "min"
    if chart.kind in LYING:
        x["num_format"] = chart.number_format
    drawn.set_x_axis(x)
    drawn.set_y_axis(y)
    drawn.set_legend({"position": "bottom", "font": SMALL} if chart.legend else {"none": True})
    drawn.set_size({"width": chart.width_px, "height": chart.height_px})
    drawn.set_chartarea({"border": {"none": True}})
    answer = worksheet.insert_chart(chart.row, chart.column, drawn, {"description": chart.alt, "object_position": 1})
    if answer:
        raise CannotWrite(f"{sheet.name}: the chart “{chart.title}” was not written (answer {answer})")


def _series(sheet: Sheet, chart: Chart, series: Series) -> dict[str, object]:
    out: dict[str, object] = {
        "name": series.name,
        "categories": [series.sheet or sheet.name, *series.categories],
        "values": [series.sheet or sheet.name, *series.values],
    }
    if chart.kind == "scatter":
        line = {
            "color": f"#{series.colour}",
            "width": series.width_pt,
            **({"dash_type": "dash"} if series.dash else {}),
        }
        out["line"] = line if series.line else {"none": True}
        out["marker"] = {"type": series.marker or "none", **(_fill(series, 8) if series.marker else {})}
    else:
        out |= {"fill": {"color": f"#{series.colour}"}, "border": {"none": True}, "gap": 60}
    if series.labels:
        custom = [{"value": text} if text else {"delete": True} for text in series.labels]
        out["data_labels"] = {"custom": custom, "value": True, "position": "above", "font": SMALL}
    return out


def _fill(series: Series, size: int) -> dict[str, object]:
    colour = {"color": f"#{series.colour}"}
    return {"size": size, "fill": colour, "border": colour}


def add_picture(worksheet: Any, sheet: Sheet, picture: Picture) -> None:
    """Set it at its cell, scaled to its height, with nothing in it but what is drawn. Errors: NotAPicture, CannotWrite."""
    data = cleaned(picture.data)
    scale = picture.height_px / size_px(data)[1]
    options = {
        "image_data": io.BytesIO(data),
        "description": picture.alt,
        "object_position": 1,
        "x_scale": scale,
        "y_scale": scale,
    }
    # The name is the same for all: the one on the disk tells whose computer it was.
    if answer := worksheet.insert_image(picture.row, picture.column, "picture", options):
        raise CannotWrite(f"{sheet.name}: a picture was not written (answer {answer})")
