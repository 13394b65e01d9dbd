"""What lies past the property line is somebody else's to repair where the city says so: the pipe is handed over at the line.

>>> from tests.made_up.stretch import limits, mark, need, stretch
>>> from estimator.model.stretch import Stretch
>>> lot = mark("property line", 40.0)
>>> past = need("crack", at=Stretch(44.0, 46.0))
>>> handed(stretch(method="hand over", needs=(past,), line_marks=(lot,)), limits()).effect.value
'caution'
>>> handed(stretch(method="hand over", needs=(need("crack"),), line_marks=(lot,)), limits()).effect.value
'blocks'
"""

from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.concern import HANDS_OVER
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import COMMON_PRACTICE, Answers, Rule, Ruling


def handed(it: StretchFacts, limits: Limits) -> Answers:
    lots = [m.stretch.middle_ft for m in it.line_marks if m.word == "property line"]
    ends = [n.stretch.to_ft if it.downstream == 1 else n.stretch.from_ft for n in it.needs]
    if it.needs and not any((end - lot) * it.downstream > 0 for end in ends for lot in lots):
        return Ruling(
            effect=Effect.BLOCKS,
            homeowner=Say.of("The damage is on your side of the property line, as far as our notes say."),
            estimator=Say.of("Nothing bad is noted past a property line: note the line where it is, or repair it."),
        )
    return Ruling(
        effect=Effect.CAUTION,
        homeowner=Say.of(
            "We stop at your property line. Past it the pipe is the city's only where its rules say so. Ask the city in writing before we dig."
        ),
        estimator=Say.of(
            "Hand over at the property line: the city's answer in writing first, a cleanout at the line, the video and the marks to the city."
        ),
    )


RULE = Rule(
    id="hand-over-at-the-lot-line",
    numbers=(),
    concerns=HANDS_OVER,
    statement="A bad place past the property line may be handed over there: new pipe up to the line, a cleanout, the video; who owns the pipe beyond differs by city and is asked in writing first.",
    reason="Beyond the line the ground is somebody else's; in some cities the owner of the house owns the pipe to the main all the same.",
    source=COMMON_PRACTICE,
    worse="leaving out a way that works",
    goes_without_saying=True,
    applies=handed,
)
