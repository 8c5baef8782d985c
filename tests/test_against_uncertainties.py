"""Linear propagation against the `uncertainties` library.

The library gets the adjusted pivots as correlated values. Slopes, parallel angle and length ratio
are written here in their simplest form, and the library differentiates them.
"""

import numpy as np
import pytest
from uncertainties import correlated_values, ufloat, umath

from core.kinematics.series import derivatives
from core.uncertainty.measured_linkage import adjusted, measured_linkage
from core.verdict.rules import rules_of
from tests.geometries import (
    LAYOUTS,
    as_read,
    document_of,
    random_linkage,
    session_of,
    true_readings,
)

NO_STATIONS = ("station", "length")


def surveyed(layout, stations):
    """Session, measured linkage, and its pivots as the library's correlated values."""
    rng = np.random.default_rng(LAYOUTS.index(layout) + 5)
    linkage = random_linkage(rng, layout)
    read = as_read(true_readings(linkage, datum=700.0), rng)
    if not stations:
        read = {name: value for name, value in read.items() if not name.endswith(NO_STATIONS)}
    session = session_of(document_of(linkage, read))
    adjustment = adjusted(session)
    flat = correlated_values(adjustment.points.ravel(), adjustment.covariance)
    points = dict(zip(adjustment.pivots, np.reshape(flat, (-1, 3)), strict=True))
    return session, measured_linkage(session, adjustment), points


@pytest.fixture(params=[(layout, stations) for layout in LAYOUTS for stations in (True, False)])
def subject(request):
    return surveyed(*request.param)


def slope(points, link):
    _, run, rise = points[f"{link}.frame"] - points[f"{link}.axle"]
    return umath.atan(rise / run)


def length(points, link):
    ahead, run, rise = points[f"{link}.frame"] - points[f"{link}.axle"]
    return umath.sqrt(ahead * ahead + run * run + rise * rise)


def check(ruling, expected):
    assert ruling.value == pytest.approx(expected.nominal_value, rel=1e-9)
    assert ruling.u == pytest.approx(expected.std_dev, rel=1e-6)


def test_slopes_and_parallel_angle(subject):
    session, pivots, points = subject
    rules = rules_of(pivots, session.limits)
    track_bar, drag_link = slope(points, "track_bar"), slope(points, "drag_link")
    check(rules.flat_track_bar, track_bar)
    check(rules.flat_drag_link, drag_link)
    check(rules.parallel, drag_link - track_bar)


def test_length_ratio(subject):
    session, pivots, points = subject
    track_bar, drag_link = length(points, "track_bar"), length(points, "drag_link")
    ratio = track_bar / drag_link
    expected = ratio if ratio.nominal_value < 1 else 1 / ratio
    check(rules_of(pivots, session.limits).length, expected)


@pytest.mark.parametrize("layout", ["knuckle", "tie-rod"])
def test_steer_gradient_of_links_without_stations(layout):
    """d(steer)/dz = (tan(slope_T) - tan(slope_D)) / (e a), with the uncertainty of the arm."""
    session, pivots, points = surveyed(layout, stations=False)
    dimension = session.dimensions["steering.arm"]
    arm = ufloat(dimension.value, dimension.u)
    track_bar, drag_link = slope(points, "track_bar"), slope(points, "drag_link")
    expected = (umath.tan(track_bar) - umath.tan(drag_link)) / (arm * session.arm.sign)
    u = pivots.standard_uncertainty(pivots.gradient(lambda linkage: derivatives(linkage).gradient))
    assert derivatives(pivots.linkage).gradient == pytest.approx(expected.nominal_value, rel=1e-9)
    assert u == pytest.approx(expected.std_dev, rel=1e-6)
