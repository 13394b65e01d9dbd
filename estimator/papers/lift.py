"""What a planned foundation lift means for a quote: the steps in their order, what the price and the warranty then hold for.

The order of the diagnosis says what must not wait for the lift; an option is done in one go before it, with a visit after, as
its schedule has it. So a paper with options says that.
"""

from estimator.model.found import runs
from estimator.model.judgement import LiftStep
from estimator.model.offer import Option
from estimator.model.say import Say
from estimator.papers.letter import Letter
from estimator.papers.page import Page, run_in
from estimator.quote.recommend import is_visit, only_prepares


def lift_planned(letter: Letter) -> bool:
    """The house is still to be lifted, and the work is parted by it."""
    return letter.quote.job.foundation.work == "planned" and bool(letter.quote.lift_steps)


def lift_steps(letter: Letter, page: Page) -> None:
    """The steps in one paragraph, with what the price covers; nothing where no lift is planned."""
    if not lift_planned(letter):
        return
    speak = letter.speak
    run_in(page, speak("Your foundation lift"), steps(letter))
    if letter.quote.options:
        page.line(_price_covers(letter), "small")


def _price_covers(letter: Letter) -> str:
    speak = letter.speak
    tested = all(comes_back(o) or is_visit(o) for o in letter.quote.options)
    return (
        speak("Our price covers the repairs and the test after the lift.")
        if tested
        else speak("Our price covers the repairs before and after the lift.")
    )  # fmt: skip


def steps(letter: Letter) -> list[str]:
    """The steps, each with its number and the letters of the findings to repair now that it is for."""
    found = [f for f in letter.quote.found if f.act == "now"]
    out = []
    for number, step in enumerate(_steps(letter), start=1):
        letters = runs([f.letter for f in found if set(f.needs) & set(step.needs)])
        text = letter.all([step.text])[0]
        out.append(f"{number}. {text.rstrip('.')} ({letters})." if letters else f"{number}. {text}")
    return out


def _steps(letter: Letter) -> list[LiftStep]:
    """The diagnosis's steps; where options repair something, the repairs as they are scheduled: all before the lift."""
    quote = letter.quote
    known = {step.text: step for step in quote.diagnosis.lift_steps}
    told = [known.get(text, LiftStep(text)) for text in quote.lift_steps]
    if quote.job.foundation.work != "planned" or all(map(only_prepares, quote.options)):
        return told
    done = [LiftStep(REPAIRS) if step.what == "repairs" else step for step in told]
    lift = next((n for n, step in enumerate(done) if step.what == "lift"), len(done))
    return [LiftStep(AFTERWARDS) if step.text == REPAIRS and n > lift else step for n, step in enumerate(done)]


REPAIRS = Say.of("We make the repairs of your option.")
AFTERWARDS = Say.of("If that test fails, we quote the repair.")


def release(letter: Letter) -> str:
    """When the house may be lifted: by the numbers of our steps before it."""
    before = next((n for n, step in enumerate(_steps(letter)) if step.what == "lift"), 0)
    if not before:
        return letter.speak("Do not lift before our written release.")
    return letter.speak("Do not lift before our written release. We give it after steps 1–{last}.", last=before)


def for_the_foundation_company(letter: Letter, page: Page) -> None:
    """What that company does and waits for: the hold point, the openings of each option, whom to call."""
    quote, speak = letter.quote, letter.speak
    if quote.job.foundation.work != "planned":
        return
    page.line(speak("For the foundation company"), "bold")
    texts = [
        release(letter),
        speak(
            "Send us the pier locations before we start. Keep both cleanouts reachable. Do not cut or move drain pipe."
        ),
        speak("Call {phone} two days before the lift, so that we can test right after it.", phone=quote.firm.phone),
    ]
    opened: dict[str, list[str]] = {}
    for option in quote.options:
        openings = letter.all(dict.fromkeys(o.name for o in option.works.openings))
        opened.setdefault(". ".join(openings) or speak("nothing"), []).append(option.letter)
    texts += [
        speak("Opened by option {letters}: {what}.", letters=runs(those), what=what) for what, those in opened.items()
    ]
    for text in texts:
        page.line(f"• {text}")


def comes_back(option: Option) -> bool:
    """Return whether a second visit after the lift, with a water test, is in the price."""
    return any(takeoff.value("tests_after_lift") for takeoff in option.takeoffs)


def warranty_begins(letter: Letter, option: Option) -> str:
    """What is added to the warranty of a repair where the house is to be lifted: before that nothing is warranted."""
    if not lift_planned(letter) or is_visit(option):
        return ""
    return letter.speak("It starts with the water test after the lift, or when we finish if there is no lift.")


def days_apart(letter: Letter, option: Option) -> str:
    """What is added to the days of the work where the lift comes in between."""
    if not lift_planned(letter) or not comes_back(option):
        return ""
    return letter.speak("We work in two visits: before and after the foundation lift.")
