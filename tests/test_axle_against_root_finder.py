"""Motion of an axle on its guide and kingpins against scipy's root finder.

Every arm and every link keeps its length, and every knuckle turns about its kingpin. Matrices turn
the points, no equation is solved by hand, and the root finder starts at ride height. Each side has
its own heave, and the axle takes the mean of what the guides of both sides do.
"""

from collections.abc import Callable

import numpy as np
import pytest
from scipy.optimize import root
from scipy.spatial.transform import Rotation

from core.kinematics.guide import guide_values
from core.kinematics.linkage import Linkage
from core.kinematics.motion import motion_at, steering_wheel_angle
from core.kinematics.pivots import Direction, GuideKind, Layout
from tests.axles import KINDS, random_axle

ANGLE = np.radians(1e-7)
LENGTH = 1e-6
STATES = 40

SCALE = 100.0
"""Lengths in the unknowns are in this many mm, so that all unknowns are of similar size."""

Place = Callable[[np.ndarray], np.ndarray]
"""Carries a point of the axle to its place in the frame."""


@pytest.mark.parametrize(("layout", "guide", "has_track_bar"), KINDS)
def test_wheel_held(layout, guide, has_track_bar):
    rng = np.random.default_rng(KINDS.index((layout, guide, has_track_bar)))
    for _ in range(STATES):
        axle = random_axle(rng, layout, guide, has_track_bar)
        heave, roll = rng.uniform(-90, 90), np.radians(rng.uniform(-7, 7))
        motion = motion_at(axle, heave, roll)
        shift, pitch, yaw = pose(axle, heave, roll)
        turning = rotation(roll, pitch, yaw)
        assert np.abs(shift[:2] - [motion.axle_ahead, motion.axle_shift]).max() < LENGTH
        assert abs(motion.axle_pitch - pitch) < ANGLE
        assert abs(motion.axle_yaw - yaw) < ANGLE
        far, near = turns(axle, place(axle, shift, turning))
        far_steer = heading(axle, turning, axle.far_side, far)
        near_steer = heading(axle, turning, -axle.far_side, near)
        assert abs(motion.far_steer - far_steer) < ANGLE
        assert abs(motion.near_steer - near_steer) < ANGLE
        assert abs(motion.steer - (far_steer + near_steer) / 2) < ANGLE
        # ISO 8855:2011 7.1.6: right wheel's steer less left wheel's, toe-in positive
        far_is_left = axle.far_side > 0
        right_less_left = (near_steer - far_steer) * (1 if far_is_left else -1)
        expected = right_less_left if layout == Layout.INVERTED_Y else 0.0
        assert abs(motion.toe_in_change - expected) < ANGLE


@pytest.mark.parametrize(("layout", "guide", "has_track_bar"), KINDS)
def test_wheel_let_go(layout, guide, has_track_bar):
    rng = np.random.default_rng(KINDS.index((layout, guide, has_track_bar)) + 100)
    for _ in range(STATES):
        axle = random_axle(rng, layout, guide, has_track_bar)
        heave, roll = rng.uniform(-50, 50), np.radians(rng.uniform(-4, 4))
        expected = axle.ratio * commands_left(axle) * swing(axle, heave, roll)
        assert abs(steering_wheel_angle(axle, heave, roll) - expected) < axle.ratio * ANGLE


def pose(axle: Linkage, heave: float, roll: float) -> tuple[np.ndarray, float, float]:
    """Movement of the axle's middle (mm), pitch and yaw (rad)."""
    half_span = float(axle.span) / 2
    sides = [
        side_view(axle, heave + side * half_span * np.sin(roll)) for side in (1, -1)
    ]  # left, right
    (ahead_left, pitch_left), (ahead_right, pitch_right) = sides
    ahead, pitch = (ahead_left + ahead_right) / 2, (pitch_left + pitch_right) / 2
    yaw = np.arctan2(ahead_right - ahead_left, 2 * half_span)
    bar = axle.track_bar_frame, axle.track_bar_axle
    if bar[0] is None or bar[1] is None:
        return np.array([ahead, 0.0, heave]), pitch, yaw
    turning = rotation(roll, pitch, yaw)

    def gaps(unknown: np.ndarray) -> list[float]:
        shift = np.array([ahead, unknown[0] * SCALE, heave])
        return [gap(bar[0], bar[1], bar[0], place(axle, shift, turning)(bar[1]))]

    return np.array([ahead, solved(gaps, 1)[0] * SCALE, heave]), pitch, yaw


