import pytest

from core.entry_checks.check import check
from core.entry_checks.outcome import Accepted, Queried, Refused
from core.readings.stance import STATEMENTS

HELD_BACK = "will hold the verdict back"


class TestWalkRound:
    """Limits of 49 CFR 570.7 and 570.60; test_against_regulation tests the figures."""

    def test_play_within_the_limit_is_accepted(self):
        document = {"walk_round": {"steering_wheel_diameter": "16 in"}}
        assert check("walk_round.rim_play", "1 1/4", document) == Accepted("1 1/4 in")

    def test_play_over_the_limit_will_hold_the_verdict_back(self):
        document = {"walk_round": {"steering_wheel_diameter": "16 in"}}
        outcome = check("walk_round.rim_play", "2 1/8", document)
        assert isinstance(outcome, Queried)
        assert outcome.value == "2 1/8 in"
        assert "2 1/8 in at the rim is over the 2 in of 49 CFR 570.7(a)" in outcome.message
        assert HELD_BACK in outcome.message

    def test_the_steering_wheel_entered_after_the_play_is_queried(self):
        document = {"walk_round": {"rim_play": "2 1/8 in"}}
        path = "walk_round.steering_wheel_diameter"
        assert HELD_BACK in check(path, "16", document).message
        assert check(path, "18", document) == Accepted("18 in")

    def test_the_limit_of_linkage_play_depends_on_weight_and_rim(self, profile, heavy):
        document = {"walk_round": {"rim_size": "22 1/2 in"}}
        outcome = check("walk_round.linkage_play", "3/8", document, profile)
        assert "1/4 in of 49 CFR 570.7(b)" in outcome.message
        assert check("walk_round.linkage_play", "3/8", document, heavy) == Accepted("3/8 in")
        outcome = check("walk_round.linkage_play", "5/8", document, heavy)
        assert "1/2 in of 49 CFR 570.60(b)" in outcome.message

    def test_the_weight_in_the_document_comes_before_that_of_the_profile(self, profile, heavy):
        walk_round = {"rim_size": "22 1/2 in"}
        light = {"walk_round": walk_round | {"over_10000_lb": False}}
        outcome = check("walk_round.linkage_play", "3/8", light, heavy)
        assert "1/4 in of 49 CFR 570.7(b)" in outcome.message
        over = {"walk_round": walk_round | {"over_10000_lb": True}}
        outcome = check("walk_round.linkage_play", "5/8", over, profile)
        assert "1/2 in of 49 CFR 570.60(b)" in outcome.message

    @pytest.mark.parametrize(
        ("path", "answer", "words"),
        [
            ("walk_round.rim_play", "-1", "cannot be negative"),
            ("walk_round.rim_play", "100", "too large to be true: 0 in to 8 in is usual"),
            ("walk_round.linkage_play", "loose", "length"),
            ("walk_round.steering_wheel_diameter", "0", "more than 0"),
            ("walk_round.steering_wheel_diameter", "12; 13", "single one"),
            ("walk_round.joints.track_bar_axle", "wobbly", "tight, loose, not checked"),
        ],
    )
    def test_an_impossible_answer_is_refused(self, path, answer, words):
        outcome = check(path, answer, {})
        assert isinstance(outcome, Refused)
        assert words in outcome.message

    def test_an_odd_steering_wheel_is_queried(self):
        outcome = check("walk_round.steering_wheel_diameter", "30", {})
        assert isinstance(outcome, Queried)
        assert "12 in to 24 in is usual" in outcome.message

    def test_a_loose_joint_a_bolt_or_a_tyre_will_hold_the_verdict_back(self):
        joint = "walk_round.joints.track_bar_axle"
        assert check(joint, "tight", {}) == Accepted("tight")
        assert check(joint, "not checked", {}) == Accepted("not checked")
        assert HELD_BACK in check(joint, "loose", {}).message
        for path in ("walk_round.bolts_torqued", "walk_round.tyres_alike"):
            assert check(path, True, {}) == Accepted(True)
            assert HELD_BACK in check(path, False, {}).message


class TestStance:
    @pytest.mark.parametrize("statement", STATEMENTS)
    def test_yes_is_accepted(self, statement):
        assert check(f"stance.{statement}", "yes", {}) == Accepted(True)

    @pytest.mark.parametrize(
        "statement", [name for name in STATEMENTS if name != "wheels_on_ground"]
    )
    def test_no_will_hold_the_verdict_back(self, statement):
        outcome = check(f"stance.{statement}", False, {})
        assert isinstance(outcome, Queried)
        assert outcome.value is False
        assert HELD_BACK in outcome.message

    def test_a_vehicle_hanging_on_a_two_post_lift_is_refused(self):
        outcome = check("stance.wheels_on_ground", "no", {})
        assert isinstance(outcome, Refused)
        assert "two-post lift" in outcome.message
        assert "on its wheels" in outcome.message

    def test_ride_heights_that_differ_are_queried(self, profile):
        # common practice, no source: up to 1/2 in
        document = {"stance": {"ride_height": {"left": "21 3/8 in"}}}
        path = "stance.ride_height.right"
        assert check(path, "21 1/4", document, profile) == Accepted("21 1/4 in")
        assert check(path, "20 7/8", document, profile) == Accepted("20 7/8 in")
        outcome = check(path, "20 3/4", document, profile)
        assert isinstance(outcome, Queried)
        assert "right side stands 5/8 in lower" in outcome.message

    def test_an_impossible_ride_height_is_refused_and_an_unusual_one_queried(self, profile):
        assert isinstance(check("stance.ride_height.left", "0", {}, profile), Refused)
        assert isinstance(check("stance.ride_height.left", "60", {}, profile), Queried)


class TestLayout:
    def test_a_layout_that_differs_from_the_profiles_is_queried(self, profile):
        assert check("layout.steering", "knuckle", {}, profile) == Accepted("knuckle")
        outcome = check("layout.steering", "inverted-y", {}, profile)
        assert isinstance(outcome, Queried)
        assert "coil-crossover is for knuckle" in outcome.message


class TestBentBar:
    DOCUMENT = {"readings": {"track_bar": {"slope": ["8 deg"]}}}

    def test_a_bent_bar_with_a_slope_read_is_queried(self):
        outcome = check("readings.track_bar.bent", True, self.DOCUMENT)
        assert isinstance(outcome, Queried)
        assert "The slope that was read will not count." in outcome.message

    def test_a_straight_bar_and_a_bar_without_a_slope_are_accepted(self):
        assert check("readings.track_bar.bent", False, self.DOCUMENT) == Accepted(False)
        assert check("readings.drag_link.bent", True, self.DOCUMENT) == Accepted(True)
