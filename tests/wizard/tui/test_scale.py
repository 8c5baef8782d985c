"""Points in mm on a frame of dots."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from wizard.tui.pictures.scale import fit

points = st.lists(st.tuples(st.floats(-3000, 3000), st.floats(-500, 1500)), min_size=2, max_size=8)


class TestFit:
    @given(points)
    def test_every_point_is_inside(self, points):
        view = fit(points, 6, 8, 70, 50)
        for x, y in view.line(points):
            assert 6 - 1e-6 <= x <= 70 + 1e-6
            assert 8 - 1e-6 <= y <= 50 + 1e-6

    def test_the_scale_is_the_same_both_ways(self):
        view = fit([(0, 0), (1000, 300)], 0, 0, 100, 100)
        (x0, y0), (x1, y1) = view.line([(100, 100), (200, 200)])
        assert x1 - x0 == pytest.approx(y0 - y1)

    def test_the_vehicles_left_is_on_the_right_and_up_is_up(self):
        view = fit([(-500, 0), (500, 600)], 0, 0, 100, 100)
        assert view.dot((0, 600))[1] < view.dot((0, 0))[1]
        assert view.dot((500, 0))[0] > view.dot((-500, 0))[0]
