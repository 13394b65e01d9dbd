"""What can be wrong with words typed on the command line, each declared once."""

from estimator.model.problem import error, kinds_in, warning

BAD_CHANGE = error(
    "cli/set",
    "--set {change} says nothing to change.",
    'Write KEY=VALUE, such as --set soil=rock or --set house.slab_thickness="6 in".',
    "--set takes a key of the job file and its value.",
)
NOTHING_TO_CHANGE = error(
    "cli/set-broken-file",
    "this file is broken TOML, so nothing in it can be changed for a what-if: {said}.",
    "Mend it first; `estimator check` says where.",
    "--set needs a job file that can be read.",
)
STILL_INVENTED = warning(
    "cli/still-invented",
    "this quote is no offer: {because}.",
    "Replace the demo figures before it goes to a customer: estimator tables start FOLDER --job JOB. Its papers say DEMO until then.",
    "Invented numbers must never reach a real customer.",
)
DAY_TO_COME = warning(
    "cli/day-to-come",
    "{day} has not come yet: today is {today}.",
    "If the day is wrong, take {file} away and note the right day.",
    "An acceptance or work done is noted with the day it happened.",
)
NO_ITEM = error(
    "cli/no-item",
    "no line of the quote is called {item}.",
    "The lines are {items}.",
    "explain takes a line's id: the option's letter and the line's number.",
)
NO_RULE = error(
    "cli/no-rule",
    "no rule and no reading is called “{asked}”.",
    "{near} `estimator rules` lists all of them.",
    "rules takes a name, such as lining-keeps-the-grade.",
)
NO_OPTION = error(
    "cli/no-option",
    "there is no option {letter} on these notes.",
    "The options are {letters}.",
    "--option takes the letter of a way that is offered.",
)
NO_LINE = error(
    "cli/no-line",
    "the job has no line called “{line}”.",
    "Name one with --line: {names}.",
    "A stretch is a stretch of a line, so the line has to be named.",
)
BEYOND_LINE = error(
    "cli/beyond-line",
    "station {station} ft is not on the {line}.",
    "It is known from {first} to {last} ft: name stations between these.",
    "Nothing is compared where nothing is known.",
)
NOTHING_TO_COMPARE = error(
    "cli/nothing-to-compare",
    "nothing on this job is dug for, so there is no stretch to compare ways over.",
    "Name one: --line main --where 2-29",
    "compare takes the stretch of the dearest trouble, where there is one.",
)
FOLDER_NOT_EMPTY = error(
    "cli/folder-not-empty",
    "the folder is there already and holds something.",
    "Give the name of a new folder: estimator demo another-name",
    "The demo writes into a new folder only, so that nothing of yours is touched.",
)
FILE_THERE = error(
    "cli/file-there",
    "there is a file of this name already.",
    "Give another name; nothing of yours is written over.",
    "A command that writes a file never writes over one.",
)
FILE_ENDING = error(
    "cli/file-ending",
    "a workbook is written, and its name does not end in {ending}.",
    "Name it {name}: under another ending no program opens it.",
    "Programs choose how to read a file by the end of its name.",
)
NO_PICTURE = warning(
    "cli/no-picture",
    "the notes name a picture {name}, and it is not there.",
    "Put it beside the job file, or take its name out of the notes; the papers go without it.",
    "Pictures lie beside the job file.",
)
NOT_A_PICTURE = warning(
    "cli/not-a-picture",
    "{said}.",
    "Save it as JPEG or PNG; the papers go without it.",
    "The papers hold JPEG and PNG pictures.",
)
OWN_SETTINGS = error(
    "cli/own-settings",
    "your settings file cannot be used: {said}.",
    'It may hold tables = "FOLDER" and language = "es_US" ({languages}). Mend it or move it away.',
    "The settings file stands in for --tables and --language, so a mistake in it must not pass unseen.",
)
STOPPED_HALF_WAY = warning(
    "cli/stopped-half-way",
    "stopped: {done} of {all} jobs are priced and kept in this file.",
    "Type the same again to go on from there; the file goes away when all are done.",
    "A long run that is stopped by hand loses nothing.",
)
INTERVIEW_OPEN = error(
    "cli/interview-open",
    "this job file is open in another window.",
    "Close that interview with `quit`, then type the same again.",
    "Two interviews on one file would write over each other's answers.",
)
NO_ORDER = error(
    "cli/no-order",
    "no change order can be written: {why}.",
    "{instead}",
    "A change order changes what was signed, and says the same figures as the quotes it stands on.",
)
NOTHING_TO_BUY = error(
    "cli/nothing-to-buy",
    "there is nothing to buy for: no job here is accepted and still to be done.",
    "Note the acceptance first: estimator quote JOB --accepted A --on 2026-11-20.",
    "Material is bought for what was signed.",
)

PROBLEMS = kinds_in(globals())
