"""Values that a profile assumes where nothing was measured."""

from dataclasses import dataclass

from core.kinematics.pivots import GuideKind

EXAMPLES = {
    "arm": "6 1/2 in",
    "pitman_arm": "6 in",
    "ratio": "16",
    "bump": "4 in",
    "droop": "5 in",
    "wheelbase": "110 in",
    "hub_height": "16 in",
    "near_arm": "6 1/2 in",
    "joint_from_far_ball": "8 in",
}
"""An example of each default, by its key in [defaults]."""


@dataclass(frozen=True)
class Defaults:
    """Values assumed where nothing was measured: lengths in mm, `ratio` a plain number.

    Attributes
    ----------
    arm, pitman_arm, near_arm : float
        Length of the steering arm, the pitman arm and the near steering arm, mm.
    ratio : float
        Steering-wheel angle to pitman arm angle.
    bump, droop : float
        Suspension travel from ride height, mm.
    wheelbase, hub_height : float
        mm
    joint_from_far_ball : float
        The tie rod's joint on the drag link, from the link's axle end, mm.
    """

    arm: float
    pitman_arm: float
    ratio: float
    bump: float
    droop: float
    wheelbase: float
    hub_height: float
    near_arm: float
    joint_from_far_ball: float

    def value(self, reading: str, guide: GuideKind) -> float:
        """Default that replaces a reading, by the name of the reading: "steering.arm"."""
        if reading in _SHIM:
            return _SHIM[reading][0]
        value: float = getattr(self, reading.rpartition(".")[2])
        return value

    def within(self, reading: str, guide: GuideKind) -> float:
        """Half-width of a default, by the name of the reading."""
        if reading in _SHIM:
            return _SHIM[reading][1]
        return {
            "arm": 31.75,
            "pitman_arm": 25.4,
            "near_arm": 31.75,
            "joint_from_far_ball": 101.6,
            "hub_height": 25.4,
            "ratio": 3.0,
        }[reading.rpartition(".")[2]]


_D = 0.017453292519943295
_SHIM = {
    "kingpin.castor": (5 * _D, 3 * _D),
    "kingpin.inclination": (9 * _D, 4 * _D),
    "guide.span": (34 * 25.4, 6 * 25.4),
    "guide.pitch_gain": (-0.7 * _D / 25.4, 1.1 * _D / 25.4),
    "guide.fore_aft_gain": (0.0, 0.12),
    "guide.effective_length": (0.75, 0.08),
    "guide.frame.height": (18 * 25.4, 76.2),
    "guide.frame.station": (-36 * 25.4, 101.6),
    "guide.eye.height": (18 * 25.4, 76.2),
    "guide.eye.station": (-24 * 25.4, 101.6),
    "guide.seat.height": (18 * 25.4, 76.2),
    "guide.seat.station": (0.0, 25.4),
    "guide.lower_frame.height": (18 * 25.4, 76.2),
    "guide.lower_frame.station": (-30 * 25.4, 101.6),
    "guide.lower_axle.height": (14 * 25.4, 76.2),
    "guide.lower_axle.station": (0.0, 50.0),
    "guide.upper_frame.height": (23 * 25.4, 76.2),
    "guide.upper_frame.station": (-24 * 25.4, 101.6),
    "guide.upper_axle.height": (22 * 25.4, 76.2),
    "guide.upper_axle.station": (0.0, 50.0),
}
