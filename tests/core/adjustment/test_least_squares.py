"""Results of the adjustment for each reading; test_against_least_squares checks the pivots."""

import numpy as np
import pytest

from core.adjustment.least_squares import DELTA_0, MissingReading, adjust
from core.readings.reading import Reading, standard_uncertainty
from tests.geometries import (
    INSTRUMENTS,
    as_read,
    document_of,
    parallel_pair,
    random_linkage,
    session_of,
    true_readings,
)


def adjusted(linkage, read):
    session = session_of(document_of(linkage, read))
    return adjust(session.readings, session.instruments, session.layout)


def without(read, *ends):
    return {name: value for name, value in read.items() if not name.endswith(ends)}


PIVOTS_ALONE = ("length", "slope", "frame_ends", "axle_ends", "frame_to_axle")


def test_without_redundancy_the_pivots_are_the_readings():
    linkage = random_linkage(np.random.default_rng(1), "inverted-y")
    read = without(as_read(true_readings(linkage), np.random.default_rng(2)), *PIVOTS_ALONE)
    adjustment = adjusted(linkage, read)
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
    adjustment = adjusted(linkage, true_readings(linkage))
    np.testing.assert_allclose(adjustment.points[0], linkage.track_bar_frame, atol=1e-6)
    assert adjustment.chi_square == pytest.approx(0.0, abs=1e-9)
    assert adjustment.redundancy == 7  # two lengths, two slopes, three braces
    assert adjustment.closes


def test_standardized_residual_and_smallest_mistake_of_a_reading():
    """Baarda 1968: w = v / (sigma sqrt(r)), smallest mistake delta0 sigma / sqrt(r)."""
    linkage = random_linkage(np.random.default_rng(4), "knuckle")
    read = as_read(true_readings(linkage), np.random.default_rng(5))
    for item in adjusted(linkage, read).items:
        assert 0 < item.redundancy_number < 1
        spread = item.u * np.sqrt(item.redundancy_number)
        assert item.w == pytest.approx(item.residual / spread)
        assert item.smallest_mistake == pytest.approx(
            DELTA_0 * item.u / item.redundancy_number**0.5
        )
        assert item.u == standard_uncertainty(item.reading, INSTRUMENTS)


def test_the_covariance_is_propagated_from_the_readings():
    linkage = random_linkage(np.random.default_rng(6), "inverted-y")
    adjustment = adjusted(linkage, as_read(true_readings(linkage), np.random.default_rng(7)))
    u = np.array([item.u for item in adjustment.items])
    carried = adjustment.sensitivity * u**2 @ adjustment.sensitivity.T
    np.testing.assert_allclose(carried, adjustment.covariance, atol=1e-9)


def test_redundant_readings_reduce_the_covariance():
    linkage = random_linkage(np.random.default_rng(8), "knuckle")
    read = true_readings(linkage)
    full, alone = adjusted(linkage, read), adjusted(linkage, without(read, *PIVOTS_ALONE))
    assert (np.diag(full.covariance) <= np.diag(alone.covariance) + 1e-9).all()
    assert np.trace(full.covariance) < 0.95 * np.trace(alone.covariance)


def test_without_stations_a_length_or_a_brace_is_no_observation():
    linkage = parallel_pair()
    read = without(true_readings(linkage), "station")
    used = {item.reading.name for item in adjusted(linkage, read).items}
    assert "track_bar.slope" in used
    assert not [name for name in used if name.endswith("length") or name.startswith("brace")]


def test_links_without_stations_lie_straight_across():
    linkage = parallel_pair()
    read = without(true_readings(linkage), "station")
    assert (adjusted(linkage, read).points[:, 0] == 0).all()
    # The station of the steering-arm ball moves the whole drag link.
    read["drag_link.axle.station"] = 150.0
    np.testing.assert_allclose(adjusted(linkage, read).points[:, 0], [0, 0, 150, 150])


@pytest.mark.parametrize("name", ["track_bar.axle.height", "drag_link.frame.offset"])
def test_a_missing_height_or_offset_is_refused(name):
    linkage = parallel_pair()
    read = true_readings(linkage)
    del read[name]
    with pytest.raises(MissingReading) as refusal:
        adjusted(linkage, read)
    assert refusal.value.name == name


def test_repeats_that_scatter_are_marked():
    linkage = parallel_pair()
    read = {**true_readings(linkage), "track_bar.frame.height": [500.0, 520.0]}
    items = {item.reading.name: item for item in adjusted(linkage, read).items}
    assert items["track_bar.frame.height"].scatters
    assert not items["track_bar.axle.height"].scatters


def test_readings_that_contradict_each_other_do_not_close():
    linkage = parallel_pair()
    read = {**true_readings(linkage), "track_bar.length": 600.0}
    adjustment = adjusted(linkage, read)
    assert not adjustment.closes
    assert adjustment.chi_square > adjustment.chi_square_limit


def test_a_reading_that_nothing_checks_has_no_standardized_residual():
    """Heights alone check nothing; a slope checks the two heights of its link."""
    linkage = parallel_pair()
    read = without(true_readings(linkage), "station", "length", "ends", "to_axle")
    del read["drag_link.slope"]
    items = {item.reading.name: item for item in adjusted(linkage, read).items}
    assert items["drag_link.frame.height"].w is None
    assert items["track_bar.frame.height"].w is not None


def test_a_reading_has_its_name_and_the_mean_of_its_repeats():
    reading = Reading("track_bar.frame.height", "height", (500.0, 502.0))
    assert (reading.value, reading.name) == (501.0, "track_bar.frame.height")
