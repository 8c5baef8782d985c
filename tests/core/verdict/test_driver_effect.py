"""What the driver has of it."""

import numpy as np
import pytest

from core.verdict.driver_effect import driver_effect
from core.verdict.verdict import evaluate
from tests.geometries import document_of, parallel_pair, session_of, true_readings


def verdict_on(linkage):
    return evaluate(session_of(document_of(linkage, true_readings(linkage))), draws=0)


def test_it_is_what_the_peak_of_the_working_travel_is():
    verdict = verdict_on(parallel_pair(parallel_deg=-4.0))
    had = driver_effect(verdict)
    assert abs(had.steer) == pytest.approx(verdict.steer.ruling.value)
    assert had.heave == verdict.steer.at_heave


def test_what_the_links_do_to_held_wheels_and_to_a_wheel_let_go_is_opposite():
    """Held, the road wheels steer; let go, the steering wheel gives way (common practice, no
    source): the box turns to where the road wheels would be straight."""
    had = driver_effect(verdict_on(parallel_pair(parallel_deg=-4.0)))
    assert np.sign(had.steer) == -np.sign(had.steering_wheel)
    assert abs(had.steering_wheel) > abs(had.steer)
