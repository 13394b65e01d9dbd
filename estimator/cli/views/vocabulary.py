"""A word of the notes in, the same word as an estimator of the reader's language writes it out; English stays as typed."""

from collections.abc import Mapping
from functools import lru_cache
from itertools import chain

from estimator.model.say import Say
from estimator.wording.crew_words import ITEMS
from estimator.wording.numbers import family
from estimator.wording.plain import UNITS
from estimator.wording.say import NOTES_LANGUAGE, say, spoken

FINDINGS: tuple[Say, ...] = (
    Say.of("roots"), Say.of("offset"), Say.of("gap"), Say.of("crack"), Say.of("hole"), Say.of("collapse"),
    Say.of("channel"), Say.of("scale"), Say.of("grease"), Say.of("sag"), Say.of("reverse fall"), Say.of("backfall"),
    Say.of("oval"), Say.of("blister"), Say.of("blocked"), Say.of("intruding"), Say.of("utility"), Say.of("fitting"),
    Say.of("leak"), Say.of("mud"), Say.of("insects"), Say.of("opening"), Say.of("failed test"),
)  # fmt: skip
AS_SAID: Mapping[str, Say] = {
    "sag": Say.of("belly"), "gap": Say.of("separated joint"), "collapse": Say.of("collapsed pipe"),
    "channel": Say.of("channeling"), "reverse fall": Say.of("reverse slope"), "backfall": Say.of("reverse slope"),
    "oval": Say.of("deformed"), "blocked": Say.of("blockage"), "intruding": Say.of("protruding connection"),
    "utility": Say.of("cross bore"), "mud": Say.of("soil in pipe"), "insects": Say.of("insects or rodents"),
}  # fmt: skip
"""What the trade calls a finding, where the notes have a shorter word for it."""
SIGNS: tuple[Say, ...] = (
    Say.of("soil seen"), Say.of("void"), Say.of("washing"), Say.of("sharp"), Say.of("smooth"), Say.of("lens under"),
    Say.of("never ends"), Say.of("only in use"), Say.of("no flow"), Say.of("still flows"), Say.of("drags"),
    Say.of("cannot pass"), Say.of("hairline"), Say.of("hair"), Say.of("several"), Say.of("open"), Say.of("loose"),
    Say.of("broken"), Say.of("running in"), Say.of("running out"), Say.of("stain"), Say.of("drip"),
    Say.of("cut yearly"), Say.of("soft"), Say.of("hard"), Say.of("gone"), Say.of("long"), Say.of("catches paper"),
    Say.of("flat"), Say.of("full"), Say.of("light"), Say.of("moderate"), Say.of("severe"), Say.of("left"),
    Say.of("right"), Say.of("up"), Say.of("down"), Say.of("live"), Say.of("dead"), Say.of("seen"), Say.of("inferred"),
    Say.of("suspected"), Say.of("not inspected"),
)  # fmt: skip
PLACES: tuple[Say, ...] = (
    Say.of("slab"), Say.of("yard"), Say.of("drive"), Say.of("walk"), Say.of("street"), Say.of("crawl"),
    Say.of("basement"), Say.of("cleanout"), Say.of("access"), Say.of("beam"), Say.of("branch"), Say.of("bend"),
    Say.of("joint"), Say.of("loc"), Say.of("pothole"), Say.of("tree"), Say.of("crossing"), Say.of("footing"),
    Say.of("slab edge"), Say.of("slab top"), Say.of("lawn"), Say.of("bed"), Say.of("bare ground"), Say.of("dirt"),
    Say.of("gravel"), Say.of("concrete"), Say.of("asphalt"), Say.of("pavers"), Say.of("brick"), Say.of("tile"),
    Say.of("wood"), Say.of("vinyl"), Say.of("carpet"), Say.of("laminate"), Say.of("stone"), Say.of("floor"),
    Say.of("gas"), Say.of("water"), Say.of("power"), Say.of("phone"), Say.of("with flow"), Say.of("against flow"),
    Say.of("before cleaning"), Say.of("after cleaning"), Say.of("front cleanout"), Say.of("kitchen wall cleanout"), Say.of("master toilet"),
)  # fmt: skip
PIPES: tuple[Say, ...] = (
    Say.of("cast iron"), Say.of("clay"), Say.of("fiber"), Say.of("lead"), Say.of("copper"), Say.of("steel"),
    Say.of("galvanized"), Say.of("asbestos cement"), Say.of("liner"), Say.of("unknown"),
)  # fmt: skip
LINES: tuple[Say, ...] = (
    Say.of("main"), Say.of("kitchen"), Say.of("laundry"), Say.of("hall bath"), Say.of("under slab"),
    Say.of("hall bath branch"), Say.of("kitchen branch"), Say.of("kitchen"), Say.of("entry"), Say.of("hall"),
    Say.of("bath"), Say.of("master bath"), Say.of("garage"), Say.of("bedroom"),
)  # fmt: skip
EFFECTS: tuple[Say, ...] = (
    Say.of("blocks"), Say.of("no fixed price"), Say.of("until approved"), Say.of("does not fix"),
    Say.of("requires first"), Say.of("adds work"), Say.of("caution"), Say.of("prefers"),
)  # fmt: skip
PRICING: tuple[Say, ...] = (
    Say.of("find"), Say.of("reach"), Say.of("pipe"), Say.of("put back"), Say.of("labor"), Say.of("equipment"),
    Say.of("material"), Say.of("small parts"), Say.of("tax"), Say.of("subs"), Say.of("fee"), Say.of("own"),
    Say.of("sub"), Say.of("pass-through"), Say.of("passed"), Say.of("failed"), Say.of("no result"), Say.of("day"),
)  # fmt: skip
STEPS: tuple[Say, ...] = (
    Say.of("own work"), Say.of("sum of its cost lines"), Say.of("each to the cent"), Say.of("before rounding"),
    Say.of("price"), Say.of("total"), Say.of("discounts"), Say.of("allowances"), Say.of("what the homeowner pays"),
    Say.of("rounded up to the firm's step"), Say.of("or as the owner set it"), Say.of("least charge of the method"),
    Say.of("added on its items in proportion"), Say.of("as they stand"), Say.of("sales tax charged"),
    Say.of("to the homeowner"), Say.of("by the place's kind"), Say.of("off after rounding"),
    Say.of("shown here"), Say.of("not rounded on the way"),
    Say.of("own work + subs + passed on + minimum charges + allowances"), Say.of("dollars a sq ft"), Say.of("ft"),
)  # fmt: skip
STATES: tuple[Say, ...] = (
    Say.of("notes incomplete"), Say.of("ready"), Say.of("issued"), Say.of("revised"), Say.of("expired"),
    Say.of("accepted"), Say.of("done"), Say.of("lost"), Say.of("damaged"), Say.of("you asked"), Say.of("what was found"), Say.of("a rule"),
    Say.of("prices moved"), Say.of("the program"),
)  # fmt: skip
TASKS: tuple[Say, ...] = (
    Say.of("backfill hand"), Say.of("backfill machine"), Say.of("backwater valve"), Say.of("box"), Say.of("box in"),
    Say.of("break slab"), Say.of("burst run"), Say.of("burst set-up"), Say.of("camera pass"), Say.of("cap"),
    Say.of("coupling"), Say.of("daily set-up"), Say.of("descale"), Say.of("draw drain plan"), Say.of("dust wall"),
    Say.of("fill hollow"), Say.of("fill old pipe"), Say.of("fixture off and on"), Say.of("flatwork"), Say.of("fuse joint"),
    Say.of("hand dig"), Say.of("hand dig inside"), Say.of("inspection wait"), Say.of("isolate section"), Say.of("jet"),
    Say.of("lead-safe set-up"), Say.of("liner cure"), Say.of("liner run"), Say.of("liner set-up"), Say.of("machine dig"),
    Say.of("mobilize job"), Say.of("patch slab"), Say.of("penetration"), Say.of("pipe in crawl space"),
    Say.of("pipe in trench"), Say.of("pipe in tunnel"), Say.of("planting bed"), Say.of("prove side drain"),
    Say.of("reinstate"), Say.of("reroute pipe"), Say.of("saw flatwork"), Say.of("saw slab"), Say.of("seal water"),
    Say.of("shore by hand"), Say.of("sleeve"), Say.of("sod"), Say.of("static test"), Say.of("toilet"),
    Say.of("tunnel backfill"), Say.of("tunnel dig"), Say.of("uncover and look"), Say.of("vent"),
)  # fmt: skip
"""Tasks by the names the tables come with; a firm's own names stand as it wrote them."""
PEOPLE: tuple[Say, ...] = (
    Say.of("lead plumber"), Say.of("helper"), Say.of("laborer"), Say.of("operator"), Say.of("liner tech"),
    Say.of("plumbing"), Say.of("tunnel"), Say.of("labor"), Say.of("excavation"), Say.of("lining"),
)  # fmt: skip
"""Roles and crews by the names the tables come with."""
FORMULAS: tuple[Say, ...] = (
    Say.of("length x width x depth, upright sides"), Say.of("length x width x depth, made as large as the box"),
    Say.of("length x width x depth, as wide as people need between shores"),
    Say.of("sloped on all sides: depth x length x width + slope x depth² x (length + width) + 4/3 slope² x depth³"),
    Say.of("the outline of the slope and a little more"), Say.of("old paint is disturbed"),
    Say.of("a trunk stands close to a dig"), Say.of("the foundation is to be lifted: a second visit with test and film"),
    Say.of("the place asks for one where the drain is renewed"), Say.of("something that may hold asbestos is cut"),
    Say.of("common practice"), Say.of("common practice, from memory"), Say.of("place row"),
    Say.of("place row; IPC table 704.1"), Say.of("yes"), Say.of("no"),
)  # fmt: skip
"""What a takeoff says of a quantity and does not say in one literal."""
ENDINGS: tuple[Say, ...] = (Say.of(", depth changing evenly between readings"), Say.of(", up to what is sold"))
PLUS = Say.of("; plus ")
MONEY: tuple[Say, ...] = (
    Say.of("received"), Say.of("payment"), Say.of("deposit"), Say.of("draw"), Say.of("change"), Say.of("credit"),
    Say.of("fee"), Say.of("start"), Say.of("pipe in before cover"), Say.of("soil"), Say.of("found more"),
    Say.of("access"), Say.of("weather"), Say.of("inspection"), Say.of("our error"), Say.of("no cause named"), Say.of("rule"),
    Say.of("reading"), Say.of("a row"),
    Say.of("prices of materials"), Say.of("earth that nobody saw"),
)  # fmt: skip
"""Kinds of payments, causes of hours over, and what a lookup found."""


