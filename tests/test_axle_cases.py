"""Worked cases of the full motion: whole records with the results of an independent root finder.

Their ball paths and gradients come from finite differences, good to 1e-6 of themselves.
"""

import json
import tomllib
from pathlib import Path

import numpy as np
import pytest

from core.kinematics.ball_path import ball_path, out_of_square
from core.kinematics.motion import motion_at, steering_wheel_angle
from core.kinematics.series import derivatives
from core.profiles.profile import load_profile
from core.sessions.session import session_from
from core.uncertainty.measured_linkage import adjusted, measured_linkage
from wizard.locations import PROFILES

CASES = json.loads((Path(__file__).parent / "cases" / "axle_cases.json").read_text("utf-8"))
MM, DEGREES = {"rtol": 0, "atol": 1e-6}, {"rtol": 0, "atol": 1e-7}
RELATIVE = {"rtol": 1e-6, "atol": 1e-7}


@pytest.fixture(
    params=CASES["cases"], ids=lambda case: tomllib.loads(case["record"])["session"]["id"]
)
def case(request):
    return request.param


@pytest.fixture
def linkage(case):
    session = session_from(
        tomllib.loads(case["record"]), lambda name: load_profile(name, [PROFILES])
    )
    return measured_linkage(session, adjusted(session)).linkage


def states(case, name, only_level=False):
    """Heaves (mm), rolls (rad) and expected values of the states that have a value."""
    rows = [
        (state["heave_mm"], np.radians(state["roll_deg"]), state[name])
        for state in case["expected"]
        if state[name] is not None and not (only_level and state["roll_deg"])
    ]
    return np.array(rows, dtype=float).T


@pytest.mark.parametrize(
    ("name", "attribute", "tolerance"),
    [
        ("axle_shift_mm", "axle_shift", MM),
        ("axle_ahead_mm", "axle_ahead", MM),
        ("axle_pitch_deg", "axle_pitch", DEGREES),
        ("axle_yaw_deg", "axle_yaw", DEGREES),
        ("steer_deg", "steer", DEGREES),
        ("toe_in_change_deg", "toe_in_change", DEGREES),
    ],
)
def test_motion(case, linkage, name, attribute, tolerance):
    heave, roll, expected = states(case, name)
    result = getattr(motion_at(linkage, heave, roll), attribute)
    result = np.degrees(result) if name.endswith("deg") else result
    np.testing.assert_allclose(result, expected, **tolerance)


def test_steering_wheel_let_go(case, linkage):
    heave, _, expected = states(case, "steering_wheel_deg", only_level=True)
    np.testing.assert_allclose(
        np.degrees(steering_wheel_angle(linkage, heave)), expected, **DEGREES
    )


def test_ball_path(case, linkage):
    path, expected = ball_path(linkage), case["ball_path"]
    np.testing.assert_allclose(path.centre, expected["centre"], **RELATIVE)
    np.testing.assert_allclose(path.radius, expected["radius"], **RELATIVE)
    assert np.linalg.norm(np.cross(path.axis, expected["direction"])) < 1e-6
    assert out_of_square(linkage).rise == pytest.approx(expected["rise"], abs=1e-6)


def test_gradient_and_effective_angle(case, linkage):
    gradient = np.degrees(derivatives(linkage).gradient)
    assert gradient == pytest.approx(case["steer_gradient_deg_per_mm"], rel=1e-6)
    assert np.degrees(out_of_square(linkage).angle) == pytest.approx(
        case["effective_deg"], abs=1e-7
    )
