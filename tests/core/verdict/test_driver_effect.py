"""Steer with the steering wheel held, and its swing when let go."""

import numpy as np
import pytest

from core.verdict.driver_effect import driver_effect
from core.verdict.verdict import evaluate
from tests.geometries import document_of, parallel_pair, session_of, true_readings


@pytest.fixture(scope="module")
def verdict():
    linkage = parallel_pair(parallel_deg=-4.0)
    return evaluate(session_of(document_of(linkage, true_readings(linkage))), draws=0)


def test_the_steer_is_the_peak_of_the_working_travel(verdict):
    effect = driver_effect(verdict)
    assert abs(effect.steer) == pytest.approx(verdict.steer.ruling.value)
    assert effect.heave == verdict.steer.at_heave


def test_the_steering_wheel_swings_against_the_steer_of_the_road_wheels(verdict):
    """Let go, the steering wheel turns until the road wheels are straight.

    That is against the steer that they have with the steering wheel held (common practice, no
    source).
    """
    effect = driver_effect(verdict)
    assert np.sign(effect.steer) == -np.sign(effect.steering_wheel)
    assert abs(effect.steering_wheel) > abs(effect.steer)
