"""Limits of free play checked against 49 CFR part 570, vehicle in use inspection standards.

570.7 is for vehicles of 10,000 lb gross vehicle weight rating or less, 570.60 for heavier ones.
Between two listed diameters the limit of the smaller one counts: our reading, on the safe side.
"""

import pytest

from core.readings.walk_round import failures, linkage_play_limit, rim_play_limit

INCH = 25.4


@pytest.mark.parametrize(
    ("diameter_in", "limit_in"),
    [
        # 49 CFR 570.7(a) and 570.60(a): the four rows of the table
        (16, 2),
        (18, 2.25),
        (20, 2.5),
        (22, 2.75),
        # "16 inches or less"
        (13, 2),
        # between the rows, and above the last one
        (17, 2),
        (17.99, 2),
        (19, 2.25),
        (21.9, 2.5),
        (24, 2.75),
    ],
)
def test_play_at_the_steering_wheel_rim_570_7_a(diameter_in, limit_in):
    assert rim_play_limit(diameter_in * INCH) == pytest.approx(limit_in * INCH)


def test_linkage_play_570_7_b():
    assert linkage_play_limit(over_10000_lb=False) == pytest.approx(INCH / 4)
    assert linkage_play_limit(False, 22.5 * INCH) == pytest.approx(INCH / 4)


@pytest.mark.parametrize(
    ("rim_in", "limit_in"),
    [(15, 0.25), (16, 0.25), (16.01, 0.375), (18, 0.375), (18.01, 0.5), (22.5, 0.5)],
)
def test_linkage_play_570_60_b(rim_in, limit_in):
    assert linkage_play_limit(True, rim_in * INCH) == pytest.approx(limit_in * INCH)


def test_an_unknown_size_has_the_smallest_limit():
    assert rim_play_limit(None) == pytest.approx(2 * INCH)
    assert linkage_play_limit(True, None) == pytest.approx(INCH / 4)


@pytest.mark.parametrize(
    ("walk_round", "fails"),
    [
        ({"steering_wheel_diameter": "16 in", "rim_play": "2 in"}, False),
        ({"steering_wheel_diameter": "16 in", "rim_play": "2 1/16 in"}, True),
        ({"steering_wheel_diameter": "18 in", "rim_play": "2 1/4 in"}, False),
        ({"steering_wheel_diameter": "457.2 mm", "rim_play": "57.15 mm"}, False),
        ({"rim_play": "2 1/4 in"}, True),
    ],
)
def test_play_equal_to_its_limit_is_no_failure(walk_round, fails):
    expected = ("walk_round.rim_play",) if fails else ()
    assert failures({"walk_round": walk_round}, is_heavy=False) == expected
