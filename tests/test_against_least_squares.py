"""Adjustment checked against scipy.optimize.least_squares.

There are 200 sets of readings. Each set is a random subset of the survey, with drawn errors, and
rounded to the marks of the tape. The residuals are written here from the rules of the survey. The
covariance is that of scipy's own Jacobian.
"""

import numpy as np
import pytest
from scipy.optimize import least_squares

from core.adjustment.least_squares import adjust
from core.readings.reading import standard_uncertainty
from tests.geometries import (
    BRACES,
    INCH,
    LAYOUTS,
    as_read,
    document_of,
    random_linkage,
    session_of,
    true_readings,
)

PIVOTS = ("track_bar.frame", "track_bar.axle", "drag_link.frame", "drag_link.axle", "tie_rod.near")


def some_readings(rng, linkage):
    """All heights and offsets, and a random subset of the rest, some with two or three repeats."""
    true = true_readings(linkage, datum=rng.uniform(-900, 900))
    keep = rng.uniform(0.2, 1.0)
    stations = {link: rng.random() < 0.7 for link in ("track_bar", "drag_link")}
    taken = {}
    for name in true:
        last = name.rpartition(".")[2]
        if last not in ("height", "offset") and rng.random() > keep:
            continue
        # Usually both stations of a link are taken or none; sometimes only one of them is.
        if last == "station" and not stations.get(name.partition(".")[0], True):
            continue
        taken[name] = [as_read({name: true[name]}, rng)[name] for _ in range(rng.integers(1, 4))]
    for name in ("steering.arm", "steering.pitman_arm", "wheels.hub_height"):
        taken.setdefault(name, true[name])
    for name in ("tie_rod.near_arm", "tie_rod.joint_from_far_ball"):
        if name in true:
            taken.setdefault(name, true[name])
    return taken


def by_scipy(readings, u, layout):
    """Pivots (P, 3) and their covariance (3 P, 3 P)."""
    pivots = PIVOTS if layout == "inverted-y" else PIVOTS[:4]
    value = {reading.name: reading.value for reading in readings}

    def both(link):
        return f"{link}.frame.station" in value and f"{link}.axle.station" in value

    # A link without stations has both ends at x = 0 (track bar) or at the station of the
    # steering-arm ball (drag link). A near ball without a station has that station too.
    unknown = [f"{pivot}.{axis}" for pivot in pivots for axis in ("offset", "height")]
    if both("track_bar"):
        unknown += ["track_bar.frame.station", "track_bar.axle.station"]
    if both("drag_link"):
        unknown += ["drag_link.frame.station"]
    unknown += [
        name
        for name in ("drag_link.axle.station", "tie_rod.near.station")
        if name in value and name.rpartition(".")[0] in pivots
    ]

    def points(x):
        at = dict(zip(unknown, x, strict=True))
        ball = at.get("drag_link.axle.station", 0.0)
        elsewhere = {
            "drag_link.frame.station": ball,
            "drag_link.axle.station": ball,
            "tie_rod.near.station": ball,
        }
        return {
            pivot: np.array(
                [
                    at.get(f"{pivot}.station", elsewhere.get(f"{pivot}.station", 0.0)),
                    -at[f"{pivot}.offset"],
                    at[f"{pivot}.height"],
                ]
            )
            for pivot in pivots
        }

    def residuals(x):
        at, where = dict(zip(unknown, x, strict=True)), points(x)
        residual = []
        for reading in readings:
            name, _, what = reading.name.rpartition(".")
            if reading.name in at:
                predicted = at[reading.name]
            elif what == "station":
                continue  # of a link whose other station was not taken
            elif what == "slope":
                ahead, left, up = where[f"{name}.frame"] - where[f"{name}.axle"]
                predicted = np.arctan(up / np.sqrt(ahead**2 + left**2))
            elif what == "length":
                if not both(name):
                    continue
                predicted = np.linalg.norm(where[f"{name}.frame"] - where[f"{name}.axle"])
            else:
                if not (both("track_bar") and both("drag_link")):
                    continue
                first, second = BRACES[reading.name]
                predicted = np.linalg.norm(where[first] - where[second])
            residual.append((predicted - reading.value) / u[reading.name])
        return np.array(residual)

    start = np.array([value[name] for name in unknown])
    result = least_squares(
        residuals, start, jac="3-point", method="lm", xtol=1e-15, ftol=1e-15, gtol=1e-15
    )
    spread = np.linalg.inv(result.jac.T @ result.jac)
    # The points are linear in the unknowns, so each unknown gives a column of their matrix.
    origin = np.ravel(list(points(np.zeros(len(unknown))).values()))
    columns = [np.ravel(list(points(row).values())) - origin for row in np.eye(len(unknown))]
    matrix = np.array(columns).T
    adjusted = np.array(list(points(result.x).values()))
    return adjusted, matrix @ spread @ matrix.T, result


@pytest.mark.parametrize("batch", range(10))
def test_pivots_and_covariance_agree(batch):
    rng = np.random.default_rng(1968 + batch)
    for i in range(20):
        layout = LAYOUTS[(batch + i) % 3]
        linkage = random_linkage(rng, layout)
        session = session_of(document_of(linkage, some_readings(rng, linkage)))
        adjustment = adjust(session.readings, session.instruments, layout)
        u = {
            reading.name: standard_uncertainty(reading, session.instruments)
            for reading in session.readings
        }
        points, covariance, result = by_scipy(session.readings, u, layout)
        np.testing.assert_allclose(adjustment.points, points, rtol=0, atol=1e-6)
        scale = np.abs(covariance).max()
        np.testing.assert_allclose(adjustment.covariance, covariance, rtol=0, atol=1e-6 * scale)
        assert len(adjustment.items) == len(result.fun)
        assert adjustment.redundancy == len(result.fun) - len(result.x)
        assert adjustment.chi_square == pytest.approx(np.sum(result.fun**2), abs=1e-8)
        by_number = sum(item.redundancy_number for item in adjustment.items)
        assert by_number == pytest.approx(adjustment.redundancy, abs=1e-9)


@pytest.mark.parametrize("inches", [-12, -2, 2, 12])
def test_the_pivots_agree_beside_a_mistake(inches):
    """A reading is inches or a foot wrong: far from linear, still the least-squares solution."""
    rng = np.random.default_rng(50 + inches)
    for i in range(12):
        layout = LAYOUTS[i % 3]
        linkage = random_linkage(rng, layout, same_side=True)
        read = as_read(true_readings(linkage), rng)
        name = rng.choice([name for name in read if name.endswith(("height", "offset", "length"))])
        read[name] += inches * INCH
        session = session_of(document_of(linkage, read))
        adjustment = adjust(session.readings, session.instruments, layout)
        u = {
            reading.name: standard_uncertainty(reading, session.instruments)
            for reading in session.readings
        }
        points, _, result = by_scipy(session.readings, u, layout)
        # The error of scipy's differences is visible, as the residuals are a hundred times larger.
        np.testing.assert_allclose(adjustment.points, points, rtol=0, atol=1e-4)
        assert adjustment.chi_square <= 2 * result.cost * (1 + 1e-9)
