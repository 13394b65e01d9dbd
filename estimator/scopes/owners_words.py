"""What the owner wrote by hand in the job file in; every word of it that hits nothing, as a warning, out."""

from collections.abc import Iterator
from functools import cache
from typing import TYPE_CHECKING

from estimator.model.gas import GAS_SMELL
from estimator.model.job import Job
from estimator.model.judgement import FLOOR_RULE, Effect
from estimator.model.problem import Kind, Place, Problem, warning
from estimator.model.say import Say, chained
from estimator.model.wanted import Override, WantedOption
from estimator.model.work import all_repairs
from estimator.tables.against_job import against_job
from estimator.tables.cell_problems import near, near_or_all
from estimator.works.methods import names

if TYPE_CHECKING:
    from estimator.scopes.choose import Choices
    from estimator.scopes.chosen import Chosen
    from estimator.tables.tables import Tables

JOB_FILE = "the job file"
UNKNOWN_RULE = warning(
    "job/unknown-rule",
    "{what} names the rule “{rule}”, and there is none of that name: it changes nothing.",
    "{near} `estimator rules` lists them all.",
    "A misspelt rule must not pass for one that was overruled.",
)
OVERRIDE_EMPTY = warning(
    "job/override-empty",
    "the override “{reason}” says why and not what: it changes nothing.",
    "Add the rule, or an item with its quantity or hours, or a price; or take it out.",
    "The owner's word is never dropped without a word.",
)
OVERRIDE_LINE = warning(
    "job/override-line",
    "the override “{reason}” is for line “{line}”, and there is none of that name: it changes nothing.",
    "{near}",
    "The owner's word is never dropped without a word.",
)
OPTION_NAME = warning(
    "job/option-name",
    "[[option]] do = “{do}” names “{name}”, and nothing is called that: it changes nothing.",
    "{near}",
    "A way that the owner wanted out of the quote must not stay in it by a slip of the pen.",
)
OPTION_EMPTY = warning(
    "job/option-empty",
    "[[option]] do = “{do}” has no repairs: there is nothing to show.",
    'Add repairs = [{ method = "tunnel", line = "main", where = "2-29" }], or take it out.',
    "An option that the owner wanted is never dropped without a word.",
)
NOT_OFFERED = warning(
    "job/option-not-offered",
    "what you wanted by hand ({what}) is not among the options: {why}",
    "See `estimator options JOB --why`; change the wish, or overrule the rule with a reason where that may be done.",
    "An option that the owner wanted is never dropped without a word.",
)
PROBLEMS: tuple[Kind, ...] = (UNKNOWN_RULE, OVERRIDE_EMPTY, OVERRIDE_LINE, OPTION_NAME, OPTION_EMPTY, NOT_OFFERED)


def unknown_words(job: Job, tables: "Tables") -> tuple[Problem, ...]:
    """What the job names that neither the tables nor the program know, before anything is priced."""
    return (*against_job(job, tables), *words_that_hit_nothing(job))


def words_that_hit_nothing(job: Job) -> tuple[Problem, ...]:
    """Overrides, approvals and wishes that name what is not there."""
    return (*_overrides(job), *_approvals(job), *_wishes(job))


def lost_wishes(job: Job, choices: "Choices") -> tuple[Problem, ...]:
    """Options wanted by hand that are not among those found, and new names that no option got."""
    return (*_not_offered(job, choices), *_not_renamed(job, choices))


@cache
def _rules() -> tuple[str, ...]:
    """Loaded where a job names one: most name none."""
    from estimator.scopes.rules import BY_ID

    return (*BY_ID, FLOOR_RULE, GAS_SMELL)


def _overrides(job: Job) -> Iterator[Problem]:
    lines = [line.name for line in job.lines]
    place = Place(JOB_FILE, table="override")
    for override in job.overrides:
        if override.rule and override.rule not in _rules():
            what = Say.of("the override “{reason}”", reason=override.reason)
            yield UNKNOWN_RULE(place, what=what, rule=override.rule, near=near(override.rule, _rules()))
        if override.line and override.line not in lines:
            hint = near_or_all(override.line, lines)
            yield OVERRIDE_LINE(place, reason=override.reason, line=override.line, near=hint)
        if not _says_what(override):
            yield OVERRIDE_EMPTY(place, reason=override.reason)


def _says_what(override: Override) -> bool:
    return bool(override.rule or override.quantity or override.hours is not None or override.price is not None)


def _approvals(job: Job) -> Iterator[Problem]:
    for approval in job.approvals:
        for rule in (r for r in approval.covers if r not in _rules()):
            what = Say.of("the approval “{what}”", what=approval.what)
            yield UNKNOWN_RULE(Place(JOB_FILE, table="approval"), what=what, rule=rule, near=near(rule, _rules()))


def _wishes(job: Job) -> Iterator[Problem]:
    place = Place(JOB_FILE, table="option")
    for wish in job.options:
        if wish.do == "drop" and wish.name.lower() not in names():
            yield OPTION_NAME(place, do=wish.do, name=wish.name, near=near_or_all(wish.name, names(), len(names())))
        if wish.do in ("add", "pin") and not wish.repairs:
            yield OPTION_EMPTY(place, do=wish.do)


def _not_offered(job: Job, choices: "Choices") -> Iterator[Problem]:
    for wish in job.options:
        if wish.do in ("add", "pin") and wish.repairs and not any(_answers(o, wish) for o in choices.options):
            each = (Say.of("{method} on line {line}", method=r.method, line=r.line) for r in wish.repairs)
            what = wish.name or chained(each, ", ")
            yield NOT_OFFERED(Place(JOB_FILE, table="option"), what=what, why=_why_not(wish, choices))


def _answers(option: "Chosen", wish: WantedOption) -> bool:
    there = {(r.method, r.line) for r in all_repairs(option.scope.repairs)}
    return all((r.method, r.line) in there for r in wish.repairs)


def _why_not(wish: WantedOption, choices: "Choices") -> Say:
    wanted = {(r.method, r.line) for r in wish.repairs}
    said = (v for v in choices.verdicts if v.effect is Effect.BLOCKS and not v.overruled)
    against = (v for v in said if (v.method, v.line) in wanted)
    no_room = Say.of("there was no room for it or a rule is against it.")
    return next((Say.of("{why} ({rule})", why=v.estimator, rule=v.rule) for v in against), no_room)


def _not_renamed(job: Job, choices: "Choices") -> Iterator[Problem]:
    known = dict.fromkeys((*(o.name for o in choices.options if o.name), *_methods_in(choices)))
    for wish in job.options:
        if wish.do == "rename" and not any(o.name == wish.new_name for o in choices.options):
            hint = near_or_all(wish.name, known)
            yield OPTION_NAME(Place(JOB_FILE, table="option"), do=wish.do, name=wish.name, near=hint)


def _methods_in(choices: "Choices") -> tuple[str, ...]:
    return tuple(r.method for option in choices.options for r in option.scope.repairs)
