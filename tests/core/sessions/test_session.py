from types import SimpleNamespace

import numpy as np
import pytest

from core.documents.document import with_value, without
from core.documents.entries import EntryError
from core.kinematics.pivots import Direction, GuideKind
from core.profiles.limits import Limits
from core.sessions.session import session_from
from tests.geometries import (
    INSTRUMENTS,
    document_of,
    parallel_pair,
    random_linkage,
    session_of,
    true_readings,
)

DEFAULTS = {
    "steering.arm": 170.0,
    "steering.pitman_arm": 155.0,
    "steering.ratio": 17.0,
    "travel.bump": 110.0,
    "travel.droop": 130.0,
    "vehicle.wheelbase": 2900.0,
    "wheels.hub_height": 405.0,
    "tie_rod.near_arm": 165.0,
    "tie_rod.joint_from_far_ball": 205.0,
}
PROFILE = SimpleNamespace(
    defaults=SimpleNamespace(
        value=lambda name, _guide: DEFAULTS[name], within=lambda name, _guide: 0.1 * DEFAULTS[name]
    ),
    instruments=INSTRUMENTS,
    limits=Limits(0.02, 0.15, 0.8, 0.01, 0.005, 40.0, 45.0),
    events=(),
    road=None,
    over_10000_lb=False,
)
FROM_RECORD = {
    "kingpin.castor",
    "kingpin.inclination",
    "guide.span",
    "guide.pitch_gain",
    "guide.fore_aft_gain",
}
"""Values that the documents of these tests assume themselves."""


@pytest.fixture
def document():
    linkage = parallel_pair()
    return document_of(linkage, true_readings(linkage))


def test_everything_measured_needs_no_profile(document):
    session = session_of(document)
    assert set(session.assumed) == FROM_RECORD
    assert session.dimensions["steering.arm"].value == pytest.approx(165.0)
    assert (session.bump, session.droop) == pytest.approx((101.6, 127.0))
    assert session.limits.parallel == pytest.approx(np.radians(1.5))
    assert [event.name for event in session.events] == ["dip", "hard stop"]
    assert session.events[0].speed == pytest.approx(60e6 / 3600)
    assert session.held_back_by == ()


def test_what_was_not_measured_is_assumed_and_named(document):
    for path in ("steering.arm", "steering.ratio", "travel.bump"):
        document = without(document, f"readings.{path}")
    session = session_from(without(document, "vehicle.wheelbase"), lambda _: PROFILE)
    assert set(session.assumed) - FROM_RECORD == {
        "steering.arm",
        "steering.ratio",
        "travel.bump",
        "vehicle.wheelbase",
    }
    arm = session.dimensions["steering.arm"]
    assert (arm.value, arm.u, arm.is_assumed) == (170.0, 17.0 / np.sqrt(3), True)
    assert session.dimensions["steering.ratio"].value == 17.0
    assert (session.bump, session.wheelbase) == (110.0, 2900.0)


def test_what_the_record_says_was_assumed_goes_before_the_profile(document):
    document = without(document, "readings.steering.arm")
    document = with_value(document, "assumed.steering.arm", "7 in")
    document = with_value(document, "assumed_within.steering.arm", "1 in")
    arm = session_of(document).dimensions["steering.arm"]
    assert (arm.value, arm.u) == pytest.approx((177.8, 25.4 / np.sqrt(3)))
    assert arm.is_assumed


def test_the_records_own_limits_go_before_those_of_the_profile(document):
    document = with_value(document, "limits.parallel", "3 deg")
    document = without(document, "limits.steer")
    limits = session_from(document, lambda _: PROFILE).limits
    assert limits.parallel == pytest.approx(np.radians(3.0))
    assert limits.steer == 0.01


def test_only_what_the_vehicle_has_is_asked_for(document):
    assert "tie_rod.near_arm" not in session_of(document).dimensions
    assert "guide.frame.height" not in session_of(document).dimensions
    linkage = random_linkage(np.random.default_rng(0), "inverted-y")
    inverted = session_of(document_of(linkage, true_readings(linkage)))
    assert {"tie_rod.near_arm", "tie_rod.joint_from_far_ball"} <= set(inverted.dimensions)


def test_directions_and_guide(document):
    document = with_value(document, "layout.arm", "behind")
    session = session_of(document)
    assert (session.arm, session.pitman) == (Direction.BEHIND, Direction.AHEAD)
    assert (session.guide, session.has_track_bar) == (GuideKind.UNMEASURED, True)


def test_castor_at_two_heights_gives_the_pitch_gain(document):
    rows = [{"heave": "0 in", "castor": "5.5 deg"}, {"heave": "2 in", "castor": "8.5 deg"}]
    session = session_of(with_value(document, "readings.guide.castor", rows))
    gain = session.dimensions["guide.pitch_gain"]
    assert gain.value == pytest.approx(np.radians(-3.0) / 50.8)
    # The angle finder is read twice, on the same face: no seating.
    u_twice = np.sqrt(2) * session.instruments.angle_finder / 2 / np.sqrt(3)
    assert gain.u == pytest.approx(u_twice / 50.8)
    assert not gain.is_assumed


def test_a_failed_walk_round_or_stance_holds_back(document):
    document = with_value(document, "stance.wheels_on_ground", False)
    document = with_value(document, "walk_round.joints", {"track_bar_axle": "loose"})
    assert session_of(document).held_back_by == (
        "walk_round.joints.track_bar_axle",
        "stance.wheels_on_ground",
    )


@pytest.mark.parametrize(
    ("path", "value", "place"),
    [
        ("layout.steering", "sideways", r"\[layout\] steering"),
        ("layout.arm", None, r"\[layout\] arm"),
        ("layout.guide", "springs", r"\[layout\] guide"),
        ("readings.guide.castor", [{"heave": "0 in"}], r"castor 1\] castor: is missing"),
        ("session.units", "cubits", r"\[session\] units"),
        ("session.profile", 7, r"\[session\] profile"),
        ("readings.steering.arm", ["0 in"], r"\[readings.steering\] arm"),
        ("readings.steering.ratio", "-2", r"\[readings.steering\] ratio"),
        ("readings.travel.bump", "much", r"\[readings.travel\] bump"),
        ("limits.parallel", "0 deg", r"\[limits\] parallel"),
        ("instruments.tape", "0 in", r"\[instruments\] tape"),
        ("instruments.floor", "99999999 in", r"\[instruments\] floor"),
        ("instruments.seating", "46 deg", r"\[instruments\] seating"),
        ("vehicle.wheelbase", ["118 in"], r"\[vehicle\] wheelbase"),
        ("events", "dip", "events"),
    ],
)
def test_a_faulty_entry_is_refused_with_its_place(document, path, value, place):
    changed = without(document, path) if value is None else with_value(document, path, value)
    with pytest.raises(EntryError, match=place):
        session_of(changed)


@pytest.mark.parametrize(
    ("name", "value", "place"),
    [
        ("steering.ratio", "-3", r"\[assumed.steering\] ratio"),
        ("steering.pitman_arm", "0 in", r"\[assumed.steering\] pitman_arm"),
        ("travel.bump", "-4 in", r"\[assumed.travel\] bump"),
    ],
)
def test_an_assumed_value_has_to_be_possible_too(document, name, value, place):
    changed = with_value(without(document, f"readings.{name}"), f"assumed.{name}", value)
    with pytest.raises(EntryError, match=place):
        session_of(changed)
