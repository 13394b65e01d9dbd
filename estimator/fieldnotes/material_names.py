"""A pipe material as people write it in; the program's word for it out."""

from estimator.fieldnotes.folded import phrase_key
from estimator.fieldnotes.lexicon import lexicon
from estimator.fieldnotes.words import MATERIALS


def material_of(text: str) -> str | None:
    """The program's word for a pipe material however it is written.

    >>> material_of("Orangeburg"), material_of("vcp"), material_of("PVC SDR 35"), material_of("cheese")
    ('fiber', 'clay', 'PVC SDR 35', None)
    """
    known = next((m for m in MATERIALS if m.lower() == text.lower().strip()), None)
    return known or lexicon().means(phrase_key(text)).get("material")
