"""Words that one log teaches its firm: kept when they are taught, forgotten when the line that taught them goes."""

from estimator.cli.interview.own_words import TEACHES, FirmWords, Rows, explanations, holds, unused
from estimator.cli.interview.rows import Typed as TypedLog
from estimator.cli.interview.terminal import Terminal
from estimator.model.frozen import Frozen
from estimator.model.say import Say


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
