import pytest

from core.entry_checks.check import check
from core.entry_checks.outcome import Accepted, Queried, Refused
from core.readings.stance import STATEMENTS

HELD_BACK = "will hold the verdict back"


class TestWalkRound:
    """Limits of 49 CFR 570.7 and 570.60; those figures are tested in test_against_regulation."""

    def test_play_within_the_limit(self):
        document = {"walk_round": {"steering_wheel_diameter": "16 in"}}
        assert check("walk_round.rim_play", "1 1/4", document) == Accepted("1 1/4 in")

    def test_play_over_the_limit_says_what_it_means(self):
        document = {"walk_round": {"steering_wheel_diameter": "16 in"}}
        outcome = check("walk_round.rim_play", "2 1/8", document)
        assert isinstance(outcome, Queried)
        assert outcome.value == "2 1/8 in"
        assert "2 1/8 in at the rim is over the 2 in of 49 CFR 570.7(a)" in outcome.message
        assert HELD_BACK in outcome.message

    def test_the_wheel_entered_after_the_play_says_the_same(self):
        document = {"walk_round": {"rim_play": "2 1/8 in"}}
        path = "walk_round.steering_wheel_diameter"
        assert HELD_BACK in check(path, "16", document).message
        assert check(path, "18", document) == Accepted("18 in")

    def test_linkage_play_by_the_weight_and_the_rim(self, profile, heavy):
        document = {"walk_round": {"rim_size": "22 1/2 in"}}
        outcome = check("walk_round.linkage_play", "3/8", document, profile)
        assert "1/4 in of 49 CFR 570.7(b)" in outcome.message
        assert check("walk_round.linkage_play", "3/8", document, heavy) == Accepted("3/8 in")
        outcome = check("walk_round.linkage_play", "5/8", document, heavy)
        assert "1/2 in of 49 CFR 570.60(b)" in outcome.message

    @pytest.mark.parametrize(
        ("path", "answer"),
        [
            ("walk_round.rim_play", "-1"),
            ("walk_round.rim_play", "100"),
            ("walk_round.linkage_play", "loose"),
            ("walk_round.steering_wheel_diameter", "0"),
            ("walk_round.steering_wheel_diameter", "12; 13"),
            ("walk_round.joints.track_bar_axle", "wobbly"),
        ],
    )
    def test_what_cannot_be_is_refused(self, path, answer):
        assert isinstance(check(path, answer, {}), Refused)

    def test_an_odd_steering_wheel_is_queried(self):
        outcome = check("walk_round.steering_wheel_diameter", "30", {})
        assert isinstance(outcome, Queried)
        assert "12 in to 24 in is usual" in outcome.message

    def test_joints_bolts_and_tyres(self):
        joint = "walk_round.joints.track_bar_axle"
        assert check(joint, "tight", {}) == Accepted("tight")
        assert check(joint, "not checked", {}) == Accepted("not checked")
        assert HELD_BACK in check(joint, "loose", {}).message
        for path in ("walk_round.bolts_torqued", "walk_round.tyres_alike"):
            assert check(path, True, {}) == Accepted(True)
            assert HELD_BACK in check(path, False, {}).message


class TestStance:
    @pytest.mark.parametrize("statement", STATEMENTS)
    def test_what_is_so_is_accepted(self, statement):
        assert check(f"stance.{statement}", "yes", {}) == Accepted(True)

    @pytest.mark.parametrize(
        "statement", [name for name in STATEMENTS if name != "wheels_on_ground"]
    )
    def test_what_is_not_will_hold_the_verdict_back(self, statement):
        outcome = check(f"stance.{statement}", False, {})
        assert isinstance(outcome, Queried)
        assert outcome.value is False
        assert HELD_BACK in outcome.message

    def test_a_vehicle_hanging_on_a_two_post_lift_is_refused(self):
        outcome = check("stance.wheels_on_ground", "no", {})
        assert isinstance(outcome, Refused)
        assert "two-post lift" in outcome.message
        assert "on its wheels" in outcome.message

    def test_ride_height_left_against_right(self, profile):
        # common practice, no source: up to 1/2 in
        document = {"stance": {"ride_height": {"left": "21 3/8 in"}}}
        path = "stance.ride_height.right"
        assert check(path, "21 1/4", document, profile) == Accepted("21 1/4 in")
        assert check(path, "20 7/8", document, profile) == Accepted("20 7/8 in")
        outcome = check(path, "20 3/4", document, profile)
        assert isinstance(outcome, Queried)
        assert "right side stands 5/8 in lower" in outcome.message

    def test_ride_height_by_itself(self, profile):
        assert isinstance(check("stance.ride_height.left", "0", {}, profile), Refused)
        assert isinstance(check("stance.ride_height.left", "60", {}, profile), Queried)


class TestLayout:
    def test_a_linkage_that_is_not_the_profiles_is_queried(self, profile):
        assert check("layout.steering", "knuckle", {}, profile) == Accepted("knuckle")
        outcome = check("layout.steering", "inverted-y", {}, profile)
        assert isinstance(outcome, Queried)
        assert "coil-crossover is for knuckle" in outcome.message

    def test_an_arm_that_points_away_from_its_ball_cannot_be(self, document, profile):
        assert check("layout.arm", "ahead", document, profile) == Accepted("ahead")
        outcome = check("layout.arm", "behind", document, profile)
        assert isinstance(outcome, Refused)
        assert "6 1/2 in" in outcome.message


class TestInstruments:
    @pytest.mark.parametrize(
        ("path", "answer", "value"),
        [
            ("instruments.tape", "1/16", "1/16 in"),
            ("instruments.floor", "0.5 mm", "0.5 mm"),
            ("instruments.angle_finder", "0.5", "0.5 deg"),
        ],
    )
    def test_what_is_usual(self, path, answer, value):
        assert check(path, answer, {}) == Accepted(value)

    @pytest.mark.parametrize(
        ("path", "answer"),
        [
            *(("instruments.sighting", "0"), ("instruments.seating", "0")),
            *(("instruments.tape", "1"), ("instruments.angle_finder", "5")),
        ],
    )
    def test_too_good_or_too_coarse_is_queried(self, path, answer):
        assert isinstance(check(path, answer, {}), Queried)

    @pytest.mark.parametrize(
        ("path", "answer"),
        [
            *(("instruments.tape", "0"), ("instruments.angle_finder", "0")),
            *(
                ("instruments.tape", "-1/16"),
                ("instruments.tape", "20"),
                ("instruments.floor", "x"),
            ),
            *(("instruments.seating", "45"), ("instruments.tape", "1/16; 1/8")),
        ],
    )
    def test_impossible_is_refused(self, path, answer):
        assert isinstance(check(path, answer, {}), Refused)
