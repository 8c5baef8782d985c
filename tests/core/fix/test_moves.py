"""Combinations of corrections: every one that can be made, each once."""

from itertools import combinations, product

import numpy as np
import pytest

from core.fix.moves import correction_sets, excludes, moved_pivots, with_corrections
from core.profiles.corrections import Correction
from tests.geometries import parallel_pair
from tests.plans import COARSE


def test_every_combination_of_up_to_three_is_there_once():
    expected = set()
    for count in (1, 2, 3):
        for chosen in combinations(COARSE, count):
            names = [one.name for one in chosen]
            if "less drop" in names and "more drop" in names:
                continue
            for rises in product(*(one.rises for one in chosen)):
                expected.add(tuple(zip(names, rises, strict=True)))
    found = [
        tuple((move.correction.name, move.rise) for move in one.moves(row))
        for one in correction_sets(COARSE)
        for row in range(len(one.rises))
    ]
    assert len(found) == len(set(found))
    assert set(found) == expected


def test_smaller_sets_come_first():
    sizes = [len(one.corrections) for one in correction_sets(COARSE)]
    assert sizes == sorted(sizes)
    assert sizes[-1] == 3


@pytest.mark.parametrize("of_the_first", [True, False])
def test_either_of_two_may_exclude_the_other(of_the_first):
    one = Correction("one", "track_bar.axle", (1.0,), not_with=("other",) if of_the_first else ())
    other = Correction("other", "track_bar.axle", (2.0,), not_with=() if of_the_first else ("one",))
    assert excludes(one, other)
    assert [len(found.corrections) for found in correction_sets([one, other])] == [1, 1]


def test_nothing_offered_makes_no_combination():
    assert list(correction_sets([])) == []


def test_a_rise_moves_its_pivot_and_nothing_else():
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
    both = with_corrections(linkage, [COARSE[0], COARSE[5]], np.array([10.0, 5.0]))
    assert both.drag_link_frame[2] == linkage.drag_link_frame[2] + 15.0


def test_moved_pivots_are_named_once():
    assert moved_pivots(COARSE) == (
        *("track_bar.frame", "track_bar.axle", "drag_link.frame", "drag_link.axle"),
    )
