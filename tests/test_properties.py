"""Properties of every geometry: mirror images, scale, the datum line, the order of readings."""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.kinematics.linkage import Linkage
from core.kinematics.motion import motion_at, steering_wheel_angle
from core.kinematics.roll_centre import roll_centre_height
from core.kinematics.series import derivatives
from core.uncertainty.measured_linkage import adjusted
from core.verdict.curves import peak_values, working_heaves
from core.verdict.rules import length_ratio, lengths, parallel_angle, slopes
from core.verdict.verdict import evaluate
from tests.geometries import (
    LAYOUTS,
    as_read,
    document_of,
    random_linkage,
    session_of,
    true_readings,
)

seeds = st.integers(0, 2**32 - 1)
layouts = st.sampled_from(LAYOUTS)
heaves = st.floats(-80, 80)
rolls = st.floats(-8, 8).map(np.radians)


@st.composite
def linkages(draw):
    return random_linkage(np.random.default_rng(draw(seeds)), draw(layouts))


@st.composite
def measured_vehicles(draw):
    """A linkage with a reading of everything that can be taken."""
    rng = np.random.default_rng(draw(seeds))
    linkage = random_linkage(rng, draw(layouts), same_side=True)
    return linkage, as_read(true_readings(linkage, datum=700.0), rng)


def mirrored(linkage: Linkage) -> Linkage:
    left_to_right = np.array([1.0, -1.0, 1.0])
    other_side = replace(linkage, far_side=-linkage.far_side)
    return other_side.with_pivots(
        {name: linkage.pivot(name) * left_to_right for name in linkage.pivots}
    )


def scaled(linkage: Linkage, factor: float) -> Linkage:
    sizes = ("arm", "pitman_arm", "near_arm", "joint_from_far_ball", "hub_height")
    return replace(
        linkage.with_pivots({name: linkage.pivot(name) * factor for name in linkage.pivots}),
        **{name: getattr(linkage, name) * factor for name in sizes},
    )


@given(linkages(), heaves, rolls)
def test_a_mirror_image_changes_only_signs(linkage, heave, roll):
    """The frame ends change sides, and the steer of the left wheel becomes that of the right."""
    image = mirrored(linkage)
    motion, mirror_motion = motion_at(linkage, heave, roll), motion_at(image, heave, -roll)
    close = {"abs": 1e-12, "nan_ok": True}
    assert mirror_motion.axle_shift == pytest.approx(-motion.axle_shift, abs=1e-9)
    assert mirror_motion.far_steer == pytest.approx(-motion.far_steer, **close)
    assert mirror_motion.near_steer == pytest.approx(-motion.near_steer, **close)
    assert mirror_motion.steer == pytest.approx(-motion.steer, **close)
    assert mirror_motion.toe_in_change == pytest.approx(motion.toe_in_change, **close)
    swing = steering_wheel_angle(linkage, heave, roll)
    assert steering_wheel_angle(image, heave, -roll) == pytest.approx(
        -swing, abs=1e-10, nan_ok=True
    )
    np.testing.assert_allclose(slopes(image), -slopes(linkage), atol=1e-15)
    np.testing.assert_array_equal(lengths(image), lengths(linkage))
    assert roll_centre_height(image) == pytest.approx(roll_centre_height(linkage))
    assert derivatives(image).gradient == pytest.approx(-derivatives(linkage).gradient)
    assert derivatives(image).curvature == pytest.approx(-derivatives(linkage).curvature)


@given(linkages(), heaves, rolls, st.floats(0.1, 10))
def test_scaling_all_lengths_keeps_the_angles(linkage, heave, roll, factor):
    small, large = (
        motion_at(linkage, heave, roll),
        motion_at(scaled(linkage, factor), heave * factor, roll),
    )
    assert large.axle_shift == pytest.approx(small.axle_shift * factor, abs=1e-8)
    assert large.steer == pytest.approx(small.steer, abs=1e-11, nan_ok=True)
    assert large.toe_in_change == pytest.approx(small.toe_in_change, abs=1e-11, nan_ok=True)
    swing = steering_wheel_angle(linkage, heave, roll)
    assert steering_wheel_angle(scaled(linkage, factor), heave * factor, roll) == pytest.approx(
        swing, abs=1e-9, nan_ok=True
    )
    assert parallel_angle(scaled(linkage, factor)) == pytest.approx(parallel_angle(linkage))
    assert length_ratio(scaled(linkage, factor)) == pytest.approx(length_ratio(linkage))
    gradient = derivatives(linkage).gradient
    if factor >= 1:  # the steps of the differences do not shrink with the vehicle
        scaled_gradient = derivatives(scaled(linkage, factor)).gradient
        assert scaled_gradient == pytest.approx(gradient / factor, rel=1e-6, abs=1e-10)


