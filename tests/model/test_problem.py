"""Problems: printed with place, what is wrong, what to write instead; the worst first."""

from estimator.model.problem import Place, error, question, worst_first

SLIP = error("log/slip", "{word} is no word.", "Write {near}.")
ASK = question("log/ask", "nobody said {what}.", "Find out.")


def test_a_problem_says_where_what_and_what_to_write() -> None:
    problem = SLIP(Place("main.txt", 3, 7), word="rots", near="roots")
    assert str(problem) == "main.txt:3:7: rots is no word.\n  Write roots.   (log/slip)"


def test_a_place_in_a_table_names_file_table_and_cell() -> None:
    assert str(Place("prices.xlsx", table="materials", cell="D17")) == "prices.xlsx [materials] D17"


def test_errors_come_before_questions_whatever_their_line() -> None:
    first, last = SLIP(Place("a", 9), word="x", near="y"), ASK(Place("a", 1), what="the soil")
    assert worst_first((last, first)) == (first, last)
