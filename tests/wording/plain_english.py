"""A text in, its sentences, their length and the words out that a careful contractor does not write."""

import re

LONGEST, MEAN = 25, 15
"""Words: Pennsylvania's test for consumer contracts asks for short sentences (37 Pa. Code ch. 307 App. B); the figures are the firm's."""

NEVER = re.compile(
    r"\b(?<!-)(put right|put back|stays? old|hangs? on|heaps?|said elsewhere|way round|way of repair|dearest|dearer|learnt"
    r"|beforehand|bring(ing)? and fetch(ing)?|to others|all of it|nobody|mends?|mended|films?|filmed|filming|promised?|promises"
    r"|at most|least charge|side drains?|city's main|bad place|bore|reckoned|left over|shaking|leaflet|earth"
    r"|lies|handed|in it|how much|licence|vapour|colour|centre|fibre|mobilisation|neighbour|ground water)\b(?!-)",
    re.IGNORECASE,
)
"""Words with two meanings, words nobody in the trade says, and words of another English."""

NEVER_IN_SPANISH = re.compile(
    r"\b(excusados?|tazas?|fundas?|fierro|bajadas?|bajón|bajones|promesas?|sano|sana|unión|uniones)\b", re.IGNORECASE
)
"""One word for one thing: inodoro, camisa, hierro, tubo vertical, hundimiento, garantía, en buen estado, junta."""


def sentences(text: str) -> list[str]:
    """Return the sentences of the text; an abbreviation or a decimal point does not end one, a colon does.

    A semicolon parts the items of a list where a capital follows it.

    >>> sentences("Stop. Call 911! The pipe is 4.5 in. wide (29 CFR 1926.651(k)).")
    ['Stop.', 'Call 911!', 'The pipe is 4.5 in. wide (29 CFR 1926.651(k)).']
    """
    return [one for one in re.split(r"(?<=:)\s+|(?<=[.!?;])\s+(?=[A-ZÁÉÍÓÚÑ¿¡{])", text.strip()) if one]


def words(sentence: str) -> int:
    """Return how many words the sentence has; a gap is one.

    >>> words("Keep the {size}-inch pipe at least 2 ft away")
    9
    """
    return len(re.findall(r"[^\s·–—/]*\w[^\s·–—/]*", sentence))
