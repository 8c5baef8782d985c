"""The moving axle in words; each fact keeps its place."""

from math import degrees, isfinite

from core.kinematics.places import AxlePose
from core.text.quantity import LengthUnit
from wizard.phrases.amounts import angle_words, place_in_travel, sideways_words
from wizard.phrases.fact import LOOK, Fact


def axle_pose_facts(at: AxlePose, unit: LengthUnit, changes_toe: bool) -> tuple[Fact, ...]:
    """Place of the axle, and the steer it causes."""
    facts = [Fact("travel", place_in_travel(at.heave, unit)), Fact("roll", roll_words(at.roll))]
    if not at.is_reached:
        return (*facts, Fact("steer", "a link binds here", LOOK))
    facts += [
        Fact("axle", sideways_words(at.axle_shift, unit, nothing="in the middle")),
        Fact("pitch", pitch_words(at.axle_pitch)),
        Fact("road wheels", angle_words(at.steer)),
    ]
    if changes_toe:
        facts.append(Fact("toe", toe_change_words(at.toe_in_change)))
    swing = angle_words(at.steering_wheel) if isfinite(at.steering_wheel) else "cannot reach"
    return (*facts, Fact("wheel let go", swing))


def roll_words(roll: float) -> str:
    """A roll: "left wheel up 3.0 deg"."""
    deg = degrees(roll)
    if abs(deg) < 0.05:
        return "level"
    return f"{'left' if deg > 0 else 'right'} wheel up {abs(deg):.1f} deg"


def pitch_words(rad: float) -> str:
    """A pitch of the axle: "top back 1.2 deg"."""
    deg = degrees(rad)
    if abs(deg) < 0.05:
        return "none"
    return f"top {'ahead' if deg > 0 else 'back'} {abs(deg):.1f} deg"


def toe_change_words(rad: float) -> str:
    """A change of toe-in: "0.3 deg more toe-in"."""
    deg = degrees(rad)
    if abs(deg) < 0.005:
        return "unchanged"
    return f"{abs(deg):.2f} deg {'more' if deg > 0 else 'less'} toe-in"
