"""Sketch of the point that is to be marked."""

import pytest

from core.kinematics.pivots import NEAR_BALL
from core.profiles.profile import load_profile
from core.readings.photograph import CONTACTS, HUBS, MARKS, OWN_POINTS, PLUMB
from wizard.locations import PROFILES
from wizard.views.mark_sketch import mark_sketch

PROFILE = load_profile("coil-crossover", [PROFILES])
LAYOUT = {"layout": {"steering": "inverted-y"}}


@pytest.mark.parametrize("point", [mark for mark in MARKS if mark not in OWN_POINTS])
def test_each_point_has_a_ring(point):
    assert len(mark_sketch(LAYOUT, PROFILE, point).ringed) == 1


def test_a_pivot_has_the_ring_at_its_place():
    sketch = mark_sketch(LAYOUT, PROFILE, NEAR_BALL)
    assert sketch.ringed == (sketch.pivots[NEAR_BALL],)


def test_a_contact_is_on_the_floor_under_its_hub_and_a_plumb_line_is_upright():
    def ring(point):
        return mark_sketch(LAYOUT, PROFILE, point).ringed[0]

    for hub, contact in zip(HUBS, CONTACTS, strict=True):
        assert ring(contact) == (ring(hub)[0], 0.0)
    top, bottom = map(ring, PLUMB)
    assert top[0] == bottom[0]
    assert top[1] > bottom[1]


def test_a_point_of_your_own_has_no_sketch():
    assert mark_sketch(LAYOUT, PROFILE, OWN_POINTS[0]) is None
