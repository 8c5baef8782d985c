"""Readings against each other. Figures are common practice, no source, unless one is named."""

import pytest

from core.entry_checks.check import check
from core.entry_checks.outcome import Accepted, Queried, Refused

from .conftest import AS_BUILT, built

R = "readings."


def outcome_of(path, answer, document, profile):
    return check(R + path, answer, document, profile)


class TestPlacing:
    def test_frame_end_lower_than_the_axle_end(self, document, profile):
        for path, answer in (
            ("track_bar.frame.height", "18 1/4"),
            ("track_bar.axle.height", "22 3/4"),
        ):
            outcome = outcome_of(path, answer, document, profile)
            assert isinstance(outcome, Queried)
            assert "lower than its axle end" in outcome.message

    def test_axle_end_more_than_a_hub_height_from_the_hub(self, profile):
        document = {"readings": {"wheels": {"hub_height": ["16 in"]}}}
        outcome = outcome_of("track_bar.axle.height", "32 1/4", document, profile)
        assert isinstance(outcome, Queried)
        assert "more than a hub height away" in outcome.message
        document = {"readings": {"track_bar": {"axle": {"height": ["29 in"]}}}}
        outcome = outcome_of("wheels.hub_height", "14", document, profile)
        assert "more than a hub height away" in outcome.message

    @pytest.mark.parametrize("end", ["frame", "axle"])
    def test_both_ends_of_a_link_in_one_place_cannot_be(self, end, document, profile):
        other = {"frame": "50", "axle": "17"}[end]
        outcome = outcome_of(f"track_bar.{end}.offset", other, document, profile)
        assert isinstance(outcome, Refused)
        assert "same offset" in outcome.message

    def test_a_link_of_unusual_length(self, document, profile):
        outcome = outcome_of("track_bar.axle.offset", "64", document, profile)
        assert isinstance(outcome, Queried)
        assert "26 in to 44 in is usual" in outcome.message

    def test_links_from_opposite_sides(self, profile):
        document = built(AS_BUILT, "readings.drag_link.frame.offset")
        outcome = outcome_of("drag_link.frame.offset", "92", document, profile)
        assert isinstance(outcome, Queried)
        document = built(
            AS_BUILT | {"readings.drag_link.axle.offset": ["12 in"]},
            "readings.drag_link.frame.offset",
        )
        outcome = outcome_of("drag_link.frame.offset", "50", document, profile)
        assert "opposite sides" in outcome.message

    def test_wheels(self, document, profile):
        outcome = outcome_of("wheels.right_offset", "3", document, profile)
        assert isinstance(outcome, Refused)
        assert "cannot be left of the left one" in outcome.message
        outcome = outcome_of("wheels.left_offset", "-40", document, profile)
        assert isinstance(outcome, Queried)
        assert "40 in to 100 in is usual" in outcome.message

    def test_a_pivot_outside_the_wheels(self, document, profile):
        outcome = outcome_of("track_bar.frame.offset", "2", document, profile)
        assert isinstance(outcome, Queried)
        assert "between the wheels" in outcome.message

    def test_two_pivots_in_one_place(self, document, profile):
        taken = built(
            AS_BUILT
            | {
                "readings.drag_link.frame.height": ["22 1/2 in"],
                "readings.drag_link.frame.offset": ["17 in"],
            }
        )
        outcome = outcome_of("drag_link.frame.station", "6", taken, profile)
        assert isinstance(outcome, Refused)
        assert "in one place" in outcome.message
        assert isinstance(outcome_of("drag_link.frame.station", "9", taken, profile), Accepted)


