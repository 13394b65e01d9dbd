"""What can go wrong between a finished quote and its folder, each declared once."""

from estimator.model.problem import error, kinds_in, warning

NO_SPACE = error(
    "records/no-space",
    "there is no room left on the disk for revision r{number}.",
    "Make room and run it again; the earlier revisions are as they were.",
    "A revision is written whole or not at all.",
)
NOT_ALLOWED = error(
    "records/not-allowed",
    "nothing may be written here: {name}.",
    "Close the file if it is open in another program, or move the job to a folder of your own; nothing was changed.",
    "The folder is read-only, belongs to someone else, or a file in it is open.",
)
IN_THE_WAY = error(
    "records/in-the-way",
    "a file stands where the folder for the revisions has to go.",
    "Move or rename that file and run it again.",
    "Revisions are folders beside the job file, under its name.",
)
CANNOT_WRITE = error(
    "records/cannot-write",
    "the machine could not write revision r{number}: {said}.",
    "Look at the disk and run it again; the earlier revisions are as they were.",
    "Any other refusal of the disk.",
)
BUSY = error(
    "records/busy",
    "another run is writing a revision of this job right now.",
    "Wait until it is done and run it again.",
    "Two runs never write the same revision.",
)
NO_REVISION = error(
    "records/no-revision",
    "this job has no revision {asked}.",
    "{instead}",
    "A revision was asked for that was never issued.",
)
ONE_REVISION = error(
    "records/one-revision",
    "this job has {count}, so there is nothing to compare.",
    "`estimator quote` writes {next}, once the notes or the prices have moved; then ask again.",
    "A change is told between two revisions.",
)
DAMAGED = error(
    "records/damaged",
    "the record of r{number} cannot be read: {said}.",
    "Bring that folder back from a copy; the other revisions are not touched by it.",
    "A record is missing or cut short.",
)
LEADS_OUT = error(
    "records/leads-out",
    "the record names {name}, which does not lie inside its folder.",
    "Restore that revision from a backup; nothing was written.",
    "A record may name only files inside its own folder.",
)
CHANGED_SINCE = error(
    "records/changed-since",
    "the record of r{number} is not as it was written: {said}.",
    "Bring that folder back from a copy; the other revisions are not touched by it.",
    "A record was changed by hand, or another version of the program wrote it.",
)
NOTE_DAMAGED = error(
    "records/note-damaged",
    "the note {name} cannot be read: {said}.",
    "Bring it back from a copy, or take it away and note the day again.",
    "Acceptances and work done are small notes beside the revisions.",
)
NEWEST_DAMAGED = warning(
    "records/newest-damaged",
    "the record of r{number} cannot be used, so nobody can tell whether anything changed since.",
    "A new revision is written at the prices of the day; bring r{number} back from a copy before you compare with it.",
    "One damaged revision never stops the next.",
)
NO_OPTION = error(
    "records/no-option",
    "r{number} has no option {letter}.",
    "Its options are {letters}.",
    "Only what was offered can be accepted.",
)
ALREADY_ACCEPTED = error(
    "records/already-accepted",
    "option {letter} of r{number} was accepted on {day} already.",
    "Make a new revision for a change of mind; an acceptance is never written over.",
    "Each revision is accepted once; the newest acceptance counts.",
)
ACCEPTED_TOO_EARLY = error(
    "records/accepted-too-early",
    "option {letter} of r{number} cannot have been accepted on {day}: it was offered on {offered}.",
    "Write the day it was signed: --accepted {letter} --on {offered}",
    "Nobody accepts what was not offered yet.",
)
ACCEPTED_TOO_LATE = error(
    "records/accepted-too-late",
    "the offer of r{number} ended on {until}; option {letter} cannot be accepted on {day}.",
    "Write the day it was signed, or make a new revision at the prices of the day and have that signed.",
    "An offer holds through its last day.",
)
INVENTED = error(
    "records/invented",
    "r{number} rests on the demo's invention and cannot be accepted: {because}.",
    "Replace the demo figures: estimator tables start FOLDER --job JOB. In a row that is right as it stands, write your name and "
    "day into changed_by and changed_on. Then quote again. A trial has demo = true under [job].",
    "Invented wages, margins and papers must never bind a real customer.",
)
NOT_FIXED = error(
    "records/not-fixed",
    "option {letter} of r{number} has no fixed price, so it cannot be accepted. {because}",
    "Write what was found into the notes, make a new revision and have that signed.",
    "Nobody signs a price that something still has to confirm.",
)
NOT_THE_SAME = warning(
    "records/not-the-same",
    "{name} came out with other bytes than were issued.",
    "It was made by {issued}, this is {now}: the cells agree, the bytes need the old versions.",
    "Bytes are promised on the same versions of program and libraries only.",
)

CANNOT_HOLD = error(
    "records/cannot-hold",
    "a workbook cannot hold one of the texts of this job: {said}.",
    "Shorten that text, or type it again, and run it again; nothing was written.",
    "A cell holds 32,767 characters, and no control characters.",
)
NEVER_ISSUED = error(
    "records/never-issued",
    "this workbook is none that was sent for this job.",
    "Name the job it belongs to; the files that were sent stand in `to send` of each revision.",
    "A file is verified against the revisions of one job.",
)
NOT_ACCEPTED = error(
    "records/not-accepted",
    "no option of this job was accepted, so its work cannot be done.",
    "Note the acceptance first, with its day: estimator quote JOB --accepted A --on 2026-11-20",
    "Work begins with a signature.",
)
DONE_TOO_EARLY = error(
    "records/done-too-early",
    "the work cannot have been done on {day}: option {letter} was accepted on {accepted}.",
    "Write the day the work was done: --done --on 2026-12-04",
    "Work begins with a signature.",
)
QUOTED_TOO_EARLY = error(
    "records/quoted-too-early",
    "a new revision cannot be dated {day}: option {letter} was accepted on {accepted}.",
    "Write a day from then on: --on {accepted}",
    "What follows an acceptance is dated after it.",
)
DONE_WHILE_CANCELLABLE = warning(
    "records/done-while-cancellable",
    "the work is noted as done on {day}, and option {letter} could be cancelled until the end of {until}.",
    "Keep the owner's own words for it, where your state lets work begin sooner; ask your lawyer where you have none.",
    "Work done within the days to cancel may never be paid.",
)
ALREADY_DONE = error(
    "records/already-done",
    "this job was noted as done on {day} already.",
    "Nothing has to be written; the note stands beside the revisions.",
    "A note is written once.",
)
OWN_NUMBER_MOVED = warning(
    "records/own-number-moved",
    "your own {mine} for the {what} of {letter} was written when ours was {was}; ours is {now} now.",
    "Look whether your reason still holds ({reason}): what was found under it has changed, or its prices. Else change it.",
    "A number set by hand stays; it must not stay by oversight.",
)
OWN_NUMBER_ELSEWHERE = warning(
    "records/own-number-elsewhere",
    "your own {mine} for the {what} of {letter} ({reason}) was for “{was}”; {letter} is “{now}” now.",
    "Write the letter of the option it is meant for, or take it out.",
    "Options are lettered by their price, so a letter can come to mean another one.",
)
PRICES_EDITED = warning(
    "records/prices-edited",
    "rows in force on {day} read otherwise than when r{number} was made with them, and its offer holds until {until}: {moves}.",
    "A new price is a new row with its own `from` day: this offer then keeps the old one, and --today prices it anew. "
    "Where the old one was a slip, all is well.",
    "A price written over its old row reaches offers that still hold.",
)

PROBLEMS = kinds_in(globals())
