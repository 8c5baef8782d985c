"""Standard uncertainties, checked against numbers computed by hand."""

from math import radians, sqrt

import pytest

from core.readings.reading import (
    Instruments,
    Reading,
    claimed_uncertainty,
    repeats_scatter,
    standard_uncertainty,
)

# Tape in mm, sighting +-3 mm, floor +-2 mm; angle finder and its seating half a degree.
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
def test_standard_uncertainty_of_rectangular_half_widths(kind, expected):
    """GUM (JCGM 100:2008) 4.3.7: u = w / sqrt(3)."""
    assert claimed_uncertainty(kind, INSTRUMENTS) == pytest.approx(expected)


def test_the_mean_of_repeats_has_a_smaller_uncertainty():
    """GUM 4.2.3: u / sqrt(n)."""
    single = standard_uncertainty(
        Reading("track_bar.frame.height", "height", (600.0,)), INSTRUMENTS
    )
    four = Reading("track_bar.frame.height", "height", (600.0, 601.0, 600.0, 601.0))
    assert four.value == 600.5
    assert standard_uncertainty(four, INSTRUMENTS) == pytest.approx(single / 2)
    assert not repeats_scatter(four, INSTRUMENTS)


def test_scatter_replaces_a_smaller_claimed_uncertainty():
    scattered = Reading("track_bar.frame.offset", "offset", (590.0, 600.0, 610.0))
    assert scattered.scatter == pytest.approx(10.0)
    assert repeats_scatter(scattered, INSTRUMENTS)
    assert standard_uncertainty(scattered, INSTRUMENTS) == pytest.approx(10.0 / sqrt(3))


def test_a_single_reading_has_no_scatter():
    assert Reading("track_bar.frame.offset", "offset", (590.0,)).scatter == 0.0
