"""Rules on the places of pivots and wheels relative to each other.

The figures are common practice in the trade, without a published source.
"""

from collections.abc import Iterator
from functools import partial

from core.entry_checks.known import KnownAnswers
from core.entry_checks.outcome import Objection
from core.entry_checks.reading_names import PLACES
from core.entry_checks.rule import ENDS, Rule, coordinates, rule
from core.kinematics.pivots import NEAR_BALL, PIVOTS
from core.readings.survey import BRACES
from core.text.quantity import INCH

NARROWEST, WIDEST = 40 * INCH, 100 * INCH
"""Usual distance between the middles of the two front tyres, mm."""

ONE_PLACE = INCH / 2
"""mm; two pivots closer than this are one pivot."""

ALONGSIDE = INCH
"""mm; two ends of a link closer across than this do not lie across the vehicle."""

AXLE_ENDS = ("track_bar.axle", "drag_link.axle", NEAR_BALL)


def frame_above_axle(link: str, known: KnownAnswers) -> Iterator[Objection]:
    """Objection to a frame end that is lower than its axle end."""
    frame, axle = (known.value(f"{end}.height") for end in ENDS[link])
    if frame is not None and axle is not None and frame < axle:
        yield Objection(
            f"The {PLACES[link]}'s frame end ({known.tape(frame)}) is lower than its axle end "
            f"({known.tape(axle)}); usually the frame end is higher. Were the two swapped?"
        )


def axle_end_near_hub(pivot: str, known: KnownAnswers) -> Iterator[Objection]:
    """Objection to an axle end that is more than a hub height away from the hub."""
    height, hub = known.value(f"{pivot}.height"), known.value("wheels.hub_height")
    if height is not None and hub is not None and abs(height - hub) > hub:
        yield Objection(
            f"The {PLACES[pivot]} ({known.tape(height)}) is more than a hub height away from "
            f"the hub ({known.tape(hub)}). Check that both were taken from the floor to the "
            "centre."
        )


def lies_across(link: str, known: KnownAnswers) -> Iterator[Objection]:
    """Objection to a link whose two ends have one offset: a link runs across the vehicle."""
    frame, axle = (known.value(f"{end}.offset") for end in ENDS[link])
    if frame is not None and axle is not None and abs(frame - axle) < ALONGSIDE:
        yield Objection(
            f"Both ends of the {PLACES[link]} are at the same offset ({known.tape(axle)}); it "
            "runs across the vehicle, so they have to be far apart. Measure both from the same "
            "datum line.",
            impossible=True,
        )


def usual_span(link: str, known: KnownAnswers) -> Iterator[Objection]:
    """Objection to heights and offsets that make a link of unusual length."""
    separation = known.separation(*ENDS[link])
    if separation is None or known.profile is None:
        return
    smallest, largest = known.profile.ranges[f"{link}.length"]
    if not smallest <= separation.distance <= largest:
        yield Objection(
            f"These readings put the ends of the {PLACES[link]} {known.tape(separation.distance)} "
            f"apart; {known.tape(smallest)} to {known.tape(largest)} is usual for this "
            "profile. Look at both offsets and their signs: right of the datum line is plus."
        )


def same_way(known: KnownAnswers) -> Iterator[Objection]:
    """Objection to links that run from opposite sides of the frame."""
    offsets = [known.value(f"{end}.offset") for ends in ENDS.values() for end in ends]
    track_bar_frame, track_bar_axle, drag_link_frame, drag_link_axle = offsets
    if (
        track_bar_frame is None
        or track_bar_axle is None
        or drag_link_frame is None
        or drag_link_axle is None
    ):
        return
    if (track_bar_frame - track_bar_axle) * (drag_link_frame - drag_link_axle) < 0:
        yield Objection(
            "The two links run from opposite sides of the frame; they can then be parallel only "
            "where both lie flat. Look at the offsets, and whether frame and axle end were swapped."
        )


def wheel_offsets(known: KnownAnswers) -> Iterator[Objection]:
    """Objections to wheel offsets: the right one is larger, and the distance is usual."""
    left, right = known.value("wheels.left_offset"), known.value("wheels.right_offset")
    if left is None or right is None:
        return
    if right <= left:
        yield Objection(
            f"The right wheel ({known.tape(right)}) cannot be left of the left one "
            f"({known.tape(left)}): offsets count to the vehicle's right, as its driver sits.",
            impossible=True,
        )
    elif not NARROWEST <= right - left <= WIDEST:
        yield Objection(
            f"The wheels would be {known.tape(right - left)} apart; {known.tape(NARROWEST)} to "
            f"{known.tape(WIDEST)} is usual. Look at both offsets and their signs."
        )


def between_wheels(pivot: str, known: KnownAnswers) -> Iterator[Objection]:
    """Objection to a pivot that does not lie between the wheels."""
    offset = known.value(f"{pivot}.offset")
    left, right = known.value("wheels.left_offset"), known.value("wheels.right_offset")
    if offset is None or left is None or right is None or left <= offset <= right:
        return
    yield Objection(
        f"The {PLACES[pivot]} (offset {known.tape(offset)}) would not lie between the wheels "
        f"({known.tape(left)} and {known.tape(right)}). Look at its sign, and that all were "
        "taken from one datum line."
    )


def two_pivots(first: str, second: str, known: KnownAnswers) -> Iterator[Objection]:
    """Objection to two pivots in one place; without stations one may lie ahead of the other."""
    separation = known.separation(first, second)
    if separation is not None and separation.along is not None and separation.distance < ONE_PLACE:
        yield Objection(
            f"The {PLACES[first]} and the {PLACES[second]} cannot be in one place: height, offset "
            "and station are the same. Was one of them typed twice?",
            impossible=True,
        )


def _rules() -> Iterator[Rule]:
    wheels = ("wheels.left_offset", "wheels.right_offset")
    for link, ends in ENDS.items():
        offsets = [f"{end}.offset" for end in ends]
        heights = [f"{end}.height" for end in ends]
        yield rule(partial(frame_above_axle, link), *heights)
        yield rule(partial(lies_across, link), *offsets)
        yield rule(partial(usual_span, link), *heights, *offsets)
    yield rule(same_way, *(f"{pivot}.offset" for pivot in PIVOTS))
    for pivot in AXLE_ENDS:
        yield rule(partial(axle_end_near_hub, pivot), f"{pivot}.height", "wheels.hub_height")
    yield rule(wheel_offsets, *wheels)
    for pivot in (*PIVOTS, NEAR_BALL):
        yield rule(partial(between_wheels, pivot), f"{pivot}.offset", *wheels)
    for brace in ("braces.frame_ends", "braces.axle_ends"):
        yield rule(partial(two_pivots, *BRACES[brace]), *coordinates(*BRACES[brace]))


RULES: tuple[Rule, ...] = tuple(_rules())
