"""A firm's own words for field notes: taught where a line is asked back, kept in one small file for every job of the firm.

The file is `words.toml`, beside the firm's tables or else beside the user's settings file. A log stays whole by itself: the
line `murk = sag` is written into it wherever the word is used, so that it reads the same on a machine that knows no such word.
"""

import json
import re
import tomllib
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path

from estimator.cli.interview.job_file import JobFile
from estimator.cli.interview.rows import Typed as TypedLog
from estimator.cli.interview.terminal import Terminal
from estimator.cli.own_settings import settings_path
from estimator.cli.price_tables import firms_own
from estimator.disk.whole import write_whole
from estimator.fieldnotes.atoms import Atom, atoms, split
from estimator.fieldnotes.lexicon import lexicon
from estimator.fieldnotes.logbook import DANGERS
from estimator.fieldnotes.question_defaults import table_of
from estimator.fieldnotes.spoken import normal
from estimator.fieldnotes.tokens import tokens
from estimator.model.frozen import Frozen
from estimator.model.say import Say

NAME = "words.toml"
NAMES_A_THING = ("finding", "place", "zone", "material", "surface", "sign", "state")
MOST_WORDS = 500
TEACHES = re.compile(r"\s*([^\W\d_](?:[^\W\d_]|[' -]){0,29}?)\s*=\s*([^\W\d_](?:[^\W\d_]|[' -]){0,29}?)\s*")
"""`murk = sag`: a word of one's own, and what it stands for."""
_HEAD = "# Words of this firm for field notes: what is typed, what it stands for, where it was taught. Delete a line to forget it.\n"
Rows = tuple[str, ...]


def why_not(word: str, means: str) -> Say | None:
    """What keeps this word from being taught; None where nothing does. A danger is never a word of one's own."""
    if any(DANGERS.search(text) or _guarded(text) for text in (word, means)):
        return Say.typed(
            "“{word} = {means}” touches a danger (gas, tendon, live, cannot pass): those are typed in full each time",
            word=word,
            means=means,
        )
    if all(_has_meaning(atom) for atom in _atoms(word)):
        return Say.typed("“{word}” has a meaning of its own already", word=word)
    if any(atom.unknown or atom.token for atom in _atoms(means)) or not any(map(_says, _atoms(means))):
        return Say.typed("“{means}” is no word of a log: write one such as sag, roots or hole", means=means)
    return None


def _atoms(text: str) -> list[Atom]:
    return atoms(split(tokens(normal(text))))


def _has_meaning(atom: Atom) -> bool:
    """Somebody wrote a meaning down for it; a slip or a filler has none."""
    return bool(atom.means) and not atom.slip and "plain" not in atom.means


def _says(atom: Atom) -> bool:
    """It names a thing by a word that somebody wrote down for it."""
    return not atom.slip and any(kind in atom.means for kind in NAMES_A_THING)


def _guarded(text: str) -> bool:
    """It is a word of danger, holds one, or is a slip of the finger away from one."""
    lex, key = lexicon(), tuple(text.lower().replace("'", "").split())
    parts = [key[a:z] for a in range(len(key)) for z in range(a + 1, len(key) + 1)]
    return any(map(lex.guarded, parts)) or any(atom.near for atom in _atoms(text))


@dataclass(slots=True)
class FirmWords:
    """What is known is read from the disk each time, so that two interviews do not forget each other's words; without a
    `path` nothing is kept."""

    path: Path | None = None
    held: dict[str, tuple[str, str]] = field(default_factory=dict)

    def known(self) -> Mapping[str, tuple[str, str]]:
        """Each word with what it means and where it was taught; what may not be taught, or cannot be read, is left out."""
        if self.path is None:
            return self.held
        try:
            data = tomllib.loads(self.path.read_text(encoding="utf-8-sig"))
        except (OSError, ValueError, RecursionError):
            return {}
        words = [(str(word).lower(), _entry(entry)) for word, entry in data.items()]
        return {word: (means, where) for word, (means, where) in words[:MOST_WORDS] if not why_not(word, means)}

    def teach(self, word: str, means: str, where: str) -> None:
        """Keeps it. Errors: OSError from the disk."""
        self._write({**self.known(), word.lower(): (means, where)})

    def forget(self, word: str, where: str) -> bool:
        """Takes it out where it was taught in this very log; whether it was."""
        known = dict(self.known())
        if known.get(word.lower(), ("", ""))[1] != where:
            return False
        del known[word.lower()]
        self._write(known)
        return True

    def _write(self, words: Mapping[str, tuple[str, str]]) -> None:
        if self.path is None:
            self.held = dict(words)
            return
        lines = [
            f"{json.dumps(word, ensure_ascii=False)} = {{ means = {json.dumps(means, ensure_ascii=False)}, "
            f"taught_in = {json.dumps(where, ensure_ascii=False)} }}\n"
            for word, (means, where) in sorted(words.items())
        ]
        self.path.parent.mkdir(parents=True, exist_ok=True)
        write_whole(self.path, (_HEAD + "".join(lines)).encode("utf-8"))

    def used_in(self, text: str, rows: Sequence[str]) -> Iterator[tuple[str, str]]:
        """Words of the firm in this line that its log does not explain yet."""
        explained = {word for word, _ in explanations(rows)}
        for word, (means, _) in self.known().items():
            if word not in explained and holds(text, word):
                yield word, means


