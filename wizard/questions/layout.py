"""Layout of the linkage, and resolution of the tape and the angle finder."""

from __future__ import annotations

from wizard.questions.question import Choice, Kind, Question, Step

AHEAD_OR_BEHIND = (Choice("ahead", "ahead of the axle"), Choice("behind", "behind the axle"))


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
                Choice("tie-rod", "the tie rod", "the rod that joins the wheels"),
                Choice(
                    "inverted-y",
                    "the far knuckle, the tie rod joined to the link",
                    "toe changes",
                ),
            ),
            usual="steering",
        ),
        Question(
            "layout.arm",
            "one of",
            "Steering arm points",
            "Which way does the steering arm point from the kingpin?",
            "Look at the ball that the drag link or the tie rod is bolted to. Is it "
            "ahead of the axle, towards the bumper, or behind it?",
            "The same push of the link steers left with one and right with the other.",
            choices=AHEAD_OR_BEHIND,
            usual="arm",
        ),
        Question(
            "layout.pitman",
            "one of",
            "Pitman arm points",
            "Which way does the pitman arm point from the steering box?",
            "From the sector shaft it is clamped on, towards the ball at its end.",
            "It decides to which side the steering wheel turns when it is let go.",
            choices=(
                Choice("ahead", "ahead of its shaft"),
                Choice("behind", "behind its shaft"),
            ),
            usual="pitman",
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
