"""Log lines as they are typed: what each word, number and mark is read as."""

import re

import pytest
from fieldnote_texts import codes, line_of, reading
from hypothesis import given, settings
from hypothesis import strategies as st

from estimator.fieldnotes.meaning import Context
from estimator.fieldnotes.slots import LEGS
from estimator.fieldnotes.tidy import tidied, trade_shortenings, whole_words
from estimator.fieldnotes.understand import understand
from estimator.fieldnotes.words import ALL_SIGNS, BY_NAME, GRADE_WORDS, MATERIALS, SIDES, SURFACES, WORDS
from estimator.model.line import FINDING_WORDS, ZONES, Finding, Mark
from estimator.model.problem import Level

IN_HEADINGS = ("front", "house", "main")
TO_PICTURES = ("photo", "video")
START = "pass front cleanout to street, riser 2 ft\n 2 yard lawn\n"


def finding(text: str, more: str = "") -> Finding:
    found = line_of(START + text + "\n", more).findings
    assert len(found) == 1, found
    return found[0]


def mark(text: str, more: str = "") -> Mark:
    marks = [m for m in line_of(START + text + "\n", more).marks if m.origin.row == 3 and not m.assumed]
    assert len(marks) == 1, marks
    return marks[0]


def test_every_word_is_in_the_table_once_and_every_zone_and_finding_of_the_model_is_among_them() -> None:
    names = [w.word for w in WORDS]
    assert sorted(names) == sorted(set(names))
    assert {*ZONES, *FINDING_WORDS} < set(names)


def test_shortenings_written_out_are_not_written_out_again() -> None:
    for meaning in trade_shortenings().values():
        assert whole_words(tidied(meaning), trade_shortenings()).text == meaning


def test_every_meaning_of_a_shortening_is_made_of_words_the_log_knows() -> None:
    known = {
        w.lower()
        for w in (*BY_NAME, *MATERIALS, *ALL_SIGNS, *SIDES, *SURFACES, *GRADE_WORDS, *LEGS, *IN_HEADINGS, *TO_PICTURES)
    }
    for short, meaning in trade_shortenings().items():
        left = re.sub(r"\d+%", " ", meaning.lower())
        for word in sorted(known, key=len, reverse=True):
            left = re.sub(rf"\b{re.escape(word)}\b", " ", left)
        assert not left.strip(), f"{short} means {meaning}, and nobody knows {left.strip()}"


@pytest.mark.parametrize("text", ["43 broken", "43 brk"])
def test_a_pipe_that_is_only_called_broken_is_asked_about_and_never_guessed(text: str) -> None:
    (problem,) = reading(START + text + "\n").problems
    assert problem.code == "log/asked"
    assert "crack" in str(problem.write) and "collapse" in str(problem.write) and "blocked" not in str(problem.write)
    assert mark("43 joint brk").signs == ("broken",)  # of a thing that is named it is a sign


@pytest.mark.parametrize(
    ("where", "station"),
    [
        ("12", (10, 10)),
        ("12.5", (10.5, 10.5)),
        ("12'6\"", (10.5, 10.5)),
        ("12'-6\"", (10.5, 10.5)),
        ("12’ 6”", (10.5, 10.5)),
        ("12 ft", (10, 10)),
        ("12-14", (10, 12)),
        ("12–14", (10, 12)),
        ("12 to 14", (10, 12)),
        ("14-12", (10, 12)),
        ("12'-14'", (10, 12)),
        ("~12", (10, 10)),
        ("~11 call 12", (10, 10)),
        ("16 no 12", (10, 10)),
        ("16 no 11 no 12", (10, 10)),
        ("twelve point five", (10.5, 10.5)),
        ("thirty three point three", (31.3, 31.3)),
        ("one hundred two", (100, 100)),
        ("twelve to fourteen", (10, 12)),
    ],
)
def test_where(where: str, station: tuple[float, float]) -> None:
    stretch = finding(f"{where} crack").stretch
    assert (stretch.from_ft, stretch.to_ft) == pytest.approx(station)


def test_a_reading_in_the_riser_lies_at_the_access() -> None:
    assert finding("1.5 crack").stretch.from_ft == 0


