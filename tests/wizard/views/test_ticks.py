"""Round numbers for the axes of a picture."""

from math import log10

import pytest
from hypothesis import given
from hypothesis import strategies as st

from wizard.views.ticks import multiples, round_step, ticks


@given(st.floats(1e-3, 1e4), st.integers(1, 12))
def test_steps_are_one_two_or_five(span, most):
    step = round_step(span, most)
    leading = step / 10 ** int(f"{log10(step):.6f}".split(".")[0])
    assert span / step <= most + 1e-6
    assert any(
        leading == pytest.approx(times * power) for times in (1, 2, 5) for power in (0.1, 1, 10)
    )


def test_zero_is_one_of_the_ticks():
    assert ticks(-127.0, 101.6, 5) == pytest.approx((-100, -50, 0, 50, 100))


def test_ticks_in_inches():
    assert ticks(-5.0, 4.0, 5) == pytest.approx((-4, -2, 0, 2, 4))


@given(st.floats(1e-6, 1e9), st.floats(-1e9, 1e9), st.integers(1, 12))
def test_the_number_of_ticks_does_not_grow_with_the_values(span, low, most):
    high = low + max(span, abs(low) * 1e-6)
    assert len(ticks(low, high, most)) <= most + 2


def test_no_step_is_smaller_than_the_least():
    assert round_step(0.3, 6, least=0.1) == 0.1
    assert ticks(-100.0, 100.0, 12, least=50.0) == pytest.approx((-100, -50, 0, 50, 100))


def test_multiples_of_a_step():
    assert multiples(-0.4, 0.6, 0.2) == pytest.approx((-0.4, -0.2, 0.0, 0.2, 0.4, 0.6))
