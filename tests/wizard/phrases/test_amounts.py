"""Lengths, angles and sides as they are said."""

from math import nan, radians

import pytest

from wizard.phrases.amounts import (
    angle_words,
    drift_words,
    listed,
    place_in_travel,
    repeat_count_words,
    rounded_length_words,
    sideways_words,
    speed_words,
    travel_words,
)


@pytest.mark.parametrize(
    ("said", "words"),
    [
        (travel_words(50.8, "in"), "2 in of bump"),
        (travel_words(-50.0, "mm"), "50 mm of droop"),
        (travel_words(0.0, "in"), "ride height"),
        (place_in_travel(-101.6, "in"), "4 in droop"),
        (place_in_travel(-0.0, "in"), "ride height"),
        (angle_words(radians(1.23)), "1.2 deg to the left"),
        (angle_words(radians(-18.4)), "18 deg to the right"),
        (angle_words(radians(0.01)), "less than 0.1 deg"),
        (angle_words(nan), "—"),
        (sideways_words(4.8, "in"), "3/16 in to the left"),
        (sideways_words(-4.8, "mm"), "5 mm to the right"),
        (sideways_words(0.1, "in"), "less than 1/16 in"),
        (sideways_words(0.1, "in", nothing="in the middle"), "in the middle"),
        (sideways_words(nan, "in"), "—"),
        (drift_words(1500.0, "in"), "59 in to the left"),
        (drift_words(-1504.0, "mm"), "1500 mm to the right"),
        (drift_words(25.4, "in"), "1 in to the left"),
        (drift_words(nan, "in"), "—"),
        (rounded_length_words(23.0, "in"), "7/8 in"),
        (rounded_length_words(0.2, "in"), "1/8 in"),
        (rounded_length_words(-50.8, "mm"), "51 mm"),
        (repeat_count_words(1), "once more"),
        (repeat_count_words(2), "twice more"),
        (repeat_count_words(3), "three times more"),
        (listed([]), ""),
        (listed(["a"]), "a"),
        (listed(["a", "b", "c"]), "a, b and c"),
    ],
)
def test_amounts_are_said_as_people_say_them(said, words):
    assert said == words


def test_a_speed_is_said_as_the_road_signs_of_the_unit_do():
    kmh = 1e6 / 3600  # mm/s
    assert speed_words(60 * kmh, "mm") == "60 km/h"
    # 1 mile is 1,609.344 m by definition.
    assert speed_words(60 * 1.609344 * kmh, "in") == "60 mph"