@given(linkages())
def test_at_ride_height_the_axle_has_not_moved(linkage):
    motion = motion_at(linkage, 0.0)
    for value in (motion.axle_shift, motion.steer, motion.toe_in_change):
        assert value == pytest.approx(0.0, abs=1e-10)
    assert steering_wheel_angle(linkage, 0.0) == pytest.approx(0.0, abs=1e-9)


@given(measured_vehicles(), st.floats(-1500, 1500))
def test_moving_the_datum_line_changes_nothing(vehicle, aside):
    linkage, readings = vehicle
    moved_readings = {
        name: value + aside if name.endswith("offset") else value
        for name, value in readings.items()
    }
    verdict = evaluate(session_of(document_of(linkage, readings)), 0)
    moved = evaluate(session_of(document_of(linkage, moved_readings)), 0)
    assert moved.overall == verdict.overall
    assert moved.rules.parallel.value == pytest.approx(verdict.rules.parallel.value, abs=1e-9)
    assert moved.rules.parallel.u == pytest.approx(verdict.rules.parallel.u, rel=1e-6)
    assert moved.steer.ruling.value == pytest.approx(verdict.steer.ruling.value, abs=1e-9)
    assert moved.roll_centre_height == pytest.approx(verdict.roll_centre_height, abs=1e-6)
    np.testing.assert_allclose(moved.sweep.steer, verdict.sweep.steer, atol=1e-9)
    np.testing.assert_allclose(moved.articulation.steer, verdict.articulation.steer, atol=1e-9)
    assert moved.adjustment.chi_square == pytest.approx(verdict.adjustment.chi_square, abs=1e-6)


@given(measured_vehicles(), st.randoms(use_true_random=False))
def test_the_order_of_readings_changes_nothing(vehicle, random):
    linkage, readings = vehicle
    repeats = {name: [value, value + 0.002, value - 0.001] for name, value in readings.items()}
    session = session_of(document_of(linkage, repeats))
    shuffled = list(session.readings)
    random.shuffle(shuffled)
    reordered = [replace(reading, repeats=reading.repeats[::-1]) for reading in shuffled]
    before = adjusted(session)
    after = adjusted(session, reordered)
    np.testing.assert_allclose(after.points, before.points, rtol=0, atol=1e-8)
    np.testing.assert_allclose(after.covariance, before.covariance, rtol=0, atol=1e-8)
    by_name = {item.reading.name: item for item in after.items}
    for item in before.items:
        assert by_name[item.reading.name].residual == pytest.approx(item.residual, abs=1e-8)


@given(linkages())
def test_peaks_agree_with_the_model_at_41_heaves(linkage):
    """The polynomial through a few nodes agrees with the model over the working travel."""
    limits = session_of(document_of(linkage, true_readings(linkage))).limits
    motion = motion_at(linkage, working_heaves(limits))
    steer, toe = peak_values(linkage, limits)
    assert steer == pytest.approx(np.abs(motion.steer).max(), abs=1e-6)
    assert toe == pytest.approx(np.abs(motion.toe_in_change).max(), abs=1e-6)


@given(
    st.lists(linkages().filter(lambda linkage: linkage.layout == "knuckle"), min_size=2, max_size=4)
)
def test_many_geometries_at_once_agree_with_each_alone(several):
    stacked = replace(
        several[0],
        **{
            name: np.stack([np.asarray(getattr(linkage, name), dtype=float) for linkage in several])
            for name in (
                "track_bar_frame",
                "track_bar_axle",
                "drag_link_frame",
                "drag_link_axle",
                "arm",
                "pitman_arm",
                "hub_height",
            )
        },
    )
    same_side = [
        replace(linkage, arm_direction=several[0].arm_direction, far_side=several[0].far_side)
        for linkage in several
    ]
    heave = np.linspace(-60, 60, 5)
    together = motion_at(stacked.with_heave_axis(), heave, 0.03)
    for row, linkage in enumerate(same_side):
        alone = motion_at(linkage, heave, 0.03)
        np.testing.assert_allclose(together.steer[row], alone.steer, atol=1e-14)
        np.testing.assert_allclose(together.axle_shift[row], alone.axle_shift, atol=1e-10)