@pytest.mark.parametrize(
    ("amount", "percent"),
    [
        ("30%", (30, 30)),
        ("20..25%", (20, 25)),
        ("25-20%", (20, 25)),
        ("20 to 25%", (20, 25)),
        ("~30 %", (30, 30)),
        ("forty percent", (40, 40)),
        ("40 per cent", (40, 40)),
    ],
)
def test_percent_of_the_bore(amount: str, percent: tuple[float, float]) -> None:
    assert finding(f"12 roots {amount}").percent == percent
    assert finding(f"12 roots {amount}").worst_percent == percent[1]


@pytest.mark.parametrize(
    ("size", "inches"), [("3in", 3), ('3"', 3), ("3''", 3), ("1/2 in", 0.5), ('1 1/2"', 1.5), ("½in", 0.5)]
)
def test_inches_of_a_finding(size: str, inches: float) -> None:
    assert finding(f"12 hole {size}").size_in == inches


@pytest.mark.parametrize(
    ("text", "clock"),
    [("at 5-7", (5, 7)), ("at 12", (12, 12)), ("at 10-2", (10, 2)), ("at 5 to 7", (5, 7)), ("at 2 o'clk", (2, 2))],
)
def test_the_clock_comes_after_at_and_may_wrap(text: str, clock: tuple[int, int]) -> None:
    assert finding(f"12 crack {text}").clock == clock


@pytest.mark.parametrize("hour", ["0", "13"])
def test_a_clock_has_hours_from_one_to_twelve(hour: str) -> None:
    assert "log/asked" in codes(START + f"12 crack at {hour}\n")


def test_a_trailing_question_mark_and_the_word_make_it_suspected() -> None:
    assert finding("12 hole 2in?").grade == "suspected"
    assert finding("12 hole 2in suspected").grade == "suspected"
    assert finding("12 hole 2in").grade == "seen"


def test_signs_direction_photo_and_remark() -> None:
    f = finding("12 offset 15% dn, sharp, photo 3 lip.jpg ; catches the skid")
    assert (f.direction, f.signs, f.photo, f.photo_file, f.note) == (
        "down",
        ("sharp",),
        3,
        "lip.jpg",
        "catches the skid",
    )
    assert finding("12 crack video 12:40").video == "12:40"


def test_several_things_at_one_place_are_parted_by_commas_or_named_by_same() -> None:
    line = line_of(START + "12 roots 30%, offset 20%\nsame crack hairline\n")
    assert [(f.kind, f.stretch.from_ft) for f in line.findings] == [("crack", 10), ("offset", 10), ("roots", 10)]


def test_six_joints_are_a_count_and_every_three_feet_makes_joints() -> None:
    assert finding("12-51 roots 20% 6 joints").count == 6
    joints = [m for m in line_of(START + "8-20 joints every 3ft\n").marks if m.assumed]
    assert [m.stretch.from_ft for m in joints] == [6, 9, 12, 15, 18]


def test_regular_joints_from_a_point_end_where_the_pipe_changes() -> None:
    line = line_of(START + "8 clay, joints 3ft\n15 PVC\n30 crack\n")
    assert [m.stretch.from_ft for m in line.marks if m.assumed] == [6, 9, 12]
    line = line_of(START + "8 clay, joints 3ft\n30 crack\n")
    assert [m.stretch.from_ft for m in line.marks if m.assumed][-1] == 27


def test_a_joint_with_a_lip_is_an_offset_too() -> None:
    f = finding('12 jt lip up 1/2"')
    assert (f.kind, f.size_in, f.direction) == ("offset", 0.5, "up")


def test_open_ends_are_joined_and_take_the_worst_amount() -> None:
    f = finding("22 uw starts\n24 still uw 30%\n26 uw ends 50%")
    assert (f.stretch.from_ft, f.stretch.to_ft, f.percent) == (20, 24, (50, 50))
    f = finding("22 sag starts 40%\n26 sag ends")
    assert f.percent == (40, 40)


def test_an_open_end_that_never_ends_runs_to_where_the_camera_stopped() -> None:
    line = line_of(START + "8- channel\n33 stop water\n")
    assert line.findings[0].stretch.to_ft == 31
    assert codes(START + "8- channel\n33 stop water\n") == ["log/no-end"]


def test_a_pass_may_hold_two_open_stretches_of_a_kind() -> None:
    line = line_of(START + "10 sag starts 20%\n14 sag ends\n20 sag starts 30%\n25 sag ends\n")
    assert [(f.stretch.from_ft, f.stretch.to_ft) for f in line.findings] == [(8, 12), (18, 23)]


