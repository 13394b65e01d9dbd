"""A command of the interview as a Spanish reader types it in, the word that is known here out."""

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
