"""The combinations of a set of corrections, as if every reading were exact."""

import numpy as np
import pytest

from core.fix.combinations import promising_combinations
from core.fix.moves import CorrectionSet, correction_sets, with_moves
from core.kinematics.ball_path import effective_angle
from core.kinematics.raising import raised
from core.profiles.corrections import Correction
from core.verdict.curves import peak_values
from core.verdict.rules import slopes
from tests.geometries import INCH, parallel_pair
from tests.plans import COARSE, verdict_on

CROSSED = raised(parallel_pair(), "drag_link.frame", 3 * INCH)
"""Parallel links whose pitman ball was put 3 in too high."""

DROP = Correction("drop", "drag_link.frame", tuple(-INCH * rise for rise in (2, 2.5, 3, 3.5)))
BAR_UP = Correction("bar up", "track_bar.axle", tuple(INCH * rise for rise in (0.25, 0.5, 1, 2)))


@pytest.fixture(scope="module")
def limits():
    return verdict_on(parallel_pair()).session.limits


def set_of(*corrections):
    """The set of exactly these corrections."""
    (correction_set,) = (
        each for each in correction_sets(corrections) if each.corrections == corrections
    )
    return correction_set


def promising(correction_set, limits, counts=None):
    """The promising combinations; the sizes of their portions are added to `counts`."""
    report = ([] if counts is None else counts).append
    return promising_combinations(CROSSED, limits, correction_set, report)


def test_each_combination_has_the_values_of_its_moved_linkage(limits):
    combinations = promising(set_of(DROP, BAR_UP), limits)
    assert len(combinations.effective) > 1
    for row in range(len(combinations.effective)):
        moved = with_moves(CROSSED, combinations.correction_set.moves(row))
        steer, toe = peak_values(moved, limits)
        assert combinations.effective[row] == pytest.approx(float(effective_angle(moved)))
        assert combinations.flatness[row] == pytest.approx(np.abs(slopes(moved)).sum(), abs=1e-6)
        shares = (
            abs(effective_angle(moved)) / limits.parallel,
            steer / limits.steer,
            toe / limits.toe_change,
        )
        assert combinations.excess[row] == pytest.approx(max(shares))


def test_promising_combinations_are_within_and_start_with_the_smallest_peaks(limits):
    combinations = promising(set_of(DROP, BAR_UP), limits)
    assert (combinations.excess <= 1).all()
    rises = np.abs(combinations.correction_set.rises).sum(axis=1)
    keys = (combinations.peak_step, rises.round(6), combinations.flatness)
    order = list(zip(*keys, strict=True))
    assert order == sorted(order)


def test_with_none_within_the_nearest_alone_is_promising(limits):
    combinations = promising(set_of(COARSE[0]), limits)
    np.testing.assert_array_equal(combinations.correction_set.rises, [[1 * INCH]])
    assert combinations.excess[0] > 1


def test_a_combination_during_which_a_link_binds_has_an_infinite_excess(limits):
    correction_set = CorrectionSet((COARSE[3],), np.array([[120 * INCH]]))
    assert promising(correction_set, limits).excess == [np.inf]


def test_portions_give_the_same_combinations_and_report_their_progress(limits, monkeypatch):
    correction_set = set_of(DROP, BAR_UP)
    expected, counts = promising(correction_set, limits), []
    monkeypatch.setattr("core.fix.combinations.PORTION", 5)
    portions = promising(correction_set, limits, counts)
    np.testing.assert_array_equal(portions.correction_set.rises, expected.correction_set.rises)
    np.testing.assert_allclose(portions.excess, expected.excess)
    np.testing.assert_allclose(portions.curves.steer, expected.curves.steer, atol=1e-12)
    assert counts == [5, 5, 5, 1]
