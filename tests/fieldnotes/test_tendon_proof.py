"""A slab counts as one without tendons by a paper that shows it, and by nothing else.

Common practice: a slab that may hold tendons is not cut before it was scanned, and a missing stamp proves nothing. What is
sorted here is how people answer, not a published list: every answer below is either a paper in hand, or it is asked back.
"""

from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from estimator.fieldnotes.answers import Got, Known, Unread
from estimator.fieldnotes.slab_answers import NOBODY_KNOWS, proof_of_no_tendons
from estimator.fieldnotes.tendon_proof import why_no_proof
from estimator.model.say import Say, Typed
from tests.fieldnotes.fieldnote_texts import HEAD, reading

SHORT = "pass front cleanout to street, riser 2 ft\n2 yard lawn\n30 roots 30%\n"
PAPERS = (
    "engineer's drawing", "engineer’s drawing no. 12 of 1995", "foundation drawing of 1965 on file", "scan of Nov 12",
    "foundation plan, sheet S-1", "builder's statement of 1998", "letter of the engineer, May 2024", "GPR scan: none found",
    "tendon scan, none found", "scanned for cables, nothing found", "as-built drawing shows none", "permit record 1987-221",
    "city record: not post-tensioned", "engineer's letter: no post-tensioned slab", "certificate of the builder",
    "drawing, no tendons", "structural drawings say none", "engineer's report of 2/3/2026", "blueprints in the office",
)  # fmt: skip
NO_PAPERS = (
    "I don't know", "later", "maybe", "unsure", "not yet", "n/a", "scan ordered", "ask the engineer", "owner says so",
    "has tendons", "cables", "post tension", "it is post-tensioned", "no se", "nada", "no proof", "my word", "I looked",
    "no stamp", "drawing has no stamp", "no drawing", "no tendon drawing", "no tendon scan", "scan pending", "scan next week",
    "letter coming", "waiting for the engineer's letter", "drawing lost", "plan to scan", "engineer will send a letter",
    "owner says the plans show none", "owner's statement", "scan found 4 cables", "tendon scan: 4 found", "drawing shows tendons",
    "PT letter", "scan?", "drawing?", "plans missing", "scan inconclusive", "drawing of the garage only", "scan not done",
    "the drawing isn't here", "none yet, scan to be done", "yes", "y", "yes, engineer's letter", "permit", "built by my uncle",
    "drawing unreadable", "probably on the plans", "city has the plans", "scan scheduled 12/3", "get a scan", "1995", "-", "x",
    "none except in the garage, by drawing", "scan shows some", "need letter", "if the scan says none", "i think the drawing says none",
)  # fmt: skip


@pytest.mark.parametrize("words", PAPERS)
def test_a_paper_that_is_named_counts(words: str) -> None:
    assert why_no_proof(words) is None
    assert proof_of_no_tendons(words, "tendons", Known(today=date(2026, 11, 18))) == Got(
        {"tendons": f"none, {words}"}, Say.of("no tendons, by {proof}", proof=Typed(words))
    )


@pytest.mark.parametrize("words", NO_PAPERS)
def test_anything_else_is_asked_back_and_never_written(words: str) -> None:
    assert why_no_proof(words)
    for said in (words, f"none, {words}", words.upper(), f"{words}."):
        assert isinstance(proof_of_no_tendons(said, "tendons", Known(today=date(2026, 11, 18))), Unread)


@pytest.mark.parametrize("words", NOBODY_KNOWS)
def test_where_nobody_knows_the_slab_may_have_them(words: str) -> None:
    got = proof_of_no_tendons(words, "tendons", Known(today=date(2026, 11, 18)))
    assert isinstance(got, Got) and got.values == {"tendons": "unknown"}


@pytest.mark.parametrize("words", NO_PAPERS)
def test_the_job_file_names_it_and_says_what_to_write(words: str) -> None:
    problems = reading(SHORT, head=_house(f"none, {words}")).problems
    assert [p.code for p in problems] == ["job/tendons"]
    assert "engineer's drawing of 1995" in str(problems[0])


@pytest.mark.parametrize("words", [*PAPERS])
def test_the_job_file_takes_a_paper(words: str) -> None:
    found = reading(SHORT, head=_house(f"none, {words}"))
    assert found.job is not None and found.job.house.tendons == f"none, {words}"


def test_a_blank_before_the_word_hides_no_tendons() -> None:
    """The rules ask whether the words begin with yes."""
    found = reading(SHORT, head=_house(" Yes, stamped"))
    assert found.job is not None and found.job.house.tendons == "Yes, stamped"


@given(st.lists(st.sampled_from([w for text in NO_PAPERS for w in text.split()]), max_size=6), st.sampled_from(PAPERS))
def test_one_word_of_doubt_undoes_any_paper(words: list[str], paper: str) -> None:
    assert why_no_proof(f"{paper}, not yet {' '.join(words)}")
    assert why_no_proof(f"{' '.join(words)} scan ordered, {paper}")


def _house(words: str) -> str:
    return HEAD.replace("[house]", f'[house]\nbuilt = 1995\ntendons = "{words}"', 1)