def side_view(axle: Linkage, heave: float) -> tuple[float, float]:
    """Movement ahead (mm) and pitch (rad) that the guide of one side asks for at its heave."""
    value = {name: float(number) for name, number in guide_values(axle.guide).items()}
    kind, hub = axle.guide.kind, float(axle.hub_height)

    def pivot(name: str) -> np.ndarray:
        return np.array([value[f"guide.{name}.station"], 0, value[f"guide.{name}.height"] - hub])

    def carried(point: np.ndarray, unknown: np.ndarray) -> np.ndarray:
        """Place of a point of the axle seen from the middle of the axle at rest."""
        return rotation(0, unknown[1], 0) @ point + [unknown[0] * SCALE, 0, heave]

    def two_arms(unknown: np.ndarray) -> list[float]:
        return [
            gap(frame, end, frame, carried(end, unknown))
            for frame, end in (
                (pivot("lower_frame"), pivot("lower_axle")),
                (pivot("upper_frame"), pivot("upper_axle")),
            )
        ]

    def radius_arm(unknown: np.ndarray) -> list[float]:
        """The frame pivot as a point of the axle stays where it is."""
        ahead, _, up = carried(pivot("frame"), unknown) - pivot("frame")
        return [ahead / SCALE, up / SCALE]

    def leaf(unknown: np.ndarray) -> list[float]:
        eye, seat = pivot("eye"), pivot("seat")
        centre = seat + (eye - seat) * value["guide.effective_length"]
        return [
            gap(centre, seat, centre, carried(seat, unknown)),
            unknown[1] - value["guide.pitch_gain"] * heave,
        ]

    if kind == GuideKind.UNMEASURED:
        return value["guide.fore_aft_gain"] * heave, value["guide.pitch_gain"] * heave
    conditions = {
        GuideKind.RADIUS_ARMS: radius_arm,
        GuideKind.TWO_ARMS: two_arms,
        GuideKind.LEAF: leaf,
    }
    ahead, pitch = solved(conditions[kind], 2)
    return ahead * SCALE, pitch


def turns(axle: Linkage, placed: Place) -> tuple[float, float]:
    """Turns of the far and the near knuckle with the steering wheel held, rad."""
    Df, Da, N = axle.drag_link_frame, axle.drag_link_axle, axle.near_ball
    along = (Df - Da) / np.linalg.norm(Df - Da) * axle.joint_from_far_ball

    def gaps(unknown: np.ndarray) -> list[float]:
        far, near = unknown
        Da_now = placed(far_ball(axle, far))
        fits = gap(Df, Da, Df, Da_now)
        if N is None:
            return [fits, far - near]
        joint_now = Da_now + (Df - Da_now) / np.linalg.norm(Df - Da) * axle.joint_from_far_ball
        N_now = placed(swung(N, arm(axle, axle.near_arm), kingpin(axle, -axle.far_side), near))
        return [fits, gap(N, Da + along, N_now, joint_now)]

    far, near = solved(gaps, 2)
    return far, near


def swing(axle: Linkage, heave: float, roll: float) -> float:
    """Swing of the pitman arm, rad, with the far wheel straight ahead."""
    shift, pitch, yaw = pose(axle, heave, roll)
    turning = rotation(roll, pitch, yaw)
    placed = place(axle, shift, turning)
    Df, Da = axle.drag_link_frame, axle.drag_link_axle

    def gaps(unknown: np.ndarray) -> list[float]:
        far, turn = unknown
        straight = heading(axle, turning, axle.far_side, far)
        Df_now = swung(Df, *pitman(axle), turn)
        return [straight, gap(Df, Da, Df_now, placed(far_ball(axle, far)))]

    return solved(gaps, 2)[1]


