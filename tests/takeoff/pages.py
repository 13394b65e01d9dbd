"""Prints docs/quantities.md anew:  python -m tests.takeoff.pages"""

from pathlib import Path

from estimator.takeoff.quantities_page import quantities_page

PAGE = Path(__file__).resolve().parents[2] / "docs" / "quantities.md"

if __name__ == "__main__":
    PAGE.write_text(quantities_page(), encoding="utf-8", newline="\n")
