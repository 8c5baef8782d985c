"""The stance of the vehicle: on level ground, on its wheels, steered straight."""

from dataclasses import replace

from wizard.questions.means import is_taped
from wizard.questions.question import YES_OR_NO, Choice, Question, Step

SEEN = (Choice(True, "seen: yes"), Choice(False, "seen: no"))


def _stands(key: str, name: str, ask: str, do: str, why: str) -> Question:
    question = Question(
        f"stance.{key}",
        "yes or no",
        name,
        ask,
        do,
        why,
        choices=YES_OR_NO,
        optional=True,
        is_needed=is_taped,  # a photograph may not show it
    )
    seen = replace(
        question,
        guidance="Look for it in the photographs, or ask the person who took them.",
        choices=SEEN,
        skip="not seen",
    )
    return replace(question, of_photographs=seen)


def _ride_height(side: str) -> Question:
    return Question(
        f"stance.ride_height.{side}",
        "length",
        f"Ride height {side}",
        f"What is the ride height on the {side}?",
        f"On the driver's {side}: tape straight up from the wheel centre to the lower edge of the "
        "wing. Or tape between the two points your shop always uses. Use the same points on both "
        "sides.",
        "A difference from left to right shows a tired spring or a load to one side. "
        "Then the links do not lie as they do on the road. "
        "At the re-measure it shows a change of ride height.",
        optional=True,
    )


STEP = Step(
    "Stance",
    "The links must lie at the angles they have on the road.",
    (
        _stands(
            "level_floor",
            "Level floor",
            "Does it stand on a level floor?",
            "The floor, or a drive-on lift that is level. Every height is taken from this plane; "
            "lay a long straight edge and a level across it if you are not sure.",
            "A floor that falls half an inch to one side changes the heights of "
            "both links as much.",
        ),
        _stands(
            "tyres_set",
            "Tyre pressures",
            "Are the tyre pressures set, both front tyres alike?",
            "Set them as the vehicle is driven, before anything is measured.",
            "A soft tyre lowers its side and with it the angles of both links.",
        ),
        _stands(
            "usual_load",
            "Usual load",
            "Is it loaded as it usually drives?",
            "Fuel, tools, winch, and people if they always ride along. "
            "Nothing is jacked or strapped.",
            "The load sets the height of the springs, and with it the angles of the links.",
        ),
        _stands(
            "settled",
            "Settled",
            "Has the suspension settled?",
            "Roll it forward and back a length, bounce the front twice, then leave it alone.",
            "Tyres and bushes keep an axle off its place until the vehicle has rolled.",
        ),
        _stands(
            "wheels_on_ground",
            "Wheels on the ground",
            "Do all its wheels carry it?",
            "On the floor or on a drive-on lift: yes. Hanging on a two-post lift, or with stands "
            "under the frame: no, and it cannot be measured so.",
            "With a hanging axle the links lie at the angles of full droop, not of the road.",
        ),
        _stands(
            "straight_ahead",
            "Straight ahead",
            "Are the road wheels straight ahead and the steering wheel held?",
            "Straighten the road wheels, then tie or lock the steering wheel so that it cannot "
            "turn.",
            "The pitman arm must stay where it is while the drag link is measured.",
        ),
        _ride_height("left"),
        _ride_height("right"),
    ),
)
