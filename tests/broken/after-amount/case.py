"""Words where the crew was asked for numbers."""

import os
import tempfile
from pathlib import Path

import openpyxl

from estimator.model.problem import CannotGoOn
from estimator.papers.crew import crew
from estimator.records.afterwards.crew_hours import crew_hours
from estimator.sheets.write import write
from tests.made_up.quote import example_quote
from tests.made_up.sold import issued


def problems(folder):
    with tempfile.TemporaryDirectory() as desk:
        os.chdir(desk)
        try:
            done = issued(Path("larkspur"))
            book = Path("Crew.xlsx")
            book.write_bytes(write(crew(example_quote(), letter="A")))
            held = openpyxl.load_workbook(book)
            sheet = held["Hours A"]
            row = next(row for row in sheet.iter_rows() if row[1].value == done.tasks[0].task)
            row[5].value, row[6].value = "lots", "all day"
            held.save(book)
            crew_hours(book, done)
        except CannotGoOn as stop:
            return stop.problems
        finally:
            os.chdir(folder)
    raise AssertionError("it was not refused")
