"""The mechanical model of the full axle, checked by itself before core is checked against it."""

from dataclasses import replace

import numpy as np
import pytest
from scipy.optimize import least_squares

from core.kinematics.linkage import Linkage
from core.kinematics.motion import motion_at
from core.kinematics.pivots import Direction, Layout
from core.readings.reading import Instruments, Reading, standard_uncertainty
from tests.full_axle import tape
from tests.full_axle.coverage import GUIDES, LAYOUTS
from tests.full_axle.moves import moved, peak_after
from tests.full_axle.rotations import pitched_and_yawed
from tests.full_axle.statics import LEVER, Pose, deflections, settled, stretch
from tests.full_axle.steering import HEAVES, INCH, peak_steer, steer
from tests.full_axle.vehicle import KNUCKLES, Vehicle
from tests.full_axle.vehicles import drawn, point

STIFF = 1e4
"""Root of the stiffness of a track bar that is a spring, relative to the bushes."""


def fleet(guide, layout="knuckle", count=40) -> Vehicle:
    return drawn(np.random.default_rng(3), guide, layout, count)


@pytest.mark.parametrize("layout", LAYOUTS)
def test_an_axle_without_arms_and_with_upright_kingpins_moves_as_in_core(layout):
    vehicle = plain(fleet("vertical", layout))
    far, near = steer(vehicle, HEAVES)
    assert np.abs(far - near).max() < 1e-9
    points = vehicle.points
    for i in range(vehicle.count):
        linkage = Linkage(
            layout=Layout(layout),
            track_bar_frame=points["track_bar.frame"][i],
            track_bar_axle=points["track_bar.axle"][i],
            drag_link_frame=points["drag_link.frame"][i],
            drag_link_axle=points["drag_link.axle"][i],
            arm=tape.steering_arm(vehicle)[i],
            arm_direction=Direction.AHEAD if vehicle.arm_side[i] > 0 else Direction.BEHIND,
            pitman_arm=150.0,
            pitman_direction=Direction.AHEAD,
            ratio=16.0,
            far_side=int(vehicle.far_side[i]),
            hub_height=vehicle.hub_height[i],
        )
        assert np.abs(motion_at(linkage, HEAVES).steer - far[i]).max() < np.radians(1e-6)


def plain(vehicle: Vehicle) -> Vehicle:
    """The vehicles with upright kingpins and with steering arms that point straight along."""
    upright = np.broadcast_to([0.0, 0.0, 1.0], (vehicle.count, 3))
    points = dict(vehicle.points)
    ball = points["drag_link.axle" if vehicle.layout == "knuckle" else "tie_rod.far"]
    arm = point(vehicle.arm_side * 165.0, 0.0, 0.0)
    points["kingpin.far"] = ball - arm
    points["kingpin.near"] = points["kingpin.far"] * [1, -1, 1]
    points["tie_rod.far"] = points["kingpin.far"] + arm
    points["tie_rod.near"] = points["kingpin.near"] + arm
    return replace(vehicle.with_points(points), kingpins=dict.fromkeys(KNUCKLES, upright))


@pytest.mark.parametrize("guide", GUIDES)
def test_the_axle_settles_where_scipy_finds_least_energy(guide):
    """The track bar is a spring here, ten thousand times as stiff as a bush squared."""
    for i in range(4):
        vehicle = fleet(guide).at(i)
        for heave in (-50.0, 50.0):

            def pose(unknown: np.ndarray, vehicle=vehicle, heave=heave) -> Pose:
                ahead, across, pitch, yaw = unknown
                rotation = pitched_and_yawed(np.array([[pitch]]) / LEVER, np.array([[yaw]]) / LEVER)
                shift = np.array([[[ahead, across, heave]]])
                return Pose(vehicle.middle[:, None], shift, rotation)

            def springs(unknown: np.ndarray, vehicle=vehicle, pose=pose) -> np.ndarray:
                bar = stretch(vehicle, pose(unknown), "track_bar.frame", "track_bar.axle")
                return np.append(deflections(vehicle, pose(unknown)).ravel(), STIFF * bar)

            expected = pose(least_squares(springs, np.zeros(4), xtol=1e-15, ftol=1e-15).x)
            reached = settled(vehicle, np.array([heave]))
            assert np.abs(reached.shift - expected.shift).max() < 1e-4
            assert np.abs(reached.rotation - expected.rotation).max() < 1e-7


