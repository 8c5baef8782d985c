"""Roll centre checked against an intersection of two lines.

The track bar's line crosses the centre plane in the front view (T. D. Gillespie,
Fundamentals of Vehicle Dynamics, solid axles with a track bar; from memory).
"""

import numpy as np
import pytest

from core.kinematics.roll_centre import roll_centre_height
from tests.geometries import LAYOUTS, random_linkage


@pytest.mark.parametrize("seed", range(20))
def test_the_track_bar_meets_the_centre_plane(seed):
    rng = np.random.default_rng(seed)
    linkage = random_linkage(rng, LAYOUTS[seed % 3])
    frame, axle = linkage.track_bar_frame[1:], linkage.track_bar_axle[1:]
    # axle + s (frame - axle) = (0, 0) + t (0, 1)
    directions = np.column_stack([frame - axle, [0.0, -1.0]])
    _, height = np.linalg.solve(directions, -axle)
    assert roll_centre_height(linkage) == pytest.approx(height, abs=1e-9)
