"""Moves of pivots, and the sets of corrections that a shop can combine."""

from itertools import combinations, product

import numpy as np
import pytest

from core.fix.moves import (
    Move,
    correction_sets,
    excludes,
    moved_pivots,
    with_corrections,
    with_moves,
)
from core.kinematics.pivots import PIVOTS
from core.profiles.corrections import Correction
from tests.geometries import parallel_pair
from tests.plans import COARSE


def test_every_combination_of_up_to_three_corrections_appears_once():
    expected = set()
    for count in (1, 2, 3):
        for chosen in combinations(COARSE, count):
            names = [correction.name for correction in chosen]
            if "less drop" in names and "more drop" in names:
                continue
            for rises in product(*(correction.rises for correction in chosen)):
                expected.add(tuple(zip(names, rises, strict=True)))
    produced = [
        tuple((move.correction.name, move.rise) for move in correction_set.moves(row))
        for correction_set in correction_sets(COARSE)
        for row in range(len(correction_set.rises))
    ]
    assert len(produced) == len(set(produced))
    assert set(produced) == expected


def test_smaller_sets_come_first():
    sizes = [len(correction_set.corrections) for correction_set in correction_sets(COARSE)]
    assert sizes == sorted(sizes)
    assert sizes[-1] == 3


@pytest.mark.parametrize("first_excludes", [True, False])
def test_either_of_two_corrections_may_exclude_the_other(first_excludes):
    not_with = [("second",), ()] if first_excludes else [(), ("first",)]
    first = Correction("first", "track_bar.axle", (1.0,), not_with=not_with[0])
    second = Correction("second", "track_bar.axle", (2.0,), not_with=not_with[1])
    assert excludes(first, second)
    sizes = [len(correction_set.corrections) for correction_set in correction_sets([first, second])]
    assert sizes == [1, 1]


def test_without_corrections_there_are_no_sets():
    assert list(correction_sets([])) == []


def test_a_rise_moves_its_pivot_alone():
    linkage = parallel_pair()
    raised = with_corrections(linkage, [COARSE[2]], np.array([25.4]))
    assert raised.track_bar_axle - linkage.track_bar_axle == pytest.approx([0, 0, 25.4])
    for name in ("track_bar_frame", "drag_link_frame", "drag_link_axle"):
        assert getattr(raised, name) == pytest.approx(getattr(linkage, name))


def test_the_ride_height_moves_both_frame_ends():
    linkage = parallel_pair()
    raised = with_corrections(linkage, [COARSE[5]], np.array([-50.8]))
    for name in ("track_bar_frame", "drag_link_frame"):
        assert getattr(raised, name)[2] == getattr(linkage, name)[2] - 50.8
    for name in ("track_bar_axle", "drag_link_axle"):
        assert getattr(raised, name)[2] == getattr(linkage, name)[2]
    assert moved_pivots([COARSE[5]]) == ("track_bar.frame", "drag_link.frame")


def test_corrections_of_one_pivot_add_up():
    linkage = parallel_pair()
    moved = with_moves(linkage, [Move(COARSE[0], 10.0), Move(COARSE[5], 5.0)])
    assert moved.drag_link_frame[2] == linkage.drag_link_frame[2] + 15.0


def test_one_row_of_rises_moves_one_linkage():
    linkage = parallel_pair()
    rises = np.array([[25.4, 0.0], [0.0, 50.8]])
    moved = with_corrections(linkage, [COARSE[0], COARSE[2]], rises)
    assert moved.drag_link_frame[:, 2] - linkage.drag_link_frame[2] == pytest.approx([25.4, 0])
    assert moved.track_bar_axle[:, 2] - linkage.track_bar_axle[2] == pytest.approx([0, 50.8])


def test_each_moved_pivot_is_named_once():
    assert moved_pivots(COARSE) == PIVOTS
