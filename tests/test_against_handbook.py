"""Arc of the track bar checked against the segments of circles in Machinery's Handbook.

The axle end of a flat track bar of length r moves up or down by half the chord c. The bar then has
half the centre angle a, and its axle end moves in sideways by the height of the segment h:
h = r (1 - cos(a/2)), c = 2 r sin(a/2). The table gives both for r = 1 to five places.
"""

import numpy as np
import pytest

from core.kinematics.motion import motion_at
from tests.geometries import parallel_pair

# centre angle in degrees, height of segment h, chord c, for a radius of 1
SEGMENTS = [
    (20, 0.01519, 0.34730),
    (30, 0.03407, 0.51764),
    (40, 0.06031, 0.68404),
    (60, 0.13397, 1.00000),
]
FIVE_PLACES = 0.5e-5


@pytest.mark.parametrize(("height", "chord"), [row[1:] for row in SEGMENTS])
@pytest.mark.parametrize("direction", [1, -1])
def test_a_flat_track_bar_shifts_the_axle_by_the_height_of_the_segment(height, chord, direction):
    radius = 850.0
    flat = parallel_pair(slope_deg=0.0, run=radius)
    # The chord is rounded too. Near 60 deg a third of its error appears in the height.
    shift = motion_at(flat, direction * radius * chord / 2).axle_shift
    # The frame end is on the left, so the axle moves to the left.
    assert shift == pytest.approx(radius * height, abs=radius * FIVE_PLACES * 1.3)


@pytest.mark.parametrize(("angle", "height"), [row[:2] for row in SEGMENTS])
def test_the_shift_rounds_to_the_height_in_the_table(angle, height):
    radius, half = 850.0, np.radians(angle) / 2
    flat = parallel_pair(slope_deg=0.0, run=radius)
    shift = motion_at(flat, radius * np.sin(half)).axle_shift
    assert shift == pytest.approx(radius * (1 - np.cos(half)), abs=1e-9)
    assert round(float(shift) / radius, 5) == height


@pytest.mark.parametrize(("height", "chord"), [row[1:] for row in SEGMENTS])
def test_a_drag_link_alone_follows_the_same_arc(height, chord):
    """The track bar is so long that the axle does not shift; the arc alone moves the ball in."""
    radius, arm = 850.0, 1e6
    flat = parallel_pair(slope_deg=0.0, run=radius, arm=arm)
    far = np.array([0.0, 1e7, 0.0])
    flat = flat.with_pivots({"track_bar.frame": flat.track_bar_axle + far})
    # On so long an arm the ball moves sideways in a straight line, by arm times steer.
    moved_in = motion_at(flat, radius * chord / 2).steer * arm
    assert moved_in == pytest.approx(radius * height, rel=1e-3)