def commands_left(axle: Linkage) -> float:
    """+1 where a swing of the pitman arm in its positive sense steers the wheels to the left."""
    small = 1e-3
    Df_now = swung(axle.drag_link_frame, *pitman(axle), small)

    def gaps(unknown: np.ndarray) -> list[float]:
        ball_now = far_ball(axle, unknown[0])
        return [gap(axle.drag_link_frame, axle.drag_link_axle, Df_now, ball_now)]

    return float(np.sign(heading(axle, np.eye(3), axle.far_side, solved(gaps, 1)[0])))


def far_ball(axle: Linkage, turn: float) -> np.ndarray:
    """Ball that the drag link reaches, after a turn of its knuckle.

    On a tie rod it moves as if the kingpins did not lean inboard: both ends cancel.
    """
    leaning = 0.0 if axle.layout == Layout.TIE_ROD else axle.inclination
    axis = direction(axle.castor, leaning, axle.far_side)
    return swung(axle.drag_link_axle, arm(axle, axle.arm), axis, turn)


def arm(axle: Linkage, length: float) -> np.ndarray:
    """Steering arm from its kingpin to its ball."""
    outboard = np.array([0, axle.far_side, 0])
    return (
        length
        * {
            Direction.AHEAD: np.array([1, 0, 0]),
            Direction.BEHIND: np.array([-1, 0, 0]),
            Direction.INBOARD: -outboard,
            Direction.OUTBOARD: outboard,
        }[axle.arm_direction]
    )


def pitman(axle: Linkage) -> tuple[np.ndarray, np.ndarray]:
    """Pitman arm from its shaft to its ball, and the axis of the shaft."""
    upright, across = np.array([0, 0, 1]), np.array([0, 1, 0])
    points, axis = {
        Direction.AHEAD: ([1, 0, 0], upright),
        Direction.BEHIND: ([-1, 0, 0], upright),
        Direction.DOWN: ([0, 0, -1], across),
        Direction.UP: ([0, 0, 1], across),
    }[axle.pitman_direction]
    return axle.pitman_arm * np.array(points), axis


def kingpin(axle: Linkage, side: int) -> np.ndarray:
    """Direction of the kingpin of one side."""
    return direction(axle.castor, axle.inclination, side)


def direction(castor: float, inclination: float, side: int) -> np.ndarray:
    """Direction of an axis whose top leans back and inboard, of length 1."""
    axis = np.array([-np.tan(castor), -side * np.tan(inclination), 1])
    return axis / np.linalg.norm(axis)


def swung(ball: np.ndarray, arm: np.ndarray, axis: np.ndarray, angle: float) -> np.ndarray:
    """Place of a ball after its arm has turned about an axis."""
    return ball - arm + Rotation.from_rotvec(axis * angle).apply(arm)


def heading(axle: Linkage, turning: np.ndarray, side: int, angle: float) -> float:
    """Heading on the ground of the wheel of one side after a turn of its knuckle, rad."""
    knuckle = Rotation.from_rotvec(kingpin(axle, side) * angle).as_matrix()
    ahead, left, _ = turning @ knuckle @ [0, 1, 0]
    return float(np.arctan2(-ahead, left))


def rotation(roll: float, pitch: float, yaw: float) -> np.ndarray:
    """Matrix that rolls, then pitches, then yaws."""
    return Rotation.from_euler("xyz", [roll, pitch, yaw]).as_matrix()


def place(axle: Linkage, shift: np.ndarray, turning: np.ndarray) -> Place:
    """Place in the frame of points of the axle."""
    middle = np.array([0, 0, float(axle.hub_height)])
    return lambda point: middle + shift + turning @ (point - middle)


def gap(
    first: np.ndarray, second: np.ndarray, first_now: np.ndarray, second_now: np.ndarray
) -> float:
    """Length that a bar between two points lacks, in SCALE mm; 0 where it fits."""
    return float(np.linalg.norm(first_now - second_now) - np.linalg.norm(first - second)) / SCALE


def solved(gaps: Callable[[np.ndarray], list[float]], unknowns: int) -> np.ndarray:
    result = root(gaps, np.zeros(unknowns), tol=1e-14)
    assert np.abs(gaps(result.x)).max() < 1e-11, result.message
    return result.x
