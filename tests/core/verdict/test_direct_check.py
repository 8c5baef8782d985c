"""The direct check beside the pivots: agreement, the combination, and the cubic alone."""

from dataclasses import replace

import numpy as np
import pytest
import statsmodels.api as sm
from scipy.optimize import curve_fit
from scipy.stats import chi2

from core.kinematics.motion import motion_at
from core.kinematics.raising import raised
from core.text.quantity import INCH
from core.verdict.curves import working_heaves
from core.verdict.direct_check import DecidedBy, direct_result
from core.verdict.direct_curves import gradient_at, measured_curve, predicted
from core.verdict.direct_rows import points_of
from core.verdict.direct_shape import LookAt
from core.verdict.peak import peaks_of
from core.verdict.verdict import Overall, evaluate
from tests.direct_rows import AT, GOING, board_check, steer_of_left
from tests.geometries import document_of, parallel_pair, session_of, true_readings
from tests.measured import measure_session

LINKAGE = raised(parallel_pair(), "drag_link.frame", INCH / 2)
DRAWS = 2_000


def errors(seed, u=0.04):
    """Drawn errors of the rows, rad."""
    return np.radians(np.random.default_rng(seed).normal(0.0, u, len(AT)))


def checked(steer, **options):
    """Session, measured linkage and result of a vehicle with a direct check of some steer."""
    session = session_of(document_of(LINKAGE, true_readings(LINKAGE)))
    session = replace(session, direct=board_check(steer, **options))
    measured = measure_session(session).measured
    alone, _ = peaks_of(measured, session.limits, DRAWS)
    return session, measured, direct_result(session, measured, alone, DRAWS)


def points_in(session, measured):
    return points_of(
        session.direct, session.instruments, lambda heave: gradient_at(measured.linkage, heave)
    )


def true_steer(heave):
    return steer_of_left(LINKAGE)(heave)


def test_a_session_without_a_direct_check_has_no_result():
    session, measured, result = checked(true_steer)
    assert direct_result(replace(session, direct=None), measured, result.peak, 0) is None


def test_true_rows_agree_and_take_doubt_away():
    _, _, result = checked(true_steer)
    assert result.agrees
    assert result.decided_by == DecidedBy.BOTH
    assert result.chi_square == pytest.approx(0.0, abs=1e-2)
    assert result.degrees_of_freedom == len(AT) - 1  # the zero comes from the rows themselves
    assert result.u_peak_deg < np.degrees(result.by_pivots.ruling.u)
    assert result.peak_deg == pytest.approx(np.degrees(result.by_pivots.ruling.value), abs=0.01)
    assert result.look_at == ()


@pytest.mark.parametrize("seed", range(20))
def test_the_combination_agrees_with_statsmodels_gls(seed):
    """Sources as unknowns, each observed as 0 +- 1, and the rows as further observations."""
    session, measured, result = checked(true_steer(AT) + errors(seed))
    if not result.agrees:
        pytest.skip("these errors disagree")
    points = points_in(session, measured)
    limits = session.limits
    at_rows = predicted(measured, points.heave, points.left_share, limits)
    heaves = working_heaves(limits)
    at_heaves = predicted(measured, heaves, np.full(len(heaves), 0.5), limits)
    count = at_rows.influence.shape[1]
    rows = slice(0, -1)  # the last row says nothing of its own
    difference = (points.steer - at_rows.steer)[rows]
    design = np.vstack([np.eye(count), at_rows.influence[rows]])
    covariance = np.zeros((len(design), len(design)))
    covariance[:count, :count] = np.eye(count)
    covariance[count:, count:] = points.covariance[rows, rows]
    fit = sm.GLS(np.append(np.zeros(count), difference), design, sigma=covariance).fit()
    curve = at_heaves.steer + at_heaves.influence @ fit.params
    spread = at_heaves.influence @ fit.normalized_cov_params @ at_heaves.influence.T
    assert result.curve == pytest.approx(curve, abs=1e-6)
    if result.peak.method == "linear":
        place = np.argmax(np.abs(curve))
        assert result.u_peak_deg == pytest.approx(np.degrees(np.sqrt(spread[place, place])), 1e-3)


@pytest.mark.parametrize("seed", range(20))
def test_the_doubt_is_never_larger_than_either_alone(seed):
    session, measured, result = checked(true_steer(AT) + errors(seed))
    if not result.agrees:
        pytest.skip("these errors disagree")
    _, covariance = measured_curve(points_in(session, measured), working_heaves(session.limits))
    alone = np.degrees(np.sqrt(np.diag(covariance))[[0, -1]].max())
    assert result.u_peak_deg <= np.degrees(result.by_pivots.ruling.u) * 1.001
    assert result.u_peak_deg <= alone * 1.001


@pytest.mark.parametrize("seed", range(20))
def test_the_probability_is_that_of_scipy(seed):
    _, _, result = checked(true_steer(AT) + errors(seed, 0.06))
    assert result.p == pytest.approx(chi2.sf(result.chi_square, result.degrees_of_freedom))
    assert result.agrees == (result.p >= 0.05)


