"""Positions of pivots and wheels compared. Figures are common practice, no source."""

import pytest

from core.entry_checks.check import check
from core.entry_checks.outcome import Accepted, Queried, Refused

from .conftest import built


@pytest.mark.parametrize(("end", "height"), [("frame", "18 1/4"), ("axle", "22 3/4")])
def test_a_frame_end_lower_than_its_axle_end_is_queried(end, height, document, profile):
    outcome = check(f"readings.track_bar.{end}.height", height, document, profile)
    assert isinstance(outcome, Queried)
    assert "lower than its axle end" in outcome.message


def test_an_axle_end_more_than_a_hub_height_from_the_hub_is_queried(profile):
    document = {"readings": {"wheels": {"hub_height": ["16 in"]}}}
    outcome = check("readings.track_bar.axle.height", "32 1/4", document, profile)
    assert isinstance(outcome, Queried)
    assert "more than a hub height away" in outcome.message


def test_a_hub_less_than_half_as_high_as_an_axle_end_is_queried(profile):
    document = {"readings": {"track_bar": {"axle": {"height": ["29 in"]}}}}
    outcome = check("readings.wheels.hub_height", "14", document, profile)
    assert isinstance(outcome, Queried)
    assert "more than a hub height away" in outcome.message
    assert check("readings.wheels.hub_height", "14 1/2", document) == Accepted(["14 1/2 in"])


@pytest.mark.parametrize(("end", "offset"), [("frame", "50"), ("axle", "17")])
def test_both_ends_of_a_link_at_one_offset_are_refused(end, offset, document, profile):
    outcome = check(f"readings.track_bar.{end}.offset", offset, document, profile)
    assert isinstance(outcome, Refused)
    assert "same offset" in outcome.message


def test_a_link_of_unusual_length_is_queried(document, profile):
    outcome = check("readings.track_bar.axle.offset", "64", document, profile)
    assert isinstance(outcome, Queried)
    assert "Usual for this profile is 26 in to 44 in." in outcome.message


def test_links_from_opposite_sides_of_the_frame_are_queried(profile):
    path = "readings.drag_link.frame.offset"
    assert isinstance(check(path, "92", built({}, without=[path]), profile), Queried)
    document = built({"readings.drag_link.axle.offset": ["12 in"]}, without=[path])
    outcome = check(path, "50", document, profile)
    assert isinstance(outcome, Queried)
    assert "opposite sides of the frame" in outcome.message


def test_wheels_that_are_swapped_are_refused(document, profile):
    outcome = check("readings.wheels.right_offset", "3", document, profile)
    assert isinstance(outcome, Refused)
    assert "cannot be left of the left one" in outcome.message


def test_wheels_that_are_too_far_apart_are_queried(document, profile):
    outcome = check("readings.wheels.left_offset", "-40", document, profile)
    assert isinstance(outcome, Queried)
    assert "106 in apart. Usual is 40 in to 100 in." in outcome.message


def test_a_pivot_outside_the_wheels_is_queried(document, profile):
    outcome = check("readings.track_bar.frame.offset", "2", document, profile)
    assert isinstance(outcome, Queried)
    assert "between the wheels" in outcome.message


class TestTwoPivotsInOnePlace:
    @pytest.fixture
    def same_front_view(self):
        return built(
            {
                "readings.drag_link.frame.height": ["22 1/2 in"],
                "readings.drag_link.frame.offset": ["17 in"],
            }
        )

    def test_the_same_station_is_refused(self, same_front_view, profile):
        outcome = check("readings.drag_link.frame.station", "6", same_front_view, profile)
        assert isinstance(outcome, Refused)
        assert "in one place" in outcome.message

    def test_another_station_is_accepted(self, same_front_view, profile):
        outcome = check("readings.drag_link.frame.station", "9", same_front_view, profile)
        assert outcome == Accepted(["9 in"])