class TestClosing:
    """Bounds are 3.29 standard uncertainties (Baarda 1968, 0.1 %) of the instruments' claims."""

    def test_a_length_that_closes(self, document, without_stations, profile):
        for known in (document, without_stations):
            outcome = outcome_of("track_bar.length", "33 1/4", known, profile)
            assert outcome == Accepted(["33 1/4 in"])

    def test_a_length_shorter_than_the_front_view(self, without_stations, profile):
        outcome = outcome_of("track_bar.length", "32", without_stations, profile)
        assert isinstance(outcome, Queried)
        assert "32 in, and the pivots were entered 33 1/4 in apart" in outcome.message

    def test_a_length_that_is_far_too_short_cannot_be(self, without_stations, profile):
        outcome = outcome_of("track_bar.length", "28", without_stations, profile)
        assert isinstance(outcome, Refused)
        assert "does not close" in outcome.message

    def test_without_stations_a_link_may_run_fore_and_aft(self, without_stations, profile):
        assert isinstance(outcome_of("track_bar.length", "35", without_stations, profile), Accepted)
        outcome = outcome_of("track_bar.length", "43", without_stations, profile)
        assert isinstance(outcome, Queried)
        assert "ahead of the other" in outcome.message

    def test_with_stations_it_may_not(self, document, profile):
        outcome = outcome_of("track_bar.length", "35", document, profile)
        assert isinstance(outcome, Queried)
        assert "They should agree within" in outcome.message

    def test_a_pivot_entered_after_the_length(self, document, profile):
        taken = built(AS_BUILT | {"readings.track_bar.length": ["33 1/4 in"]})
        outcome = outcome_of("track_bar.axle.offset", "52", taken, profile)
        assert isinstance(outcome, Queried)
        assert "does not close" in outcome.message

    def test_braces(self, document, profile):
        # 17 to 56 across, 22 1/2 to 16 3/4 up, 6 to 6 1/2 ahead: 39.42 in
        assert isinstance(
            outcome_of("braces.frame_to_axle", "39 7/16", document, profile), Accepted
        )
        outcome = outcome_of("braces.frame_to_axle", "41", document, profile)
        assert isinstance(outcome, Queried)
        assert "does not close" in outcome.message

    def test_a_slope_that_agrees(self, document, profile):
        # atan(4 / hypot(33, 1)) = 6.9 deg
        assert outcome_of("track_bar.slope", "7", document, profile) == Accepted(["7 deg"])

    def test_a_slope_that_does_not(self, document, profile):
        outcome = outcome_of("track_bar.slope", "11", document, profile)
        assert isinstance(outcome, Queried)
        assert "11.0 deg on the track bar. Its two ends say 6.9 deg" in outcome.message

    def test_a_slope_with_the_wrong_sign(self, document, profile):
        outcome = outcome_of("drag_link.slope", "-6.5", document, profile)
        assert isinstance(outcome, Queried)

    def test_a_height_entered_after_the_slope(self, profile):
        taken = built(AS_BUILT | {"readings.track_bar.slope": ["7 deg"]})
        outcome = outcome_of("track_bar.frame.height", "24 1/2", taken, profile)
        assert isinstance(outcome, Queried)
        assert "the angle finder says 7.0 deg" in outcome.message

    def test_what_is_missing_is_not_checked(self, profile):
        for name in ("height", "offset"):
            taken = built(AS_BUILT, f"readings.track_bar.axle.{name}")
            assert isinstance(outcome_of("track_bar.length", "28", taken, profile), Accepted)
            assert isinstance(outcome_of("track_bar.slope", "20", taken, profile), Accepted)


class TestSteering:
    def test_a_ball_on_the_wrong_side_of_the_axle(self, document, profile):
        outcome = outcome_of("drag_link.axle.station", "-6", document, profile)
        assert isinstance(outcome, Refused)
        assert "cannot point ahead" in outcome.message

    def test_a_kingpin_away_from_the_axle(self, profile):
        document = {
            "layout": {"arm": "behind"},
            "readings": {"drag_link": {"axle": {"station": ["-1 in"]}}},
        }
        outcome = outcome_of("steering.arm", "6 1/2", document, profile)
        assert isinstance(outcome, Queried)
        assert "the kingpin would stand 5 1/2 in ahead of the axle" in outcome.message

    @pytest.mark.parametrize("arm", ["steering.arm", "steering.pitman_arm", "tie_rod.near_arm"])
    def test_an_arm_longer_than_half_the_drag_link(self, arm, document, inverted_y):
        taken = built(AS_BUILT | {"layout.steering": "inverted-y"})
        outcome = outcome_of(arm, "20", taken, inverted_y)
        assert isinstance(outcome, Refused)
        assert "38 1/4 in" in outcome.message


class TestInvertedY:
    @pytest.fixture
    def taken(self):
        return built(
            AS_BUILT
            | {
                "layout.steering": "inverted-y",
                "readings.drag_link.length": ["38 1/4 in"],
                "readings.tie_rod.near.offset": ["11 in"],
            }
        )

    def test_the_joint_is_on_the_drag_link(self, taken, inverted_y):
        path = "tie_rod.joint_from_far_ball"
        assert outcome_of(path, "9", taken, inverted_y) == Accepted(["9 in"])
        outcome = outcome_of(path, "39", taken, inverted_y)
        assert isinstance(outcome, Refused)
        assert "the drag link is 38 1/4 in long" in outcome.message

    def test_the_near_ball_is_at_the_other_knuckle(self, taken, inverted_y):
        outcome = outcome_of("tie_rod.near.offset", "60", taken, inverted_y)
        assert isinstance(outcome, Refused)
        assert "beyond the far ball" in outcome.message

    def test_a_tie_rod_left_over_from_another_layout_counts_no_more(self, profile):
        taken = built(AS_BUILT | {"readings.tie_rod.near.offset": ["60 in"]})
        assert isinstance(outcome_of("drag_link.axle.offset", "56", taken, profile), Accepted)
