"""Results of the adjustment for each reading; test_against_least_squares checks the pivots."""

from dataclasses import replace

import numpy as np
import pytest

from core.adjustment.least_squares import DELTA_0, MissingReading, NoSolution, adjust
from core.kinematics.pivots import PIVOTS
from core.readings.reading import Reading, standard_uncertainty
from core.readings.survey import readings_in
from core.uncertainty.measured_linkage import adjusted
from tests.geometries import (
    INCH,
    INSTRUMENTS,
    as_read,
    document_of,
    parallel_pair,
    random_linkage,
    session_of,
    true_readings,
)


def adjustment_of(linkage, read):
    session = session_of(document_of(linkage, read))
    return adjusted(session)


def set_aside(readings, name):
    """The readings, of which the named one does not count."""
    return [replace(reading, counts=reading.name != name) for reading in readings]


def without(read, *ends):
    return {name: value for name, value in read.items() if not name.endswith(ends)}


HEIGHT = "track_bar.frame.height"
PIVOTS_ALONE = ("length", "slope", "frame_ends", "axle_ends", "frame_to_axle")


def test_without_redundancy_the_pivots_are_the_readings():
    linkage = random_linkage(np.random.default_rng(1), "inverted-y")
    read = without(as_read(true_readings(linkage), np.random.default_rng(2)), *PIVOTS_ALONE)
    adjustment = adjustment_of(linkage, read)
    assert adjustment.redundancy == 0
    for pivot, (x, y, z) in zip(adjustment.pivots, adjustment.points, strict=True):
        assert x == pytest.approx(read[f"{pivot}.station"], abs=1e-9)
        assert y == pytest.approx(-read[f"{pivot}.offset"], abs=1e-9)
        assert z == pytest.approx(read[f"{pivot}.height"], abs=1e-9)
    for item in adjustment.items:
        assert item.residual == pytest.approx(0.0, abs=1e-9)
        assert item.w is None
        assert item.smallest_mistake is None
    assert adjustment.closes


def test_true_readings_leave_no_residuals():
    linkage = random_linkage(np.random.default_rng(3), "knuckle")
    adjustment = adjustment_of(linkage, true_readings(linkage))
    np.testing.assert_allclose(adjustment.points[0], linkage.track_bar_frame, atol=1e-6)
    assert adjustment.chi_square == pytest.approx(0.0, abs=1e-9)
    assert adjustment.redundancy == 7  # two lengths, two slopes, three braces
    assert adjustment.closes


def test_standardized_residual_and_smallest_mistake_of_a_reading():
    """Baarda 1968: w = v / (sigma sqrt(r)), smallest mistake delta0 sigma / sqrt(r)."""
    linkage = random_linkage(np.random.default_rng(4), "knuckle")
    read = as_read(true_readings(linkage), np.random.default_rng(5))
    for item in adjustment_of(linkage, read).items:
        assert 0 < item.redundancy_number < 1
        spread = item.u * np.sqrt(item.redundancy_number)
        assert item.w == pytest.approx(item.residual / spread)
        assert item.smallest_mistake == pytest.approx(
            DELTA_0 * item.u / item.redundancy_number**0.5
        )
        assert item.u == standard_uncertainty(item.reading, INSTRUMENTS)


def u_of_sources(adjustment):
    return np.array([source.u for source in adjustment.sources])


def test_the_covariance_is_propagated_from_the_readings():
    linkage = random_linkage(np.random.default_rng(6), "inverted-y")
    adjustment = adjustment_of(linkage, as_read(true_readings(linkage), np.random.default_rng(7)))
    carried = adjustment.sensitivity * u_of_sources(adjustment) ** 2 @ adjustment.sensitivity.T
    np.testing.assert_allclose(carried, adjustment.covariance, atol=1e-9)


def test_redundant_readings_reduce_the_covariance():
    linkage = random_linkage(np.random.default_rng(8), "knuckle")
    read = true_readings(linkage)
    full, alone = adjustment_of(linkage, read), adjustment_of(linkage, without(read, *PIVOTS_ALONE))
    assert (np.diag(full.covariance) <= np.diag(alone.covariance) + 1e-9).all()
    assert np.trace(full.covariance) < 0.95 * np.trace(alone.covariance)


def test_without_stations_the_covariance_is_propagated_from_readings_and_priors():
    linkage = random_linkage(np.random.default_rng(6), "inverted-y")
    read = without(as_read(true_readings(linkage), np.random.default_rng(7)), "station")
    adjustment = adjustment_of(linkage, read)
    assert len(adjustment.priors) == 5
    priors = {source.name for source in adjustment.sources[-5:]}
    assert priors == {f"{pivot}.station" for pivot in adjustment.pivots}
    carried = adjustment.sensitivity * u_of_sources(adjustment) ** 2 @ adjustment.sensitivity.T
    np.testing.assert_allclose(carried, adjustment.covariance, rtol=1e-9, atol=1e-9)
    assert adjustment.redundancy == 7  # two lengths, two slopes, three braces


def test_without_stations_lengths_and_braces_are_observations():
    linkage = parallel_pair()
    read = without(true_readings(linkage), "station")
    assert {item.name for item in adjustment_of(linkage, read).items} == {
        name for name in read if not name.startswith(("wheels", "steering"))
    }