def test_radius_arms_pitch_the_axle_by_travel_over_length():
    vehicle = fleet("radius-arms")
    pose = settled(vehicle, np.array([2 * INCH]))
    arm = -np.mean([vehicle.points[f"guide.frame.{side}"] for side in ("left", "right")], axis=0)
    # The top of the axle goes back in bump, by the angle whose sine is travel over length.
    pitch = np.arcsin(-pose.rotation[:, 0, 2, 0])
    assert np.allclose(-pitch, 2 * INCH / arm[:, 0], rtol=0.03)
    assert np.degrees(-pitch).min() > 2.8


def test_raising_the_frame_of_an_axle_without_arms_raises_both_frame_ends():
    vehicle = fleet("vertical")
    ends = ("track_bar.frame", "drag_link.frame")
    raised = moved(vehicle, [("ride_height", 40.0)])
    expected = moved(vehicle, [(end, 40.0) for end in ends])
    for name, place in expected.points.items():
        assert np.allclose(raised.points[name], place, atol=1e-9)
    assert np.allclose(peak_after(vehicle, [("ride_height", 40.0)]), peak_steer(expected))


def test_raising_the_frame_on_radius_arms_takes_castor_away():
    vehicle = fleet("radius-arms")
    castor = tape.true_values(vehicle)["kingpin.castor"]
    lifted = tape.true_values(moved(vehicle, [("ride_height", 2 * INCH)]))["kingpin.castor"]
    lost = np.degrees(castor - lifted)
    assert np.all((-lost > -3.7) & (-lost < -2.7))


@pytest.mark.parametrize("guide", GUIDES)
def test_raising_the_frame_and_lowering_it_again_changes_nothing(guide):
    vehicle = fleet(guide)
    again = moved(vehicle, [("ride_height", 50.0), ("ride_height", -50.0)])
    assert np.allclose(peak_steer(vehicle), peak_steer(again), atol=np.radians(1e-3))


@pytest.mark.parametrize("guide", GUIDES)
@pytest.mark.parametrize("layout", LAYOUTS)
def test_vehicles_lie_on_both_sides_of_the_limit(guide, layout):
    peaks = np.degrees(peak_steer(fleet(guide, layout, 300)))
    assert 0.3 < np.mean(peaks < 0.5) < 0.7
    assert 1.2 < peaks.max() < 4
    assert np.mean(peaks > 2) < 0.05


@pytest.mark.parametrize(
    ("name", "kind"),
    [
        ("track_bar.frame.height", "height"),
        ("track_bar.frame.offset", "offset"),
        ("guide.frame.station", "station"),
        ("drag_link.length", "length"),
        ("braces.axle_ends", "brace"),
        ("drag_link.slope", "slope"),
        ("kingpin.castor", "angle"),
    ],
)
def test_errors_of_the_tape_are_as_wide_as_core_claims(name, kind):
    count = 40_000
    rng = np.random.default_rng(5)
    true = rng.uniform(0.05, 0.2, count) if kind in ("slope", "angle") else np.full(count, 500.0)
    if kind not in ("slope", "angle"):
        true += rng.uniform(0, 2, count)
    read = tape.read({name: true}, rng)[name]
    instruments = Instruments(tape.TAPE, tape.SIGHTING, tape.FLOOR, tape.ANGLE_FINDER, tape.SEATING)
    claimed = standard_uncertainty(Reading(name, kind, (500.0,) * read.shape[1]), instruments)
    assert np.std(read.mean(axis=1) - true) == pytest.approx(claimed, rel=0.02)
