"""Motion checked against scipy's root finder on the distance equations.

The equations say that every bar keeps its length. Matrices turn the points, no equation is solved
by hand, and the root finder starts at ride height.
"""

import numpy as np
import pytest
from scipy.optimize import root

from core.kinematics.linkage import Linkage
from core.kinematics.motion import motion_at, steering_wheel_angle
from core.kinematics.series import derivatives
from tests.geometries import LAYOUTS, random_linkage

ANGLE = np.radians(1e-7)
LENGTH = 1e-6


def axis_x(angle: float) -> np.ndarray:
    c, s = np.cos(angle), np.sin(angle)
    return np.array([[1, 0, 0], [0, c, -s], [0, s, c]])


def axis_z(angle: float) -> np.ndarray:
    c, s = np.cos(angle), np.sin(angle)
    return np.array([[c, -s, 0], [s, c, 0], [0, 0, 1]])


def gap(
    first: np.ndarray, second: np.ndarray, first_now: np.ndarray, second_now: np.ndarray
) -> float:
    """Length that a bar between two points lacks, mm; 0 where it fits."""
    return float(np.linalg.norm(first_now - second_now) - np.linalg.norm(first - second))


def turned(ball: np.ndarray, arm: float, angle: float) -> np.ndarray:
    """Place of a ball after a turn about an upright pin that is `arm` behind it."""
    pin = ball - [arm, 0, 0]
    return pin + axis_z(angle) @ (ball - pin)


def placed(linkage: Linkage, point: np.ndarray, walk: float, heave: float, roll: float):
    """Place of a point of the axle in the frame."""
    middle = np.array([0, 0, linkage.hub_height])
    return middle + axis_x(roll) @ (point - middle) + [0, walk, heave]


def steered(linkage: Linkage, heave: float, roll: float) -> tuple[float, float, float]:
    """Axle shift (mm), far and near steer (rad) with the steering wheel held."""
    Tf, Ta = linkage.track_bar_frame, linkage.track_bar_axle
    Df, Da, N = linkage.drag_link_frame, linkage.drag_link_axle, linkage.near_ball
    e = linkage.arm_direction.sign
    along = (Df - Da) / np.linalg.norm(Df - Da) * linkage.joint_from_far_ball

    def gaps(unknown: np.ndarray) -> list[float]:
        walk, far, near = unknown * [
            100.0,
            1.0,
            1.0,
        ]  # scaled, so that the three unknowns are of similar size
        Ta_now = placed(linkage, Ta, walk, heave, roll)
        Da_now = placed(linkage, turned(Da, e * linkage.arm, far), walk, heave, roll)
        fits = [gap(Tf, Ta, Tf, Ta_now), gap(Df, Da, Df, Da_now)]
        if N is None:
            return [*fits, far - near]
        joint_now = Da_now + (Df - Da_now) / np.linalg.norm(Df - Da) * linkage.joint_from_far_ball
        N_now = placed(linkage, turned(N, e * linkage.near_arm, near), walk, heave, roll)
        return [*fits, gap(N, Da + along, N_now, joint_now)]

    walk, far, near = solved(gaps, 3)
    return walk * 100.0, far, near


def let_go(linkage: Linkage, heave: float, roll: float) -> float:
    """Turn of the pitman arm (rad) with the road wheels straight."""
    Tf, Ta = linkage.track_bar_frame, linkage.track_bar_axle
    Df, Da = linkage.drag_link_frame, linkage.drag_link_axle

    def gaps(unknown: np.ndarray) -> list[float]:
        walk, swing = unknown * [100.0, 1.0]
        Df_now = turned(Df, linkage.pitman_direction.sign * linkage.pitman_arm, swing)
        Da_now = placed(linkage, Da, walk, heave, roll)
        return [
            gap(Tf, Ta, Tf, placed(linkage, Ta, walk, heave, roll)),
            gap(Df, Da, Df_now, Da_now),
        ]

    return solved(gaps, 2)[1]


def solved(gaps, unknowns: int) -> np.ndarray:
    result = root(gaps, np.zeros(unknowns), tol=1e-13)
    assert np.abs(gaps(result.x)).max() < 1e-9, result.message
    return result.x


@pytest.mark.parametrize("layout", LAYOUTS)
def test_axle_shift_and_steer(layout):
    rng = np.random.default_rng(LAYOUTS.index(layout))
    for _ in range(40):
        linkage = random_linkage(rng, layout)
        heave, roll = rng.uniform(-100, 100), np.radians(rng.uniform(-8, 8))
        motion = motion_at(linkage, heave, roll)
        walk, far, near = steered(linkage, heave, roll)
        assert abs(motion.axle_shift - walk) < LENGTH
        assert abs(2 * np.arctan(motion.far_turn) - far) < ANGLE
        assert abs(2 * np.arctan(motion.near_turn) - near) < ANGLE
        # A knuckle that has turned by d in a rolled axle heads by less on the ground.
        far, near = (np.arctan2(np.sin(d), np.cos(d) * np.cos(roll)) for d in (far, near))
        assert abs(motion.steer - (far + near) / 2) < ANGLE
        # ISO 8855:2011 7.1.6: right wheel's steer less left wheel's, toe-in positive
        left, right = (far, near) if linkage.drag_link_axle[1] > 0 else (near, far)
        assert abs(motion.toe_in_change - (right - left)) < ANGLE


@pytest.mark.parametrize("layout", LAYOUTS)
def test_steering_wheel_let_go(layout):
    rng = np.random.default_rng(LAYOUTS.index(layout) + 10)
    for _ in range(40):
        linkage = random_linkage(rng, layout)
        heave, roll = rng.uniform(-60, 60), np.radians(rng.uniform(-5, 5))
        # ISO 8855:2011 7.1.8: positive for a left turn. Where Df moves left, it pulls the far ball
        # left, and that steers left where the steering arm points ahead. A pitman arm that points
        # ahead moves Df left as it turns to the left.
        commands_left = linkage.arm_direction.sign * linkage.pitman_direction.sign
        expected = linkage.ratio * commands_left * let_go(linkage, heave, roll)
        assert abs(steering_wheel_angle(linkage, heave, roll) - expected) < linkage.ratio * ANGLE


@pytest.mark.parametrize("layout", LAYOUTS)
def test_gradient_and_curvature_are_those_of_the_curve(layout):
    """Seven-point differences of the root finder's curve at ride height."""
    rng = np.random.default_rng(LAYOUTS.index(layout) + 20)
    step = 4.0
    first = np.array([-1, 9, -45, 0, 45, -9, 1]) / (60 * step)
    second = np.array([2, -27, 270, -490, 270, -27, 2]) / (180 * step**2)
    for _ in range(8):
        linkage = random_linkage(rng, layout)
        curve = np.array([steered(linkage, heave, 0.0) for heave in step * np.arange(-3, 4)])
        shift, steer = curve[:, 0], curve[:, 1:].mean(axis=1)
        series = derivatives(linkage)
        assert series.axle_walk == pytest.approx(first @ shift, abs=1e-8)
        assert series.axle_arc == pytest.approx(second @ shift, abs=1e-9)
        assert series.gradient == pytest.approx(first @ steer, abs=1e-10)
        assert series.curvature == pytest.approx(second @ steer, abs=1e-10)
