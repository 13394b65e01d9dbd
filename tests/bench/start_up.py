"""Start-up: `estimator --help` against a bare interpreter that imports only typer."""

from tests.bench.clock import middle, run

TIMES = 15
STARTS: tuple[tuple[str, tuple[str, ...]], ...] = (
    ("python, nothing", ("-c", "pass")),
    ("python, `import typer`", ("-c", "import typer")),
    ("`estimator --version`", ("-m", "estimator", "--version")),
    ("`estimator --help`", ("-m", "estimator", "--help")),
    ("`estimator quote --help`", ("-m", "estimator", "quote", "--help")),
)


def start_up() -> list[str]:
    rows = [f"| {name} | {1000 * middle(lambda words=words: run(*words), TIMES):.0f} |" for name, words in STARTS]
    return ["| start | milliseconds |", "|---|---:|", *rows]
