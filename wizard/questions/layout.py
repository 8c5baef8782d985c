"""Layout of the linkage, and resolution of the tape and the angle finder."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from core.documents.document import Document, value_at
from core.kinematics.pivots import ARM_DIRECTIONS, PITMAN_DIRECTIONS, Direction, Layout
from wizard.questions.question import YES_OR_NO, Choice, Kind, Question, Step

Offered = Callable[[Document, Choice], bool]
"""Condition that a choice fits the answers so far."""

ARM = (
    Choice("ahead", "ahead of the axle"),
    Choice("behind", "behind the axle"),
    Choice("inboard", "inboard, towards the middle of the vehicle"),
    Choice("outboard", "outboard, towards the tyre"),
)
PITMAN = (
    Choice("ahead", "ahead of its shaft"),
    Choice("behind", "behind its shaft"),
    Choice("down", "down from its shaft"),
    Choice("up", "up from its shaft"),
)


def _possible(directions: Mapping[Layout, tuple[Direction, ...]]) -> Offered:
    """Condition that an arm can point in a direction, in the layout that was answered."""

    def is_so(document: Document, choice: Choice) -> bool:
        layout = value_at(document, "layout.steering", Layout.KNUCKLE.value)
        return choice.value in directions.get(layout, tuple(Direction))

    return is_so


def _instrument(key: str, kind: Kind, name: str, ask: str, do: str) -> Question:
    return Question(
        f"instruments.{key}",
        kind,
        name,
        ask,
        do,
        "It decides how sure every number is. The verdict depends on a degree or two.",
        optional=True,
        assumed=f"instruments.{key}",
        examples=("1/16", "1"),
    )


STEP = Step(
    "Layout",
    "How the drag link reaches the axle, and what the readings are taken with.",
    (
        Question(
            "layout.steering",
            "one of",
            "Drag link goes to",
            "Where does the drag link end at the axle?",
            "Follow the link from the pitman arm on the steering box to its other end.",
            "It decides what the wheels do when that end is moved.",
            choices=(
                Choice("knuckle", "the far knuckle", "the tie rod is apart"),
                Choice("tie-rod", "the tie rod", "that joins the wheels"),
                Choice("inverted-y", "the far knuckle, carrying the tie rod"),
                Choice("fore-aft", "the near knuckle, along the frame"),
            ),
            usual="steering",
            picture="above",
        ),
        Question(
            "layout.arm",
            "one of",
            "Steering arm points",
            "Which way does the steering arm point from the kingpin?",
            "Look from the kingpin to the ball that the drag link or the tie rod is bolted to. "
            "Ahead is towards the bumper.",
            "The same push of the link steers left with one and right with the other.",
            choices=ARM,
            is_offered=_possible(ARM_DIRECTIONS),
            usual="arm",
            picture="above",
        ),
        Question(
            "layout.pitman",
            "one of",
            "Pitman arm points",
            "Which way does the pitman arm point from the steering box?",
            "From the sector shaft it is clamped on, towards the ball at its end.",
            "It decides to which side the steering wheel turns when it is let go.",
            choices=PITMAN,
            is_offered=_possible(PITMAN_DIRECTIONS),
            usual="pitman",
            picture="above",
        ),
        Question(
            "layout.track_bar",
            "yes or no",
            "Track bar",
            "Is there a track bar?",
            "A bar across, from the frame to the axle, that holds the axle sideways. Leaf springs "
            "often do without.",
            "Without a track bar the springs hold the axle, and there is no bar to be parallel to.",
            choices=YES_OR_NO,
            optional=True,
            usual="track_bar",
        ),
        Question(
            "layout.guide",
            "one of",
            "Axle guided by",
            "What guides the axle lengthwise?",
            "Look from the side: what runs from the axle to the frame, and takes its push when you "
            "brake? Radius arms are fixed to the axle and hinge at the frame alone.",
            "It decides how far the axle pitches as it travels, and that steers too.",
            choices=(
                Choice("unmeasured", "not known", "the doubt stays larger"),
                Choice("radius-arms", "radius arms, one a side", "two readings"),
                Choice("two-arms", "lower and upper arms", "eight readings"),
                Choice("leaf", "leaf springs", "four readings"),
            ),
            optional=True,
            usual="guide",
            picture="side",
        ),
        Question(
            "layout.steering_box",
            "one of",
            "Steering box",
            "On which side is the steering box?",
            "Left and right are the driver's.",
            "Offsets that were all taken with the wrong sign look alike in every check but this.",
            choices=(Choice("left", "on the left"), Choice("right", "on the right")),
            optional=True,
            picture="above",
        ),
        Question(
            "layout.ball",
            "one of",
            "Ball at the arm",
            "Is the drag link's ball under the steering arm or above it?",
            "Look at the ball at the axle end: which way does its stud point through the arm?",
            "A ball under the arm may be re-mounted above it, and the other way round.",
            choices=(Choice("below", "under the arm"), Choice("above", "above the arm")),
            optional=True,
        ),
        Question(
            "session.units",
            "one of",
            "Units",
            "What is the tape marked in?",
            "Look at the lines you will read. F2 changes the units at any time.",
            "A number without a unit is taken in this unit. A typed unit stays as it is.",
            choices=(Choice("in", "inches"), Choice("mm", "millimetres")),
        ),
        _instrument(
            "tape",
            "length",
            "Tape reads to",
            "How fine is the tape marked?",
            "The step between two lines: 1/16 in, or 1 mm.",
        ),
        _instrument(
            "sighting",
            "length",
            "Pivot centre sighted to",
            "How near can you sight the centre of a pivot?",
            "The largest error to either side. It is 1/8 in with a plumb line "
            "and a clear view of the bolt or the ball.",
        ),
        _instrument(
            "floor",
            "length",
            "Floor flat to",
            "How flat is the floor under the front axle?",
            "The largest height above or below the plane: 1/16 in on a good slab or drive-on lift.",
        ),
        _instrument(
            "angle_finder",
            "angle",
            "Angle finder reads to",
            "How fine does the angle finder read?",
            "The step of its scale or its last digit: 0.5 deg, 0.1 deg.",
        ),
        _instrument(
            "seating",
            "angle",
            "Angle finder seats to",
            "How well does the angle finder sit on a bar?",
            "Take it off and lay it on again a few times. Half of the change is the answer.",
        ),
    ),
)