def disagreeing(heave):
    """The vehicle's own steer with more of it than its pivots say."""
    return true_steer(heave) + np.radians(0.3) * heave / INCH


@pytest.mark.parametrize("seed", range(20))
def test_the_cubic_agrees_with_scipy_curve_fit(seed):
    session, measured, result = checked(disagreeing(AT) + errors(seed, 0.08))
    assert not result.agrees
    assert result.decided_by == DecidedBy.DIRECT
    points = points_in(session, measured)
    rows = slice(0, -1)

    def cubic(heave, first, second, third):
        part = heave / (3 * INCH)
        return first * part + second * part**2 + third * part**3

    sigma = points.covariance[rows, rows]
    terms, covariance = curve_fit(
        cubic, points.heave[rows], points.steer[rows], sigma=sigma, absolute_sigma=True
    )
    heaves = working_heaves(session.limits)
    fitted = cubic(heaves, *terms)
    residual = points.steer[rows] - cubic(points.heave[rows], *terms)
    scatter = residual @ np.linalg.solve(sigma, residual) / (len(residual) - 3)
    place = np.argmax(np.abs(fitted))
    part = heaves[place] / (3 * INCH)
    powers = np.array([part, part**2, part**3])
    assert result.curve == pytest.approx(fitted, abs=1e-7)
    assert result.peak_deg == pytest.approx(np.degrees(np.abs(fitted).max()))
    if result.peak.method == "linear":
        u = np.sqrt(powers @ covariance @ powers * max(scatter, 1.0))
        assert result.u_peak_deg == pytest.approx(np.degrees(u), rel=1e-4)


class TestWhereToLook:
    def test_growing_one_way_in_bump_and_the_other_in_droop(self):
        assert checked(disagreeing)[2].look_at == (LookAt.SLOPE,)

    def test_alike_in_bump_and_in_droop(self):
        _, _, result = checked(lambda z: true_steer(z) + np.radians(0.1) * (z / INCH) ** 2)
        assert result.look_at == (LookAt.ARC,)

    def test_a_loop_is_lash_with_its_width(self):
        heave = np.array([0, 1, 2, 3, 2, 1, -1, -2, -3, -2, -1, 0]) * INCH
        going = ("", *("up",) * 3, *("down",) * 5, *("up",) * 2, "")
        step = np.radians(0.5) * np.array(
            [{"up": 0.5, "down": -0.5, "": 0.0}[way] for way in going]
        )
        _, measured, result = checked(true_steer(heave) + step, heave=heave, going=going)
        assert result.look_at[0] == LookAt.LASH
        assert result.lash_deg == pytest.approx(0.5, abs=0.02)
        linkage = measured.linkage
        assert result.lash_wheel_deg == pytest.approx(
            result.lash_deg * linkage.ratio * linkage.arm / linkage.pitman_arm
        )

    def test_without_both_ways_there_is_no_loop(self):
        assert checked(true_steer)[2].lash_deg is None

    def test_no_loop_is_told_where_the_ways_agree(self):
        _, _, result = checked(true_steer, going=GOING)
        assert result.lash_deg is None or result.lash_deg < 2 * result.u_lash_deg
        assert LookAt.LASH not in result.look_at

    def test_beyond_some_height(self):
        def touching(heave):
            return true_steer(heave) + np.radians(1.0) * np.maximum(heave / INCH - 2.0, 0.0)

        _, _, result = checked(touching)
        assert result.look_at == (LookAt.BINDING,)


def test_one_wheel_is_compared_with_that_wheel():
    _, _, result = checked(true_steer)
    assert result.computed_deg == pytest.approx(np.degrees(true_steer(AT)), abs=1e-6)
    assert result.steer_deg == pytest.approx(np.degrees(true_steer(AT)), abs=1e-6)


def test_heights_that_the_links_do_not_reach_disagree():
    far = np.array([0.0, 1.0, -1.0, 40.0, 0.0]) * INCH
    assert np.isnan(motion_at(LINKAGE, far).steer).any()
    _, _, result = checked(np.zeros(len(far)), heave=far)
    assert not result.agrees
    assert LookAt.BINDING in result.look_at
    assert np.isfinite(result.peak_deg)


def test_two_heights_are_enough_for_a_line():
    heave = np.array([0.0, 2.0, 0.0]) * INCH
    _, _, result = checked(disagreeing(heave), heave=heave)
    assert not result.agrees
    assert result.peak_deg == pytest.approx(np.degrees(np.abs(disagreeing(heave)).max()), rel=1e-3)


def test_no_reading_of_the_pivots_is_advised_where_the_measured_steer_decides():
    session, _, _ = checked(disagreeing)
    limits = replace(session.limits, steer=np.radians(0.338))
    verdict = evaluate(replace(session, limits=limits), DRAWS)
    assert verdict.direct.decided_by == DecidedBy.DIRECT
    assert verdict.geometry == Overall.TOO_CLOSE
    assert verdict.advice is None
