"""Rules on arms, balls and the tie rod's joint.

The figures are common practice in the trade, without a published source.
"""

from collections.abc import Iterator
from functools import partial

from core.documents.document import value_at
from core.entry_checks.known import KnownAnswers
from core.entry_checks.outcome import Objection
from core.entry_checks.reading_names import reading_name
from core.entry_checks.rule import ENDS, Rule, rule
from core.kinematics.pivots import NEAR_BALL
from core.text.quantity import INCH

ARM_SIDE_DOUBT = 2 * INCH
"""mm; a ball may lie this far on the wrong side of the axle: castor leans a kingpin."""

KINGPIN_DOUBT = 4 * INCH
"""mm; a kingpin may stand this far from the axle's centreline."""


def arm_side(known: KnownAnswers) -> Iterator[Objection]:
    """Objection to a ball on the other side of the axle than its steering arm points to."""
    station, side = known.value("drag_link.axle.station"), value_at(known.document, "layout.arm")
    if station is None or side not in ("ahead", "behind"):
        return
    outwards = station if side == "ahead" else -station
    if outwards < -ARM_SIDE_DOUBT:
        yield Objection(
            f"The steering arm cannot point {side} with its ball at station "
            f"{known.tape(station)}: ahead of the axle counts plus, behind it minus.",
            impossible=True,
        )
        return
    arm = known.value("steering.arm")
    if arm is not None and abs(outwards - arm) > KINGPIN_DOUBT:
        where = "ahead of" if (outwards > arm) == (side == "ahead") else "behind"
        yield Objection(
            f"With an arm of {known.tape(arm)} and its ball at station {known.tape(station)} "
            f"the kingpin would stand {known.tape(abs(outwards - arm))} {where} the axle. Look "
            "at the station and at the arm."
        )


def joint_on_the_link(known: KnownAnswers) -> Iterator[Objection]:
    """Objection to a joint beyond the drag link: it lies between the two balls of the link."""
    joint, length = known.value("tie_rod.joint_from_far_ball"), _drag_link(known)
    if joint is not None and length is not None and joint >= length:
        yield Objection(
            f"The joint cannot lie {known.tape(joint)} from the far ball: the drag link is "
            f"{known.tape(length)} long, and the joint is on it.",
            impossible=True,
        )


def shorter_than_the_link(arm: str, known: KnownAnswers) -> Iterator[Objection]:
    """Objection to an arm longer than half the drag link: the link could not turn it."""
    value, length = known.value(arm), _drag_link(known)
    if value is not None and length is not None and value > length / 2:
        yield Objection(
            f"The {reading_name(arm)} cannot be {known.tape(value)} long with a drag link of "
            f"{known.tape(length)}. Measure from the centre of its shaft or kingpin to the "
            "ball, as seen from above.",
            impossible=True,
        )


def near_ball_side(known: KnownAnswers) -> Iterator[Objection]:
    """Objection to a near ball beyond the far ball."""
    near, far, frame = (
        known.value(f"{pivot}.offset") for pivot in (NEAR_BALL, "drag_link.axle", "drag_link.frame")
    )
    if near is None or far is None or frame is None or near == far:
        return
    if (near - far) * (frame - far) < 0:
        yield Objection(
            f"The near ball (offset {known.tape(near)}) cannot lie beyond the far ball "
            f"({known.tape(far)}): it is at the knuckle that the drag link does not reach.",
            impossible=True,
        )


def _drag_link(known: KnownAnswers) -> float | None:
    """Length of the drag link, mm: as read, else from its ends; None where neither is known."""
    separation = known.separation(*ENDS["drag_link"])
    length = known.value("drag_link.length")
    return length if length is not None else separation.distance if separation else None


def _rules() -> Iterator[Rule]:
    offsets = [f"{pivot}.offset" for pivot in (NEAR_BALL, *ENDS["drag_link"])]
    length = ["drag_link.length"]
    length += [f"{end}.{kind}" for end in ENDS["drag_link"] for kind in ("height", "offset")]
    yield rule(arm_side, "drag_link.axle.station", "steering.arm", "layout.arm")
    yield rule(joint_on_the_link, "tie_rod.joint_from_far_ball", *length)
    for arm in ("steering.arm", "steering.pitman_arm", "tie_rod.near_arm"):
        yield rule(partial(shorter_than_the_link, arm), arm, *length)
    yield rule(near_ball_side, *offsets)


RULES: tuple[Rule, ...] = tuple(_rules())