@lru_cache(maxsize=1)
def known() -> dict[str, Say]:
    """Every word of the lists above by itself."""
    from estimator.works.methods import RECORDS

    lists = (FINDINGS, SIGNS, PLACES, PIPES, LINES, EFFECTS, PRICING, STEPS, STATES, TASKS, ITEMS, PEOPLE, MONEY)
    return {
        word.text: word for word in (*chain.from_iterable(lists), *(m.label for m in RECORDS.values()), Say.of("job"))
    }


def term(word: str, language: str) -> str:
    """The word, or several parted by commas, in the reader's language; a word nobody knows as it stands.

    >>> term("tunnel", "es_US"), term("yard spot, reroute", "es_US"), term("Mrs. Den", "es_US"), term("sag", "en_US")
    ('túnel', 'excavación puntual, otra ruta', 'Mrs. Den', 'sag')
    """
    if family(language) == NOTES_LANGUAGE:
        return word
    return ", ".join(say(known()[part], language) if part in known() else part for part in word.split(", "))


def finding_term(kind: str, language: str) -> str:
    """What the trade calls a kind of finding, in the reader's language.

    >>> finding_term("sag", "en_US"), finding_term("sag", "es_US"), finding_term("roots", "en_US")
    ('belly', 'hundimiento (panza)', 'roots')
    """
    return say(AS_SAID[kind], language) if kind in AS_SAID else term(kind, language)


def formula(text: str, language: str) -> str:
    """A formula of the takeoff; one put together of several by its parts, and as it stands where nobody knows it.

    >>> formula("one a side drain", "en_US")
    'one a side drain'
    """
    if family(language) == NOTES_LANGUAGE or spoken(text, language) != text:
        return spoken(text, language)
    for ending in ENDINGS:
        if text.endswith(ending.text):
            return formula(text.removesuffix(ending.text), language) + say(ending, language)
    for joint in (PLUS.text, "; "):
        before, found, after = text.partition(joint)
        if found:
            return formula(before, language) + spoken(joint, language) + formula(after, language)
    return text


def unit(word: str, language: str) -> str:
    """The unit of a quantity, by its short word in the tables.

    >>> unit("each", "es_US"), unit("bcy", "es_US")
    ('c/u', 'bcy')
    """
    return say(UNITS[word], language) if word in UNITS and family(language) != NOTES_LANGUAGE else word
