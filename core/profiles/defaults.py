"""Values that a profile assumes where nothing was measured."""

from dataclasses import dataclass

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

    def __getitem__(self, reading: str) -> float:
        """Default that replaces a reading, by the name of the reading: "steering.arm"."""
        value: float = getattr(self, reading.rpartition(".")[2])
        return value
