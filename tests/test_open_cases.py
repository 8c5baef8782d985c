"""Worked cases: geometries with their motion from an independent root finder, no closed forms.

A rigid-body physics engine agrees with each of them to better than 1e-6 deg.
"""

import numpy as np
import pytest

from core.kinematics.motion import motion_at, steering_wheel_angle
from core.verdict.rules import lengths, slopes
from tests.geometries import OPEN_CASES, linkage_of

LINKS = ("track_bar", "drag_link")
MM = {"rtol": 0, "atol": 1e-6}
DEGREES = {"rtol": 0, "atol": 1e-7}


@pytest.fixture(params=OPEN_CASES["cases"], ids=lambda case: case["layout"])
def case(request):
    return request.param


def test_motion(case):
    heave, roll, shift, steer, toe_in = (
        np.array([state[name] for state in case["expected"]])
        for name in ("heave_mm", "roll_deg", "axle_shift_mm", "steer_deg", "toe_in_change_deg")
    )
    motion = motion_at(linkage_of(case), heave, np.radians(roll))
    np.testing.assert_allclose(motion.axle_shift, shift, **MM)
    # The cases give the turns of the knuckles in the axle, which differ from the headings on the
    # ground where the axle rolls.
    far, near = np.degrees(2 * np.arctan([motion.far_turn, motion.near_turn]))
    np.testing.assert_allclose((far + near) / 2, steer, **DEGREES)
    level = np.array(roll) == 0
    np.testing.assert_allclose(np.degrees(motion.steer)[level], steer[level], **DEGREES)
    far_is_left = case["points_mm"]["Da"][1] > 0
    np.testing.assert_allclose(near - far if far_is_left else far - near, toe_in, **DEGREES)


def test_steering_wheel_let_go(case):
    heave, angle = (
        np.array([state[name] for state in case["steering_wheel_deg"]])
        for name in ("heave_mm", "angle_deg")
    )
    swing = np.degrees(steering_wheel_angle(linkage_of(case), heave))
    np.testing.assert_allclose(swing, angle, **DEGREES)


def test_slopes_and_lengths(case):
    linkage = linkage_of(case)
    expected = [case["slope_deg"][link] for link in LINKS]
    np.testing.assert_allclose(np.degrees(slopes(linkage)), expected, **DEGREES)
    np.testing.assert_allclose(lengths(linkage), [case["length_mm"][link] for link in LINKS], **MM)
