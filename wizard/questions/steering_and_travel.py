"""The arms that turn a difference of arcs into steer, and the travel of the axle."""

from __future__ import annotations

from wizard.questions.pivots import is_inverted_y
from wizard.questions.question import Question, Step

STEP = Step(
    "Steering and travel",
    "The arms, the steering box and the travel.",
    (
        Question(
            "readings.steering.arm",
            "length",
            "Steering arm",
            "How long is the steering arm?",
            "Seen from above, from the kingpin line (through the two knuckle joints) to the centre "
            "of the ball. Where the drag link ends on the tie rod: the tie rod's arm.",
            "The same misfit of the arcs turns a short arm more than a long one.",
            optional=True,
            repeats=True,
            assumed="steering.arm",
            picture="above",
            examples=("6 1/2", "165"),
        ),
        Question(
            "readings.steering.pitman_arm",
            "length",
            "Pitman arm",
            "How long is the pitman arm?",
            "Seen from above, from the centre of the sector shaft to the centre of the ball. Its "
            "drop does not count here.",
            "It turns the misfit of the arcs into the swing of a steering wheel that is let go.",
            optional=True,
            repeats=True,
            assumed="steering.pitman_arm",
            picture="above",
            examples=("6 1/2", "165"),
        ),
        Question(
            "readings.steering.ratio",
            "number",
            "Steering box ratio",
            "What is the ratio of the steering box?",
            "Turns of the steering wheel for one turn of the pitman arm, from the maker's data or "
            "counted: 16.",
            "It gives the swing of the steering wheel when it is let go.",
            optional=True,
            assumed="steering.ratio",
        ),
        Question(
            "readings.tie_rod.joint_from_far_ball",
            "length",
            "Joint from the far ball",
            "How far is the tie rod's joint from the drag link's axle-end ball?",
            "Along the drag link, from the centre of the ball at the far knuckle to the centre of "
            "the joint the tie rod hangs on.",
            "The nearer the joint sits to the ball, the less the toe changes with travel.",
            optional=True,
            repeats=True,
            assumed="tie_rod.joint_from_far_ball",
            picture="above",
            examples=("8", "203"),
            is_asked=is_inverted_y,
        ),
        Question(
            "readings.tie_rod.near_arm",
            "length",
            "Near steering arm",
            "How long is the steering arm of the near knuckle?",
            "Seen from above, from its kingpin line to the centre of the tie rod's ball.",
            "It decides how far the near wheel follows the far one.",
            optional=True,
            repeats=True,
            assumed="tie_rod.near_arm",
            picture="above",
            examples=("6 1/2", "165"),
            is_asked=is_inverted_y,
        ),
        Question(
            "readings.travel.bump",
            "length",
            "Bump travel",
            "How far can the axle come up from ride height?",
            "From the axle's bump pad to the bump stop, as it stands.",
            "The curve is drawn as far as the axle can go, and shows where a link would bind.",
            optional=True,
            assumed="travel.bump",
            examples=("4", "100"),
        ),
        Question(
            "readings.travel.droop",
            "length",
            "Droop travel",
            "How far can the axle go down from ride height?",
            "The travel that the shock or the strap leaves, from the maker's data or measured on a "
            "lift before. Do not jack the vehicle for it now.",
            "It is the other end of the curve.",
            optional=True,
            assumed="travel.droop",
            examples=("5", "125"),
        ),
        Question(
            "vehicle.wheelbase",
            "length",
            "Wheelbase",
            "What is the wheelbase?",
            "From front hub centre to rear hub centre, on one side.",
            "A short vehicle drifts more for the same steer.",
            optional=True,
            assumed="vehicle.wheelbase",
            examples=("118", "2997"),
        ),
    ),
    picture="front",
)
