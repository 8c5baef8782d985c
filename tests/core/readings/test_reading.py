"""Standard uncertainties held to numbers worked out by hand from the design's readings chapter."""

from math import radians, sqrt

import pytest

from core.readings.reading import (
    Instruments,
    Reading,
    claimed_uncertainty,
    repeats_scatter,
    standard_uncertainty,
)

# Tape in millimetres, sighting +-3, floor +-2; angle finder in halves, seated to half a degree.
INSTRUMENTS = Instruments(1.0, 3.0, 2.0, radians(0.5), radians(0.5))


@pytest.mark.parametrize(
    ("kind", "expected"),
    [
        ("height", sqrt(0.25 / 3 + 9 / 3 + 4 / 3)),
        ("offset", sqrt(0.25 / 3 + 9 / 3)),
        ("station", sqrt(0.25 / 3 + 36 / 3)),
        ("length", sqrt(0.25 / 3 + 2 * 9 / 3)),
        ("brace", sqrt(0.25 / 3 + 2 * 9 / 3)),
        ("slope", radians(sqrt(0.0625 / 3 + 0.25 / 3))),
    ],
)
def test_rectangular_half_widths(kind, expected):
    """GUM (JCGM 100:2008) 4.3.7: u = w / sqrt(3)."""
    assert claimed_uncertainty(kind, INSTRUMENTS) == pytest.approx(expected)


def test_the_mean_of_repeats_is_surer():
    """GUM 4.2.3: u / sqrt(n)."""
    once = standard_uncertainty(Reading("track_bar.frame.height", "height", (600.0,)), INSTRUMENTS)
    four = Reading("track_bar.frame.height", "height", (600.0, 601.0, 600.0, 601.0))
    assert four.value == 600.5
    assert standard_uncertainty(four, INSTRUMENTS) == pytest.approx(once / 2)
    assert not repeats_scatter(four, INSTRUMENTS)


def test_scatter_larger_than_claimed_takes_its_place():
    apart = Reading("track_bar.frame.offset", "offset", (590.0, 600.0, 610.0))
    assert apart.scatter == pytest.approx(10.0)
    assert repeats_scatter(apart, INSTRUMENTS)
    assert standard_uncertainty(apart, INSTRUMENTS) == pytest.approx(10.0 / sqrt(3))


def test_one_reading_does_not_scatter():
    assert Reading("track_bar.frame.offset", "offset", (590.0,)).scatter == 0.0
