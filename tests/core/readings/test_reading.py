"""Standard uncertainties, checked against numbers computed by hand."""

from math import radians, sqrt

import pytest

from core.readings.reading import (
    Instruments,
    Reading,
    claimed_uncertainty,
    least_uncertainty,
    repeats_scatter,
    standard_uncertainty,
    variance_parts,
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


@pytest.mark.parametrize(
    ("kind", "common", "single"),
    [
        ("height", 4 / 3 + 9 / 6, 1 / 12 + 9 / 6),
        ("offset", 9 / 6, 1 / 12 + 9 / 6),
        ("station", 4 * 9 / 6, 1 / 12 + 4 * 9 / 6),
        ("length", 2 * 9 / 6, 1 / 12 + 2 * 9 / 6),
        ("brace", 2 * 9 / 6, 1 / 12 + 2 * 9 / 6),
        ("slope", radians(0.5) ** 2 / 6, radians(0.5) ** 2 * (1 / 12 + 1 / 6)),
    ],
)
def test_half_of_the_sighting_and_the_floor_return_with_every_repeat(kind, common, single):
    """The mean of n has u^2 = common + single / n; from the specification of readings."""
    assert variance_parts(kind, INSTRUMENTS) == pytest.approx((common, single))
    for count in (1, 2, 5):
        reading = Reading("test", kind, (0.1,) * count)
        expected = sqrt(common + single / count)
        assert standard_uncertainty(reading, INSTRUMENTS) == pytest.approx(expected)
    assert least_uncertainty(kind, INSTRUMENTS) == pytest.approx(sqrt(common))


def test_scatter_replaces_a_smaller_claim_for_each_repeat():
    scattered = Reading("track_bar.frame.offset", "offset", (590.0, 600.0, 610.0))
    assert scattered.scatter == pytest.approx(10.0)
    expected = sqrt(9 / 6 + 10.0**2 / 3)
    assert standard_uncertainty(scattered, INSTRUMENTS) == pytest.approx(expected)


def test_repeats_disagree_from_329_uncertainties_of_their_difference():
    """The part that is common to both repeats drops out of their difference."""
    apart = 3.29 * sqrt(2 * (1 / 12 + 9 / 6))

    def scatters(*repeats):
        return repeats_scatter(Reading("test", "height", repeats), INSTRUMENTS)

    assert scatters(600.0, 600.1 + apart)
    assert not scatters(600.0, 599.9 + apart)
    # A third reading between them changes nothing.
    assert scatters(600.0, 600.1 + apart, 601.0)
    assert not scatters(600.0)


def test_a_single_reading_has_no_scatter():
    assert Reading("track_bar.frame.offset", "offset", (590.0,)).scatter == 0.0
