"""Every command: its name, its module, the line the overview shows, an example. The module is imported when it runs."""

from estimator.model.frozen import Frozen
from estimator.model.say import Say


class Entry(Frozen):
    """One command; `module` holds a function `command`."""

    name: str
    line: str
    example: str
    group: str = ""

    @property
    def module(self) -> str:
        parts = [part for part in (self.group, self.name) if part]
        return "estimator.cli.commands." + "_".join(parts)


COMMANDS: tuple[Entry, ...] = (
    Entry("demo", "A made-up job, from notes to files, in a new folder.", "estimator demo my-first-look"),
    Entry("start", "An interview that writes a job file and its logs.", "estimator start larkspur/job.toml"),
    Entry("check", "Problems in the notes, and questions for a return visit.", "estimator check larkspur/job.toml"),
    Entry("options", "The ways of repair side by side.", "estimator options larkspur/job.toml --why"),
    Entry(
        "compare",
        "Tunnel, break-through and trench on one stretch, and where they break even.",
        "estimator compare larkspur/job.toml --line main --set soil=rock",
    ),
    Entry(
        "unknowns",
        "What moves each price most, as questions for the return visit.",
        "estimator unknowns larkspur/job.toml",
    ),
    Entry(
        "quote",
        "Write the homeowner's, the office's and the crew's files.",
        "estimator quote larkspur/job.toml --language es_US",
    ),
    Entry(
        "explain", "One line of the quote, down to the findings and the price cells.", "estimator explain job.toml A3"
    ),
    Entry(
        "rules",
        "The rules with their limits; or one of them whole, by its name.",
        "estimator rules tendons-in-the-slab",
    ),
    Entry("changes", "What moved between two revisions, and why.", "estimator changes larkspur/job.toml r1 r2"),
    Entry("jobs", "Every job below a folder, with its state.", "estimator jobs larkspur"),
    Entry(
        "actuals",
        "Hours as they turned out beside the estimate; over many jobs, suggested rates.",
        'estimator actuals job.toml --task "tunnel dig" --hours 36 --cause soil',
    ),
    Entry(
        "money",
        "What fell due, what came in, changes and credits, what is owed.",
        "estimator money larkspur/job.toml --paid deposit --amount 1000 --ref 123",
    ),
    Entry(
        "purchase",
        "What to buy for the jobs that were accepted, by supplier.",
        "estimator purchase jobs --to purchase.xlsx",
    ),
    Entry(
        "crew",
        "The crew's workbook for the option that was sold, or for another one.",
        "estimator crew larkspur/job.toml --out crew.xlsx --language es_US",
    ),
    Entry(
        "site",
        "A short sheet for the site: tests, water, levels, marks, grade, plan, a lift, the record.",
        "estimator site larkspur/job.toml tests",
    ),
    Entry(
        "start",
        "Fifty questions, from the demo's invented figures to your own tables.",
        "estimator tables start my_tables",
        group="tables",
    ),
    Entry("check", "Look for mistakes in price tables.", "estimator tables check price_tables", group="tables"),
    Entry(
        "workbook",
        "Write the tables as one workbook to edit.",
        "estimator tables workbook prices.xlsx",
        group="tables",
    ),
    Entry(
        "folder",
        "Write the tables as a folder of CSV files.",
        "estimator tables folder my_tables --tables prices.xlsx",
        group="tables",
    ),
    Entry(
        "changes",
        "What differs between two sets of tables, and what it does to jobs.",
        "estimator tables changes old_tables new_tables --jobs jobs",
        group="tables",
    ),
)

GROUPS: dict[str, Say] = {"tables": Say.of("The firm's price tables: check them, edit them, compare them.")}