def test_a_second_end_closes_nothing() -> None:
    log = START + "10 sag starts 20%\n14 sag ends\n16 sag ends\n"
    assert codes(log) == ["log/asked", "log/no-start"]
    assert codes(START + "10 sag starts 20%\n14 sag ends\n16 sag starts 20%\n18 sag ends\n") == []


@pytest.mark.parametrize(("percent", "fine"), [("100%", True), ("101%", False), ("90..101%", False)])
def test_no_more_than_the_whole_bore_is_taken(percent: str, fine: bool) -> None:
    assert codes(START + f"12 roots {percent}\n") == ([] if fine else ["log/asked"])


def test_depth_words_say_from_where() -> None:
    for text, feet, surface in [
        ("12 depth 3.4ft from lawn", 3.4, "lawn"),
        ("12 depth 2ft8in from slab", 32 / 12, "slab"),
        ("12 loc 27in under tile", 2.25, "tile"),
        ("12 pothole 3'2\" under grass", 38 / 12, "lawn"),
        ("12 invert 2.6ft below slab top", 2.6, "slab"),
        ("12 level 31.5in below slab", 2.625, "slab"),
    ]:
        m = mark(text)
        assert (m.depth_ft, m.surface) == (pytest.approx(feet), surface)
    assert mark("12 invert 2.6ft below slab").to == "invert"
    assert mark("12 depth 3ft from lawn").to == "centre"


def test_a_locate_has_tapes_a_flag_and_may_have_no_depth() -> None:
    m = mark("12 loc 28'1\" front wall, 6'2\" off hall wall, flag b")
    assert (m.depth_ft, m.flag) == (None, "B")
    assert [(t.length_ft, t.to) for t in m.ties] == [
        (pytest.approx(28 + 1 / 12), "front wall"),
        (pytest.approx(74 / 12), "hall wall"),
    ]


def test_labelled_lengths_come_before_their_label() -> None:
    assert dict(mark("12 beam 24in deep 12in wide").lengths) == {"deep": 2.0, "wide": 1.0}
    assert dict(mark("12 footing 3ft away 18in deep").lengths) == {"away": 3.0, "deep": 1.5}
    assert mark("12 beam 24in deep, through").through
    assert mark("12 beside 14ft").length() == 14
    assert mark("12 clear 20").length() == 20
    tree = mark("12 tree 30in 5ft away")
    assert (tree.size_in, tree.length("away")) == (30, 5)
    assert mark("12 crossing gas 18in above").choice == "gas"


def test_a_branch_has_size_side_flow_and_name() -> None:
    m = mark("12 wye L 3in live proven called hall bath")
    assert (m.word, m.size_in, m.side, m.live, m.proven, m.name) == ("branch", 3, "left", "live", True, "hall bath")
    m = mark("12 branch 2 right dead out of reach 3ft away")
    assert (m.size_in, m.side, m.live, m.out_of_reach, m.length("away")) == (2, "right", "dead", True, 3)
    assert mark("12 branch 2in not flushed").proven is False


def test_water_run_through_a_branch_proves_it_live() -> None:
    assert (mark("12 wye L 3in, ran water").live, mark("12 wye L 3in proven dead").live) == ("live", "dead")


def test_whether_a_branch_is_in_use_is_asked_with_the_whole_line_and_the_word_that_was_typed_first() -> None:
    found = understand("29.5 shower 2in left, dead I think", Context(zone="slab", last_ft=8.0, furthest_ft=8.0))
    assert found.choices == ("29.5 branch 2in left dead called shower", "29.5 branch 2in left live called shower")


def test_a_short_name_on_top_is_understood_from_then_on() -> None:
    line = line_of("hb = hall bath; kt = kitchen\n" + START + "12 wye 3in live proven hb\n15 wye 2in live proven kt\n")
    assert [m.name for m in line.marks if m.word == "branch"] == ["hall bath", "kitchen"]


def test_the_owners_own_shortenings_stand_under_words() -> None:
    line = line_of(START + "12 murk 30%\n", '\n[words]\nmurk = "sag"\n')
    assert line.findings[0].kind == "sag"


