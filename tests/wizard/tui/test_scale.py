"""From millimetres to dots, and round numbers for an axis."""

from math import log10

import pytest
from hypothesis import given
from hypothesis import strategies as st

from wizard.tui.pictures.scale import fit
from wizard.views.ticks import round_step, ticks

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

    def test_up_is_up_and_the_left_of_the_vehicle_is_on_the_right(self):
        view = fit([(-500, 0), (500, 600)], 0, 0, 100, 100)
        assert view.dot((0, 600))[1] < view.dot((0, 0))[1]
        assert view.dot((500, 0))[0] > view.dot((-500, 0))[0]


class TestTicks:
    @given(st.floats(1e-3, 1e4), st.integers(1, 12))
    def test_steps_are_one_two_or_five(self, span, most):
        step = round_step(span, most)
        leading = step / 10 ** int(f"{log10(step):.6f}".split(".")[0])
        assert span / step <= most + 1e-6
        assert any(
            leading == pytest.approx(times * power) for times in (1, 2, 5) for power in (0.1, 1, 10)
        )

    def test_zero_is_among_them(self):
        assert ticks(-127.0, 101.6, 5) == pytest.approx((-100, -50, 0, 50, 100))

    def test_inches(self):
        assert ticks(-5.0, 4.0, 5) == pytest.approx((-4, -2, 0, 2, 4))
