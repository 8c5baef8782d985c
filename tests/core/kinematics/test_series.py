"""Formulas of the derivatives for links with both ends at one station.

test_against_root_finder checks the derivatives against differences of root-series curves.
"""

from dataclasses import replace

import numpy as np
import pytest

from core.kinematics.raising import raised
from core.kinematics.series import derivatives
from core.verdict.rules import slopes
from tests.geometries import parallel_pair, random_linkage


@pytest.fixture(params=range(12))
def linkage(request):
    """A linkage with both ends of each link at one station and frame ends on either side."""
    drawn = random_linkage(np.random.default_rng(request.param), "knuckle")
    frames = {
        f"{link}.frame": drawn.pivot(f"{link}.frame") * [0, 1, 1]
        + drawn.pivot(f"{link}.axle") * [1, 0, 0]
        for link in ("track_bar", "drag_link")
    }
    return drawn.with_pivots(frames)


def test_first_order_follows_the_slopes(linkage):
    slope_t, slope_d = slopes(linkage)
    series = derivatives(linkage)
    assert series.axle_walk == pytest.approx(-np.tan(slope_t))
    expected = (np.tan(slope_t) - np.tan(slope_d)) / (linkage.arm_direction.sign * linkage.arm)
    assert series.gradient == pytest.approx(expected)


def test_second_order_follows_the_runs(linkage):
    slope_t, slope_d = slopes(linkage)
    run_t = linkage.track_bar_frame[1] - linkage.track_bar_axle[1]
    run_d = linkage.drag_link_frame[1] - linkage.drag_link_axle[1]
    series = derivatives(linkage)
    arc_t, arc_d = 1 / (run_t * np.cos(slope_t) ** 2), 1 / (run_d * np.cos(slope_d) ** 2)
    assert series.axle_arc == pytest.approx(arc_t)
    lever = linkage.arm_direction.sign * linkage.arm
    # The far ball turns on a circle. That adds nothing where the link runs straight across.
    assert series.curvature == pytest.approx((arc_d - arc_t) / lever)


def test_parallel_and_equal_links_have_no_gradient_and_no_curvature():
    series = derivatives(parallel_pair(slope_deg=12.0))
    assert series.gradient == pytest.approx(0.0, abs=1e-15)
    assert series.curvature == pytest.approx(0.0, abs=1e-15)


def test_derivatives_broadcast():
    linkage = parallel_pair(parallel_deg=1.0)
    many = raised(linkage, "drag_link.frame", np.array([0.0, 10.0, 20.0]))
    series = derivatives(replace(many, arm=np.array([150.0, 160.0, 170.0])))
    assert series.gradient.shape == series.curvature.shape == (3,)
