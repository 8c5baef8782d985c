"""Estimated probabilities of the combinations of a set."""

from unittest.mock import Mock

import pytest

from core.fix.chances import chances_of, within_limits
from core.fix.combinations import promising_combinations
from core.fix.estimate import DRAWS, FINALISTS, estimated_candidates
from core.fix.moves import correction_sets
from core.kinematics.raising import raised
from core.profiles.corrections import Correction
from core.verdict.peak import SEED
from tests.geometries import INCH, LAYOUTS, parallel_pair
from tests.plans import COARSE, vehicle, verdict_on

CROSSED = raised(parallel_pair(), "drag_link.frame", 3 * INCH)
"""Parallel links whose pitman ball was put 3 in too high."""

DROP = Correction("drop", "drag_link.frame", tuple(-INCH * rise for rise in (2, 2.5, 3, 3.5)))
BAR_UP = Correction("bar up", "track_bar.axle", tuple(INCH * rise for rise in (0.25, 0.5, 1, 2)))


def candidates_of(verdict, corrections, place=0):
    """The estimated candidates of the set of all these corrections."""
    *_, correction_set = correction_sets(corrections)
    assert len(correction_set.corrections) == len(corrections)
    linkage, limits = verdict.measured.linkage, verdict.session.limits
    combinations = promising_combinations(linkage, limits, correction_set, Mock())
    drawn = verdict.measured.draw(DRAWS, SEED)
    return estimated_candidates(combinations, drawn, limits, place)


@pytest.mark.parametrize("layout", LAYOUTS)
def test_an_estimate_is_close_to_the_full_draw(layout):
    verdict = verdict_on(vehicle(3, layout))
    for correction in COARSE:
        for candidate in candidates_of(verdict, [correction]):
            moves, limits = candidate.moves, verdict.session.limits
            expected = chances_of(verdict.measured, moves, limits).together
            # 4 standard deviations of a share of 300 draws are at most 0.12
            assert candidate.p_true == pytest.approx(expected, abs=0.12)


def test_candidates_are_few_and_best_first():
    candidates = candidates_of(verdict_on(CROSSED), [DROP, BAR_UP], place=7)
    assert 1 < len(candidates) <= FINALISTS
    assert candidates == sorted(candidates, key=lambda candidate: candidate.order)
    assert {candidate.place for candidate in candidates} == {7}
    assert all(candidate.excess <= 1 for candidate in candidates)


def test_combinations_after_enough_sure_candidates_are_left_out(monkeypatch):
    verdict = verdict_on(CROSSED)
    expected = candidates_of(verdict, [DROP, BAR_UP])[0]
    assert expected.is_sure
    estimates = Mock(side_effect=within_limits)
    monkeypatch.setattr("core.fix.estimate.within_limits", estimates)
    monkeypatch.setattr("core.fix.estimate.PORTION", 1)
    monkeypatch.setattr("core.fix.estimate.FINALISTS", 1)
    assert candidates_of(verdict, [DROP, BAR_UP]) == [expected]
    assert estimates.call_count < len(DROP.rises)
