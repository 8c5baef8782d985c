import numpy as np
import pytest

from core.kinematics.raising import raised
from core.kinematics.roll_centre import roll_centre_height
from tests.geometries import parallel_pair


def test_a_flat_track_bar_has_the_roll_centre_at_its_height():
    assert roll_centre_height(parallel_pair(slope_deg=0.0)) == pytest.approx(420.0)


def test_lowering_the_frame_end_lowers_the_roll_centre_in_proportion():
    """The centre plane lies 420 of 850 mm from the axle end."""
    linkage = parallel_pair()
    lowered = raised(linkage, "track_bar.frame", np.array([0.0, -100.0]))
    before, after = roll_centre_height(lowered)
    assert after - before == pytest.approx(-100.0 * 420 / 850)
