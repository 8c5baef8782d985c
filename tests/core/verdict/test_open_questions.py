"""Questions that a verdict leaves open, and the readings that would answer them."""

import numpy as np

from core.verdict.open_questions import open_questions_of
from core.verdict.verdict import evaluate
from tests.geometries import document_of, random_linkage, session_of, true_readings

LINKAGE = random_linkage(np.random.default_rng(3), "knuckle")


def open_questions_without(*dropped, events=True):
    """Readings by topic of the open questions, without readings whose names contain a word."""
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
    return {question.topic: question.readings for question in open_questions_of(verdict)}


def test_with_every_reading_no_question_is_open():
    assert open_questions_without() == {}


def test_without_a_wheel_offset_the_centre_plane_is_unknown():
    questions = open_questions_without("left_offset")
    assert questions["articulation"] == ("wheels.left_offset",)
    assert questions["roll centre"] == ("wheels.left_offset",)


def test_stations_that_were_not_taken_are_asked_for():
    assert len(open_questions_without("station")["fore and aft"]) == 4


def test_a_link_with_one_station_needs_the_other():
    assert open_questions_without("track_bar.axle.station")["fore and aft"] == (
        "track_bar.axle.station",
    )


def test_without_redundant_readings_the_slopes_are_asked_for():
    questions = open_questions_without("length", "slope", "braces", "station")
    assert questions["checked"] == ("track_bar.slope", "drag_link.slope")
    assert "slips" not in questions


def test_unchecked_readings_are_named():
    # A slope checks the heights of its link; nothing checks the heights of the other link.
    questions = open_questions_without("length", "drag_link.slope", "braces", "station")
    assert "drag_link.frame.height" in questions["slips"]
    assert "track_bar.frame.height" not in questions["slips"]


def test_without_events_the_road_is_an_open_question():
    assert open_questions_without(events=False) == {"road": ()}
