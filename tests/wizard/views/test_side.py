"""The side view as data: measured and assumed places, and the axle at some heave."""

import pytest

from core.documents.document import with_value
from core.documents.record import read_document
from core.kinematics.pivots import GuideKind
from core.kinematics.places import axle_pose
from core.profiles.profile import load_profile
from core.text.quantity import INCH
from core.verdict.assess import assess
from tests.demo import fg_1
from wizard.locations import DEMO_SESSIONS, PROFILES
from wizard.views.side import SHAFT, side_of, side_of_answers, side_pose_of

PROFILE = load_profile("coil-crossover", [PROFILES])


def answers(**changes):
    document = {"layout": {"steering": "knuckle", "guide": "radius-arms"}}
    for path, value in changes.items():
        document = with_value(document, path.replace("__", "."), value)
    return document


class TestAnswers:
    def test_what_was_not_measured_stands_where_the_profile_assumes_it(self):
        picture = side_of_answers(answers(), PROFILE, "readings.guide.frame.height")
        assert picture.guide is GuideKind.RADIUS_ARMS
        assert picture.pivots["guide.frame"] == pytest.approx((36 * INCH, 18 * INCH))
        assert picture.hub == pytest.approx((0.0, 16 * INCH))
        assert picture.assumed == {"guide.frame"}
        assert picture.asked_reading == "guide.frame.height"

    def test_the_front_is_on_the_left(self):
        document = answers(
            readings__guide__frame__height=["17 in"], readings__guide__frame__station=["-40 in"]
        )
        picture = side_of_answers(document, PROFILE)
        assert picture.pivots["guide.frame"] == pytest.approx((40 * INCH, 17 * INCH))
        assert not picture.assumed

    def test_a_guide_that_is_not_known_has_no_pivots(self):
        assert side_of_answers({}, PROFILE).pivots == {}
        assert side_of_answers(answers(layout__guide="nonsense"), PROFILE).pivots == {}

    def test_without_a_profile_only_measured_pivots_are_drawn(self):
        assert side_of_answers(answers(), None).pivots == {}

    def test_a_lengthwise_drag_link_hangs_from_its_pitman_arm(self):
        document = answers(
            layout__steering="fore-aft",
            layout__pitman="down",
            readings__steering__pitman_arm=["7 in"],
            readings__drag_link__frame__height=["24 in"],
            readings__drag_link__frame__station=["30 in"],
        )
        picture = side_of_answers(document, PROFILE)
        assert picture.pivots["drag_link.frame"] == pytest.approx((-30 * INCH, 24 * INCH))
        assert picture.pivots[SHAFT] == pytest.approx((-30 * INCH, 31 * INCH))
        assert picture.assumed == {"guide.frame", "drag_link.axle"}


class TestVerdict:
    @pytest.fixture(scope="class")
    def verdict(self):
        path = fg_1.LIFTED.path_in(DEMO_SESSIONS)
        return assess(read_document(path), lambda name: load_profile(name, [PROFILES]))

    def test_a_measured_vehicle_has_no_assumed_pivots(self, verdict):
        picture = side_of(verdict)
        assert picture.pivots.keys() == {"guide.frame"}
        assert not picture.assumed

    def test_the_axle_turns_about_the_frame_pivot_of_radius_arms(self, verdict):
        picture, linkage = side_of(verdict), verdict.measured.linkage
        pose = side_pose_of(axle_pose(linkage, {}, 50.0), picture)
        assert pose.pivots["guide.frame"] == picture.pivots["guide.frame"]
        assert pose.hub[1] == pytest.approx(picture.hub[1] + 50.0)
        assert pose.pitch < 0  # the arms run back: its top turns back in bump
        frame = picture.pivots["guide.frame"]

        def arm(hub):
            return (hub[0] - frame[0]) ** 2 + (hub[1] - frame[1]) ** 2

        assert arm(pose.hub) == pytest.approx(arm(picture.hub))
