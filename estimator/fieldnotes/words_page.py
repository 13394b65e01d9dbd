"""The guide's text with gaps in; the page docs/field-notes.md, its word table printed from the program, out.

`python -m estimator.fieldnotes.words_page` prints the table and the signs between the marks in the guide.
"""

import itertools
from pathlib import Path

from estimator.fieldnotes.lexicon import lexicon, unfolded
from estimator.fieldnotes.logproblems import EXAMPLES
from estimator.fieldnotes.words import ALL_SIGNS, WORDS, Word

MOST_SAID = 3
BEGIN, END = "<!-- words: printed from the program -->", "<!-- end of words -->"
_KINDS = {
    "zone": "what lies over the pipe",
    "holds": "holds until the next",
    "place": "what is there",
    "finding": "what is wrong",
}
_MORE_EXAMPLES = {
    "access": "access roof vent", "cleanout": "cleanout two-way", "bend": "bend 45 left", "joint": "joint up 1/2in",
    "loc": "loc 27in under tile, 14'2\" front wall, flag A", "tree": "tree 30in 5ft away", "end": "end closet bend",
    "stop": "stop reached main", "cleaned": "cleaned jet", "property line": "property line", "crawl space": "crawl space 22in",
    "crawl": "crawl 22in mud hung", "roots": "roots 30%", "offset": "offset 15% down", "gap": "gap 1in soil seen",
    "crack": "crack open at 10-2", "hole": "hole 3in soil seen at 5-7", "collapse": "collapse still flows",
    "channel": "channel gone, soil seen", "scale": "scale 35% drags", "grease": "grease 20%", "sag": "sag 50%",
    "reverse fall": "reverse fall", "backfall": "backfall full", "oval": "oval 8%", "blister": "blister",
    "blocked": "blocked soft", "intruding": "intruding 10%", "utility": "utility gas", "fitting": "fitting catches paper",
    "leak": "leak running out", "mud": "mud", "insects": "insects",
}  # fmt: skip


def example(word: Word) -> str:
    """How a line says it."""
    surface = {"zone": f"{word.word} tile" if word.word in ("slab", "basement") else word.word}
    return EXAMPLES.get(word.word) or _MORE_EXAMPLES.get(word.word) or surface.get(word.kind, word.word)


def also_said(word: str) -> list[str]:
    """The first few ways people say it, from the lexicon."""
    lex = lexicon()
    keys = (key for phrase, _, meaning in lex.listed if meaning == word for key in unfolded(phrase))
    said = (" ".join(key) for key in keys if word in map(lex.means(key).get, ("finding", "place", "zone")))
    return list(itertools.islice((s for s in dict.fromkeys(said) if s not in (word, f"{word}s")), MOST_SAID))


def _shown(word: Word) -> str:
    said = also_said(word.word)
    return f"`{example(word)}`" + (f" ({', '.join(said)})" if said else "")


def words_part() -> str:
    """The table of words with what people say for them, a row a kind, and the list of signs."""
    rows = [f"| {says} | {'; '.join(_shown(w) for w in WORDS if w.kind == kind)} |" for kind, says in _KINDS.items()]
    table = "\n".join(["| says | such as (and what people say for it) |", "|---|---|", *rows])
    return f"{BEGIN}\n\n{table}\n\nSigns, after any of them: {', '.join(ALL_SIGNS)}.\n\n{END}"


def page(text: str) -> str:
    """The guide with its words printed anew."""
    before, _, rest = text.partition(BEGIN)
    return before + words_part() + rest.partition(END)[2]


if __name__ == "__main__":
    guide = Path(__file__).parents[2] / "docs" / "field-notes.md"
    guide.write_text(page(guide.read_text("utf-8")), "utf-8")
