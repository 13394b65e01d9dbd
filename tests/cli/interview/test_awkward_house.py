"""An awkward house from first line to options at a real terminal: slips, a kill in the middle of the log, a line struck, one changed."""

import os
import signal
import subprocess
import sys
import tomllib

import pytest

pytestmark = pytest.mark.usefixtures("keeps")

MOST_ENTRIES = 120
"""What an owner is asked at most, lines of the log among them, before the options of an awkward house are there."""

HOUSE = {
    "Your name": ["Ines Calloway"],
    "Customer's name": ["back", "Wren Castellane"],  # `back` shows the language again
    "Address of the house": ["no", "417 Larkspur Court, Fernbrook"],
    "Built in what year": ["62", "1962"],
    "Floor: slab": ["slab"],
    "How thick is the slab": ["4"],
    "How far is the slab's top": ["6 in"],
    "Beam at the slab's edge": ["none"],
    "Soil": ["firm clay"],
    "Place, by its row": ["demo"],
    "What drains there": ["2 baths, kitchen, washer"],
    "Water lines": ["overhead"],
    "What else runs in the slab": ["nothing"],
    "Floor over the pipe": ["tile"],
    "Narrowest gate": ["42"],
    "How far the spoil is carried": ["35"],
    "Are the public utilities marked": ["y"],
    "Who looks after the excavation": ["me", "Teo Marlow"],
    "Pipe: cast iron": ["ci", "pvc"],
    "Size of the pipe": ["", "3"],
    "Where does it end": ["no", "city main"],
    "What was tested": ["under slab"],
    "Another test? What was tested": ["hall bath", ""],
    "Whole, isolated": ["whole", "isolated"],
    "Lines and branches in the test": ["all", "hall bath"],
    "Day of the test": ["", ""],
    "Minutes and drop": ["5:3/8, 20:1 5/8", "30:4"],
    "Did the ball seal": ["y", "y"],
    "Passed, failed": ["failed", "failed"],
    "Was a camera in it": ["yes", "no"],
    "How long is it": ["12 ft"],
    "How deep is the pipe under the floor": ["28 in under tile"],
    "How far is the pipe's bottom": ["yes", "30 in, 31 1/2 in"],
}
BEFORE_THE_KILL = (
    "about 20 hole",
    "pass front cleanout to house, riser 26in",
    "2.2 yard lawn",
    "5.3 under house now",
    "14.4 wye 3in left live proven called hall bath",
    "18.6 hole 3in dirt",
    "26 belly starts",
)
AFTER_IT = (
    "33 belly ends half full",
    "305 roots heavy",
    "-",
    "strike 2",
    "change 3 3.1 yard lawn",
    "39 splodge",
    "38 roots 30%",
    "42.6 end closet bend",
    "done",
    "done",
)


class Owner:
    """Answers by what is asked; of a question asked again gives the next answer, then Enter."""

    def __init__(self, terminal) -> None:
        self.terminal, self.entries = terminal, 0
        self.left = {asked: list(answers) for asked, answers in HOUSE.items()}
        self.log: list[str] = []

    def goes_on(self, until_empty=False) -> None:
        """Until the interview ends, or the log has no line left to type."""
        said = self.terminal.prompt()
        while True:
            if ">" in said.splitlines()[-1] or "remark" in said.splitlines()[-1]:
                if not self.log:
                    return
                answer = self.log.pop(0)
            else:
                answer = self._answer(said)
            self.entries += 1
            os.write(self.terminal.ours, answer.encode() + b"\r")
            said = self.terminal.prompt_or_end()
            if not said:
                return

    def _answer(self, said: str) -> str:
        question = " ".join(said.splitlines()[-3:])
        asked = max(self.left, key=lambda name: (name in question, question.rfind(name) + len(name), len(name)))
        asked = asked if asked in question else ""
        return self.left[asked].pop(0) if self.left.get(asked) else ""


def test_an_awkward_house_goes_from_first_line_to_options_in_few_entries(here, keyboard):
    owner = Owner(keyboard(here, "start", "job.toml"))
    owner.log = list(BEFORE_THE_KILL)
    owner.goes_on()
    owner.terminal.child.send_signal(signal.SIGKILL)
    owner.terminal.ends()
    assert (here / "main.txt").read_text("utf-8").splitlines()[-1] == BEFORE_THE_KILL[-1]

    owner.terminal = keyboard(here, "start", "--resume", "job.toml")
    owner.log = list(AFTER_IT)
    owner.goes_on()
    code, seen = owner.terminal.ends()
    assert code == 0, seen[-1500:]
    assert owner.log == []
    assert {name: left for name, left in owner.left.items() if left} == {}, "every answer was asked for, once"
    assert owner.entries < MOST_ENTRIES

    rows = (here / "main.txt").read_text("utf-8").splitlines()
    assert rows[0] == BEFORE_THE_KILL[1], "the pass belongs above what was typed too soon"
    assert rows[1] == "# struck: about 20 hole"
    assert rows[2] == "3.1 yard lawn"
    assert "# 305 roots heavy" in rows
    assert "39 splodge" in rows, "nothing typed is lost"
    data = tomllib.loads((here / "job.toml").read_text("utf-8"))
    assert [line["name"] for line in data["line"]] == ["main", "hall bath"], "the branch that failed was asked about"
    done = subprocess.run(
        [sys.executable, "-m", "estimator", "options", "job.toml"],
        cwd=here,
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stderr
    assert "$" in done.stdout
