"""Arms, balls and the joint compared with the drag link. Common practice, no source."""

import pytest

from core.entry_checks.check import check
from core.entry_checks.outcome import Accepted, Queried, Refused

from .conftest import built

JOINT = "readings.tie_rod.joint_from_far_ball"


class TestArms:
    def test_a_ball_on_the_wrong_side_of_the_axle_is_refused(self, document, profile):
        outcome = check("readings.drag_link.axle.station", "-6", document, profile)
        assert isinstance(outcome, Refused)
        assert "cannot point ahead" in outcome.message

    def test_an_arm_that_points_away_from_its_ball_is_refused(self, document, profile):
        assert check("layout.arm", "ahead", document, profile) == Accepted("ahead")
        outcome = check("layout.arm", "behind", document, profile)
        assert isinstance(outcome, Refused)
        assert "6 1/2 in" in outcome.message

    @pytest.mark.parametrize(
        ("side", "station", "place"),
        [
            ("behind", "-1 in", "5 1/2 in ahead of the axle"),
            ("behind", "-12 in", "5 1/2 in behind the axle"),
            ("ahead", "1 in", "5 1/2 in behind the axle"),
            ("ahead", "12 in", "5 1/2 in ahead of the axle"),
        ],
    )
    def test_a_kingpin_away_from_the_axle_is_queried(self, side, station, place, profile):
        document = {
            "layout": {"arm": side},
            "readings": {"drag_link": {"axle": {"station": [station]}}},
        }
        outcome = check("readings.steering.arm", "6 1/2", document, profile)
        assert isinstance(outcome, Queried)
        assert f"the kingpin would stand {place}" in outcome.message

    @pytest.mark.parametrize("arm", ["steering.arm", "steering.pitman_arm", "tie_rod.near_arm"])
    def test_an_arm_longer_than_half_the_drag_link_is_refused(self, arm, inverted_y):
        document = built({"layout.steering": "inverted-y"})
        outcome = check(f"readings.{arm}", "20", document, inverted_y)
        assert isinstance(outcome, Refused)
        assert "a drag link of 38 1/4 in" in outcome.message


class TestInvertedY:
    @pytest.fixture
    def document(self):
        return built(
            {
                "layout.steering": "inverted-y",
                "readings.drag_link.length": ["38 1/4 in"],
                "readings.tie_rod.near.offset": ["11 in"],
            }
        )

    def test_a_joint_on_the_drag_link_is_accepted(self, document, inverted_y):
        assert check(JOINT, "9", document, inverted_y) == Accepted(["9 in"])

    def test_a_joint_beyond_the_drag_link_is_refused(self, document, inverted_y):
        outcome = check(JOINT, "39", document, inverted_y)
        assert isinstance(outcome, Refused)
        assert "the drag link is 38 1/4 in long" in outcome.message

    def test_a_near_ball_beyond_the_far_ball_is_refused(self, document, inverted_y):
        outcome = check("readings.tie_rod.near.offset", "60", document, inverted_y)
        assert isinstance(outcome, Refused)
        assert "beyond the far ball" in outcome.message

    def test_a_near_ball_of_another_layout_is_ignored(self, profile):
        document = built({"readings.tie_rod.near.offset": ["60 in"]})
        outcome = check("readings.drag_link.axle.offset", "56", document, profile)
        assert outcome == Accepted(["56 in"])


@pytest.mark.parametrize(("side", "is_queried"), [("left", False), ("right", True)])
def test_a_drag_link_starts_on_the_side_of_the_steering_box(side, is_queried, profile):
    """Mirrored offsets close as well as the right ones; only this shows them."""
    document = {
        "layout": {"steering": "knuckle", "steering_box": side},
        "readings": {"drag_link": {"frame": {"offset": ["20 in"]}}},
    }
    outcome = check("readings.drag_link.axle.offset", "56", document, profile)
    assert isinstance(outcome, Queried) == is_queried
    if is_queried:
        assert "Look at the signs of all offsets." in outcome.message


def test_a_lengthwise_drag_link_that_would_run_across_is_queried(profile):
    document = built({"layout.steering": "fore-aft", "layout.arm": "outboard"})
    outcome = check("layout.steering", "fore-aft", document, profile)
    assert isinstance(outcome, Queried)
    outcome = check("readings.drag_link.frame.station", "-30", document)
    assert isinstance(outcome, Queried)
    assert "run 38 in across and only 36 1/2 in lengthwise" in outcome.message
