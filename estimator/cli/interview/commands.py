"""What the interview takes for a command or for no answer, in English and in Spanish."""

import re

from estimator.model.say import Say

DONE, LEAVE, TO_THE_LOG = "done", "leave", "log"
"""How a log, or the questions after it, was left."""
LEAVING = ("quit", "exit", "stop", "q", "bye")
STOP = (*LEAVING, "done", "end")
NO_MORE = ("no", "none", "n", "no more", "nothing", "done", "-", "nope", "ninguno", "ninguna", "nada")
BY_HAND = Say.of("By hand in the job file, not asked: overrides, options, approvals, discounts (docs/job-file.md).")
BY_HAND_WORDS = re.compile(
    r"(?:overrides?|options?|approvals?|discounts?|allowances?|settings?)(?: by hand)?", re.IGNORECASE
)
NOBODY_KNOWS = re.compile(
    r"(?:i )?(?:do not|don'?t|dont) know(?: yet)?|dunno|idk|no idea|not sure(?: yet)?|unknown|who knows|later|no s[eé]|quién sabe|no se sabe|después",
    re.IGNORECASE,
)
COMMANDS = Say.of("Enter skips or takes what is in [ ]. Also: ?, back, undo, list, go NAME, done.")

TEACH = Say.of("- for a remark, WORD = what it means, or type it again")
ANSWER = Say.of("number, - for a remark, or type it again")
AGAIN = Say.of("type it again, or - for a remark")
HELP = (
    Say.of(
        "A line is where, what, how much: 11.5 branch 3in left live. First say the pass: "
        "pass front cleanout to house, riser 28in. `back` means the camera comes back; a remark goes after ;"
    ),
    Say.of(
        "no 16.6 puts the last line right, scratch that takes it back; undo takes the last row out; lines shows them with numbers, "
        "change 3 … and strike 3 put one of them right; list says it all back; go NAME leaves the log; done ends it. "
        "What may mean two things is asked: type the number, - for a remark, or the line again."
    ),
)
"""At a log: what may be typed after a question, and what `?` says."""

IN_SPANISH = {
    "ayuda": "?", "atrás": "back", "atras": "back", "deshacer": "undo", "lista": "list", "ir": "go", "listo": "done", "salir": "quit",
    "renglones": "lines", "quitar": "strike", "cambiar": "change", "regreso": "back",
}  # fmt: skip
"""Commands as a Spanish reader types them."""
TAKE_WORDS = ("go", "strike", "change")


def in_english(answer: str) -> str:
    """A command typed in Spanish in the word that is known here; any other answer as it is.

    >>> in_english("ir casa"), in_english("Atrás"), in_english("atrás de la casa")
    ('go casa', 'back', 'atrás de la casa')
    """
    word, _, rest = answer.partition(" ")
    known = IN_SPANISH.get(word.lower(), "")
    return " ".join(filter(None, (known, rest))) if known and (not rest or known in TAKE_WORDS) else answer
