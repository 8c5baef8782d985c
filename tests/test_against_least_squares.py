"""Adjustment checked against scipy.optimize.least_squares.

There are 200 sets of readings. Each set is a random subset of the survey, with drawn errors, and
rounded to the marks of the tape. The residuals are written here from the rules of the survey. The
covariance is that of scipy's own Jacobian.
"""

import numpy as np
import pytest
from scipy.optimize import least_squares

from core.readings.reading import standard_uncertainty
from core.uncertainty.measured_linkage import adjusted
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


def by_scipy(readings, u, layout, arm):
    """Pivots (P, 3) and their covariance (3 P, 3 P)."""
    pivots = PIVOTS if layout == "inverted-y" else PIVOTS[:4]
    unknown = [f"{pivot}.{what}" for pivot in pivots for what in ("station", "offset", "height")]

    def points(x):
        ahead, right, up = np.reshape(x, (-1, 3)).T
        return dict(zip(pivots, np.array([ahead, -right, up]).T, strict=True))

    def residuals(x):
        at, where = dict(zip(unknown, x, strict=True)), points(x)
        residual = []
        for reading in readings:
            name, _, what = reading.name.rpartition(".")
            if reading.name in at:
                predicted = at[reading.name]
            elif what == "slope":
                ahead, left, up = where[f"{name}.frame"] - where[f"{name}.axle"]
                predicted = np.arctan(up / np.sqrt(ahead**2 + left**2))
            elif what == "length":
                predicted = np.linalg.norm(where[f"{name}.frame"] - where[f"{name}.axle"])
            else:
                first, second = BRACES[reading.name]
                predicted = np.linalg.norm(where[first] - where[second])
            residual.append((predicted - reading.value) / u[reading.name])
        station = {pivot: at[f"{pivot}.station"] for pivot in pivots}
        taken = {reading.name for reading in readings}
        return np.array(residual + usual_places(station, taken, arm))

    start = np.array([at_start(name, readings, arm) for name in unknown])
    result = least_squares(
        residuals, start, jac="3-point", method="lm", xtol=1e-15, ftol=1e-15, gtol=1e-15
    )
    sign = np.tile([1.0, -1.0, 1.0], len(pivots))
    covariance = np.linalg.inv(result.jac.T @ result.jac) * np.outer(sign, sign)
    return np.array(list(points(result.x).values())), covariance, result


def usual_places(station, taken, arm):
    """Residuals of the stations that were not taken, about their usual places.

    The half-widths are 5 in for the track bar about the axle, 2 in for the ends of a link alike,
    1 1/2 in for the ball about its arm's length, and 1 in for the near ball about the far one.
    """
    missing = {pivot for pivot in station if f"{pivot}.station" not in taken}
    frame, axle, rod_frame, ball, near = PIVOTS
    residual = []
    if {frame, axle} <= missing:
        residual.append((station[frame] + station[axle]) / 2 / (5 * INCH / np.sqrt(3)))
    if {frame, axle} & missing:
        residual.append((station[frame] - station[axle]) / (2 * INCH / np.sqrt(3)))
    if rod_frame in missing:
        residual.append((station[rod_frame] - station[ball]) / (2 * INCH / np.sqrt(3)))
    if ball in missing:
        residual.append((station[ball] - arm) / (1.5 * INCH / np.sqrt(3)))
    if near in missing:
        residual.append((station[near] - station[ball]) / (1 * INCH / np.sqrt(3)))
    return residual


def at_start(name, readings, arm):
    """The reading of a coordinate; the usual place of a station that was not taken."""
    usual = 0.0 if name.startswith("track_bar") else arm
    return next((reading.value for reading in readings if reading.name == name), usual)


@pytest.mark.parametrize("batch", range(10))
def test_pivots_and_covariance_agree(batch):
    rng = np.random.default_rng(1968 + batch)
    for i in range(20):
        layout = LAYOUTS[(batch + i) % 3]
        linkage = random_linkage(rng, layout)
        session = session_of(document_of(linkage, some_readings(rng, linkage)))
        adjustment = adjusted(session)
        u = {
            reading.name: standard_uncertainty(reading, session.instruments)
            for reading in session.readings
        }
        points, covariance, result = by_scipy(
            session.readings, u, layout, session.arm.sign * session.dimensions["steering.arm"].value
        )
        # The error of scipy's differences shows where a station is known by its usual place alone.
        apart = np.abs(adjustment.points - points).ravel()
        assert (apart < 1e-6 * (1 + np.sqrt(np.diag(covariance)))).all()
        scale = np.abs(covariance).max()
        np.testing.assert_allclose(adjustment.covariance, covariance, rtol=0, atol=1e-6 * scale)
        assert len(adjustment.sources) == len(result.fun)
        assert adjustment.redundancy == len(result.fun) - len(result.x)
        assert adjustment.chi_square == pytest.approx(np.sum(result.fun**2), abs=1e-8)


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
        adjustment = adjusted(session)
        u = {
            reading.name: standard_uncertainty(reading, session.instruments)
            for reading in session.readings
        }
        points, _, result = by_scipy(
            session.readings, u, layout, session.arm.sign * session.dimensions["steering.arm"].value
        )
        # The error of scipy's differences is visible, as the residuals are a hundred times larger.
        np.testing.assert_allclose(adjustment.points, points, rtol=0, atol=1e-4)
        assert adjustment.chi_square <= 2 * result.cost * (1 + 1e-9)