def _entry(entry: object) -> tuple[str, str]:
    """What a word means, and where it was taught; a bare text means it everywhere."""
    if isinstance(entry, Mapping):
        return str(entry.get("means", "")), str(entry.get("taught_in", ""))
    return str(entry), ""


# ── words in a log ────────────────────────────────────────────────────────────────────────────


def holds(row: str, word: str) -> bool:
    """Whether a line, its remark left out, says the word.

    >>> holds("12 Murk 20%", "murk"), holds("12 sag ; murk", "murk"), holds("# 12 murk", "murk"), holds("murky", "murk")
    (True, False, False, False)
    """
    body = "" if row.lstrip().startswith("#") else row.partition(";")[0]
    return bool(re.search(rf"(?<!\w){re.escape(word)}(?!\w)", body, re.IGNORECASE))


def lesson(text: str, asked: str) -> tuple[str, str] | None:
    """The word and its meaning, where an answer teaches a word of the line that is asked about.

    >>> lesson("Murk = sag", "12 murk heavy"), lesson("hb = hall bath", "12 murk heavy")
    (('murk', 'sag'), None)
    """
    found = TEACHES.fullmatch(text)
    return (found[1].lower(), found[2]) if found and holds(asked, found[1]) else None


def explanations(rows: Sequence[str]) -> Iterator[tuple[str, int]]:
    """Each word that a line of the log explains, and that line, from 0."""
    for n, row in enumerate(rows):
        if found := TEACHES.fullmatch(row.partition(";")[0]):
            yield found[1].lower(), n


def unused(rows: Sequence[str], words: Sequence[str]) -> list[tuple[str, int]]:
    """Of these words those that are explained and no longer used, with their line."""
    return [
        (word, n)
        for word, n in explanations(rows)
        if word in words and not any(holds(row, word) for k, row in enumerate(rows) if k != n)
    ]


def words_of(job: JobFile) -> Mapping[str, str]:
    """The words that the job file itself gives."""
    return {str(word): str(means) for word, means in table_of(job.data, "words").items()}


class Lessons(Frozen):
    """`here` names the log, so that a word another log taught is never forgotten by this one."""

    words: FirmWords
    terminal: Terminal
    here: str

    def taught(self, word: str, means: str) -> None:
        """Keeps it for every job of the firm. Errors: OSError from the disk."""
        self.words.teach(word, means, self.here)
        self.terminal.tell(Say.typed("“{word}” is kept for your firm; taken back with its line", word=word))

    def without_unused(self, rows: Rows, was: Rows) -> Rows:
        """Return the log without explanations that nothing needs; what `was` explained and it does not is forgotten."""
        for _, n in reversed(unused(rows, tuple(self.words.known()))):
            rows = (*rows[:n], *rows[n + 1 :])
        now = {word for word, _ in explanations(rows)}
        for word in {word for word, _ in explanations(was)} - now:
            self._forgotten(word)
        return rows

    def taken_back(self, log: TypedLog) -> None:
        """What a correction takes back stays written; a word that no other line uses is forgotten."""
        for word, _ in explanations(log.rows):
            uses = [row for row in log.rows if not TEACHES.fullmatch(row) and holds(row, word)]
            if holds(log.taken_back, word) and len(uses) == 1:
                self._forgotten(word)

    def _forgotten(self, word: str) -> None:
        if self.words.forget(word, self.here):
            self.terminal.tell(Say.typed("“{word}” is forgotten", word=word))


def firm_words(asked: Path | None) -> FirmWords:
    """Beside the firm's tables; where only the demo's are used, beside the user's settings file."""
    tables = firms_own(asked)
    if tables is None:
        return FirmWords(settings_path().parent / NAME)
    return FirmWords((tables if tables.is_dir() else tables.parent) / NAME)
