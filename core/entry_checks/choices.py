"""Answers that are chosen: the words that each question offers."""

from typing import Literal, get_args

from core.documents.record import SessionKind
from core.kinematics.pivots import PIVOTS, RIDE_HEIGHT, Direction, GuideKind, Layout
from core.profiles.corrections import BallPlace
from core.text.quantity import LengthUnit

Report = Literal[
    "steers-when-held",
    "wheel-turns-when-released",
    "pulls-under-braking",
    "wanders",
    "wheel-off-centre",
    "shimmy",
]
"""Words for a complaint that a driver reports."""

ONE_OF: dict[str, tuple[str, ...]] = {
    "layout.steering": tuple(Layout),
    "layout.arm": tuple(Direction),
    "layout.pitman": tuple(Direction),
    "layout.guide": tuple(GuideKind),
    "layout.steering_box": ("left", "right"),
    "layout.ball": get_args(BallPlace),
    "session.units": get_args(LengthUnit),
    "session.kind": tuple(SessionKind),
}
"""Words of the answers that are one of some words, by path."""

ANY_OF: dict[str, tuple[str, ...]] = {
    "complaint.reported": get_args(Report),
    "session.altered": (*PIVOTS, RIDE_HEIGHT, "lengths"),
}
"""Words of the answers that are any of some words, by path."""
