"""Rows of a direct check as heave and steer."""

from dataclasses import replace

import numpy as np
import pytest

from core.readings.direct import DirectCheck, DirectRow
from core.readings.reading import Instruments
from core.text.quantity import INCH
from core.verdict.direct_rows import points_of
from tests.direct_rows import AT, BOARD, RIDE, board_check

TAPE = INCH / 16
INSTRUMENTS = Instruments(TAPE, INCH / 8, INCH / 16, np.radians(0.5), np.radians(0.5))
U_ROW = np.sqrt(2) * TAPE / np.sqrt(12) / BOARD
"""Standard uncertainty of the angle of one row of a board, rad."""


def steer(heave):
    return np.radians(0.2) * heave / INCH


@pytest.mark.parametrize("line", ["left", "right"])
def test_left_is_positive_on_either_side_of_the_line(line):
    points = points_of(board_check(steer, line=line), INSTRUMENTS)
    assert points.heave == pytest.approx(AT)
    assert points.steer == pytest.approx(steer(AT))


def test_a_nearer_hub_is_bump():
    rows = tuple(
        DirectRow("left", (height,), angle=(angle,))
        for height, angle in ((RIDE, 0.1), (RIDE - 20, 0.12), (RIDE, 0.1))
    )
    points = points_of(DirectCheck("turn-plate", None, "right", rows), INSTRUMENTS)
    assert points.heave == pytest.approx([0, 20, 0])
    assert points.steer == pytest.approx([0, 0.02, 0])
    assert np.sqrt(points.covariance[1, 1]) == pytest.approx(
        np.radians(0.25) / np.sqrt(3) * np.sqrt(1.5)
    )


def test_a_laser_has_the_movement_over_the_distance():
    rows = tuple(
        DirectRow("right", (height,), mark=(mark,))
        for height, mark in ((RIDE, 500.0), (RIDE + 30, 520.0), (RIDE, 500.0))
    )
    check = DirectCheck("laser", 3000.0, "right", rows)
    to_left = points_of(check, INSTRUMENTS).steer[1]
    # A line on the right: the mark wanders away from it, so the wheel turns to the left.
    assert to_left == pytest.approx(np.arctan(520 / 3000) - np.arctan(500 / 3000))
    assert points_of(replace(check, line="left"), INSTRUMENTS).steer[1] == pytest.approx(-to_left)


def test_the_rows_share_their_zero():
    covariance = points_of(board_check(steer, AT), INSTRUMENTS).covariance
    assert np.sqrt(covariance[1, 1]) == pytest.approx(U_ROW * np.sqrt(1.5), rel=2e-3)
    assert covariance[1, 2] == pytest.approx(U_ROW**2 / 2, rel=2e-2)
    assert covariance[0, 0] + covariance[0, -1] == pytest.approx(0.0, abs=1e-12)


def test_both_wheels_at_a_height_give_their_mean():
    alone = points_of(board_check(steer), INSTRUMENTS)
    both = points_of(board_check(steer, sides=("left", "right")), INSTRUMENTS)
    assert len(both.steer) == len(AT)
    assert (both.left_share == 0.5).all()
    assert both.steer == pytest.approx(alone.steer)
    assert both.covariance == pytest.approx(alone.covariance / 2, rel=1e-6)


def test_repeats_take_doubt_away_and_their_scatter_counts():
    check = board_check(steer)

    def u_with(front):
        rows = (*check.rows[:1], replace(check.rows[1], front=front), *check.rows[2:])
        return np.sqrt(points_of(replace(check, rows=rows), INSTRUMENTS).covariance[1, 1])

    once = check.rows[1].front
    assert u_with(once * 4) < u_with(once) < u_with((once[0] - 9, once[0] + 9))


def test_a_height_counts_by_the_gradient():
    check = board_check(steer)
    gradient = np.radians(0.2) / INCH
    flat = points_of(check, INSTRUMENTS).covariance
    steep = points_of(check, INSTRUMENTS, lambda heave: np.full_like(heave, gradient)).covariance
    assert steep[1, 1] - flat[1, 1] == pytest.approx(1.5 * (gradient * TAPE) ** 2 / 12)


def test_a_last_row_off_ride_height_is_told():
    back = points_of(board_check(steer), INSTRUMENTS)
    assert back.has_returned
    off = points_of(board_check(steer, np.append(AT[:-1], 8.0)), INSTRUMENTS)
    assert not off.has_returned
    assert off.closing == pytest.approx(8.0)
