"""The stretch replaced in; pipe, fittings, couplings, cleanouts, hangers and toilets out."""

from estimator.takeoff.case import Case
from estimator.takeoff.water_test import new_pipe_test
from estimator.takeoff.working import up

EIGHTH_BEND_DEGREES = 45.0
FITTINGS_SOURCE = "common practice; horizontal turns with wye and eighth bend or long sweep"


def new_pipe(case: Case, *, tunnel: bool, tested: bool) -> None:
    """Pipe over the whole stretch, a coupling at each end, a wye, bend and coupling for each side drain."""
    paper, length = case.paper, case.stretch.length_ft
    paper.put(
        "pipe_ft",
        length,
        "from sound pipe to sound pipe",
        ("from", case.stretch.from_ft, "ft"),
        ("to", case.stretch.to_ft, "ft"),
    )
    paper.put(
        "pipe_tunnel_ft" if tunnel else "pipe_trench_ft",
        length,
        "from sound pipe to sound pipe",
        ("from", case.stretch.from_ft, "ft"),
        ("to", case.stretch.to_ft, "ft"),
    )
    paper.put("pipe_buy_ft", length, "net length; waste and whole sticks come on top", ("pipe", length, "ft"))
    _branches(case, tunnel)
    _ends(case, tunnel)
    _joints(case, turn_fittings(case))
    _cleanouts(case)
    if tested:
        _tested(case)


def _ends(case: Case, tunnel: bool) -> None:
    paper, junction = case.paper, 1 if case.at_junction else 0
    paper.put(
        "end_couplings_tunnel" if tunnel else "end_couplings",
        2 - junction,
        "one at each end; at a junction the new wye is glued on",
        ("new wyes in the line it joins", junction),
    )
    paper.put("junctions", junction, "a side line renewed down to where it joins: a new wye, cut in with two couplings")


def _joints(case: Case, bends: float) -> None:
    """Bends, couplings, and what is glued: sticks of pipe, side drains and bends."""
    paper = case.paper
    paper.put(
        "eighth_bends",
        len(case.branches) + bends,
        "one a side drain; one for each 45 degrees of a turn, up, one where no degrees were noted",
        ("side drains", len(case.branches)),
        ("bends in the turns", bends),
        source=FITTINGS_SOURCE,
    )
    paper.put(
        "couplings",
        2 + len(case.branches),
        "one at each end, one a side drain",
        ("ends", 2),
        ("side drains", len(case.branches)),
    )
    sticks = up(case.stretch.length_ft / case.number("pipe_stick_ft"))
    paper.put(
        "glue_joints",
        max(0.0, sticks - 1) + 3 * len(case.branches) + 2 * bends,
        "sticks - 1, three a side drain, two a bend",
        ("sticks", sticks),
        ("side drains", len(case.branches)),
        ("bends in the turns", bends),
    )
    joints, a_set = paper.value("glue_joints"), case.number("glue_joints_per_set")
    paper.put("glue_sets", up(joints / a_set), "joints / joints of one set, up", ("joints", joints), ("one set", a_set))


def turn_fittings(case: Case) -> float:
    """Eighth bends in the turns of the stretch: a square turn is made of two, a slight one of a sixteenth counted as one."""
    turns = [m for m in case.profile.marks("bend") if case.stretch.holds(m.stretch.from_ft)]
    return sum(max(1.0, up((m.degrees or 0.0) / EIGHTH_BEND_DEGREES)) for m in turns)


def _branches(case: Case, tunnel: bool) -> None:
    paper, tied = case.paper, case.branches
    where = ", ".join(f"{b.size_in:g} in at {b.station_ft:g}" for b in tied) or "none in the stretch"
    paper.put(
        "branches_tunnel" if tunnel else "branches",
        len(tied),
        "side drains that join the stretch",
        ("side drains", where),
        source=FITTINGS_SOURCE,
    )
    paper.put("wyes", len(tied), "one a side drain", ("side drains", len(tied)), source=FITTINGS_SOURCE)
    stubs = sum(b.away_ft if b.away_ft else case.number("branch_stub_ft") for b in tied)
    paper.put(
        "stub_ft",
        stubs,
        "from the new wye to where the old side drain is sound",
        ("side drains", len(tied)),
        ("stub where the tie lies at the line", case.number("branch_stub_ft"), "ft"),
    )
    for branch in tied:
        if branch.live is None or branch.proven is False:
            paper.assume("the branch drain at {at} is in use; we run water to verify it", at=branch.station_ft)


def _cleanouts(case: Case) -> None:
    """A two-way cleanout where the new pipe leaves the building and none stands there; more along long new runs."""
    near, far = case.inside
    reach = case.number("cleanout_exit_ft")
    there = [m for m in case.profile.marks("cleanout") if abs(case.inside_ft(m.stretch.from_ft)) <= reach]
    crosses = case.profile.slab_edge_ft is not None and near < 0 < far
    exits = 1 if crosses and not there else 0
    place = case.place
    every = place.cleanout_every_ft if place and place.cleanout_every_ft else case.number("cleanout_every_ft")
    along = max(0.0, up(case.stretch.length_ft / every) - 1)
    turns = sum(
        1
        for m in case.profile.marks("bend")
        if case.stretch.holds(m.stretch.from_ft) and (m.degrees or 0) > _turn_degrees(case)
    )
    case.paper.put(
        "cleanouts",
        exits + along + turns,
        "at the building's exit where none stands, one each so many ft, one a turn",
        ("at the exit", exits),
        ("every", every, "ft"),
        ("along the run", along),
        ("turns", turns),
        source="IPC 708 (100 ft apart; turns over 45 degrees)",
    )


def _turn_degrees(case: Case) -> float:
    place = case.place
    if place and place.cleanout_turn_degrees:
        return place.cleanout_turn_degrees
    return case.number("cleanout_turn_degrees")


def _tested(case: Case) -> None:
    """What the test of the new pipe takes here; it is sold once for all that is laid on a visit (job.py)."""
    paper = case.paper
    paper.put(
        "test_tees",
        max(0.0, 1 - paper.value("cleanouts")),
        "one, less new cleanouts: the plug goes in there",
        ("new cleanouts", paper.value("cleanouts")),
    )
    new_pipe_test(case)


def hangers(case: Case, hung_ft: float) -> None:
    """Hangers for pipe hung from the slab: one each so many ft and one at the end, one more a side drain and a turn."""
    _supports(
        case, "hangers", formula="pipe / spacing, up, + 1 + side drains and turns", words=("pipe hung", hung_ft, "ft")
    )


def stands(case: Case, held_ft: float) -> None:
    """Where the slab may hold tendons nothing is anchored in it: the pipe stands on supports from the tunnel's floor."""
    case.paper.warn(
        "Tendons possible: no anchors or cores into the slab, no cleanout core without a scan; pipe on stands from the tunnel floor, no hangers."
    )
    _supports(
        case,
        "pipe_stands",
        formula="pipe / spacing, up, + 1 + side drains and turns; no anchor in a slab that may have tendons",
        words=("pipe held", held_ft, "ft"),
    )


def _supports(case: Case, name: str, *, formula: str, words: tuple[str, float, str]) -> None:
    every, ties = case.number("hanger_plastic_ft"), len(case.branches) + case.bends
    case.paper.put(
        name,
        up(words[1] / every) + 1 + ties,
        formula,
        words,
        ("spacing", every, "ft"),
        ("side drains and turns", ties),
        source="IPC table 308.5 / IRC P2605.1: 4 ft for plastic, from memory",
    )
    case.paper.warn("the pipe is filled with water and held down before fill is pumped: an empty pipe floats")
