"""Names of the pivots, the layouts and the sides."""

import pytest

from core.kinematics.pivots import NEAR_BALL, PIVOTS, Direction, Layout, pivots_of


@pytest.mark.parametrize("layout", Layout)
def test_every_layout_has_the_ends_of_both_links(layout):
    assert pivots_of(layout)[:4] == PIVOTS


def test_only_the_inverted_y_has_a_near_ball():
    assert [layout for layout in Layout if NEAR_BALL in pivots_of(layout)] == [Layout.INVERTED_Y]


def test_a_layout_is_read_by_its_name_in_a_record():
    assert Layout("inverted-y") is Layout.INVERTED_Y
    assert pivots_of("inverted-y") == pivots_of(Layout.INVERTED_Y)
    with pytest.raises(ValueError, match="not a valid Layout"):
        Layout("inverted y")


def test_a_side_has_the_sign_of_its_axis():
    """ISO 8855:2011: x is positive ahead."""
    assert (Direction("ahead").sign, Direction("behind").sign) == (1, -1)
