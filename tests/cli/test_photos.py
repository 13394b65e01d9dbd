"""Pictures named in the notes go into the papers without place or time, are kept with the revision and come back from it."""

import base64
import io
from pathlib import Path

import pytest
from PIL import Image
from typer.testing import CliRunner

from estimator.cli.app import build

# the smallest whole PNG: one grey point; a text block that names a place is put in below
PNG = base64.b64decode("iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAAAAAA6fptVAAAACklEQVR4nGNgAAAAAgABSK+kcQAAAABJRU5ErkJggg==")


def _with_place(png: bytes) -> bytes:
    import struct
    import zlib

    body = b"Comment\x00taken at 417 Larkspur"
    block = struct.pack(">I", len(body)) + b"tEXt" + body + struct.pack(">I", zlib.crc32(b"tEXt" + body))
    return png[:-12] + block + png[-12:]


@pytest.fixture(name="job")
def _job(small) -> Path:
    log = small.with_name("main.txt")
    log.write_text(log.read_text().replace("offset 24%", "offset 24% photo 3 hole.png"))
    assert "hole.png" in log.read_text()
    small.with_name("hole.png").write_bytes(_with_place(PNG))
    return small


def _quote(job: Path, *words: str):
    typed = ["quote", str(job), "--language", "en_US", *words]
    return CliRunner().invoke(build(typed), typed)


def test_a_picture_is_kept_without_its_place_and_comes_back_byte_for_byte(job):
    assert _quote(job).exit_code == 0
    kept = job.parent / "job" / "r1" / "internal" / "pictures" / "hole.png"
    assert b"Larkspur" not in kept.read_bytes()
    shown, drawn = (Image.open(io.BytesIO(data)).convert("RGB") for data in (kept.read_bytes(), PNG))
    assert (shown.size, shown.tobytes()) == (drawn.size, drawn.tobytes())
    (job.parent / "hole.png").unlink()
    again = _quote(job, "--again", "r1")
    assert again.exit_code == 0
    assert "byte for byte" in again.stdout


def test_another_picture_makes_another_revision(job):
    assert _quote(job).exit_code == 0
    assert "Nothing changed" in _quote(job).stdout
    (job.parent / "hole.png").unlink()
    assert "r2 is written" in _quote(job).stdout


def test_a_picture_outside_the_job_s_folder_is_not_read(job):
    """The grammar takes a bare name only; the folder is the job's own."""
    log = job.parent / "main.txt"
    log.write_text(log.read_text().replace("hole.png", "missing.png"))
    typed = ["quote", str(job), "--language", "en_US"]
    (job.parent.parent / "missing.png").write_bytes(PNG)
    result = CliRunner().invoke(build(typed), typed)
    (job.parent.parent / "missing.png").unlink()
    assert result.exit_code == 0
    assert "(cli/no-picture)" in result.stderr
