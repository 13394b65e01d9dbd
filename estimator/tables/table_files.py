"""Where the program's own tables lie; and what a set of tables holds, told apart by content."""

from hashlib import sha256
from pathlib import Path

from estimator.disk.whole import read_bytes


def demo_folder() -> Path:
    """The demo tables: price_tables/ of a checkout, or inside the installed package."""
    package = Path(__file__).resolve().parent.parent
    inside = package / "price_tables"
    return inside if inside.is_dir() else package.parent / "price_tables"


def content_of(path: Path) -> tuple[tuple[str, bytes], ...]:
    """Every file's name and a digest of what it holds; nothing where one cannot be read."""
    try:
        files = sorted(path.glob("*.csv")) if path.is_dir() else [path]
        return tuple((file.name, sha256(read_bytes(file)).digest()) for file in files)
    except OSError:
        return ()
