"""Positions of pivots and wheels, compared with each other.

The figures are common practice in the trade, without a published source.
"""

from collections.abc import Iterator
from functools import partial

from core.entry_checks.known import KnownAnswers
from core.entry_checks.outcome import Objection
from core.entry_checks.reading_names import PLACES
from core.entry_checks.rule import ENDS, Rule, coordinates, format_tape, rule
from core.kinematics.pivots import NEAR_BALL, PIVOTS
from core.readings.survey import BRACES
from core.text.quantity import INCH

NARROWEST, WIDEST = 40 * INCH, 100 * INCH
"""Usual smallest and largest distance between the middles of the two front tyres, mm."""

ONE_PLACE = INCH / 2
"""mm; two pivots that are closer than this are one pivot."""

ALONGSIDE = INCH
"""mm; a link whose ends differ less than this in offset does not run across the vehicle."""

AXLE_ENDS = ("track_bar.axle", "drag_link.axle", NEAR_BALL)


def frame_end_low(link: str, known: KnownAnswers) -> Iterator[Objection]:
    """Object to a frame end that is lower than its axle end; usually it is the higher one."""
    frame, axle = (known.value(f"{end}.height") for end in ENDS[link])
    if frame is not None and axle is not None and frame < axle:
        yield Objection(
            f"The {PLACES[link]}'s frame end ({format_tape(frame, known)}) is lower than its axle "
            f"end ({format_tape(axle, known)}). Usually the frame end is higher. "
            "Were the two swapped?"
        )


def axle_end_far_from_hub(pivot: str, known: KnownAnswers) -> Iterator[Objection]:
    """Object to a pivot of the axle that is a hub height or more above or below the hub."""
    height, hub = known.value(f"{pivot}.height"), known.value("wheels.hub_height")
    if height is not None and hub is not None and abs(height - hub) > hub:
        yield Objection(
            f"The {PLACES[pivot]} ({format_tape(height, known)}) is more than a hub height away "
            f"from the hub ({format_tape(hub, known)}). "
            "Look whether both were taken from the floor to the centre."
        )


def no_run_across(link: str, known: KnownAnswers) -> Iterator[Objection]:
    """Object to a link with both ends at one offset: a link runs across the vehicle."""
    frame, axle = (known.value(f"{end}.offset") for end in ENDS[link])
    if known.runs_fore_aft(link) or frame is None or axle is None:
        return
    if abs(frame - axle) < ALONGSIDE:
        yield Objection(
            f"Both ends of the {PLACES[link]} are at the same offset ({format_tape(axle, known)}). "
            "It runs across the vehicle, so its ends have to be far apart. "
            "Measure both from the same datum line.",
            impossible=True,
        )


def unusual_span(link: str, known: KnownAnswers) -> Iterator[Objection]:
    """Object to heights and offsets of both ends that make a link of unusual length."""
    separation = known.separation(*ENDS[link])
    if separation is None or known.profile is None:
        return
    if known.runs_fore_aft(link) and separation.ahead is None:
        return
    smallest, largest = known.profile.ranges[f"{link}.length"]
    if not smallest <= separation.distance <= largest:
        yield Objection(
            f"These readings put the ends of the {PLACES[link]} "
            f"{format_tape(separation.distance, known)} apart. Usual for this profile is "
            f"{format_tape(smallest, known)} to {format_tape(largest, known)}. "
            "Look at both offsets and their signs: right of the datum line is plus."
        )


def opposite_sides(known: KnownAnswers) -> Iterator[Objection]:
    """Object to links with their frame ends on opposite sides; usually they are on one side."""
    if known.runs_fore_aft("drag_link"):
        return
    track_bar, drag_link = (_run_to_the_right(link, known) for link in ENDS)
    if track_bar is not None and drag_link is not None and track_bar * drag_link < 0:
        yield Objection(
            "The two links run from opposite sides of the frame. "
            "They can then be parallel only where both lie flat. "
            "Look at the offsets. Were frame and axle end swapped?"
        )


def _run_to_the_right(link: str, known: KnownAnswers) -> float | None:
    """Offset of a link's frame end less that of its axle end, mm."""
    frame, axle = (known.value(f"{end}.offset") for end in ENDS[link])
    return None if frame is None or axle is None else frame - axle


def wheels_misplaced(known: KnownAnswers) -> Iterator[Objection]:
    """Object to wheels that are swapped or unusually far apart.

    Offsets count to the vehicle's right, so the right wheel has the larger offset.
    """
    left, right = known.value("wheels.left_offset"), known.value("wheels.right_offset")
    if left is None or right is None:
        return
    if right <= left:
        yield Objection(
            f"The right wheel ({format_tape(right, known)}) cannot be left of the left one "
            f"({format_tape(left, known)}). "
            "Offsets count to the vehicle's right, as its driver sits.",
            impossible=True,
        )
    elif not NARROWEST <= right - left <= WIDEST:
        yield Objection(
            f"The wheels would be {format_tape(right - left, known)} apart. Usual is "
            f"{format_tape(NARROWEST, known)} to {format_tape(WIDEST, known)}. "
            "Look at both offsets and their signs."
        )


def outside_wheels(pivot: str, known: KnownAnswers) -> Iterator[Objection]:
    """Object to a pivot that does not lie between the wheels."""
    offset = known.value(f"{pivot}.offset")
    left, right = known.value("wheels.left_offset"), known.value("wheels.right_offset")
    if offset is None or left is None or right is None or left <= offset <= right:
        return
    yield Objection(
        f"The {PLACES[pivot]} (offset {format_tape(offset, known)}) would not lie between the "
        f"wheels ({format_tape(left, known)} and {format_tape(right, known)}). Look at its sign. "
        "Were all offsets taken from one datum line?"
    )


def same_place(first: str, second: str, known: KnownAnswers) -> Iterator[Objection]:
    """Object to two pivots in one place. Without stations one may lie ahead of the other."""
    separation = known.separation(first, second)
    if separation is None or separation.ahead is None or separation.distance >= ONE_PLACE:
        return
    yield Objection(
        f"The {PLACES[first]} and the {PLACES[second]} cannot be in one place: height, offset and "
        "station are the same. Was one of them typed twice?",
        impossible=True,
    )


def _rules() -> Iterator[Rule]:
    wheels = ("wheels.left_offset", "wheels.right_offset")
    for link, ends in ENDS.items():
        offsets = [f"{end}.offset" for end in ends]
        heights = [f"{end}.height" for end in ends]
        yield rule(partial(frame_end_low, link), *heights)
        yield rule(partial(no_run_across, link), *offsets)
        yield rule(partial(unusual_span, link), *heights, *offsets)
    yield rule(opposite_sides, *(f"{pivot}.offset" for pivot in PIVOTS))
    for pivot in AXLE_ENDS:
        yield rule(partial(axle_end_far_from_hub, pivot), f"{pivot}.height", "wheels.hub_height")
    yield rule(wheels_misplaced, *wheels)
    for pivot in (*PIVOTS, NEAR_BALL):
        yield rule(partial(outside_wheels, pivot), f"{pivot}.offset", *wheels)
    for brace in ("braces.frame_ends", "braces.axle_ends"):
        yield rule(partial(same_place, *BRACES[brace]), *coordinates(*BRACES[brace]))


RULES: tuple[Rule, ...] = tuple(_rules())
