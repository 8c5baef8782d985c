"""Arms, balls and the tie rod's joint, compared with the drag link.

The figures are common practice in the trade, without a published source.
"""

from collections.abc import Iterator
from functools import partial

from core.documents.document import value_at
from core.entry_checks.known import KnownAnswers
from core.entry_checks.outcome import Objection
from core.entry_checks.reading_names import reading_name
from core.entry_checks.rule import ENDS, Rule, coordinates, format_tape, rule
from core.kinematics.pivots import NEAR_BALL, Direction
from core.text.quantity import INCH

BALL_OFF_SIDE = 2 * INCH
"""mm; a ball may lie this far on the wrong side of the axle: castor leans the kingpin."""

KINGPIN_OFF_AXLE = 4 * INCH
"""mm; a kingpin may stand this far ahead of or behind the axle's centreline."""


def arm_against_ball(known: KnownAnswers) -> Iterator[Objection]:
    """Object to a steering arm that does not fit the station of its ball.

    The ball of an arm that points ahead is ahead of the axle, by about the length of the arm.
    """
    station, side = known.value("drag_link.axle.station"), value_at(known.document, "layout.arm")
    if station is None or side not in (Direction.AHEAD, Direction.BEHIND):
        return
    along_arm = station * Direction(side).sign
    if along_arm < -BALL_OFF_SIDE:
        yield Objection(
            f"The steering arm cannot point {side} with its ball at station "
            f"{format_tape(station, known)}. Ahead of the axle counts plus, behind it minus.",
            impossible=True,
        )
        return
    arm = known.value("steering.arm")
    if arm is not None and abs(along_arm - arm) > KINGPIN_OFF_AXLE:
        place = "ahead of" if (along_arm > arm) == (side == Direction.AHEAD) else "behind"
        yield Objection(
            f"The steering arm is {format_tape(arm, known)} and its ball is at station "
            f"{format_tape(station, known)}. Then the kingpin would stand "
            f"{format_tape(abs(along_arm - arm), known)} {place} the axle. "
            "Look at the station and at the arm."
        )


def box_on_the_other_side(known: KnownAnswers) -> Iterator[Objection]:
    """Object to a drag link that does not start on the side of the steering box.

    Offsets that were all taken with the wrong sign close as well as the right ones do. Only the
    side of the box shows them.
    """
    side = value_at(known.document, "layout.steering_box")
    frame, axle = (known.value(f"{end}.offset") for end in ENDS["drag_link"])
    if known.runs_fore_aft("drag_link"):
        left, right = (known.value(f"wheels.{wheel}_offset") for wheel in ("left", "right"))
        axle = None if left is None or right is None else (left + right) / 2
    if side not in ("left", "right") or frame is None or axle is None:
        return
    if (frame < axle) != (side == "left"):
        yield Objection(
            f"The steering box is on the {side}, but the drag link's frame end (offset "
            f"{format_tape(frame, known)}) lies on the other side of {format_tape(axle, known)}. "
            "Right of the datum line counts plus. Look at the signs of all offsets."
        )


def runs_across_after_all(known: KnownAnswers) -> Iterator[Objection]:
    """Object to a fore-and-aft drag link whose ends are further apart across than lengthwise."""
    separation = known.separation(*ENDS["drag_link"])
    if not known.runs_fore_aft("drag_link") or separation is None or separation.ahead is None:
        return
    across, along = abs(separation.left), abs(separation.ahead)
    if across > along:
        yield Objection(
            f"The drag link would run {format_tape(across, known)} across and only "
            f"{format_tape(along, known)} lengthwise. In this layout it runs along the frame. "
            "Look at offsets and stations of both ends, or at where the drag link goes."
        )


def joint_off_link(known: KnownAnswers) -> Iterator[Objection]:
    """Object to a joint of the tie rod that does not lie between the drag link's balls."""
    joint, length = known.value("tie_rod.joint_from_far_ball"), _drag_link_length(known)
    if joint is not None and length is not None and joint >= length:
        yield Objection(
            f"The joint cannot lie {format_tape(joint, known)} from the far ball. "
            f"The joint is on the drag link, and the drag link is {format_tape(length, known)} "
            "long.",
            impossible=True,
        )


def arm_too_long(arm: str, known: KnownAnswers) -> Iterator[Objection]:
    """Object to an arm longer than half the drag link: the link could not turn it."""
    value, length = known.value(arm), _drag_link_length(known)
    if value is not None and length is not None and value > length / 2:
        yield Objection(
            f"The {reading_name(arm)} cannot be {format_tape(value, known)} long with a drag link "
            f"of {format_tape(length, known)}. Measure it, seen from above, from the centre of its "
            "shaft or kingpin to the ball.",
            impossible=True,
        )


def near_ball_beyond_far_ball(known: KnownAnswers) -> Iterator[Objection]:
    """Object to a near ball that is not at the knuckle the drag link comes from."""
    near, far, frame = (
        known.value(f"{pivot}.offset") for pivot in (NEAR_BALL, "drag_link.axle", "drag_link.frame")
    )
    if near is None or far is None or frame is None:
        return
    if (near - far) * (frame - far) < 0:
        yield Objection(
            f"The near ball (offset {format_tape(near, known)}) cannot lie beyond the far ball "
            f"({format_tape(far, known)}). "
            "The near ball is at the knuckle that the drag link does not reach.",
            impossible=True,
        )


def _drag_link_length(known: KnownAnswers) -> float | None:
    """Length of the drag link, taken or else from its ends, mm; None where neither is known."""
    length = known.value("drag_link.length")
    if length is not None:
        return length
    separation = known.separation(*ENDS["drag_link"])
    return separation.distance if separation else None


def _rules() -> Iterator[Rule]:
    offsets = [f"{pivot}.offset" for pivot in (NEAR_BALL, *ENDS["drag_link"])]
    length = ["drag_link.length"]
    length += [f"{end}.{kind}" for end in ENDS["drag_link"] for kind in ("height", "offset")]
    yield rule(arm_against_ball, "drag_link.axle.station", "steering.arm", "layout.arm")
    ends = [f"{end}.offset" for end in ENDS["drag_link"]]
    wheels = ("wheels.left_offset", "wheels.right_offset")
    yield rule(box_on_the_other_side, "layout.steering_box", *ends, *wheels)
    yield rule(runs_across_after_all, "layout.steering", *coordinates(*ENDS["drag_link"]))
    yield rule(joint_off_link, "tie_rod.joint_from_far_ball", *length)
    for arm in ("steering.arm", "steering.pitman_arm", "tie_rod.near_arm"):
        yield rule(partial(arm_too_long, arm), arm, *length)
    yield rule(near_ball_beyond_far_ball, *offsets)


RULES: tuple[Rule, ...] = tuple(_rules())
