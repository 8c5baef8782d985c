"""Uncertainty of the peaks against a brute force of many draws (JCGM 101:2008, 7).

The brute force draws every height, offset and station by itself. It evaluates the model at all 41
heaves of the working travel and takes the largest magnitude of each curve. The project draws
two thousand linkages from the pivots' covariance. It evaluates them at a few nodes, and only where
a curve has no single clear peak.
"""

import numpy as np
import pytest

from core.kinematics.linkage import Linkage
from core.kinematics.motion import motion_at
from core.readings.reading import standard_uncertainty
from core.verdict.curves import working_heaves
from core.verdict.model_doubt import model_uncertainty
from core.verdict.verdict import evaluate
from tests.geometries import document_of, parallel_pair, random_linkage, session_of, true_readings

MANY = 400_000
PORTION = 20_000
TAKEN = ("height", "offset", "station")

# Linkages near the limit, each with the method for the uncertainty of its steer and its toe.
CASES = {
    "one end of the travel": (
        parallel_pair(parallel_deg=1.6, slope_deg=6.0),
        ("monte carlo", "linear"),
    ),
    # Parallel links of unlike length: two humps of one size, one at either end of the travel.
    "two humps": (
        parallel_pair(slope_deg=2.0, run=700.0, run_ratio=0.57),
        ("monte carlo", "linear"),
    ),
    "inverted-y": (
        random_linkage(
            np.random.default_rng(483), "inverted-y", parallel=np.radians(0.6), same_side=True
        ),
        ("linear", "linear"),
    ),
}


@pytest.mark.slow
@pytest.mark.parametrize("name", CASES)
def test_probability_and_uncertainty_of_the_peaks(name):
    linkage, methods = CASES[name]
    read = {
        reading: value
        for reading, value in true_readings(linkage).items()
        if reading.rpartition(".")[2] in TAKEN or not reading.startswith(("track", "drag", "brace"))
    }
    # No reading is redundant, so each coordinate of a pivot is one reading and is drawn by itself.
    session = session_of(document_of(linkage, read))
    verdict = evaluate(session)
    assert verdict.adjustment.redundancy == 0

    rng = np.random.default_rng(101)
    heaves = working_heaves(session.limits)
    steer, toe = np.empty(MANY), np.empty(MANY)
    for start in range(0, MANY, PORTION):
        motion = motion_at(drawn(session, linkage, rng), heaves)
        steer[start : start + PORTION] = np.abs(motion.steer).max(axis=1)
        toe[start : start + PORTION] = np.abs(motion.toe_in_change).max(axis=1)

    assert (verdict.steer.method, verdict.toe.method) == methods
    for peak, brute, limit in (
        (verdict.steer, steer, session.limits.steer),
        (verdict.toe, toe, session.limits.toe_change),
    ):
        if not brute.any():  # the toe of a layout that cannot change it
            assert (peak.ruling.u, peak.ruling.p_within) == (0.0, 1.0)
            continue
        with_model = np.abs(brute + rng.standard_normal(MANY) * model_uncertainty(brute))
        assert peak.ruling.p_within == pytest.approx(np.mean(with_model <= limit), abs=0.01)
        assert peak.ruling.u == pytest.approx(with_model.std(), rel=0.02)


def drawn(session, linkage: Linkage, rng) -> Linkage:
    """PORTION linkages, each from readings of its own, with a further axis for the heaves."""

    def read(reading):
        u = standard_uncertainty(reading, session.instruments)
        return (reading.value + u * rng.standard_normal(PORTION))[:, None]

    def read_dimension(name):
        dimension = session.dimensions[name]
        return (dimension.value + dimension.u * rng.standard_normal(PORTION))[:, None]

    by_name = {reading.name: reading for reading in session.readings}

    def pivot(name):
        return np.stack(
            [
                read(by_name[f"{name}.station"]),
                -read(by_name[f"{name}.offset"]),
                read(by_name[f"{name}.height"]),
            ],
            axis=-1,
        )

    inverted = linkage.near_ball is not None
    return Linkage(
        layout=linkage.layout,
        track_bar_frame=pivot("track_bar.frame"),
        track_bar_axle=pivot("track_bar.axle"),
        drag_link_frame=pivot("drag_link.frame"),
        drag_link_axle=pivot("drag_link.axle"),
        arm=read_dimension("steering.arm"),
        arm_direction=session.arm,
        pitman_arm=linkage.pitman_arm,
        pitman_direction=session.pitman,
        ratio=linkage.ratio,
        far_side=linkage.far_side,
        hub_height=read_dimension("wheels.hub_height"),
        near_ball=pivot("tie_rod.near") if inverted else None,
        near_arm=read_dimension("tie_rod.near_arm") if inverted else 0.0,
        joint_from_far_ball=read_dimension("tie_rod.joint_from_far_ball") if inverted else 0.0,
    )
