"""The guide of the axle and its kingpins: how the axle pitches, and how the knuckles lean."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from core.documents.document import Document, value_at
from core.kinematics.pivots import GuideKind
from wizard.questions.question import Question, Step

if TYPE_CHECKING:
    from core.profiles.profile import Profile

WORTH = "An axle that pitches carries the steering arm's ball up or down. {}"

NAMES = {
    "guide.frame": "Arms' frame pivot",
    "guide.lower_frame": "Lower arm, frame end",
    "guide.lower_axle": "Lower arm, axle end",
    "guide.upper_frame": "Upper arm, frame end",
    "guide.upper_axle": "Upper arm, axle end",
    "guide.eye": "Spring's fixed eye",
    "guide.seat": "Spring's seat",
}
"""Pivots of the guides in the side view."""

SIGHT = {
    "guide.frame": "The centre of the bolt or ball by which a radius arm hangs from the frame.",
    "guide.eye": "The centre of the eye that is bolted to the frame, not the one on the shackle.",
    "guide.seat": "The middle of the clamped part of the spring, over or under the axle.",
}


def has_guide(*kinds: GuideKind) -> Callable[[Document, Profile | None], bool]:
    """Condition that the axle has one of some guides."""

    def is_so(document: Document, _profile: Profile | None) -> bool:
        return value_at(document, "layout.guide") in kinds

    return is_so


def _pivot(pivot: str, kind: GuideKind) -> tuple[Question, ...]:
    """Height and station of one pivot of a guide."""
    name = NAMES[pivot]
    sight = SIGHT.get(pivot, f"{name}: the centre of the bolt, on one side of the vehicle.")
    height = Question(
        f"readings.{pivot}.height",
        "length",
        f"{name}, height",
        f"{name}: how high is it above the floor?",
        f"{sight} Tape upright from the floor to that centre.",
        WORTH.format("This height gives the slope of the arm, and with it the pitch."),
        optional=True,
        repeats=True,
        assumed=f"{pivot}.height",
        is_asked=has_guide(kind),
    )
    station = Question(
        f"readings.{pivot}.station",
        "length",
        f"{name}, station",
        f"{name}: how far ahead of the axle?",
        "Tape lengthwise from the plumb mark of the same centre to the line under the axle's "
        "centre. Ahead of the axle counts plus, behind it minus.",
        WORTH.format("A short arm pitches the axle more than a long one."),
        optional=True,
        repeats=True,
        assumed=f"{pivot}.station",
        examples=("-36", "-914"),
        is_asked=has_guide(kind),
    )
    return height, station


STEP = Step(
    "Guide and kingpin",
    "How the axle pitches as it travels, and how its kingpins lean. Each can be skipped.",
    (
        *_pivot("guide.frame", GuideKind.RADIUS_ARMS),
        *_pivot("guide.lower_frame", GuideKind.TWO_ARMS),
        *_pivot("guide.lower_axle", GuideKind.TWO_ARMS),
        *_pivot("guide.upper_frame", GuideKind.TWO_ARMS),
        *_pivot("guide.upper_axle", GuideKind.TWO_ARMS),
        *_pivot("guide.eye", GuideKind.LEAF),
        *_pivot("guide.seat", GuideKind.LEAF),
        Question(
            "readings.guide.span",
            "length",
            "Span of arms or springs",
            "How far apart are the left and the right arms or springs?",
            "Across, from the middle of the left one to the middle of the right one.",
            "It decides how much the axle turns when it rolls. It does not matter in a dip.",
            optional=True,
            repeats=True,
            assumed="guide.span",
            examples=("34", "864"),
            is_asked=has_guide(GuideKind.RADIUS_ARMS, GuideKind.TWO_ARMS, GuideKind.LEAF),
        ),
        Question(
            "readings.guide.castor",
            "castor",
            "Castor at two heights",
            "What does the angle finder read on the axle at two heights?",
            "Lay it on one machined face of the axle and read it at ride height. Raise or lower "
            "the vehicle by 2 in on its springs, stands under the frame, and read the same face "
            "again. Type angle and height of the axle: 5.5 at 0; 8.5 at 2.",
            WORTH.format("The two angles give the pitch itself, whatever guides the axle."),
            optional=True,
            assumed="guide.pitch_gain",
        ),
        Question(
            "readings.kingpin.castor",
            "angle",
            "Castor",
            "What is the castor of the kingpin?",
            "From an alignment sheet, or with the angle finder on the knuckle. Plus where its top "
            "leans back.",
            "A kingpin that leans turns the ball on a tilted circle. It counts little at small "
            "steer.",
            optional=True,
            repeats=True,
            assumed="kingpin.castor",
        ),
        Question(
            "readings.kingpin.inclination",
            "angle",
            "Kingpin inclination",
            "How far does the kingpin lean inboard?",
            "From an alignment sheet. Plus where its top leans towards the middle of the vehicle.",
            "A kingpin that leans turns the ball on a tilted circle. It counts little at small "
            "steer.",
            optional=True,
            repeats=True,
            assumed="kingpin.inclination",
        ),
    ),
    picture="side",
)
