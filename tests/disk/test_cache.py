"""What is kept is used only while it is what it would be made anew, and only where it is this user's own, undamaged."""

import os
import pickle
import shutil
from datetime import date
from hashlib import sha256
from pathlib import Path

import pytest
from typer.testing import CliRunner

from estimator import demo
from estimator.cli.app import build
from estimator.cli.priced_job import Asked, quoted
from estimator.disk import cache as module
from estimator.disk.cache import cached
from estimator.drawing import canvas


@pytest.fixture
def cache(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    folder = tmp_path / "cache"
    monkeypatch.setenv("ESTIMATOR_CACHE", str(folder))
    return folder


class Maker:
    """Makes a list and counts how often."""

    def __init__(self) -> None:
        self.made = 0

    def __call__(self) -> list[int]:
        self.made += 1
        return [self.made]


def test_what_is_made_of_the_same_is_made_once(cache: Path) -> None:
    make = Maker()
    assert [cached("thing", (b"a", b"bc"), make), cached("thing", (b"a", b"bc"), make)] == [[1], [1]]
    assert cached("thing", (b"ab", b"c"), make) == [2]  # the same letters, parted otherwise
    assert cached("other", (b"a", b"bc"), make) == [3]


def test_another_program_finds_nothing(cache: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    make = Maker()
    cached("thing", (), make)
    monkeypatch.setattr(module, "_program", lambda: b"a later one")
    assert cached("thing", (), make) == [2]


def test_what_no_longer_holds_is_made_anew_and_not_kept(cache: Path) -> None:
    make = Maker()
    assert cached("thing", (), make, lambda _: False) == [1]
    assert not cache.exists()
    assert cached("thing", (), make, lambda _: True) == [2]
    assert cached("thing", (), make, lambda found: found == [3]) == [3]


@pytest.mark.parametrize(
    "damage",
    [
        lambda data: data[:-1],
        lambda data: b"",
        lambda data: data[:40] + bytes([data[40] ^ 1]) + data[41:],
        lambda data: bytes(32) + data[32:],
    ],
)
def test_damaged_bytes_are_never_used(cache: Path, damage) -> None:
    make = Maker()
    cached("thing", (), make)
    (path,) = cache.iterdir()
    path.write_bytes(damage(path.read_bytes()))
    assert cached("thing", (), make) == [2]
    assert cached("thing", (), make) == [2]  # written whole again


class Harm:
    def __reduce__(self):
        return (os.system, ("true",))


def through(module: str, name: str) -> bytes:
    """A pickle that asks for a class by the module that holds it, of protocol 4: opcodes as in Python's pickletools."""
    words = b"".join(b"\x8c" + bytes([len(word)]) + word.encode() for word in (module, name))
    return b"\x80\x04" + words + b"\x93."


@pytest.mark.parametrize(
    "data",
    [
        pickle.dumps(Harm()),  # a function of the system
        through("estimator.cli.pdf", "subprocess.Popen"),  # a class of the system, through a module of the program
        through("estimator.disk.cache", "Path"),
    ],
)
def test_nothing_but_records_and_plain_values_is_read(cache: Path, data: bytes) -> None:
    """Whole and with the right digest, but asking for what is no record of the program."""
    make = Maker()
    cached("thing", (), make)
    (path,) = cache.iterdir()
    path.write_bytes(sha256(data).digest() + data)
    assert cached("thing", (), make) == [2]


@pytest.mark.skipif(not hasattr(os, "getuid"), reason="no owners on this system")
@pytest.mark.parametrize("whose", ["folder", "file"])
def test_what_others_may_write_is_not_trusted(cache: Path, whose: str) -> None:
    make = Maker()
    cached("thing", (), make)
    (path,) = cache.iterdir()
    (cache if whose == "folder" else path).chmod(0o777)
    assert cached("thing", (), make) == [2]


def test_a_disk_that_takes_nothing_keeps_nothing(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (tmp_path / "cache").write_text("a file in the way")
    monkeypatch.setenv("ESTIMATOR_CACHE", str(tmp_path / "cache"))
    make = Maker()
    assert [cached("thing", (), make), cached("thing", (), make)] == [[1], [2]]


def test_what_cannot_be_kept_is_given_all_the_same(cache: Path) -> None:
    assert cached("thing", (), lambda: lambda: 3)() == 3


def test_the_oldest_makes_room(cache: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(module, "MOST_BYTES", 300)
    for n in range(9):
        cached("thing", (bytes([n]),), lambda: "x" * 50)
        for path in cache.iterdir():
            os.utime(path, (path.stat().st_mtime - 60,) * 2)
    assert 1 <= len(list(cache.iterdir())) <= 4


def run(*words: str) -> str:
    done = CliRunner().invoke(build(words), list(words), env={"COLUMNS": "100"})
    assert done.exit_code == 0, done.output
    return done.output


@pytest.mark.parametrize("command", ["check", "options", "compare"])
def test_a_command_says_the_same_from_the_cache_and_sees_every_change(
    cache: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, command: str
) -> None:
    """From the cache, after a change of a log, of a wish in the job file, and of a price; each beside an answer without cache."""
    for name in demo.FILES:
        shutil.copyfile(Path(demo.__file__).parent / name, tmp_path / name)
    prices = tmp_path / "prices"
    run("tables", "folder", str(prices))
    job = str(tmp_path / "job.toml")
    words = (command, job, "--tables", str(prices))

    def both() -> str:
        kept_twice = {run(*words) for _ in range(2)}
        with monkeypatch.context() as without:
            without.setenv("ESTIMATOR_CACHE", "no")
            assert kept_twice == {run(*words)}
        return kept_twice.pop()

    answers = [both()]
    log = tmp_path / demo.FILES[-1]
    log.write_text(log.read_text() + "9 roots 35%\n")
    answers.append(both())
    file = tmp_path / "job.toml"
    file.write_text(file.read_text().replace("lived_in = true", "lived_in = false"))
    answers.append(both())
    roles = prices / "roles.csv"
    roles.write_text("\n".join(line.replace(",38", ",58") for line in roles.read_text().split("\n")))
    answers.append(both())
    assert len(set(answers)) > 1


def test_a_log_that_was_not_there_is_found_when_it_comes(cache: Path, tmp_path: Path) -> None:
    for name in demo.FILES:
        shutil.copyfile(Path(demo.__file__).parent / name, tmp_path / name)
    log = tmp_path / demo.FILES[-1]
    held = log.read_text()
    log.unlink()
    words = ["check", str(tmp_path / "job.toml")]
    assert CliRunner().invoke(build(words), words).exit_code == 1
    log.write_text(held)
    run(*words)


@pytest.mark.parametrize("command", [("site", "water"), ("unknowns",)])
def test_tables_that_were_moved_are_found_where_they_lie_now(
    cache: Path, tmp_path: Path, command: tuple[str, ...]
) -> None:
    """The same tables in another folder give the same answer from the cache, which looks for no folder that is gone."""
    for name in demo.FILES:
        shutil.copyfile(Path(demo.__file__).parent / name, tmp_path / name)
    job, before, after = str(tmp_path / "job.toml"), tmp_path / "prices", tmp_path / "moved"
    run("tables", "folder", str(before))
    sheet, *rest = command
    was = run(sheet, job, *rest, "--tables", str(before))
    before.rename(after)
    assert run(sheet, job, *rest, "--tables", str(after)) == was


def test_a_picture_is_drawn_once_and_kept(cache: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """From the cache the same bytes as drawn anew; other words, another picture."""

    def picture(words: str) -> bytes:
        canvas._drawn.cache_clear()  # as in another run of the program
        sheet = canvas.Canvas(90, 30)
        sheet.line([(0, 0), (80, 20)], "#222222")
        sheet.text((2, 2), words, bold=True)
        return sheet.png()

    drawn = [picture("3 ft"), picture("4 ft")]
    with monkeypatch.context() as patched:
        patched.setattr(canvas, "_anew", lambda *_: b"drawn anew")
        assert [picture("3 ft"), picture("4 ft"), picture("5 ft")] == [*drawn, b"drawn anew"]
    monkeypatch.setenv("ESTIMATOR_CACHE", "no")
    assert [picture("3 ft"), picture("4 ft")] == drawn and drawn[0] != drawn[1]


def test_a_price_kept_for_its_own_day_is_not_that_of_an_offer_that_holds(cache: Path) -> None:
    """Both are kept, each under its own day of prices."""
    job, on, offered = (
        Path(demo.__file__).parent / "job.toml",
        date(2026, 12, 1),
        (date(2026, 11, 18), date(2026, 12, 18)),
    )
    own, held = Asked(job_file=job, on=on), Asked(job_file=job, on=on, offered=offered)
    for _ in range(2):
        assert [quoted(own).quote.price_day, quoted(held).quote.price_day] == [on, offered[0]]
    assert len([*cache.glob("price-*")]) == 2
