import numpy as np
import pytest

from core.kinematics.motion import motion_at
from core.kinematics.raising import raised
from core.kinematics.travel_limits import travel_limits
from tests.geometries import parallel_pair


def test_no_limit_where_no_link_binds():
    assert travel_limits(parallel_pair(), 127.0, 101.6) == (None, None)


def test_a_flat_track_bar_binds_at_its_own_length():
    short = parallel_pair(slope_deg=0.0, run=200.0)
    droop, bump = travel_limits(short, 250.0, 150.0)
    assert droop == pytest.approx(-200.0, abs=1e-6)
    assert bump is None


def test_a_drag_link_can_bind():
    steep = raised(parallel_pair(slope_deg=0.0, arm=60.0), "drag_link.frame", 500.0)
    droop, _ = travel_limits(steep, 200.0, 10.0)
    assert -200.0 < droop < 0.0
    assert np.isfinite(motion_at(steep, droop).steer)
    assert np.isnan(motion_at(steep, droop - 1e-6).steer)
