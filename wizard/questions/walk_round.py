"""The walk-round: faults that feel like bump steer are ruled out first."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import TYPE_CHECKING

from core.documents.document import Document
from wizard.questions.means import is_taped
from wizard.questions.pivots import has_track_bar
from wizard.questions.question import YES_OR_NO, Choice, Question, Step, always

if TYPE_CHECKING:
    from core.profiles.profile import Profile

CAUTIONS = "cautions"
"""Path of the question that shows the cautions."""

TIGHT_OR_LOOSE = (
    Choice("tight", "tight"),
    Choice("loose", "loose", "holds the verdict back until it is put right"),
    Choice("not checked", "not checked"),
)

SEEN_LOOSE = (
    Choice("not checked", "not seen, or nothing wrong is seen"),
    Choice("loose", "seen to be loose or damaged", "holds the verdict back until it is put right"),
)
"""A photograph can show a joint that is bad, never that one is tight."""


def is_heavy(document: Document, profile: Profile | None) -> bool:
    """True if play is read, and the size of the rim decides how much of it is allowed."""
    return profile is not None and profile.over_10000_lb and is_taped(document)


def _joint(
    key: str, name: str, is_asked: Callable[[Document, Profile | None], bool] = always
) -> Question:
    question = Question(
        f"walk_round.joints.{key}",
        "one of",
        name,
        f"{name}: is the joint tight?",
        "A helper turns the steering wheel to and fro with the engine on. Lay a hand on the joint "
        "and feel for a step between its two halves. Keep clear of the link itself.",
        "A worn joint feels like bump steer and spoils every reading taken at it.",
        choices=TIGHT_OR_LOOSE,
        optional=True,
        is_asked=is_asked,
    )
    seen = replace(
        question,
        ask=f"{name}: is the joint seen to be bad?",
        guidance="Look for a torn or off-centre bush, a bolt that has worn its hole, bright metal "
        "beside rust. A photograph can show a joint that is bad. It never shows that one is tight.",
        choices=SEEN_LOOSE,
        skip="not seen",
    )
    return replace(question, of_photographs=seen)


TYRES = Question(
    "walk_round.tyres_alike",
    "yes or no",
    "Tyres",
    "Are the front tyres alike, evenly worn and sound?",
    "Same size, no step or cone in the tread, no bulge.",
    "A coned or damaged tyre pulls to a side by itself.",
    choices=YES_OR_NO,
    optional=True,
)
SEEN_ALIKE = (Choice(True, "seen: alike and sound"), Choice(False, "seen: not alike, or damaged"))


STEP = Step(
    "Walk-round",
    "Worn joints, loose bolts and tyres feel like bump steer. Rule them out first.",
    (
        Question(
            CAUTIONS,
            "read",
            "Cautions",
            "Before you go under it",
            "Read what can hurt you under a vehicle.",
            choices=(Choice("read", "read and understood, go on"),),
        ),
        Question(
            "walk_round.steering_wheel_diameter",
            "length",
            "Steering-wheel size",
            "What is the diameter of the steering wheel?",
            "Across the rim, outside to outside.",
            "The play that is allowed at the rim depends on it (49 CFR 570.7; local codes come "
            "first).",
            optional=True,
            examples=("16", "406"),
            is_asked=is_taped,
        ),
        Question(
            "walk_round.rim_play",
            "length",
            "Play at the rim",
            "How far does the rim move before the road wheels do?",
            "Engine on, wheels straight ahead. Hold a tape at the rim, turn gently to and fro, and "
            "read how far it goes free.",
            "Lash in the box and the joints feels like wander. No bracket cures it.",
            optional=True,
            examples=("1 1/4", "32"),
            is_asked=is_taped,
        ),
        Question(
            "walk_round.rim_size",
            "length",
            "Rim size",
            "What is the size of the road wheel's rim?",
            "The nominal diameter in the tyre's own marking.",
            "On a heavy vehicle the play allowed at the tyre depends on it (49 CFR 570.60).",
            optional=True,
            examples=("22.5", "572"),
            is_asked=is_heavy,
        ),
        Question(
            "walk_round.linkage_play",
            "length",
            "Play at the tyre",
            "How far does a front tyre move by hand, at its tread?",
            "On rated stands, never on a jack alone. Rock one wheel fore and aft about its kingpin "
            "and read the free movement at the tread.",
            "It is the sum of the play of all joints between the steering box and the wheel.",
            optional=True,
            examples=("1/16", "2"),
            is_asked=is_taped,
        ),
        _joint("track_bar_frame", "Track bar at the frame", has_track_bar),
        _joint("track_bar_axle", "Track bar at the axle", has_track_bar),
        _joint("drag_link_frame", "Drag link at the pitman arm"),
        _joint("drag_link_axle", "Drag link at the axle"),
        Question(
            "walk_round.bolts_torqued",
            "yes or no",
            "Bolt torque",
            "Has the torque of the steering and track bar bolts been seen to?",
            "With a torque wrench, to the vehicle maker's figures, as it stands on its wheels.",
            "A bolt that slips in its bracket lets the axle move sideways like a bad track bar.",
            choices=YES_OR_NO,
            optional=True,
            is_asked=is_taped,
        ),
        replace(TYRES, of_photographs=replace(TYRES, choices=SEEN_ALIKE, skip="not seen")),
    ),
)
