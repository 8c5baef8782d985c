"""What a verdict leaves open, and for want of what."""

import numpy as np

from core.verdict.open_questions import open_questions_of
from core.verdict.verdict import evaluate
from tests.geometries import document_of, random_linkage, session_of, true_readings

LINKAGE = random_linkage(np.random.default_rng(3), "knuckle")


def left_open(*dropped, events=True):
    """Questions left open without the readings whose names hold one of these words."""
    read = {
        name: value
        for name, value in true_readings(LINKAGE).items()
        if not any(word in name for word in dropped)
    }
    document = document_of(LINKAGE, read)
    document["readings"].setdefault("wheels", {}).setdefault("hub_height", ["420 mm"])
    if not events:
        document["events"] = []
    verdict = evaluate(session_of(document), draws=0)
    return {gap.topic: gap.readings for gap in open_questions_of(verdict)}


def test_with_every_reading_nothing_is_left_open():
    assert left_open() == {}


def test_without_a_wheel_the_middle_of_the_vehicle_is_not_known():
    found = left_open("left_offset")
    assert found["articulation"] == ("wheels.left_offset",)
    assert found["roll centre"] == ("wheels.left_offset",)


def test_without_stations_lengths_and_braces_check_nothing():
    found = left_open("station")
    assert len(found["fore and aft"]) == 4
    assert "track_bar.length" in found["lengths"]
    assert "braces.frame_ends" in found["lengths"]


def test_a_link_with_one_station_lacks_the_other():
    assert left_open("track_bar.axle.station")["fore and aft"] == ("track_bar.axle.station",)


def test_with_nothing_taken_twice_over_nothing_is_checked():
    found = left_open("length", "slope", "braces", "station")
    assert found["checked"] == ("track_bar.slope", "drag_link.slope")
    assert "slips" not in found


def test_readings_that_nothing_checks_are_named():
    # One slope checks the heights of one link; the other link's are checked by nothing.
    found = left_open("length", "drag_link.slope", "braces", "station")
    assert "drag_link.frame.height" in found["slips"]
    assert "track_bar.frame.height" not in found["slips"]


def test_without_events_the_road_is_left_open():
    assert left_open(events=False) == {"road": ()}
