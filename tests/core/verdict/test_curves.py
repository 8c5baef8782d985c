"""Peaks of many geometries; tests/test_properties.py compares them with the model."""

import numpy as np
import pytest

from core.kinematics.motion import motion_at
from core.kinematics.raising import raised
from core.verdict.curves import HEAVES, Curves, peak_values, working_heaves
from tests.geometries import document_of, parallel_pair, random_linkage, session_of, true_readings


@pytest.fixture
def limits():
    linkage = parallel_pair()
    return session_of(document_of(linkage, true_readings(linkage))).limits


def test_heaves_are_equally_spaced_from_working_droop_to_working_bump(limits):
    heaves = working_heaves(limits)
    assert len(heaves) == HEAVES == 41
    assert (heaves[0], heaves[-1]) == (-limits.working_droop, limits.working_bump)
    np.testing.assert_allclose(np.diff(heaves), np.diff(heaves)[0])


@pytest.mark.parametrize("layout", ["knuckle", "inverted-y"])
def test_many_geometries_have_the_peaks_of_each(limits, layout):
    linkage = random_linkage(np.random.default_rng(2), layout, same_side=True)
    rises = np.linspace(-30, 30, 12).reshape(3, 4)
    many = raised(linkage, "track_bar.axle", rises)
    steer, toe = peak_values(many, limits)
    assert steer.shape == toe.shape == (3, 4)
    motion = motion_at(raised(linkage, "track_bar.axle", rises[1, 2]), working_heaves(limits))
    assert steer[1, 2] == pytest.approx(np.abs(motion.steer).max(), abs=1e-9)
    assert toe[1, 2] == pytest.approx(np.abs(motion.toe_in_change).max(), abs=1e-9)


def test_a_geometry_that_binds_has_no_peak(limits):
    short = parallel_pair(run=50.0, slope_deg=0.0)
    steer, _ = peak_values(raised(short, "track_bar.frame", np.array([0.0, 280.0])), limits)
    np.testing.assert_array_equal(np.isnan(steer), [False, True])


def test_five_heaves_give_nearly_the_same_peak(limits):
    linkage = parallel_pair(parallel_deg=2.0)
    curves = Curves.of(linkage, limits)
    fine, _ = curves.peaks()
    coarse, _ = curves.peaks(5)
    assert coarse == pytest.approx(fine, rel=1e-6)  # this curve peaks at an end of the travel
