"""Nothing in, the questions of the interview out, in the order the work was done: text, key, how an answer is read.

A section with `many` asks for one thing after another (line 1, line 2 …): an empty answer to its first question ends it.
"""

from collections.abc import Callable
from typing import Any

from estimator.fieldnotes import customer_answers as customer
from estimator.fieldnotes import fixture_answers
from estimator.fieldnotes import house_answers as house
from estimator.fieldnotes import line_answers as line
from estimator.fieldnotes import question_defaults as known_by
from estimator.fieldnotes import slab_answers as slab
from estimator.fieldnotes import watertest_answers as watertest
from estimator.fieldnotes.answers import (
    Known,
    Reader,
    length,
    one_of,
    text,
    whole_number,
    words_for,
    words_like,
    yes_no,
)
from estimator.fieldnotes.day_answers import day, day_or_none, year_built
from estimator.model.frozen import Frozen
from estimator.model.say import Say

Data = known_by.Data


class Question(Frozen, kw_only=True):
    """`asked` looks at the whole job and at the item the question is about; `default` is words, as a person types them."""

    key: str
    text: Say
    example: Say
    why: Say
    read: Reader
    also: tuple[str, ...] = ()  # other keys the answer may write
    default: Callable[[Known], str] = known_by.nothing
    needed: bool = False  # no price without it
    before: Callable[[Known], Say | str] = known_by.nothing  # said in front of the question, such as what was just read
    asked: Callable[[Data, Data], bool] = known_by.always
    wanted: Callable[[Known], bool] = known_by.by_all  # whether the firm's tables have a use for it
    is_log: bool = False  # typed line by line, into a file of its own


class Section(Frozen, kw_only=True):
    """Questions of one table of the job file; of `many` things `one` is what one is called, `more` asks for another."""

    table: str
    title: Say
    questions: tuple[Question, ...]
    many: bool = False
    one: str = ""
    more: Say = Say.of("Another? Its name, or Enter")


_WHAT_RUNS = ("copper under slab", "overhead", "unknown")


def _q(key: str, text_: str, example: str, why: str, read: Reader, **more: Any) -> Question:
    return Question(key=key, text=Say(text=text_), example=Say(text=example), why=Say(text=why), read=read, **more)


# ── the questions ─────────────────────────────────────────────────────────────────────────────

JOB = Section(table="job", title=Say.of("The job"), questions=(
    _q("number", "Job number", "2026-131", "It stands on every paper and names the files.", text,
       default=lambda known: known.number, needed=True),
    _q("date", "Day of the visit", "2026-11-18, 11/18, today", "Prices are those of this day.", day,
       default=lambda known: known.today.isoformat(), needed=True),
    _q("prepared_by", "Your name", "Ines Calloway", "It stands on the quote as who wrote it.", customer.person,
       default=known_by.last("job", "prepared_by"), needed=True),
    _q("language", "Quote in English, Spanish or both", "both",
       "The homeowner's papers come in these languages.", house.language, default=known_by.language),
))  # fmt: skip

CUSTOMER = Section(table="customer", title=Say.of("The customer"), questions=(
    _q("name", "Customer's name", "Wren Castellane", "Whom the quote is for.", customer.person, needed=True),
    _q("site", "Address of the house", "417 Larkspur Court, Fernbrook", "Where the work is.", words_for(Say.of("an address"), none=False), needed=True),
    _q("phone", "Phone", "555-0147", "For the office; it is on no homeowner's paper.", customer.phone),
    _q("email", "E-mail", "wren@example.com", "Where the quote is sent.", customer.email),
))  # fmt: skip

