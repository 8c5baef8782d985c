import numpy as np
import pytest

from core.adjustment.least_squares import adjust
from core.readings.reading import claimed_uncertainty
from core.uncertainty.measured_linkage import has_centre_plane, measured_linkage
from core.uncertainty.propagation import SCALARS
from tests.geometries import (
    INSTRUMENTS,
    document_of,
    parallel_pair,
    random_linkage,
    session_of,
    true_readings,
)


def from_readings(linkage, read):
    session = session_of(document_of(linkage, read))
    return measured_linkage(session, adjust(session.readings, session.instruments, session.layout))


@pytest.mark.parametrize("datum", [-400.0, 0.0, 900.0])
def test_with_wheels_the_middle_between_them_is_the_centre(datum):
    linkage = random_linkage(np.random.default_rng(1), "inverted-y")
    found = from_readings(linkage, true_readings(linkage, datum=datum)).linkage
    for name in ("track_bar_frame", "track_bar_axle", "drag_link_frame", "drag_link_axle"):
        np.testing.assert_allclose(getattr(found, name), getattr(linkage, name), atol=1e-6)
    np.testing.assert_allclose(found.near_ball, linkage.near_ball, atol=1e-6)
    for name in (*SCALARS, "arm_side", "pitman_side", "ratio"):
        assert getattr(found, name) == pytest.approx(getattr(linkage, name))


def test_without_wheels_the_datum_line_is():
    linkage = parallel_pair()
    read = {
        name: value
        for name, value in true_readings(linkage, datum=900.0).items()
        if name != "wheels.left_offset"
    }
    session = session_of(document_of(linkage, read))
    assert not has_centre_plane(session)
    found = from_readings(linkage, read).linkage
    assert found.track_bar_frame[1] == pytest.approx(linkage.track_bar_frame[1] - 900.0)


def test_lengths_that_were_measured_carry_their_doubt():
    linkage = parallel_pair()
    covariance = from_readings(linkage, true_readings(linkage)).covariance
    u = dict(zip(SCALARS, np.sqrt(np.diag(covariance)[12:]), strict=True))
    assert u["arm"] == u["pitman_arm"] == pytest.approx(claimed_uncertainty("length", INSTRUMENTS))
    assert u["hub_height"] == pytest.approx(claimed_uncertainty("height", INSTRUMENTS))
    assert u["near_arm"] == u["joint_from_far_ball"] == 0.0


def test_an_assumed_length_has_no_doubt_of_its_own():
    linkage = parallel_pair()
    read = true_readings(linkage)
    del read["steering.arm"]
    document = document_of(linkage, read)
    document["assumed"] = {"steering": {"arm": "6 1/2 in"}}
    session = session_of(document)
    found = measured_linkage(session, adjust(session.readings, session.instruments, session.layout))
    assert session.assumed == ("steering.arm",)
    assert found.linkage.arm == pytest.approx(165.1)
    assert found.covariance[12, 12] == 0.0
