import numpy as np
import pytest

from core.documents.entries import EntryError
from core.readings.survey import SURVEY, pivots_so_far, reading_at, readings_in, wheels_so_far
from tests.geometries import document_of, parallel_pair, random_linkage, true_readings


@pytest.fixture
def document():
    linkage = parallel_pair(slope_deg=5.0)
    return document_of(linkage, true_readings(linkage, datum=500.0))


def test_readings_have_the_order_of_the_survey(document):
    names = [reading.name for reading in readings_in(document, "knuckle")]
    assert names == [name for name in SURVEY if not name.startswith("tie_rod")]


def test_repeats_keep_their_order(document):
    document["readings"]["track_bar"]["frame"]["height"] = ["24 in", "24 1/2 in", "610 mm"]
    reading = reading_at(document, "track_bar.frame.height", "height")
    assert reading.repeats == pytest.approx((609.6, 622.3, 610.0))


def test_a_bare_number_takes_the_unit_of_the_session(document):
    document["readings"]["track_bar"]["frame"]["height"] = ["24 1/2"]
    for units, value in (("in", 622.3), ("mm", 24.5)):
        document["session"]["units"] = units
        reading = reading_at(document, "track_bar.frame.height", "height")
        assert reading.value == pytest.approx(value)


def test_a_reading_that_was_not_taken_is_none(document):
    del document["readings"]["braces"]
    assert reading_at(document, "braces.axle_ends", "brace") is None


def test_a_slope_on_a_bent_bar_does_not_count(document):
    document["readings"]["drag_link"]["bent"] = True
    names = {reading.name for reading in readings_in(document, "knuckle")}
    assert "drag_link.slope" not in names
    assert {"track_bar.slope", "drag_link.length"} <= names


def test_the_near_ball_counts_only_for_the_inverted_y():
    linkage = random_linkage(np.random.default_rng(0), "inverted-y")
    document = document_of(linkage, true_readings(linkage))
    for layout, counted in (("inverted-y", True), ("knuckle", False), ("tie-rod", False)):
        names = {reading.name for reading in readings_in(document, layout)}
        assert ("tie_rod.near.height" in names) == counted


@pytest.mark.parametrize("value", ["24 in", {"a": 1}, [["24 in"]], ["no number"], [True]])
def test_a_reading_that_is_no_list_of_quantities_is_refused_with_its_path(document, value):
    document["readings"]["track_bar"]["frame"]["height"] = value
    with pytest.raises(EntryError, match=r"\[readings.track_bar.frame\] height"):
        readings_in(document)


def test_pivots_so_far_need_a_height_and_an_offset(document):
    del document["readings"]["drag_link"]["axle"]["offset"]
    del document["readings"]["track_bar"]["frame"]["station"]
    pivots = pivots_so_far(document)
    assert set(pivots) == {"track_bar.frame", "track_bar.axle", "drag_link.frame"}
    # Left of the datum line is positive. The datum line lies 500 mm to the left of the middle.
    x, y, z = pivots["track_bar.axle"]
    assert (x, y, z) == pytest.approx((0.0, -420.0 - 500.0, 420.0))


def test_wheels_so_far_are_the_wheels_that_were_measured(document):
    assert wheels_so_far(document) == pytest.approx(
        {"hub_height": 420.0, "left_offset": 300.0, "right_offset": -1300.0}
    )
    del document["readings"]["wheels"]["left_offset"]
    assert "left_offset" not in wheels_so_far(document)
