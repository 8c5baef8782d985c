"""Places of the pivots: height above the floor, offset across, station ahead of the axle."""

from __future__ import annotations

from typing import TYPE_CHECKING

from core.documents.document import Document, value_at
from core.kinematics.pivots import DRAG_LINK_ENDS, Layout
from wizard.questions.means import is_taped
from wizard.questions.question import Question, Step, always, never

if TYPE_CHECKING:
    from core.profiles.profile import Profile

CENTRES = {
    "track_bar.frame": "the centre of the bolt or ball in the bracket that hangs from the frame",
    "track_bar.axle": "the centre of the bolt or ball in the bracket on the axle",
    "drag_link.frame": "the centre of the ball at the end of the pitman arm",
    "drag_link.axle": "the centre of the ball on the steering arm or on the tie rod",
    "tie_rod.near": "the centre of the ball at the knuckle that the drag link does not reach",
}
"""Centre of every pivot, where the tape and the eye go."""
NAMES = {
    "track_bar.frame": "Track bar frame end",
    "track_bar.axle": "Track bar axle end",
    "drag_link.frame": "Drag link frame end",
    "drag_link.axle": "Drag link axle end",
    "tie_rod.near": "Tie rod near end",
}


def is_inverted_y(document: Document, _profile: Profile | None) -> bool:
    """True if the tie rod is joined to the drag link."""
    return bool(value_at(document, "layout.steering") == Layout.INVERTED_Y)


def has_track_bar(document: Document, _profile: Profile | None) -> bool:
    """True unless the vehicle was said to have no track bar."""
    return value_at(document, "layout.track_bar") is not False


def runs_fore_aft(document: Document) -> bool:
    """True if the drag link runs lengthwise: only its stations, or photographs, give its run."""
    steering = value_at(document, "layout.steering")
    return bool(steering == Layout.FORE_AFT) and is_taped(document)


_WHEN = {
    "track_bar.frame": has_track_bar,
    "track_bar.axle": has_track_bar,
    "tie_rod.near": is_inverted_y,
}
"""Conditions of the pivots that not every vehicle has."""


def _pivot(pivot: str) -> tuple[Question, ...]:
    name, when = NAMES[pivot], _WHEN.get(pivot, always)
    height = Question(
        f"readings.{pivot}.height",
        "length",
        f"{name}, height",
        f"{name}: how high is it above the floor?",
        f"{CENTRES[pivot].capitalize()}. Tape upright from the floor to that centre, never to the "
        "edge of the bolt. Only the two centres matter, not a bend in the bar.",
        "Two heights make the slope of a link, which weighs most in the verdict. A second reading "
        "shows a slip and makes the height surer: 24 1/2; 24 9/16.",
        optional=True,
        is_needed=is_taped,
        repeats=True,
        is_asked=when,
    )
    offset = Question(
        f"readings.{pivot}.offset",
        "length",
        f"{name}, offset",
        f"{name}: how far across from the datum line?",
        "Snap one chalk line along the floor, lengthwise, left of everything you measure. Drop a "
        "plumb line from the same centre. Tape across to its mark on the floor, square to the "
        "line. To the vehicle's right counts plus, to its left minus. Use one line for all pivots.",
        "It gives the run of the links across, and the shape of the front view. Left and right are "
        "the driver's.",
        optional=True,
        is_needed=is_taped,
        repeats=True,
        is_asked=when,
    )
    station = Question(
        f"readings.{pivot}.station",
        "length",
        f"{name}, station",
        f"{name}: how far ahead of the axle?",
        "Tape lengthwise from the plumb mark of the same centre to the line under the axle's "
        "centre. Ahead of the axle counts plus, behind it minus.",
        "A station that was skipped stands about its usual place, within inches. The doubt of "
        "the peak steer grows by that. A drag link that runs lengthwise needs both stations.",
        optional=True,
        is_needed=runs_fore_aft if pivot in DRAG_LINK_ENDS else never,
        repeats=True,
        picture="above",
        is_asked=when,
    )
    return height, offset, station


def _wheel_offset(side: str) -> Question:
    return Question(
        f"readings.wheels.{side}_offset",
        "length",
        f"{side.capitalize()} wheel, offset",
        f"{side.capitalize()} wheel: how far across is its middle from the datum line?",
        f"Middle of the {side} front tyre's tread, plumbed to the floor, taped across from the "
        "same chalk line.",
        "Both wheels give the vehicle's centre plane, and with it the height of the roll centre.",
        optional=True,
        repeats=True,
    )


STEP = Step(
    "Pivots",
    "Where the four ends of the two links are.",
    (
        *_pivot("track_bar.frame"),
        *_pivot("track_bar.axle"),
        *_pivot("drag_link.frame"),
        *_pivot("drag_link.axle"),
        *_pivot("tie_rod.near"),
        Question(
            "readings.wheels.hub_height",
            "length",
            "Hub height",
            "How high is the wheel centre above the floor?",
            "Tape upright from the floor to the centre of the hub.",
            "The axle rolls about this height, and the axle ends of the links lie near it.",
            optional=True,
            repeats=True,
            assumed="wheels.hub_height",
        ),
        _wheel_offset("left"),
        _wheel_offset("right"),
    ),
    picture="front",
    shows_closing=True,
)
