"""Probabilities that the deciding rules are within their limits after some moves."""

import numpy as np
import pytest

from core.fix.chances import (
    DRAWS,
    SETTING,
    chances_among,
    chances_of,
    with_setting,
    within_limits,
)
from core.fix.moves import Move
from core.kinematics.raising import raised
from core.verdict.peak import SEED
from tests.geometries import INCH, parallel_pair
from tests.plans import COARSE, verdict_on

LESS_DROP, MORE_DROP, _, _, _, RIDE_HEIGHT = COARSE


@pytest.fixture(scope="module")
def verdict():
    """A verdict on parallel links whose pitman ball was put 3 in too high."""
    return verdict_on(raised(parallel_pair(), "drag_link.frame", 3 * INCH))


@pytest.fixture(scope="module")
def drawn(verdict):
    return verdict.measured.draw(200, SEED)


def heights(linkage, pivot):
    return linkage.pivot(pivot)[:, 2]


@pytest.mark.parametrize("rise", [-1.5, -2.0, -2.5])
def test_all_rules_together_are_no_likelier_than_each(verdict, rise):
    chances = chances_of(verdict.measured, (Move(MORE_DROP, rise * INCH),), verdict.session.limits)
    assert chances.together <= min(chances.effective, chances.steer, chances.toe)
    assert chances.toe == 1.0  # this layout cannot change the toe


def test_the_same_moves_always_have_the_same_chances(verdict):
    moves = (Move(MORE_DROP, -2 * INCH),)
    drawn = verdict.measured.draw(DRAWS, SEED)
    expected = chances_of(verdict.measured, moves, verdict.session.limits)
    assert chances_of(verdict.measured, moves, verdict.session.limits) == expected
    assert chances_among(drawn, moves, verdict.session.limits) == expected


def test_a_larger_setting_error_lowers_a_high_probability(verdict, monkeypatch):
    moves = (Move(MORE_DROP, -2.5 * INCH),)
    monkeypatch.setattr("core.fix.chances.SETTING", 1e-9)
    exact = chances_of(verdict.measured, moves, verdict.session.limits).together
    monkeypatch.setattr("core.fix.chances.SETTING", 40.0)
    assert chances_of(verdict.measured, moves, verdict.session.limits).together < exact - 0.2


def test_a_setting_error_is_at_most_its_half_width(drawn):
    moved = with_setting(drawn, [MORE_DROP])
    error = heights(moved, "drag_link.frame") - heights(drawn, "drag_link.frame")
    assert 0.9 * SETTING < np.abs(error).max() <= SETTING
    assert error.std() == pytest.approx(SETTING / np.sqrt(3), rel=0.1)
    for pivot in ("track_bar.frame", "track_bar.axle", "drag_link.axle"):
        np.testing.assert_array_equal(heights(moved, pivot), heights(drawn, pivot))


def test_two_corrections_of_one_pivot_have_one_setting_error(drawn):
    once, twice = (with_setting(drawn, [MORE_DROP] * count) for count in (1, 2))
    np.testing.assert_array_equal(
        heights(once, "drag_link.frame"), heights(twice, "drag_link.frame")
    )


def test_the_ride_height_has_one_setting_error_for_both_frame_ends(drawn):
    moved = with_setting(drawn, [RIDE_HEIGHT])
    errors = [
        heights(moved, pivot) - heights(drawn, pivot)
        for pivot in ("track_bar.frame", "drag_link.frame")
    ]
    np.testing.assert_allclose(errors[0], errors[1], atol=1e-9)


def test_a_rule_is_within_up_to_its_limit_and_not_where_a_link_binds(verdict):
    limits = verdict.session.limits
    parallel = np.array([-limits.parallel, 1.01 * limits.parallel, 0.0])
    steer = np.array([limits.steer, 0.0, np.nan])
    toe = np.array([0.0, 1.01 * limits.toe_change, np.nan])
    expected = [[True, False, True], [True, True, False], [True, False, False]]
    np.testing.assert_array_equal(within_limits(parallel, (steer, toe), limits), expected)
