"""Corrections: which of them fit a vehicle."""

import pytest

from core.documents.entries import EntryError
from core.kinematics.pivots import GUIDE_PIVOTS, GuideKind, Layout
from core.profiles.conversions import fitting
from core.profiles.corrections import MOVABLE, Correction

CORRECTIONS = tuple(Correction(pivot, pivot, (10.0,)) for pivot in MOVABLE)
LINKS = {"track_bar.frame", "track_bar.axle", "drag_link.frame", "drag_link.axle", "ride_height"}
ABOVE = Correction("above", "drag_link.axle", (57.0,), needs_ball="below")
BELOW = Correction("below", "drag_link.axle", (-57.0,), needs_ball="above")


def names(corrections):
    return {correction.name for correction in corrections}


@pytest.mark.parametrize("guide", GuideKind)
def test_pivots_of_a_guide_move_only_where_the_vehicle_has_that_guide(guide):
    fits = {
        correction.pivot
        for correction in CORRECTIONS
        if correction.applies_to(guide, True, Layout.KNUCKLE)
    }
    assert fits == LINKS | set(GUIDE_PIVOTS[guide])


def test_a_track_bar_moves_only_where_it_decides_how_the_vehicle_steers():
    bar = Correction("bar", "track_bar.axle", (10.0,))
    assert bar.applies_to(GuideKind.LEAF, True, Layout.TIE_ROD)
    assert not bar.applies_to(GuideKind.LEAF, False, Layout.TIE_ROD)
    assert not bar.applies_to(GuideKind.LEAF, True, Layout.FORE_AFT)


def test_a_record_that_says_only_its_layout_has_a_track_bar_and_an_unmeasured_guide():
    assert names(fitting(CORRECTIONS, {"layout": {"steering": "knuckle"}})) == LINKS


def test_leaf_springs_without_a_track_bar():
    layout = {"steering": "knuckle", "guide": "leaf", "track_bar": False}
    assert names(fitting(CORRECTIONS, {"layout": layout})) == {
        *("drag_link.frame", "drag_link.axle", "ride_height"),
        *("guide.eye", "guide.seat"),
    }


@pytest.mark.parametrize(
    ("ball", "fits"), [("below", {"above"}), ("above", {"below"}), (None, {"above", "below"})]
)
def test_a_ball_goes_to_the_side_where_it_is_not(ball, fits):
    layout = {"steering": "knuckle"} | ({"ball": ball} if ball else {})
    assert names(fitting((ABOVE, BELOW), {"layout": layout})) == fits


@pytest.mark.parametrize(
    ("key", "value"), [("guide", "arms"), ("track_bar", "no"), ("ball", "beside")]
)
def test_a_faulty_answer_is_refused_with_its_place(key, value):
    with pytest.raises(EntryError, match=rf"^\[layout\] {key}: "):
        fitting(CORRECTIONS, {"layout": {"steering": "knuckle", key: value}})