HOUSE = Section(table="house", title=Say.of("The house"), questions=(
    _q("built", "Built in what year", "1962", "Old paint and slabs with tendons go by the year.", year_built),
    _q("floor", "Floor: slab (proven to have no tendons), post-tensioned slab, slab with tendons unknown, crawl space, basement",
       "slab", "Nobody cuts a slab whose tendons are not known. `slab` counts as none only in an old house, or with proof.", house.floor,
       default=known_by.fixed("slab, tendons unknown"), needed=True),
    _q("tendons", "Which paper proves that it has no tendons", "engineer's drawing",
       "Of an old house `slab` is enough; of a younger one no floor is cut without proof. A missing stamp proves nothing. "
       "Enter leaves it open.", slab.proof_of_no_tendons, asked=known_by.on_plain_slab),
    _q("crawl_height", "Crawl space, ground to joists at its lowest", "22 in",
       "Under the firm's least height room is dug first, and that is another price; Enter leaves it open.", length("in"),
       asked=known_by.on_crawl_space),
    _q("crawl_mud", "Is it wet or muddy down there", "no", "Mud and water slow the work, and wires in water kill.", yes_no,
       asked=known_by.on_crawl_space),
    _q("slab_thickness", "How thick is the slab", "4 in", "What is sawn and hauled hangs on it.", length("in"),
       asked=known_by.on_slab),
    _q("slab_above_grade", "How far is the slab's top above the ground", "6 in",
       "A depth under the floor and one under the lawn start at different heights.", length("in"), asked=known_by.on_slab),
    _q("edge_beam", "Beam at the slab's edge: deep and wide, or none", "24in deep 12in wide",
       "Who digs under the edge must know it; a `beam` in a log there says it too. `none` only where you saw it uncovered. "
       "Enter leaves it open.", slab.edge_beam, asked=known_by.on_slab),
    _q("soil", "Soil", "firm clay", "Shoring, spoil and rates hang on it; nothing said is taken at its worst.",
       house.soil),
    _q("expansive_soil", "Does the ground swell and shrink", "yes", "Swelling ground moves pipes and houses.", yes_no),
    _q("jurisdiction", "Place, by its row in your tables", "demo", "Tax, permits, fall and deposits go by it.",
       house.place, default=known_by.place, needed=True),
    _q("sewer", "City sewer or septic", "city", "Where it all ends.",
       one_of(("city", "septic"), {"tank": "septic", "main": "city", "public": "city"}), default=known_by.last("house", "sewer", "city")),
    _q("force_main", "Does a pump push the sewage out (a force main)", "no",
       "Pipe under pressure has no fall, and is neither cut nor opened before the pump is off. Enter leaves it open.", yes_no),
    _q("shared_lateral", "Does another house drain into this line", "no",
       "Its water comes while you work, and both owners have a say. Enter leaves it open.", yes_no),
    _q("lived_in", "Does somebody live there now", "yes", "Days without drains are then days without a home.", yes_no,
       default=known_by.fixed("yes")),
    _q("fixtures", "What drains there", "2 baths, kitchen, washer", "New pipe is sized by it.", fixture_answers.house_fixtures,
       also=("bathrooms",)),
    _q("water_lines", "Water lines: copper under slab, overhead or unknown", "overhead",
       "What lies under a slab is cut with it.", words_like(_WHAT_RUNS), default=known_by.fixed("unknown"), asked=known_by.on_slab),
    _q("in_slab", "What else runs in the slab: nothing, ducts, conduit or unknown", "nothing",
       "It is searched for before a saw touches the slab.", slab.runs_in_slab,
       default=known_by.fixed("unknown"), asked=known_by.on_slab),
    _q("floor_finish", "Floor over the pipe", "tile", "What has to be restored where the floor is cut.", words_for(Say.of("a floor finish"))),
    _q("floor_price", "What a square foot of it costs, put back", "14.50",
       "The dearer the floor, the sooner a tunnel is the cheaper way; Enter leaves it open.", house.floor_price,
       asked=known_by.on_slab),
    _q("own_facts", "Which of these hold here: one or more with commas, or none", "steep yard",
       "Facts of your firm's own tables; each makes some work slower or dearer. Enter leaves them open.", house.own_facts,
       before=known_by.own_facts, wanted=known_by.has_own_facts),
))  # fmt: skip

