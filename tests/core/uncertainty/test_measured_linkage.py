"""The measured linkage of a session."""

import numpy as np
import pytest

from core.readings.reading import claimed_uncertainty
from core.uncertainty.measured_linkage import has_centre_plane, hub_centres
from core.uncertainty.propagation import SCALARS
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
    for name in (*SCALARS, "arm_side", "pitman_side", "ratio"):
        assert getattr(measured, name) == pytest.approx(getattr(linkage, name))


def test_without_both_wheels_the_datum_line_is_the_centre():
    linkage = parallel_pair()
    session, _, measured = measure(linkage, without_left_offset(linkage, datum=900.0))
    assert not has_centre_plane(session)
    expected = linkage.track_bar_frame[1] - 900.0
    assert measured.linkage.track_bar_frame[1] == pytest.approx(expected)


def test_measured_lengths_have_the_uncertainty_of_their_instruments():
    covariance = measure(parallel_pair()).measured.covariance
    u = dict(zip(SCALARS, np.sqrt(np.diag(covariance)[12:]), strict=True))
    assert u["arm"] == u["pitman_arm"] == pytest.approx(claimed_uncertainty("length", INSTRUMENTS))
    assert u["hub_height"] == pytest.approx(claimed_uncertainty("height", INSTRUMENTS))
    assert u["near_arm"] == u["joint_from_far_ball"] == 0.0


def test_an_assumed_length_has_no_uncertainty():
    linkage = parallel_pair()
    readings = true_readings(linkage)
    del readings["steering.arm"]
    document = document_of(linkage, readings)
    document["assumed"] = {"steering": {"arm": "6 1/2 in"}}
    session, _, measured = measure_session(session_of(document))
    assert session.assumed == ("steering.arm",)
    assert measured.linkage.arm == pytest.approx(165.1)
    assert measured.covariance[12, 12] == 0.0


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
