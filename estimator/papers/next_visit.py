"""The questions of the return visit in; what the next visit settles out: for the homeowner in his words, for the office as asked."""

from collections.abc import Sequence

from estimator.model.judgement import Question
from estimator.model.say import Feet, Say
from estimator.wording.plain import LINES, in_plain_words

SETTLED: dict[str, Say] = {
    "Run water, then film again with the flow stopped.": Say.of("the depth of the standing water."),
    "Clear the line downstream and film again.": Say.of("what holds the water back farther down."),
    "Film again with nobody using water.": Say.of("whether water also stands there when nobody uses any."),
    "The camera has come up to this from both ends: dig to see.": Say.of("what closes the pipe, and what lies behind it."),
    "Come in from the other end, or dig to see.": Say.of("what closes the pipe, and what lies behind it."),
    "Locate it again from above before anything is marked or dug.": Say.of("where exactly the damage lies in the ground."),
    "Whose line is it? Its owner must clear it before anyone works in or above this drain.": Say.of("whose line runs through the drain; nobody works there before its owner has cleared it."),
    "Look at the pump, its check valve and the pit first. Then test the force main with pressure and find where it runs.": Say.of("the pump, its pit and where the pressure pipe runs."),
    "Take a photo with a ruler or coin for scale.": Say.of("how bad it is, measured and not judged by eye."),
    "Probe, locate, and sound the floor or paving above.": Say.of("whether soil has washed out above the pipe."),
    "Ask for the dates of any foundation work or fresh fill.": Say.of("whether the ground still moves; please look for papers of any foundation work."),
    "Water-test the whole system.": Say.of("whether all the drains hold water."),
    "Smoke or dye test.": Say.of("where the opening is that insects or rodents come through."),
    "Shut the house water and look again.": Say.of("where the water comes from that runs while nobody uses any."),
    "Descale and inspect again.": Say.of("what the pipe is like once the rust is off."),
    "Test each section by itself, with a plug at each branch drain.": Say.of("which part of the drains leaks."),
    "Inspect the section that failed with the camera, and read the height at which its level stops.": Say.of("where the section that failed its test leaks."),
    "Fill every trap, then smoke test drains and vents while the smell is there.": Say.of("where the sewer smell comes from."),
    "Smoke test the drains, look for open and dead branches, and check every cleanout cap.": Say.of("how rats get into the drain and out of it."),
    "Which fixture fills first, and when which other is used? Clear the line from there to the street and inspect it; ask the city about its main.": Say.of("what makes the drain back up into the house."),
    "Which fixtures are slow, all or one? Inspect the line they share, and check the vents.": Say.of("why fixtures drain slowly."),
    "Set the plug again, and once in pipe known to be sound.": Say.of("whether all the water really left through a leak."),
    "Descale, or cut in a test tee, and test again.": Say.of("whether the part holds water that could not be tested."),
    "Plug and test each exit.": Say.of("whether each drain that leaves the house holds water."),
    "Was it really there? It was only suspected: look again before a fixed price.": Say.of("whether what we only suspect is really there."),
    "Locate the pipe here and write down how deep it lies and under which surface: the price of any dig stays open until then.": Say.of("how deep the pipe lies."),
    "How deep is the pipe under the floor here? A depth from the lawn says nothing of it. Locate it from inside: the price of any dig stays open until then.": Say.of("how deep the pipe lies under the floor."),
    "Take the level of the pipe's bottom at both ends of the standing water and beyond, to know how far it must be laid anew.": Say.of("the length of pipe to replace so that the low spot is gone."),
    "What drains into this side drain, and is it in use? Run water to be sure.": Say.of("which fixtures drain into the side pipes, and which of these are in use."),
    "This part was not filmed; it stays out of every fixed price until it is.": Say.of("what the part is like that no camera has seen."),
    "Does the slab hold steel tendons? A missing stamp proves nothing: ask, look at the slab edge, or scan.": Say.of("whether the concrete floor holds steel cables under tension; please have drawings of the house ready, if there are any."),
    "Where do water, gas, power and ducts run in and under the slab, and where are the shut-offs?": Say.of("where water, gas and power run under the floor; please show us the shut-offs."),
    "Is there a beam along the slab's edge, how deep and how wide? Nobody said, and that does not mean none: uncover the edge, or ask for the drawing.": Say.of("how deep the concrete goes along the edge of the house; please have drawings ready, if there are any."),
}  # fmt: skip
"""What the work order asks for, and what its answer tells the owner of the house."""

FOR_THE_FIRM = frozenset(
    {
        "Has the gas company checked the house and said in writing that it is safe?",
        "Who is the competent person for the dig? Write the name under [site] as competent_person: without it no crew sheet is made for a tunnel, a pit at a wall, or a dig of 4 ft and more.",
    }
)
"""What the firm answers itself: no word of it leaves the house."""


def for_the_homeowner(questions: Sequence[Question]) -> tuple[Say, ...]:
    """Each thing once, after the lines it is about."""
    lines: dict[Say, dict[str, None]] = {}
    for question in questions:
        if question.about.text not in FOR_THE_FIRM:
            about = lines.setdefault(SETTLED.get(question.about.text, question.about), {})
            about.update({question.line: None} if question.line else {})
    return tuple(_of_lines(what, tuple(about)) for what, about in lines.items())


def _of_lines(what: Say, lines: tuple[str, ...]) -> Say:
    named = tuple(in_plain_words(LINES, line) for line in lines)
    return Say.of("{line}: {what}", line=named, what=what) if named else what


def for_the_office(questions: Sequence[Question]) -> tuple[Say, ...]:
    """Every question as asked, with its line and the feet along it."""
    return tuple(_placed(question) for question in questions)


def _placed(question: Question) -> Say:
    if not question.line:
        return question.about
    line = in_plain_words(LINES, question.line)
    at = question.stretch
    if at is None:
        return Say.of("{line}: {what}", line=line, what=question.about)
    if at.length_ft == 0:
        return Say.of("{line}, at {place}: {what}", line=line, place=Feet(at.from_ft), what=question.about)
    ends = {"start": Feet(at.from_ft), "end": Feet(at.to_ft)}
    return Say.of("{line}, {start} to {end}: {what}", line=line, what=question.about, **ends)