TRIAL = Section(table="job", title=Say.of("A trial"), questions=(
    _q("demo", "Only a trial, as that place is invented", "yes",
       "With the invented place nothing is quoted to a real customer; for one, go jurisdiction and name the real place.",
       house.trial, default=known_by.fixed("yes"), asked=known_by.invented_place),
))  # fmt: skip

SITE = Section(table="site", title=Say.of("The site"), questions=(
    _q("gate", "Narrowest gate", "42 in", "What machine gets through.", length("in")),
    _q("carry", "How far the spoil is carried", "35 ft", "Carrying is hours.", length("ft")),
    _q("machine", "Can a small digger get to the yard pipe", "yes", "Else it is dug by hand.", yes_no, default=known_by.fixed("yes")),
    _q("located", "Are the public utilities marked", "no", "Nobody digs before they are.", yes_no, default=known_by.fixed("no")),
    _q("competent_person", "Who looks after the excavation", "Teo Marlow",
       "A trench or tunnel needs a competent person, by name.", customer.competent, default=known_by.last("site", "competent_person")),
))  # fmt: skip

LINE = Section(table="line", title=Say.of("Lines"), many=True, one="line", more=Say.of("Another line? Its name, or Enter"), questions=(
    _q("name", "Name of the line", "main, yard, kitchen",
       "A line is one run of pipe with its own log. The first is most often the main; Enter ends the lines.",
       line.line_name, default=known_by.line_name, needed=True),
    _q("size", "Size of the pipe", "4 in", "Inside, in inches.", length("in"), default=known_by.pipe_size, needed=True),
    _q("pipe", "Pipe: cast iron, clay, PVC, ABS …", "ci", "What it is made of; where it changes, say so in the log.",
       line.material, default=known_by.pipe_material, needed=True),
    _q("filmed", "Was a camera in it", "yes", "What nobody filmed is never priced as if it had been.", yes_no,
       default=known_by.fixed("yes"), asked=known_by.not_logged),
    _q("length", "How long is it, about", "14 ft", "A pipe nobody filmed still has a length.", length("ft"), asked=known_by.not_filmed),
    _q("log", "Log", "11.5 branch 3in left live proven", "Line by line while the video runs.", text, asked=known_by.filmed, is_log=True),
    _q("joins", "Where does it end", "main at 21, a branch's name, city main",
       "Pipes hang together; a reel reading of the other line's first pass says where.", line.line_end, also=("ends",),
       default=known_by.line_end),
))  # fmt: skip

TEST = Section(table="water_test", title=Say.of("Water tests"), many=True, one="water test", more=Say.of("Another test? What was tested, or Enter"), questions=(
    _q("section", "What was tested, or Enter", "under slab, hall bath branch", "Standing water, section by section; Enter ends the tests.",
       text),
    _q("kind", "Whole, isolated or new pipe", "whole", "A whole test says that it leaks, an isolated one where.",
       watertest.test_kind, default=known_by.test_kind),
    _q("covers", "Lines and branches in the test", "main, hall bath", "What the result speaks for.", watertest.covers,
       default=known_by.test_covers),
    _q("when", "When: routine, before lift, after lift, after repair", "before lift", "The lifting company asks.",
       watertest.test_when, default=known_by.fixed("routine")),
    _q("date", "Day of the test", "today", "It stands on the report.", day, default=known_by.test_date),
    _q("plug", "Where the ball sat", "front cleanout, house side", "What was held shut.", words_for(Say.of("a place"))),
    _q("open_risers", "Sizes of the open risers", "4, 4, 2, 1.5", "They all fall together; water lost hangs on it.", watertest.risers),
    _q("readings", "Minutes and drop", "5:3/8, 10:3/4, 20:1-1/2", "How fast it fell; `held 30 min` when it did not.",
       watertest.readings),
    _q("sealed", "Did the ball seal", "yes", "Else the test says nothing.", yes_no),
    _q("result", "Passed, failed or could not be sealed", "failed", "Your word on it; it has to agree with the drop.", watertest.result,
       default=known_by.test_result, before=known_by.result_text),
))  # fmt: skip