def test_without_redundancy_links_without_stations_stand_at_their_usual_places():
    linkage = parallel_pair(arm=165.0)
    read = without(true_readings(linkage), "station", *PIVOTS_ALONE)
    np.testing.assert_allclose(adjustment_of(linkage, read).points[:, 0], [0, 0, 165, 165])
    # The station of the steering-arm ball moves the whole drag link.
    read["drag_link.axle.station"] = 150.0
    adjustment = adjustment_of(linkage, read)
    np.testing.assert_allclose(adjustment.points[:, 0], [0, 0, 150, 150])
    assert adjustment.redundancy == 0


def test_the_uncertainty_of_a_station_that_was_not_taken_is_that_of_its_prior():
    """The mean of the track bar's stations has 5 in, their difference 2 in; u = w / sqrt(3)."""
    read = without(true_readings(parallel_pair()), "station", *PIVOTS_ALONE)
    covariance = adjustment_of(parallel_pair(), read).covariance
    frame, axle = 0, 3  # places of the x coordinates
    mean = (covariance[frame, frame] + 2 * covariance[frame, axle] + covariance[axle, axle]) / 4
    difference = covariance[frame, frame] - 2 * covariance[frame, axle] + covariance[axle, axle]
    assert mean == pytest.approx((5 * INCH) ** 2 / 3)
    assert difference == pytest.approx((2 * INCH) ** 2 / 3)


def test_lengths_check_heights_without_stations():
    linkage = parallel_pair(slope_deg=15.0)
    read = without(true_readings(linkage), "station", "slope", "ends", "to_axle")
    # A foot: the track bar is then shorter than its ends are apart.
    read["track_bar.frame.height"] += 12 * INCH
    assert not adjustment_of(linkage, read).closes


def test_a_reading_that_is_set_aside_has_no_part_in_the_pivots():
    linkage = random_linkage(np.random.default_rng(9), "knuckle")
    read = as_read(true_readings(linkage), np.random.default_rng(10))
    right, wrong = (
        readings_in(document_of(linkage, {**read, HEIGHT: read[HEIGHT] + mistake}))
        for mistake in (0.0, 5 * INCH)
    )
    first, second = (
        adjust(set_aside(readings, HEIGHT), INSTRUMENTS, PIVOTS) for readings in (right, wrong)
    )
    np.testing.assert_allclose(first.points, second.points, atol=1e-6)
    assert HEIGHT not in {item.name for item in first.items}
    assert first.redundancy == 6
    # The braces still place the pivot, but not as well as its height.
    full = adjust(right, INSTRUMENTS, PIVOTS)
    assert first.covariance[2, 2] > 4 * full.covariance[2, 2]


def test_a_reading_that_nothing_replaces_cannot_be_set_aside():
    linkage = parallel_pair()
    read = without(true_readings(linkage), *PIVOTS_ALONE)
    with pytest.raises(NoSolution):
        adjust(set_aside(readings_in(document_of(linkage, read)), HEIGHT), INSTRUMENTS, PIVOTS)


def test_readings_of_pivots_that_the_vehicle_does_not_have_are_left_out():
    linkage = parallel_pair()
    readings = readings_in(document_of(linkage, true_readings(linkage)))
    adjustment = adjust(readings, INSTRUMENTS, ("drag_link.frame", "drag_link.axle"))
    assert {item.name.partition(".")[0] for item in adjustment.items} == {"drag_link"}
    assert adjustment.redundancy == 2


def test_a_station_with_neither_reading_nor_prior_is_refused():
    linkage = parallel_pair()
    readings = readings_in(document_of(linkage, without(true_readings(linkage), "axle.station")))
    with pytest.raises(MissingReading) as refusal:
        adjust(readings, INSTRUMENTS, PIVOTS)
    assert refusal.value.name == "track_bar.axle.station"


@pytest.mark.parametrize("name", ["track_bar.axle.height", "drag_link.frame.offset"])
def test_a_missing_height_or_offset_is_refused(name):
    linkage = parallel_pair()
    read = true_readings(linkage)
    del read[name]
    with pytest.raises(MissingReading) as refusal:
        adjustment_of(linkage, read)
    assert refusal.value.name == name


def test_repeats_that_scatter_are_marked():
    linkage = parallel_pair()
    read = {**true_readings(linkage), "track_bar.frame.height": [500.0, 520.0]}
    items = {item.reading.name: item for item in adjustment_of(linkage, read).items}
    assert items["track_bar.frame.height"].scatters
    assert not items["track_bar.axle.height"].scatters


def test_readings_that_contradict_each_other_do_not_close():
    linkage = parallel_pair()
    read = {**true_readings(linkage), "track_bar.length": 600.0}
    adjustment = adjustment_of(linkage, read)
    assert not adjustment.closes
    assert adjustment.chi_square > adjustment.chi_square_limit


def test_a_reading_that_nothing_checks_has_no_standardized_residual():
    """Heights alone check nothing; a slope checks the two heights of its link."""
    linkage = parallel_pair()
    read = without(true_readings(linkage), "station", "length", "ends", "to_axle")
    del read["drag_link.slope"]
    items = {item.reading.name: item for item in adjustment_of(linkage, read).items}
    assert items["drag_link.frame.height"].w is None
    assert items["track_bar.frame.height"].w is not None


def test_a_reading_has_its_name_and_the_mean_of_its_repeats():
    reading = Reading("track_bar.frame.height", "height", (500.0, 502.0))
    assert (reading.value, reading.name) == (501.0, "track_bar.frame.height")
