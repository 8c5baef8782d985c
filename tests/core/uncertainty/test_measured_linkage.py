"""The measured linkage of a session."""

import numpy as np
import pytest

from core.documents.document import with_value
from core.kinematics.linkage import scalars_of
from core.readings.reading import claimed_uncertainty
from core.uncertainty.measured_linkage import has_centre_plane, hub_centres
from core.uncertainty.propagation import Source, parameter_names
from tests.geometries import (
    INSTRUMENTS,
    document_of,
    parallel_pair,
    random_linkage,
    session_of,
    true_readings,
)
from tests.measured import measure, measure_session


def without_left_offset(linkage, **options):
    """True readings without the offset of the left wheel."""
    readings = true_readings(linkage, **options)
    del readings["wheels.left_offset"]
    return readings


@pytest.mark.parametrize("datum", [-400.0, 0.0, 900.0])
def test_with_both_wheels_the_middle_between_them_is_the_centre(datum):
    linkage = random_linkage(np.random.default_rng(1), "inverted-y")
    measured = measure(linkage, true_readings(linkage, datum=datum)).measured.linkage
    for name in ("track_bar_frame", "track_bar_axle", "drag_link_frame", "drag_link_axle"):
        np.testing.assert_allclose(getattr(measured, name), getattr(linkage, name), atol=1e-6)
    np.testing.assert_allclose(measured.near_ball, linkage.near_ball, atol=1e-6)
    for name, value in scalars_of(linkage).items():
        assert scalars_of(measured)[name] == pytest.approx(value) or name == "guide.span"
    for name in ("arm_direction", "pitman_direction", "far_side"):
        assert getattr(measured, name) == getattr(linkage, name)


def test_without_both_wheels_the_datum_line_is_the_centre():
    linkage = parallel_pair()
    session, _, measured = measure(linkage, without_left_offset(linkage, datum=900.0))
    assert not has_centre_plane(session)
    expected = linkage.track_bar_frame[1] - 900.0
    assert measured.linkage.track_bar_frame[1] == pytest.approx(expected)


def uncertainties(measured):
    """Standard uncertainty of each parameter by name."""
    u = np.sqrt(np.diag(measured.covariance))
    return dict(zip(parameter_names(measured.linkage), u, strict=True))


def test_measured_lengths_have_the_uncertainty_of_their_instruments():
    u = uncertainties(measure(parallel_pair()).measured)
    expected = claimed_uncertainty("length", INSTRUMENTS)
    assert u["steering.arm"] == pytest.approx(expected)
    assert u["steering.pitman_arm"] == pytest.approx(expected)
    assert u["wheels.hub_height"] == pytest.approx(claimed_uncertainty("height", INSTRUMENTS))


def test_an_assumed_length_has_the_uncertainty_of_its_half_width():
    linkage = parallel_pair()
    readings = true_readings(linkage)
    del readings["steering.arm"]
    document = document_of(linkage, readings)
    document = with_value(document, "assumed.steering.arm", "6 1/2 in")
    document = with_value(document, "assumed_within.steering.arm", "1 1/4 in")
    session, _, measured = measure_session(session_of(document))
    assert "steering.arm" in session.assumed
    assert measured.linkage.arm == pytest.approx(165.1)
    assert uncertainties(measured)["steering.arm"] == pytest.approx(31.75 / np.sqrt(3))
    assert Source("steering.arm", is_assumed=True) in measured.sources


def test_hub_centres_are_half_a_track_from_the_centre():
    linkage = parallel_pair()
    session, _, measured = measure(linkage, true_readings(linkage, datum=300.0, tread=1500.0))
    centres = hub_centres(session, measured.linkage)
    np.testing.assert_allclose(centres["wheels.left"], [0.0, 750.0, linkage.hub_height])
    np.testing.assert_allclose(centres["wheels.right"], [0.0, -750.0, linkage.hub_height])


def test_without_both_wheels_there_are_no_hub_centres():
    linkage = parallel_pair()
    session, _, measured = measure(linkage, without_left_offset(linkage))
    assert hub_centres(session, measured.linkage) == {}
