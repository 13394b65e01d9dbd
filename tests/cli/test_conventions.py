"""How the program behaves in a terminal, in a pipe, on an old code page and when something is wrong; never a traceback."""

import os
import subprocess
import sys

import pytest

from estimator.cli.command_list import COMMANDS
from estimator.cli.guard import guarded, in_plain_words
from estimator.cli.views.screen import Row, drawable, show


def run(*words, **environment) -> subprocess.CompletedProcess:
    env = {k: v for k, v in os.environ.items() if not k.startswith("ESTIMATOR_")} | environment
    return subprocess.run(
        [sys.executable, "-m", "estimator", *map(str, words)], capture_output=True, env=env, check=False
    )


def test_an_unknown_command_leaves_with_two_and_names_the_nearest():
    done = run("chek")
    assert (done.returncode, done.stdout) == (2, b"")
    assert b"'check'" in done.stderr


def test_a_wrong_day_leaves_with_two():
    done = run("quote", "job.toml", "--on", "tomorrow")
    assert done.returncode == 2
    assert b"2026-11-18" in done.stderr


@pytest.mark.parametrize("entry", COMMANDS, ids=lambda entry: f"{entry.group} {entry.name}".strip())
def test_the_help_of_every_command_has_an_example(entry):
    done = run(*filter(None, [entry.group, entry.name]), "--help", COLUMNS="80")
    assert done.returncode == 0
    assert entry.example in " ".join(done.stdout.decode().split())
    assert max(map(len, done.stdout.decode().splitlines())) <= 80


def test_version_goes_to_the_standard_output():
    done = run("--version")
    assert (done.returncode, done.stderr) == (0, b"")
    assert done.stdout.startswith(b"estimator ")


class _Stream:
    """A stream of an encoding that looks like a terminal or not."""

    def __init__(self, encoding: str, terminal: bool) -> None:
        self.encoding, self.terminal, self.text = encoding, terminal, ""

    def isatty(self) -> bool:
        return self.terminal

    def write(self, text: str) -> int:
        self.text += text
        return len(text)

    def flush(self) -> None:
        pass


def test_a_pipe_gets_plain_text():
    stream = _Stream("utf-8", terminal=False)
    show([Row("head", "head")], stream)
    assert stream.text == "head\n"


def test_no_colour_where_none_is_wanted(monkeypatch):
    monkeypatch.setenv("NO_COLOR", "1")
    stream = _Stream("utf-8", terminal=True)
    show([Row("head", "bad")], stream)
    assert stream.text == "head\n"


def test_text_of_the_user_is_never_read_as_markup(monkeypatch):
    monkeypatch.delenv("NO_COLOR", raising=False)
    stream = _Stream("utf-8", terminal=True)
    show([Row("[bold]Elm[/bold] :smile: [/nothing]", "head")], stream)
    assert "[bold]Elm[/bold] :smile: [/nothing]" in stream.text


@pytest.mark.parametrize("text", ["a\x1b[31mb", "a\x00b", "a\rb"])
def test_control_characters_of_the_user_never_reach_the_terminal(text):
    stream = _Stream("utf-8", terminal=False)
    show([text], stream)
    assert stream.text.isprintable() or stream.text[:-1].isprintable()


@pytest.mark.parametrize("encoding", ["ascii", "cp437", "cp1252", "utf-8"])
def test_drawings_can_be_written_on_any_code_page(encoding):
    text = drawable("├─ 2 ft ──┬··┤ 3–4 ½ ± “x” …", _Stream(encoding, terminal=False))
    text.encode(encoding)
    assert "2 ft" in text


def test_drawing_marks_that_cannot_be_written_become_plainer_ones():
    assert drawable("├─┬·┤", _Stream("cp1252", terminal=False)) == "+-+.+"


@pytest.mark.parametrize(
    ("error", "words"),
    [
        (FileNotFoundError(2, "No such file", "a.toml"), "a.toml is not there."),
        (IsADirectoryError(21, "Is a directory", "a"), "a is a folder"),
        (PermissionError(13, "Permission denied", "a"), "open in another program"),
        (OSError(5, "Input/output error", "a"), "a: Input/output error."),
    ],
)
def test_refusals_of_the_machine_in_plain_words(error, words):
    assert words in str(in_plain_words(error))


def _leaves_with(error: BaseException, capsys) -> tuple[int, str]:
    import typer

    def command() -> None:
        raise error

    with pytest.raises(typer.Exit) as left:
        guarded(command)()
    return left.value.exit_code, capsys.readouterr().err


def test_a_fault_of_the_program_is_one_plain_sentence(capsys, monkeypatch):
    monkeypatch.delenv("ESTIMATOR_DEBUG", raising=False)
    code, said = _leaves_with(ZeroDivisionError("x"), capsys)
    assert code == 3
    assert said.count("\n") == 1
    assert "ESTIMATOR_DEBUG=1" in said


def test_the_traceback_is_there_for_those_who_ask(capsys, monkeypatch):
    monkeypatch.setenv("ESTIMATOR_DEBUG", "1")
    code, said = _leaves_with(ZeroDivisionError("x"), capsys)
    assert code == 3
    assert "Traceback" in said


def test_stopping_by_hand_says_what_was_kept(capsys):
    code, said = _leaves_with(KeyboardInterrupt(), capsys)
    assert code == 130
    assert "kept" in said


def test_a_refusal_of_the_machine_leaves_with_one(capsys):
    code, said = _leaves_with(PermissionError(13, "Permission denied", "a"), capsys)
    assert code == 1
    assert said.startswith("a may not be")
