"""Closure with the positions of the pivots.

Bounds are 3.29 standard uncertainties (Baarda 1968, 0.1 %) of the instruments' claims.
"""

import pytest

from core.entry_checks.check import check
from core.entry_checks.outcome import Accepted, Queried, Refused

from .conftest import STATIONS, built

LENGTH, SLOPE = "readings.track_bar.length", "readings.track_bar.slope"
BRACE = "readings.braces.frame_to_axle"


class TestLength:
    @pytest.mark.parametrize("surveyed", ["document", "without_stations"])
    def test_a_length_that_closes_is_accepted(self, surveyed, request, profile):
        # hypot(33, 4, 1) = 33.26 in; hypot(33, 4) = 33.24 in without stations
        outcome = check(LENGTH, "33 1/4", request.getfixturevalue(surveyed), profile)
        assert outcome == Accepted(["33 1/4 in"])

    def test_a_length_shorter_than_the_front_view_is_queried(self, without_stations, profile):
        outcome = check(LENGTH, "32", without_stations, profile)
        assert isinstance(outcome, Queried)
        assert "track bar is 32 in. The entered pivots are 33 1/4 in apart." in outcome.message

    def test_a_length_far_shorter_than_the_front_view_is_refused(self, without_stations, profile):
        outcome = check(LENGTH, "28", without_stations, profile)
        assert isinstance(outcome, Refused)
        assert "does not close" in outcome.message

    def test_without_stations_a_link_may_run_a_little_fore_and_aft(self, without_stations, profile):
        # The ends are alike within 2 in, u = 2 / sqrt(3): 3.29 u is 3.8 in, hypot(33.24, 3.8) =
        # 33.46 in. The bound of the tape comes on top of that.
        assert check(LENGTH, "33 3/4", without_stations, profile) == Accepted(["33 3/4 in"])
        outcome = check(LENGTH, "35", without_stations, profile)
        assert isinstance(outcome, Queried)
        assert "10 15/16 in ahead of the other" in outcome.message
        assert "take both stations" in outcome.message

    def test_without_stations_a_brace_may_run_24_in_fore_and_aft(self, without_stations, profile):
        # hypot(39, 5 3/4) = 39.42 in; hypot(39.42, 24) = 46.2 in
        assert check(BRACE, "44", without_stations, profile) == Accepted(["44 in"])
        assert isinstance(check(BRACE, "48", without_stations, profile), Queried)

    def test_a_link_that_runs_fore_and_aft_is_compared_with_its_stations_alone(self, profile):
        length, slope = "readings.drag_link.length", "readings.drag_link.slope"
        document = built({"layout.steering": "fore-aft"}, without=STATIONS)
        assert isinstance(check(length, "30", document, profile), Accepted)
        assert "close" not in getattr(check(slope, "-1", document, profile), "message", "")

    def test_with_stations_a_longer_length_is_queried(self, document, profile):
        outcome = check(LENGTH, "35", document, profile)
        assert isinstance(outcome, Queried)
        assert "The two should agree within 1/2 in." in outcome.message

    def test_a_pivot_entered_after_the_length_is_queried(self, profile):
        document = built({LENGTH: ["33 1/4 in"]})
        outcome = check("readings.track_bar.axle.offset", "52", document, profile)
        assert isinstance(outcome, Queried)
        assert "does not close" in outcome.message


def test_a_brace_closes_with_the_pivots_it_runs_between(document, profile):
    # 17 to 56 across, 22 1/2 to 16 3/4 up, 6 to 6 1/2 ahead: 39.42 in
    assert check(BRACE, "39 7/16", document, profile) == Accepted(["39 7/16 in"])
    outcome = check(BRACE, "41", document, profile)
    assert isinstance(outcome, Queried)
    assert "does not close" in outcome.message


class TestSlope:
    def test_a_slope_that_agrees_is_accepted(self, document, profile):
        # atan(4 / hypot(33, 1)) = 6.9 deg
        assert check(SLOPE, "7", document, profile) == Accepted(["7 deg"])

    def test_a_slope_that_disagrees_is_queried(self, document, profile):
        outcome = check(SLOPE, "11", document, profile)
        assert isinstance(outcome, Queried)
        assert "11.0 deg on the track bar. Its two ends give 6.9 deg." in outcome.message

    def test_a_slope_with_the_wrong_sign_is_asked_about(self, document, profile):
        message = check(SLOPE, "-7", document, profile).message
        assert "unusual" in message
        assert "Is the sign right?" in message

    def test_a_height_entered_after_the_slope_is_queried(self, profile):
        document = built({SLOPE: ["7 deg"]})
        outcome = check("readings.track_bar.frame.height", "24 1/2", document, profile)
        assert isinstance(outcome, Queried)
        assert "the angle finder reads 7.0 deg" in outcome.message

    def test_a_slope_on_a_bent_bar_is_not_compared(self, profile):
        document = built({SLOPE: ["20 deg"], "readings.track_bar.bent": True})
        outcome = check("readings.track_bar.frame.height", "22 1/2", document, profile)
        assert isinstance(outcome, Accepted)


@pytest.mark.parametrize("kind", ["height", "offset"])
def test_nothing_is_compared_while_a_coordinate_is_missing(kind, profile):
    document = built(without=[f"readings.track_bar.axle.{kind}"])
    assert isinstance(check(LENGTH, "28", document, profile), Accepted)
    assert isinstance(check(SLOPE, "20", document, profile), Accepted)
