"""What counts as tight, how new pipe is tested, and what can hurt while a plug is in: the same for every house."""

from estimator.knowledge.hydrostatics import CODE_HEAD_FT, CODE_MINUTES, head_psi, plug_load_lb
from estimator.model.say import Feet, Inches, Say
from estimator.onsite.sheet import Block
from estimator.tables.tables import Tables


def tight(tables: Tables) -> Block:
    """Return how old drains are filled and read."""
    lines = (
        Say.of("Fill to the top of the slab, no higher. Old drains are not built for more."),
        Say.of(
            "Wait {settle} minutes for air to leave. Then read the level every 5 minutes.",
            settle=f"{tables.number('test_settle_min'):g}",
        ),
        _tight_when(tables),
        Say.of("Write down every open riser and its size, and the height where the level stops."),
        Say.of("If it drops, move the plug before you blame the pipe: rough iron often keeps a plug from sealing."),
    )
    return Block(heading=Say.of("What counts as tight"), lines=lines)


def _tight_when(tables: Tables) -> Say:
    allowed, minutes = tables.number("test_allowed_drop_in"), f"{tables.number('test_minutes'):g}"
    if allowed == 0:
        return Say.of("Tight: no drop in {minutes} minutes after that.", minutes=minutes)
    return Say.of(
        "Tight: drop of no more than {drop} in {minutes} minutes after that.", drop=Inches(allowed), minutes=minutes
    )


def new_pipe(size_in: float, highest_joint_ft: float | None) -> Block:
    """Return the test of new pipe: the load on a plug of that size, and the stack that gives the head above a joint so far below the slab top."""
    lines = [
        Say.of(
            "New pipe: {head} of water above the highest joint for {minutes} minutes, no drop, unless your code says otherwise.",
            head=Feet(CODE_HEAD_FT),
            minutes=f"{CODE_MINUTES:g}",
        ),
        Say.of(
            "That is {psi} psi, {pounds} lb on a {size} plug.",
            psi=f"{head_psi(CODE_HEAD_FT):.1f}",
            pounds=f"{plug_load_lb(size_in, CODE_HEAD_FT):.0f}",
            size=Inches(size_in),
        ),
    ]
    if highest_joint_ft is not None:
        lines.append(
            Say.of(
                "Stack: fill to {stack} above the slab top. The highest joint is {deep} below the slab top.",
                stack=Feet(round(max(CODE_HEAD_FT - highest_joint_ft, 0.0), 1)),
                deep=Feet(round(highest_joint_ft, 1)),
            )
        )
        lines.append(Say.of("Plug every lower opening first, or the house floods. Test new pipe alone."))
    return Block(heading=Say.of("After the repair"), lines=tuple(lines))


CAUTIONS = Block(
    heading=Say.of("Before you inflate a plug"),
    lines=(
        Say.of("Inflate to the pressure printed on the plug, with a gauge. Never past it."),
        Say.of("Stand clear of the pipe end. A plug that slips comes out with the full weight of the water."),
        Say.of("Tie the plug off. Drain from above before you deflate it."),
        Say.of("Never test with compressed air."),
        Say.of("Tell everybody in the house: no water, no toilets until the plug is out. Tape the fixtures."),
        Say.of("Sewage: gloves, eye protection, and wash up."),
    ),
)
