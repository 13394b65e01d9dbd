"""A stretch to burst in; pits from the bend the pipe can take, pulls, joints, potholes and branch pits, out."""

from estimator.knowledge.excavation import ladders, needs_ladder
from estimator.takeoff.case import Case
from estimator.takeoff.dig_fill import sand_tons
from estimator.takeoff.dig_safety import potholes
from estimator.takeoff.haul import export, spoil
from estimator.takeoff.hole_safety import hand_shores, sides_are_held, trench_boxes
from estimator.takeoff.pipe import new_pipe
from estimator.takeoff.restoration import put_back
from estimator.takeoff.working import cubic_yards, shown, up
from estimator.works.burst_works import PullPlan, openings, pull_plan
from estimator.works.depth import bedding_ft, outside_ft
from estimator.works.ground import ground_facts, hand_only
from estimator.works.trench_width import Plan

PIT_SOURCE = "geometry of a bend; radius of 20 outside diameters from a city's code (read)"


def burst(case: Case) -> None:
    """A new pipe pulled through the old one, breaking it; pits at both ends and at each side drain."""
    ground_facts(case)
    paper, run = case.paper, case.stretch.length_ft
    paper.put("burst_ft", run, "old pipe burst", ("from", case.stretch.from_ft, "ft"), ("to", case.stretch.to_ft, "ft"))
    most, plan = case.number("burst_length_max_ft"), pull_plan(case)
    pulls = paper.put(
        "burst_pulls", plan.pulls, "length / longest pull, up", ("length", run, "ft"), ("longest", most, "ft")
    )
    tails, stick = case.number("burst_pipe_extra_ft"), case.number("burst_stick_ft")
    pipe = paper.put(
        "burst_pipe_ft",
        run + tails * pulls,
        "length + tails of each pull",
        ("length", run, "ft"),
        ("tails", tails, "ft"),
        ("pulls", pulls),
    )
    sticks = up(pipe / stick)
    paper.put("burst_joints", max(0.0, sticks - 1), "sticks - 1", ("sticks", sticks), ("stick", stick, "ft"))
    paper.warn("a rod or the camera passes all the way before the pull is promised")
    paper.put(
        "tie_in_wait_h",
        case.number("burst_wait_h"),
        "the pipe shrinks back before it is tied in",
        source="a city's code (read); the purpose as read",
    )
    new_pipe(case, tunnel=False, tested=True)
    for hung in ("pipe_trench_ft", "pipe_buy_ft", "glue_joints", "glue_sets"):
        paper.drop(hung)
    _pits(case, plan)
    potholes(case, case.stretch)


def _pits(case: Case, plan: PullPlan) -> None:
    """An entry pit as long as the bend needs, a pull pit for each pull, a small pit at each side drain."""
    paper, depth, pulls, side_pits = case.paper, plan.depth_ft, plan.pulls, len(plan.sides)
    shape, plans = case.word("burst_entry", "straight", "S"), plan.plans
    paper.put(
        "burst_entry_ft",
        plan.entry_ft,
        "√(H x (4R - H))" if shape == "S" else "√(2 x R x H - H²)",
        ("H, ground to the bottom", depth, "ft"),
        ("R, bend of the pipe", plan.radius_ft, "ft"),
        source=PIT_SOURCE,
    )
    paper.put(
        "pits",
        pulls + 1 + side_pits,
        "one entry, one at each pull's end, one a side drain",
        ("pulls", pulls),
        ("side drains", side_pits),
    )
    _earth(case, depth, plans)
    _pit_safety(case, plan)
    put_back(case, *((o.at_top, o.top_width_ft) for o in openings(case, plan)))
    _pump(case, plan)


def _pump(case: Case, plan: PullPlan) -> None:
    if any(o.wet for o in openings(case, plan)):
        case.paper.facts.add("wet")
        case.paper.put("dewater_days", case.number("burst_days_open"), "days the pits are open")


def _earth(case: Case, depth: float, plans: tuple[Plan, ...]) -> None:
    paper = case.paper
    by_hand = hand_only(case)
    plan_sf = sum(long * wide for long, wide in plans)
    bank = cubic_yards(depth * plan_sf)
    paper.put(
        "hand_dig_bcy" if by_hand else "dig_bcy",
        bank,
        "depth x plan of all pits / 27",
        ("depth", depth, "ft"),
        ("pits, as large as what holds their sides", ", ".join(f"{shown(a)} x {shown(b)} ft" for a, b in plans)),
    )
    if by_hand:
        paper.facts.add("hand_only")
    elif depth > case.number("machine_slow_from_ft"):
        paper.facts.add("depth_over_8")
    high = min(depth, bedding_ft(case) + outside_ft(case) + case.number("pipe_zone_over_ft"))
    zone = plan_sf * high
    sand, native = cubic_yards(zone), bank - cubic_yards(zone)
    paper.put(
        "pipe_zone_ccy",
        sand,
        "plan x (bedding + outside of the pipe + cover) / 27",
        ("plan", plan_sf, "sq ft"),
        ("bedding, pipe and cover", high, "ft"),
    )
    sand_tons(case, sand)
    paper.put("native_ccy", native, "dug - pipe zone", ("dug", bank, "cy"), ("pipe zone", sand, "cy"))
    paper.put(
        "hand_backfill_ccy" if by_hand else "backfill_ccy",
        native + sand,
        "native + pipe zone",
        ("native", native, "cy"),
        ("pipe zone", sand, "cy"),
    )
    spoil(case, bank)
    export(case, bank, native, case.soil.shrink_hand if by_hand else case.soil.shrink_machine)


def _pit_safety(case: Case, plan: PullPlan) -> None:
    """Boxes with both ends shielded; shores by hand where no machine gets to."""
    pits, depth, safe = plan.plans, plan.depth_ft, plan.safe_ft
    count = len(pits)
    case.paper.put(
        "safety_depth_ft",
        safe,
        "bottom, not rounded, + what the locator may be off",
        ("bottom", plan.under.exact_ft, "ft"),
        ("locator", plan.under.tolerance_ft, "ft"),
    )
    if needs_ladder(safe):
        case.paper.put("ladders", count * ladders(1), "one a pit", ("pits", count), source="29 CFR 1926.651(c)(2)")
    if sides_are_held(case, safe):
        if hand_only(case):
            hand_shores(case, sum(2 * (long + wide) for long, wide in pits), depth)
        else:
            trench_boxes(case, tuple(long for long, _ in pits), depth, case.number("burst_days_open"))
    case.paper.warn("nobody goes into a pit before the competent person has looked, each day and after every rain")