WAY = Section(table="reroute", title=Say.of("Reroutes"), many=True, one="way round", more=Say.of("Another reroute? Name and legs, or Enter"), questions=(
    _q("name", "Name and legs, or Enter", "hall: wall 12, yard 26, fall 6.6in",
       "A reroute around the bad pipe that you saw on site. Fall is invert to invert; also size, turns, vents, holes. "
       "Enter: none.", line.way_round,
       also=("legs", "fall_available", "size", "turns", "vents", "penetrations")),
    _q("replaces", "Which pipe it takes over", "kitchen, or main 6 to 15", "The line, or a stretch of it in stations.",
       line.replaced_pipe, needed=True),
    _q("ties_into", "Where it ties in", "yard at 6.2", "A reel reading of that line's first pass.", line.tied_into),
    _q("serves", "What it carries", "1 bath", "Its size goes by it.", fixture_answers.fixtures),
))  # fmt: skip

FOUNDATION = Section(table="foundation", title=Say.of("Lifting"), questions=(
    _q("work", "Foundation work: none, planned 2027-01, done 2024-05", "planned jan 2027",
       "Pipes move with a lift: it is tested before and after.", house.foundation, also=("lift_date",), default=known_by.fixed("none")),
    _q("company", "Who lifts", "Fernbrook Lifting", "Who gets the report.", words_for(Say.of("a company")), asked=known_by.lifted),
    _q("piers", "How many piers", "14", "Where they stand decides where one may dig.", whole_number(0, 1000), asked=known_by.lifted),
))  # fmt: skip

SIGN = Section(table="sign", title=Say.of("Seen off the camera"), many=True, one="sign", more=Say.of("Anything else? Or Enter"), questions=(
    _q("what", "Seen, smelled or told: backs up into the tub, slow toilets, sewer smell, gas smell, rats, wet lawn; or Enter",
       "sewage backs up into the tub", "Signs that say where it leaks or clogs, and what is dangerous; Enter: nothing.",
       house.sign),
    _q("where", "Where", "hall bath, front yard", "Which fixture, or beside which line.", words_for(Say.of("a place"))),
))  # fmt: skip

INSURANCE = Section(table="customer", title=Say.of("Insurance"), questions=(
    _q("insurer", "Insurance company, if one is asked to pay", "Fernbrook Mutual (invented)",
       "A page of facts is written for it, without a word on what is covered; Enter: none.", house.insurer),
    _q("policy", "Policy number", "HO-3318", "It stands on the insurer's page.", house.insurer, asked=known_by.insured),
    _q("claim", "Claim number", "C-77", "It stands on the insurer's page.", house.insurer, asked=known_by.insured),
    _q("adjuster", "Adjuster, name and phone", "K. Sample, 555-0162", "It stands on the insurer's page.", house.insurer, asked=known_by.insured),
))  # fmt: skip

WISHES = Section(table="wishes", title=Say.of("What they want"), questions=(
    _q("keep_floors", "Do they want the floors left whole", "yes", "Ways that open floors are then told so.", yes_no,
       asked=known_by.on_slab),
    _q("asked", "What they asked for, in their words", "slow hall bath, test before the lift", "It stands on the quote.",
       words_for(Say.of("what they asked for"))),
    _q("selling", "Selling on", "2027-01-05", "A closing day is a deadline; Enter when they do not sell.", day_or_none),
))  # fmt: skip

SECTIONS: tuple[Section, ...] = (
    JOB,
    CUSTOMER,
    HOUSE,
    TRIAL,
    SITE,
    LINE,
    TEST,
    SIGN,
    WAY,
    FOUNDATION,
    INSURANCE,
    WISHES,
)
