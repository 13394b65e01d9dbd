"""A job file and what is known in, the job file answered question by question out; each answer is saved as it is given."""

from dataclasses import dataclass, field, replace

from estimator.cli.interview import commands, follow_up, log_interview
from estimator.cli.interview.job_file import JobFile
from estimator.cli.interview.log_account import branches
from estimator.cli.interview.next_question import END, failed_branch, next_after
from estimator.cli.interview.own_words import FirmWords, words_of
from estimator.cli.interview.shown import listed, present, title
from estimator.cli.interview.steps import Step, answer_of, first_open, found, item_of, number_of, smells_of_gas
from estimator.cli.interview.steps import steps as every_step
from estimator.cli.interview.terminal import Terminal
from estimator.cli.reader import for_reader, reader
from estimator.cli.views.problems import rows as problem_rows
from estimator.cli.views.screen import Row
from estimator.fieldnotes.answers import LONGEST, YES, Got, Known, Unread, cleaned
from estimator.model.gas import GAS_FIRST
from estimator.model.problem import CannotGoOn
from estimator.model.say import Say, Typed


@dataclass(slots=True)
class Interview:
    """`at` is the question asked now; the job file keeps the one it has come to. `trail` is what `undo` goes back by."""

    job: JobFile
    known: Known
    terminal: Terminal
    at: str = ""
    trail: list[tuple[str, str, str]] = field(default_factory=list)  # question, text and place before the answer
    offer: str = ""
    head: str = ""
    asked_back: tuple[str, str] = ("", "")  # a question and the answer it did not take: given again it may stand
    asked_before: str = ""  # the question just asked: asked again it is short
    walking: bool = False  # after `back`: every question from there to where the interview has come to
    words: FirmWords = field(default_factory=FirmWords)
    adding: str = ""  # a test, line … begun behind that place: one more of it is asked for at its end

    def run(self) -> None:
        """Until the last question is answered, or somebody leaves."""
        self.at = self.at or self.job.next_id or first_open(self.steps(), self.job.data)
        if not self.job.next_id:
            self.job.next_id = self.at
        if smells_of_gas(self.job.data):
            self.terminal.tell(GAS_FIRST, "bad")
        while self.at != END and self._one():
            pass

    def steps(self) -> list[Step]:
        """Every question of this job that the firm's tables have a use for."""
        return [step for step in every_step(self.job.data) if step.question.wanted(self.known)]

    # ── one question ──────────────────────────────────────────────────────────────────────────

    def _one(self) -> bool:
        """Asks what stands at `at`. False when the person leaves."""
        all_steps = self.steps()
        step = all_steps[number_of(self.at, all_steps)]
        self.at = step.id
        self._headed(step)
        if step.question.is_log:
            return self._log(step)
        shown = self.offer or present(step, self.job.data) or self._default(step)
        answer = self.terminal.question(self._text(step), shown)
        self.asked_before = step.id
        if answer is None:
            return False
        answer, offer, self.offer = commands.in_english(cleaned(answer)), self.offer, ""
        if offer and answer.lower() in ("y", "yes", "ok"):
            answer = offer
        if len(answer) > LONGEST:
            self.terminal.tell(Say.of("that is more than an answer; write it shorter"), "bad")
            return True
        if answer.lower() in commands.STOP and not (
            step.begins and answer.lower() == "done" and not item_of(step, self.job.data)
        ):
            if offer:
                self.terminal.tell(
                    Say.typed(
                        "“{offer}” was offered and not taken, so it is not in the file; it is asked again", offer=offer
                    )
                )
            return False
        try:
            if offer and answer.lower() == "undo":
                return True  # what was offered goes; nothing was saved yet
            if self._command(step, answer):
                self.offer = offer if self.at == step.id else ""
                return True
            return self._answered(step, answer or offer)
        except CannotGoOn as stop:
            self.terminal.say(problem_rows(stop.problems, self.terminal.columns, reader()))
            return True

    def _headed(self, step: Step) -> None:
        head = title(step, self.job.data)
        if head and head != self.head:
            self.terminal.say([Row(""), Row(head, "head")])
            self.head = head

    def _text(self, step: Step) -> str:
        """The question; asked for the second time at once it is short."""
        another = step.begins and step.index and answer_of(step, self.job.data) is None
        text = step.section.more if another else step.question.text
        if step.id == self.asked_before:
            return for_reader(text).partition(":")[0]
        return " ".join(filter(None, (for_reader(step.question.before(self._known_now(step))), for_reader(text))))

    def _default(self, step: Step) -> str:
        return step.question.default(self._known_now(step))

    def _answered(self, step: Step, answer: str) -> bool:
        """Always True: there is a next question."""
        has = answer_of(step, self.job.data) is not None
        if step.begins and not has and answer.lower() in YES:
            self.terminal.tell(Say.of("which? such as: {example}", example=step.question.example), "bad")
            return True
        if step.begins and not has and answer.lower() in commands.NO_MORE:
            answer = ""
        elif not answer and not has:
            answer = self._default(step)
        if not answer or answer.lower() in ("skip", "-"):
            if step.question.needed and not has and not (step.begins and step.index):
                self.terminal.tell(Say.of("left open; a price needs it (`list` shows what is open)"))
            self._saved(step, {})
            if step.begins and not has and step.section.table == "water_test":
                self.at = failed_branch(self.job, self.terminal) or self.at
            return True
        this = (step.id, answer.lower())
        known = replace(self._known_now(step), insists=self.asked_back == this)
        got = step.question.read(answer, step.question.key, known)
        self.asked_back = this if isinstance(got, Unread) else ("", "")
        own_words = isinstance(got, Got) and got.values == {step.question.key: answer}
        if (isinstance(got, Unread) or own_words) and commands.NOBODY_KNOWS.fullmatch(answer):
            unknown = step.question.read("unknown", step.question.key, self._known_now(step))
            got = unknown if isinstance(unknown, Got) else Got({}, Say.of("left open"))
        if isinstance(got, Unread):
            self.offer = got.offer
            self.terminal.tell(got.wrong, "bad")
        else:
            self._take(step, got, answer)
        return True

    def _known_now(self, step: Step) -> Known:
        data = self.job.data
        return replace(self.known, data=data, branches=branches(self.job), item=item_of(step, data))

    def _take(self, step: Step, got: Got, answer: str) -> None:
        self._saved(step, dict(got.values))
        if got.said and for_reader(got.said).lower() != answer.lower():
            self.terminal.tell(got.said, "good")

    def _saved(self, step: Step, values: dict[str, object]) -> None:
        """Written, with the next question's name, in one go."""
        before = (step.id, self.job.text, self.job.next_id)
        asked = {each.id for each in self.steps()}
        if values:
            self.job.put(step.table, values)
        self.at, frontier = next_after(self, step, asked)
        self.job.stand_at(frontier)
        self.trail.append(before)

    # ── commands ──────────────────────────────────────────────────────────────────────────────

    def _command(self, step: Step, answer: str) -> bool:
        """True when the answer was a command, and was done."""
        word, _, rest = answer.partition(" ")
        match word.lower():
            case "?" | "help" if not rest:
                self._explain(step)
            case "list" if not rest:
                self.terminal.say(listed(self.job.data, self.terminal.columns))
            case "back" if not rest:
                self._back(step)
            case "undo" if not rest:
                self._undo(step)
            case "go":
                self._go(rest)
            case "log" if not rest:
                self._go("log")
            case "pass" if rest:
                self.terminal.tell(Say.of("that looks like a log; the log is asked for soon, or: go log"), "bad")
            case _:
                return False
        return True

    def _explain(self, step: Step) -> None:
        self.terminal.tell(step.question.why)
        self.terminal.tell(Say.of("Such as: {example}", example=step.question.example))
        self.terminal.tell(commands.COMMANDS, "dim")
        self.terminal.tell(commands.BY_HAND, "dim")

    def _back(self, step: Step) -> None:
        all_steps = self.steps()
        here = number_of(step.id, all_steps)
        asked = [s for s in all_steps[:here] if not (s.begins and answer_of(s, self.job.data) is None)]
        if not asked:
            self.terminal.tell(Say.of("this is the first question"))
            return
        self.at, self.asked_before, self.walking = asked[-1].id, "", True

    def _undo(self, step: Step) -> None:
        """The last answer is taken out again and asked for anew."""
        if not self.trail:
            self._back(step)
            return
        at, text, came_to = self.trail.pop()
        if not self.job.restored(text, came_to):
            self.terminal.tell(
                Say.of("the file was changed elsewhere since; `back` goes to the question instead"), "bad"
            )
            return
        self.at = at
        self.terminal.tell(Say.typed("taken back: {question}", question=at.rpartition(".")[2].replace("_", " ")))

    def _go(self, words: str) -> None:
        self.asked_before, self.walking = "", False
        if not words:
            self.terminal.tell(Say.of("go where? such as: go soil, go line 2, go log, go tests"))
            return
        if commands.BY_HAND_WORDS.fullmatch(words):
            self.terminal.tell(commands.BY_HAND)
            return
        step, others = found(words, self.job.data)
        if isinstance(step, Step):
            self.at = step.id
            if others:
                self.terminal.tell(
                    Say.typed("also: {others}", others=", ".join(f"go {other}" for other in others)), "dim"
                )
            return
        near = Say.typed("; go {name}?", name=step) if step else Say.of("; `list` shows every name")
        self.terminal.tell(Say.of("there is no question “{words}”{near}", words=Typed(words), near=near), "bad")

    # ── the log ───────────────────────────────────────────────────────────────────────────────

    def _log(self, step: Step) -> bool:
        left = log_interview.run(self.job, step, self.terminal, self.words)
        if left == commands.DONE:
            left = follow_up.ask_gaps(self.job, step, dict(words_of(self.job)), self.terminal)
        if left == commands.LEAVE:
            return False
        if left.startswith("go "):
            self._go(left.removeprefix("go "))
        elif left != commands.TO_THE_LOG:
            self._saved(step, {})
        return True
