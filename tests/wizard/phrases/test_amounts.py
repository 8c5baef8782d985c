"""Lengths, angles and sides as they are said."""

from math import nan, radians

import pytest

from wizard.phrases.amounts import (
    about,
    aside,
    drift,
    listed,
    place_in_travel,
    speed,
    times_more,
    travel,
    turn,
)


@pytest.mark.parametrize(
    ("said", "words"),
    [
        (travel(50.8, "in"), "2 in of bump"),
        (travel(-50.0, "mm"), "50 mm of droop"),
        (travel(0.0, "in"), "ride height"),
        (place_in_travel(-101.6, "in"), "4 in droop"),
        (place_in_travel(-0.0, "in"), "ride height"),
        (turn(radians(1.23)), "1.2 deg to the left"),
        (turn(radians(-18.4)), "18 deg to the right"),
        (turn(radians(0.01)), "less than 0.1 deg"),
        (turn(nan), "—"),
        (aside(4.8, "in"), "3/16 in to the left"),
        (aside(-4.8, "mm"), "5 mm to the right"),
        (aside(0.1, "in"), "less than 1/16 in"),
        (aside(0.1, "in", nothing="in the middle"), "in the middle"),
        (aside(nan, "in"), "—"),
        (drift(1500.0, "in"), "59 in to the left"),
        (drift(-1504.0, "mm"), "1500 mm to the right"),
        (drift(25.4, "in"), "1 in to the left"),
        (drift(nan, "in"), "—"),
        (about(23.0, "in"), "7/8 in"),
        (about(0.2, "in"), "1/8 in"),
        (about(-50.8, "mm"), "51 mm"),
        (times_more(1), "once more"),
        (times_more(2), "twice more"),
        (times_more(3), "three times more"),
        (listed([]), ""),
        (listed(["a"]), "a"),
        (listed(["a", "b", "c"]), "a, b and c"),
    ],
)
def test_amounts_are_said_as_people_say_them(said, words):
    assert said == words


def test_a_speed_is_said_as_the_road_signs_of_the_unit_do():
    kmh = 1e6 / 3600  # mm/s
    assert speed(60 * kmh, "mm") == "60 km/h"
    # 1 mile is 1,609.344 m by definition.
    assert speed(60 * 1.609344 * kmh, "in") == "60 mph"
