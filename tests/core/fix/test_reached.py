"""Planned moves beside the moves that the next session measured."""

import numpy as np
import pytest

from core.fix.plan_record import FiledMove, FiledPlan
from core.fix.reached import reached_moves
from core.kinematics.raising import raised
from tests.geometries import INCH, parallel_pair
from tests.plans import verdict_on

CROSSED = raised(parallel_pair(), "drag_link.frame", 3 * INCH)
PLANNED = FiledPlan(
    (FiledMove("a", "drag_link.frame", -3 * INCH), FiledMove("b", "track_bar.axle", INCH)), {}
)


@pytest.fixture(scope="module")
def before():
    return verdict_on(CROSSED, draws=0)


@pytest.mark.parametrize(
    ("rise", "fits", "fell_short"),
    [(-3.0, True, False), (-2.0, False, True), (-4.0, False, False), (0.0, False, True)],
)
def test_a_move_fits_falls_short_or_goes_too_far(before, rise, fits, fell_short):
    linkage = raised(raised(CROSSED, "drag_link.frame", rise * INCH), "track_bar.axle", INCH)
    moves = reached_moves(PLANNED, before, verdict_on(linkage, draws=0))
    assert [move.pivot for move in moves] == ["track_bar.axle", "drag_link.frame"]
    bar, link = moves
    assert bar.fits
    assert link.planned == pytest.approx(-3 * INCH)
    assert link.reached == pytest.approx(rise * INCH, abs=0.1)
    assert (link.fits, link.fell_short) == (fits, fell_short)


def test_the_ride_height_moves_both_frame_ends(before):
    moved = raised(CROSSED, "ride_height", 2 * INCH)
    planned = FiledPlan((FiledMove("lift", "ride_height", 2 * INCH),), {})
    moves = reached_moves(planned, before, verdict_on(moved, draws=0))
    assert [move.pivot for move in moves] == ["track_bar.frame", "drag_link.frame"]
    assert all(move.fits for move in moves)


def test_the_uncertainty_of_a_move_is_that_of_both_heights(before):
    after = verdict_on(raised(CROSSED, "drag_link.frame", -3 * INCH), draws=0)
    move = reached_moves(PLANNED, before, after)[0]
    row = 3 * before.adjustment.pivots.index(move.pivot) + 2
    u_before, u_after = (
        np.sqrt(verdict.adjustment.covariance[row, row]) for verdict in (before, after)
    )
    assert move.u == pytest.approx(np.hypot(u_before, u_after))
