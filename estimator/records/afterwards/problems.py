"""What can be wrong with hours and money typed after the signature, each declared once."""

from estimator.model.problem import error, kinds_in, warning

NO_OPTION = error(
    "after/no-option",
    "no option was accepted yet.",
    "Note it first with estimator quote JOB --accepted A, or name it here with --option A.",
    "Hours and money are held against one option of one revision.",
)
NO_TASK = error(
    "after/no-task",
    "there is no task “{task}” in the estimate, nor in the production table.",
    "{near} Its tasks are: {tasks}.",
    "A task is told by its name in the production table.",
)
UNKNOWN_CAUSE = error(
    "after/cause",
    "“{cause}” is no cause this program knows.",
    "Write one of: {causes}; or nothing.",
    "Causes are few, so that they can be counted over many jobs.",
)
BAD_AMOUNT = error(
    "after/amount",
    "“{value}” is no {what}.",
    "Write a number of 0 or more, such as 6.5.",
    "Real hours and quantities are numbers.",
)
NO_HOURS_SHEET = error(
    "after/no-hours-sheet",
    "this workbook has no sheet of real hours for option {letter} of this job.",
    "Use the crew's workbook that was made for r{number}, with the heads of its hours sheet as they were.",
    "Real hours are read from the crew's own sheet.",
)
NOTHING_FILLED_IN = error(
    "after/nothing-filled-in",
    "nobody has written any hours on this sheet.",
    "Fill in the column “hours” first; days alone are typed with --days.",
    "A sheet without hours says nothing.",
)
DAMAGED = error(
    "after/damaged",
    "this file cannot be read: {said}.",
    "Bring it back from a copy, or move it away and enter again what was in it; the revisions are not touched by it.",
    "A file of hours or money is read whole or not at all.",
)
MORE_THAN_AGREED = warning(
    "after/more-than-agreed",
    "{over} dollars more came in for “{name}” than was agreed.",
    "Is the amount right? To take it back: money JOB --paid '{name}' --amount -{over}",
    "A slip in an amount reads as money the homeowner gets back.",
)
BEFORE_SIGNING = warning(
    "after/before-signing",
    "this payment is dated {day}, before the option was signed on {signed}.",
    "Is the day right? Take it back with the same amount below 0, and note it again with --on.",
    "Money before a signature is rarely meant.",
)
BOOKED_ALREADY = warning(
    "after/booked-already",
    "“{reference}” is booked already, {amount} dollars for “{name}” on {day}; now it counts twice.",
    "If it is the same money, take this one back: "
    "money JOB --paid '{paid}' --amount -{now} --ref '{reference}' --on {on}",
    "One check comes in once.",
)
SAME_AGAIN = warning(
    "after/same-again",
    "the very same {kind} of {amount} dollars is noted already on {day}; now it counts twice.",
    "If it is the same money, take this one back: money JOB {back} --amount {taken} --on {day}",
    "Two equal payments on one day may be one that was typed twice.",
)
NO_MILESTONE = error(
    "after/no-milestone",
    "the payments of this job have no “{name}”.",
    "Write one of: {names}.",
    "Money is noted against a payment that was agreed.",
)
NOTHING_TO_BILL = error(
    "after/nothing-to-bill",
    "the change order to {name} cannot be billed: {why}.",
    "Name a later revision with the option that was signed, or type the change: money JOB --change TEXT --amount DOLLARS.",
    "A change order bills what a later revision costs above what was signed.",
)
FAR_FROM_ESTIMATE = warning(
    "after/far-from-estimate",
    "{what}: {real} {unit} typed, {estimated} estimated.",
    "Is it right, and in {unit}? What was typed stands until you type it again.",
    "Minutes for hours or a slipped point would turn up in every suggested rate.",
)
LOST_AFTER_DONE = error(
    "after/lost-after-done",
    "the work was noted as done on {day}; this job cannot be lost.",
    "Nothing has to be written; a credit is money JOB --credit TEXT --amount DOLLARS.",
    "A job that was built was won.",
)

PROBLEMS = kinds_in(globals())
