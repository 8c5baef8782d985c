"""Contents of the view from above."""

import pytest

from core.documents.document import with_value
from core.kinematics.pivots import Layout
from core.profiles.profile import load_profile
from wizard.locations import PROFILES
from wizard.views.above import FAR_KINGPIN, JOINT, NEAR_KINGPIN, SHAFT, above_of_answers

PROFILE = load_profile("coil-crossover", [PROFILES])


def picture(asked="", **layout):
    return above_of_answers({"layout": layout}, PROFILE, asked)


@pytest.mark.parametrize("layout", list(Layout))
def test_every_part_has_both_ends(layout):
    parts = picture(steering=layout.value).lines
    assert {"drag link", "track bar", "tie rod", "steering arm", "near arm"} <= set(parts)
    assert ("pitman arm" in parts) == (layout != Layout.FORE_AFT)  # there it points down


@pytest.mark.parametrize(("arm", "way"), [("ahead", -1), ("behind", 1)])
def test_ahead_is_down(arm, way):
    points = picture(steering="knuckle", arm=arm).points
    assert points["drag_link.axle"][1] * way > 0


def test_a_steering_box_on_the_right_mirrors_the_linkage():
    left, right = (picture(steering="knuckle", steering_box=side) for side in ("left", "right"))
    middle = sum(across for across, _ in left.hubs) / 2
    for name, (across, rear) in left.points.items():
        assert right.points[name] == pytest.approx((2 * middle - across, rear))


def test_a_lengthwise_link_steers_the_wheel_on_its_own_side():
    points = picture(steering="fore-aft", steering_box="left").points
    assert points[FAR_KINGPIN][0] > points[NEAR_KINGPIN][0]
    assert picture(steering="knuckle").points[FAR_KINGPIN][0] < points[NEAR_KINGPIN][0] + 1e-9


def test_a_measured_pivot_stands_where_it_was_measured():
    document = {"layout": {"steering": "knuckle"}}
    for kind, text in (("station", "100 mm"), ("offset", "500 mm")):
        document = with_value(document, f"readings.drag_link.frame.{kind}", [text])
    seen = above_of_answers(document, PROFILE)
    assert seen.points["drag_link.frame"] == pytest.approx((-500.0, -100.0))
    assert "drag_link.frame" not in seen.assumed
    assert "drag_link.axle" in seen.assumed
    assert seen.points[SHAFT][0] == pytest.approx(-500.0)


def test_a_vehicle_without_a_track_bar_shows_none():
    assert "track bar" not in picture(steering="knuckle", track_bar=False).lines


def test_the_joint_lies_on_the_drag_link():
    points = picture(steering="inverted-y").points
    ball, frame, joint = (points[name] for name in ("drag_link.axle", "drag_link.frame", JOINT))
    assert min(ball[0], frame[0]) < joint[0] < max(ball[0], frame[0])
