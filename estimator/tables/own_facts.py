"""Facts that a firm thought of itself (setting own_facts) in; what is wrong with their names, in tables and in a job, out."""

from collections.abc import Iterator

from estimator.model.job import Job
from estimator.model.problem import Kind, Place, Problem, error, warning
from estimator.model.say import Say
from estimator.tables import problems as p
from estimator.tables.cell_problems import near_or_all
from estimator.tables.check_view import View
from estimator.tables.lookups import each
from estimator.tables.tables import Tables

FACTS_READ = (
    *((table, "when") for table in ("work_items", "recipes", "events", "extras", "add_ons", "terms", "subs_and_fees")),
    ("factors", "fact"),
    ("contingency", "fact"),
)
"""Every column that asks for a fact."""

BAD_NAME = error(
    "tables/own-fact",
    "own_facts names “{text}”, which cannot be a fact of your own.",
    "Write a name that the program does not have (docs/quantities.md lists its facts) and that begins with neither not nor place.",
    "Two facts of one name would hold where only one of them does.",
)
UNKNOWN = error(
    "job/own-fact",
    "own_facts under [house] has “{word}”, which is no fact of the firm's tables.",
    "{near} A new one is named in the setting own_facts first.",
    "A misspelt fact would slow nothing down, and nobody would know.",
)
BOTH = error(
    "job/own-fact-both-ways",
    "own_facts under [house] says both “{word}” and “not {word}”.",
    "Keep the one that is so.",
    "A fact holds or it does not.",
)
OPEN = warning(
    "job/own-fact-open",
    "nobody said whether “{word}” holds here; the price counts it as no.",
    'Write own_facts = ["{word}"] under [house], or ["not {word}"].',
    "A price that reads a fact nobody looked for is too low where it holds.",
)
PROBLEMS: tuple[Kind, ...] = (BAD_NAME, UNKNOWN, BOTH, OPEN)


def bare(fact: str) -> str:
    """The fact without the `not` before it."""
    return fact.removeprefix("not ").strip()


def named(view: View) -> Iterator[Problem]:
    """A firm's own facts are none of the program's, can stand after `not`, and are read somewhere."""
    read = _read(view.tables)
    for row in (row for row in view.tables.settings if row.key == "own_facts"):
        place = view.at("settings", row, "value")
        for fact in view.tables.own_facts:
            if fact in (view.known.facts or ()) or fact.startswith(("not ", "place ")):
                yield BAD_NAME(place, text=fact)
            elif fact not in read:
                yield p.UNUSED(
                    place, what="own_facts", item=fact, where=Say.of("factors, contingency or a column when")
                )


def unknown_facts(job: Job, tables: Tables) -> Iterator[Problem]:
    """Each fact the job tells is one of the firm's; each that a table reads is told."""
    place, own = Place("the job file", table="house", cell="own_facts"), tables.own_facts
    said = job.house.own_facts
    for word in dict.fromkeys(map(bare, said)):
        if word not in own:
            yield UNKNOWN(place, word=word, near=near_or_all(word, own) if own else Say.of("The tables have none."))
        elif {word, f"not {word}"} <= set(said):
            yield BOTH(place, word=word)
    for word in in_use(tables):
        if word not in map(bare, said):
            yield OPEN(place, word=word)


def in_use(tables: Tables) -> tuple[str, ...]:
    """The firm's own facts that some row in force asks for."""
    read = _read(tables)
    return tuple(fact for fact in tables.own_facts if fact in read)


def _read(tables: Tables) -> set[str]:
    """Every fact that some row in force asks for."""
    return {
        bare(word)
        for table, column in FACTS_READ
        for row in tables.current(table)
        for word in each(getattr(row, column))
    }
