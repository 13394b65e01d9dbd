"""The recorded terminal pictures: made from the demo, nothing in them is fetched from anywhere."""

import re
import xml.etree.ElementTree as ET
from pathlib import Path

from estimator.cli.pictures import picture, pictures
from estimator.cli.views.screen import Row

FOLDER = Path(__file__).parents[2] / "docs" / "pictures"


def test_there_is_a_picture_of_each_answer_of_the_demo():
    assert set(pictures()) == {"check", "options", "compare", "explain"}
    assert {p.stem for p in FOLDER.glob("*.svg")} >= {"check", "options", "compare", "explain"}


def test_a_picture_is_whole_and_fetches_nothing():
    svg = picture("estimator check", [Row("[bold] & <x>", "head"), Row("─")])
    ET.fromstring(svg)
    assert re.findall(r'(?:href|src)="http|url\("?http', svg) == []
    assert "&lt;x&gt;" in svg
    assert svg.count("<text ") == svg.count('<text xml:space="preserve" ')
