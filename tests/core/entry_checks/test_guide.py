"""The axle's guide: contradictions are queried with both readings in view."""

import pytest

from core.documents.document import with_value
from core.entry_checks.check import check
from core.entry_checks.outcome import Accepted, Queried, Refused
from core.kinematics.pivots import GUIDE_PIVOTS, GuideKind
from core.profiles.profile import load_profile
from core.text.quantity import INCH

from .conftest import SHIPPED, built

FRAME = "readings.guide.frame"
RADIUS_ARMS = {
    "layout.guide": "radius-arms",
    f"{FRAME}.height": ["16 in"],
    f"{FRAME}.station": ["-36 in"],
}
TWO_ARMS = {
    "layout.guide": "two-arms",
    "readings.guide.lower_frame.height": ["16 in"],
    "readings.guide.lower_frame.station": ["-24 in"],
    "readings.guide.lower_axle.height": ["12 1/2 in"],
    "readings.guide.lower_axle.station": ["-1 in"],
    "readings.guide.upper_frame.height": ["22 in"],
    "readings.guide.upper_frame.station": ["-17 in"],
    "readings.guide.upper_axle.height": ["20 in"],
    "readings.guide.upper_axle.station": ["-1 in"],
}
LEAF = {
    "layout.guide": "leaf",
    "readings.guide.eye.height": ["20 in"],
    "readings.guide.eye.station": ["22 in"],
    "readings.guide.seat.height": ["19 in"],
}


class TestRadiusArms:
    def test_arms_that_run_back_are_accepted(self, profile):
        outcome = check(f"{FRAME}.station", "-36", built(RADIUS_ARMS), profile)
        assert outcome == Accepted(["-36 in"])

    def test_arms_that_run_ahead_are_queried(self, profile):
        outcome = check(f"{FRAME}.station", "36", built(RADIUS_ARMS), profile)
        assert isinstance(outcome, Queried)
        assert "36 in ahead of the axle" in outcome.message
        assert "Behind the axle counts minus" in outcome.message

    def test_so_is_the_kind_of_guide_that_is_answered_afterwards(self, profile):
        document = built({**RADIUS_ARMS, f"{FRAME}.station": ["36 in"]})
        assert isinstance(check("layout.guide", "radius-arms", document, profile), Queried)
        assert check("layout.guide", "leaf", document, profile) == Accepted("leaf")


class TestTwoArms:
    @pytest.mark.parametrize("path", [path for path in TWO_ARMS if path.startswith("readings")])
    def test_arms_of_a_usual_axle_are_accepted(self, profile, path):
        text = TWO_ARMS[path][0]
        assert check(path, text, built(TWO_ARMS), profile) == Accepted([text])

    def test_arms_to_opposite_sides_are_queried(self, profile):
        path = "readings.guide.upper_frame.station"
        outcome = check(path, "17", built(TWO_ARMS), profile)
        assert isinstance(outcome, Queried)
        document = built({**TWO_ARMS, path: ["17 in"]})
        outcome = check("layout.guide", "two-arms", document, profile)
        assert isinstance(outcome, Queried)
        assert "the lower arm runs 23 in back" in outcome.message
        assert "the upper arm runs 18 in ahead" in outcome.message

    def test_an_upper_arm_under_the_lower_one_is_queried(self, profile):
        outcome = check("readings.guide.upper_axle.height", "12", built(TWO_ARMS), profile)
        assert isinstance(outcome, Queried)
        document = built(TWO_ARMS, without=["session.profile"])
        outcome = check("readings.guide.upper_axle.height", "12", document)
        assert isinstance(outcome, Queried)
        assert "upper arm's axle end (12 in)" in outcome.message
        assert "lower arm's axle end (12 1/2 in)" in outcome.message
        assert "Were the two swapped?" in outcome.message

    def test_an_arm_with_both_ends_in_one_place_is_refused(self, profile):
        document = built({**TWO_ARMS, "readings.guide.lower_frame.height": ["13 in"]})
        outcome = check("readings.guide.lower_frame.station", "-2", document, profile)
        assert isinstance(outcome, Refused)
        assert "Was one of them typed twice?" in outcome.message


class TestLeafSprings:
    def test_a_seat_near_the_axle_is_accepted(self, profile):
        outcome = check("readings.guide.seat.station", "0", built(LEAF), profile)
        assert outcome == Accepted(["0 in"])

    def test_a_seat_at_the_eye_is_refused(self, profile):
        outcome = check("readings.guide.seat.station", "21", built(LEAF), profile)
        assert isinstance(outcome, Refused)


class TestCastorAtTwoHeights:
    """Arms of 36 in that are level at the hub pitch the axle by 1/36 rad, 1.59 deg, an inch."""

    CASTOR = "readings.guide.castor"

    def test_castor_that_agrees_with_the_arms_is_accepted(self, profile):
        outcome = check(self.CASTOR, "5 at 0; 8 at 2", built(RADIUS_ARMS), profile)
        assert isinstance(outcome, Accepted)

    @pytest.mark.parametrize("typed", ["5 at 0; 5 at 2", "8 at 0; 5 at 2"])
    def test_castor_that_disagrees_is_queried_with_both(self, profile, typed):
        outcome = check(self.CASTOR, typed, built(RADIUS_ARMS), profile)
        assert isinstance(outcome, Queried)
        assert "but the arms give -1.59 deg/in" in outcome.message

    def test_the_arms_are_queried_where_castor_was_read_first(self, profile):
        rows = [
            {"heave": "0 in", "castor": "5 deg"},
            {"heave": "2 in", "castor": "8 deg"},
        ]
        document = built({**RADIUS_ARMS, self.CASTOR: rows})
        assert isinstance(check(f"{FRAME}.station", "-36", document, profile), Accepted)
        outcome = check(f"{FRAME}.station", "-20", document, profile)
        assert isinstance(outcome, Queried)
        assert "a pitch of -1.50 deg/in" in outcome.message

    def test_two_arms_pitch_less(self, profile):
        outcome = check(self.CASTOR, "5 at 0; 5.5 at 2", built(TWO_ARMS), profile)
        assert isinstance(outcome, Accepted)
        assert isinstance(check(self.CASTOR, "5 at 0; 9 at 2", built(TWO_ARMS), profile), Queried)

    @pytest.mark.parametrize("without", [f"{FRAME}.height", "readings.wheels.hub_height"])
    def test_arms_that_were_not_measured_wholly_say_nothing(self, profile, without):
        document = built(RADIUS_ARMS, without=[without])
        assert isinstance(check(self.CASTOR, "5 at 0; 5 at 2", document, profile), Accepted)


@pytest.mark.parametrize("name", sorted(path.stem for path in SHIPPED.glob("*.toml")))
@pytest.mark.parametrize("kind", [kind for kind in GuideKind if GUIDE_PIVOTS[kind]])
def test_the_guide_that_a_profile_assumes_raises_no_query(name, kind):
    profile = load_profile(name, [SHIPPED])
    texts = {
        reading: f"{profile.defaults.value(reading, kind) / INCH:.2f} in"
        for pivot in GUIDE_PIVOTS[kind]
        for reading in (f"{pivot}.height", f"{pivot}.station")
    }
    document = {"layout": {"guide": kind.value}, "session": {"units": "in"}}
    for reading, text in texts.items():
        document = with_value(document, f"readings.{reading}", [text])
    for reading, text in texts.items():
        assert check(f"readings.{reading}", text, document, profile) == Accepted([text])
