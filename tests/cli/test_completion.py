"""What a shell gets when it asks for words: asked as the shells' own scripts ask, in a process of its own."""

import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from estimator import demo
from estimator.cli import issuing
from estimator.records.summary import options_of


@pytest.fixture(name="job", scope="module")
def _job(tmp_path_factory):
    """The demo, issued once, in a folder with a blank in its name."""
    folder = tmp_path_factory.mktemp("two words")
    for name in demo.FILES:
        shutil.copyfile(Path(demo.__file__).parent / name, folder / name)
    issuing.written(folder / "job.toml", None, None, ("en_US",))
    return folder / "job.toml"


def _asked(env: dict[str, str]) -> str:
    words = [sys.executable, "-c", "import sys; sys.argv = ['estimator']; from estimator.cli import main; main()"]
    done = subprocess.run(words, capture_output=True, text=True, check=False, env=os.environ | env)
    assert done.stderr == ""
    return done.stdout


def _bash(*words: str) -> list[str]:
    """The last word is the one that is being typed."""
    typed = " ".join(f"'{word}'" if " " in word else word for word in ("estimator", *words))
    env = {"_ESTIMATOR_COMPLETE": "complete_bash", "COMP_WORDS": typed, "COMP_CWORD": str(len(words))}
    return _asked(env).split()


def test_the_lines_of_the_job_after_line(job):
    assert _bash("compare", str(job), "--line", "") == ["main", "yard", "kitchen"]
    assert _bash("compare", str(job), "--line", "k") == ["kitchen"]


def test_the_lines_of_the_quote_from_the_newest_record(job):
    """The same ids as the record holds, in its order, and each option's add-ons after its lines."""
    held = []
    for option in options_of(job.with_suffix("")):
        held += [line["id"] for line in option["price"]["lines"]]
        held += [f"{option['letter']}:{add_on['code']}" for add_on in option["add_ons"]]
    assert len(held) > 20
    assert _bash("explain", str(job), "") == held
    assert _bash("explain", str(job), "A3") == [id_ for id_ in held if id_.startswith("A3")]
    assert _bash("explain", str(job), "a1") == [id_.lower() for id_ in held if id_.startswith("A1")]


def test_the_letters_of_the_options(job):
    held = [option["letter"] for option in options_of(job.with_suffix(""))]
    assert _bash("quote", str(job), "--accepted", "") == held


def test_revisions_and_languages(job):
    assert _bash("changes", str(job), "r") == ["r1"]
    assert _bash("quote", str(job), "--again", "") == ["r1"]
    assert _bash("check", str(job), "--language", "es") == ["es_US"]


def test_commands_by_their_beginning():
    assert _bash("com") == ["compare"]
    assert _bash("tables", "ch") == ["check", "changes"]


@pytest.mark.parametrize("shell", ["zsh", "fish"])
def test_zsh_and_fish_see_what_each_line_is(job, shell):
    held = [line for option in options_of(job.with_suffix("")) for line in option["price"]["lines"]]
    env = {
        "_TYPER_COMPLETE_FISH_ACTION": "get-args",
        "_ESTIMATOR_COMPLETE": f"complete_{shell}",
        "_TYPER_COMPLETE_ARGS": f"estimator explain '{job}' A1",
    }
    answer = " ".join(_asked(env).split())
    assert "A1" in answer
    assert next(line["text_en"] for line in held if line["id"] == "A1")[:20] in answer


@pytest.mark.parametrize("job_file", ["nowhere.toml", "", "'"])
def test_where_there_is_nothing_to_offer_nothing_is_said(job_file):
    assert _bash("explain", job_file or "x", "A") == []


def test_a_damaged_record_is_no_fault(job, tmp_path):
    shutil.copytree(job.parent, tmp_path / "copy")
    record = next((tmp_path / "copy" / "job" / "r1" / "internal").glob("*.json"))
    record.write_text("{")
    assert _bash("explain", str(tmp_path / "copy" / "job.toml"), "A") == []


@pytest.mark.parametrize("shell", ["bash", "zsh", "fish"])
def test_each_shell_gets_a_script_of_its_own(shell):
    code = (
        f"import sys; sys.argv = ['estimator', '--show-completion', '{shell}']; from estimator.cli import main; main()"
    )
    env = os.environ | {"_TYPER_COMPLETE_TEST_DISABLE_SHELL_DETECTION": "1"}
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=False, env=env)
    assert "_ESTIMATOR_COMPLETE" in done.stdout
    assert shell in done.stdout


def test_only_the_command_that_is_being_typed_is_imported(job):
    """A shell waits for the answer: nothing heavy may come with it."""
    code = "import sys, atexit; sys.argv = ['estimator']; atexit.register(lambda: print(*sys.modules, file=sys.stderr)); from estimator.cli import main; main()"
    env = {"_ESTIMATOR_COMPLETE": "complete_bash", "COMP_WORDS": f"estimator explain '{job}' A", "COMP_CWORD": "3"}
    done = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, check=False, env=os.environ | env
    )
    loaded = set(done.stderr.split())
    assert "estimator.cli.commands.explain" in loaded
    assert not {name.split(".")[0] for name in loaded} & {"openpyxl", "xlsxwriter", "babel", "tomlkit", "rich"}
    assert not {"estimator.pipeline", "estimator.cli.commands.quote"} & loaded