def test_under_a_zone_is_the_zone_and_the_slab_edge_is_where_the_slab_begins() -> None:
    assert (mark("12-20 under drive").word, mark("12-20 under the street").word) == ("drive", "street")
    assert mark("12 slab edge tile").word == "slab"
    assert {m.word for m in line_of(START + "12 slab, edge 4ft away\n").marks if m.origin.row == 3} == {"slab", "edge"}


def test_rooms_soil_and_what_an_end_reached_take_any_words() -> None:
    assert mark("12 room hall bath").name == "hall bath"
    assert mark("12 soil firm clay").choice == "firm clay"
    assert mark("12 under cabinets").choice == "cabinets"
    assert mark("12 end closet bend").choice == "closet bend"
    assert mark("12 stop reached main").choice == "reached main"


def test_a_material_alone_means_pipe() -> None:
    assert (mark("12 ci").word, mark("12 ci").choice) == ("pipe", "cast iron")
    assert mark("12 pvc sdr 35").choice == "PVC SDR 35"


@pytest.mark.parametrize(
    ("line", "asked"),
    [
        ("5 in roots light", "footage"),
        ("5-6in hole", "footage"),
        ("12 roots 40", "40 of what"),
        ("12 roots", "how much"),
        ("12", "what is there"),
        ("12 branch", "what size"),
        ("12- pipe", "what is there"),
        ("12 roots 101%", "more than the whole"),
        ("12 crack at 13", "of what"),
        ("hole 3in soil seen", "footage"),
        ("7 wadget here", "wadget"),
    ],
)
def test_what_may_mean_two_things_is_asked_back_and_stops_nothing_else(line: str, asked: str) -> None:
    found = reading(START + line + "\n20 crack\n")
    (problem,) = found.problems
    assert (problem.code, problem.level, problem.place.line) == ("log/asked", Level.QUESTION, 3)
    assert asked in str(problem.wrong)
    assert found.job is not None
    assert [f.kind for f in found.job.lines[0].findings] == ["crack"]
    assert [u.text for u in found.job.lines[0].unclear] == [line]


@pytest.mark.parametrize(
    ("line", "said"),
    [
        ("12'-6 roots 30%", "roots 10.5"),
        ("38,5 roots 30%", "roots 36.5"),
        ("12 roots lots", "roots 10"),
        ("12 2in hole", "hole 10"),
        ("12 room kitchen hole 2in", "hole 10"),
    ],
)
def test_words_in_any_order_are_read(line: str, said: str) -> None:
    assert finding(line).id == f"main: {said}"


@pytest.mark.parametrize(
    "line",
    [
        "3 mud",
        "5 insects",
        "12 hole",
        "12 crack",
        "12 roots hair",
        "12 roots light",
        "12 offset, 15%, down",
        "12 stop roots",
        "12 crack, hole 2in",
    ],
)
def test_what_needs_no_amount(line: str) -> None:
    assert codes(START + line + "\n") == []


def test_reading_goes_on_to_the_end_and_names_every_line_that_is_asked() -> None:
    problems = reading(START + "12 rots 30%\n13 roots 40\n14 crack\n15 oval\n").problems
    assert [(p.place.line, p.code) for p in problems] == [(4, "log/asked"), (6, "log/asked")]


def test_lines_without_a_reading_and_comments_are_notes() -> None:
    assert codes("# a hot day\n8:10 rec on\n" + START + "12 crack\n8:26 out\naft: cleaned to 33 only\n") == []
    assert codes(START + "12 crack\nroots all over\n") == ["log/asked"]


@settings(deadline=None)
@given(st.sampled_from(sorted(BY_NAME) + list(MATERIALS) + list(ALL_SIGNS)))
def test_known_words_are_never_taken_for_shortenings(word: str) -> None:
    assert whole_words(tidied(word), trade_shortenings()).text == word


@pytest.mark.parametrize(
    ("text", "name"),
    [
        ("13 branch kitchen left 2in live", "kitchen"),
        ("13 wye 3in left Hall Bath proven", "hall bath"),
        ("13 branch 2in kitchen sink", "kitchen sink"),
        ("13 branch 3in left called den bath", "den bath"),
        ("13 branch 3in left", None),
    ],
)
def test_a_branch_may_be_called_by_a_room_without_saying_called(text: str, name: str | None) -> None:
    assert mark(text).name == name
    assert mark("13 branch den left 2in").name == "den"
