"""Worth of a reading that was not taken: beside the doubt once it is taken."""

import numpy as np
import pytest

from core.adjustment.observation import Observations, predict
from core.documents.document import with_value
from core.kinematics.ball_path import effective_angle
from core.readings.reading import Reading
from core.readings.survey import SURVEY
from core.uncertainty.propagation import parameter_names
from core.uncertainty.worth import (
    hidden_mistake,
    is_checked,
    readings_left,
    variances_taken,
)
from tests.geometries import document_of, parallel_pair, session_of, true_readings
from tests.measured import measure, measure_session

DIMENSIONS = ("steering.arm", "steering.pitman_arm", "wheels.hub_height")
PIVOTS = ("track_bar.frame", "track_bar.axle", "drag_link.frame", "drag_link.axle")
PLACED = [
    *DIMENSIONS,
    *(f"{pivot}.{kind}" for pivot in PIVOTS for kind in ("height", "offset", "station")),
]
LINKAGE = parallel_pair(parallel_deg=2.0)
TRUE = true_readings(LINKAGE)


def taken(*further):
    """A session with every pivot placed, and some further readings as they are predicted."""
    readings = {name: TRUE[name] for name in PLACED}
    adjustment = measure(LINKAGE, readings).adjustment
    for name in further:
        observations = Observations.of([Reading(name, SURVEY[name], (0.0,))], adjustment.pivots)
        readings[name] = float(predict(observations, adjustment.points)[0][0])
    return measure_session(session_of(document_of(LINKAGE, readings)))


def doubt(measured):
    """Derivative (K, 1) of the deciding angle, and its variance."""
    gradient = measured.gradient(effective_angle)[:, None]
    return gradient, float(measured.variances(gradient).sum())


@pytest.mark.parametrize(
    "name", ["track_bar.slope", "drag_link.slope", "braces.frame_ends", "track_bar.length"]
)
def test_it_is_the_variance_that_goes_once_the_reading_is_taken(name):
    session, adjustment, measured = taken()
    gradient, before = doubt(measured)
    worth = variances_taken(adjustment, measured, session.instruments, gradient, name)
    _, after = doubt(taken(name).measured)
    assert before - float(worth[0]) == pytest.approx(after, rel=1e-3)


def test_a_dimension_that_is_read_leaves_what_the_tape_leaves():
    readings = {name: TRUE[name] for name in PLACED if name != "steering.arm"}
    document = document_of(LINKAGE, readings)
    assumed = with_value(document, "assumed.steering.arm", "165 mm")
    assumed = with_value(assumed, "assumed_within.steering.arm", "30 mm")
    session, adjustment, measured = measure_session(session_of(assumed))
    parameter = parameter_names(measured.linkage).index("steering.arm")
    gradient = np.zeros((len(measured.influence), 1))
    gradient[parameter] = 1.0
    worth = variances_taken(adjustment, measured, session.instruments, gradient, "steering.arm")
    u_assumed, u_read = 30 / np.sqrt(3), taken().session.dimensions["steering.arm"].u
    left = 1 / (1 / u_assumed**2 + 1 / u_read**2)
    assert float(worth[0]) == pytest.approx(u_assumed**2 - left, rel=1e-6)


def test_readings_left_are_those_that_nobody_took():
    _, adjustment, measured = taken("track_bar.slope")
    left = readings_left(adjustment, measured)
    assert "track_bar.slope" not in left
    assert "track_bar.frame.height" not in left
    assert {"drag_link.slope", "braces.axle_ends"} <= set(left)
    assert len(set(left)) == len(left)


def test_a_slope_hides_less_of_a_wrong_height_than_a_length():
    session, adjustment, measured = taken()
    gradient, _ = doubt(measured)
    slope, length = (
        hidden_mistake(adjustment, session.instruments, gradient, f"track_bar.{kind}", "track_bar")
        for kind in ("slope", "length")
    )
    assert slope < length


def test_a_link_is_checked_once_something_is_redundant_on_it():
    assert not is_checked(taken().adjustment, "track_bar", 0.01)
    with_slope = taken("track_bar.slope").adjustment
    assert is_checked(with_slope, "track_bar", 0.01)
    assert not is_checked(with_slope, "drag_link", 0.01)
