"""Slips that explain why a set of readings does not close.

`tests/test_simulated_slips.py` draws hundreds of sets and counts how many slips are named rightly.
"""

from dataclasses import replace

import numpy as np
import pytest

from core.adjustment.least_squares import adjust
from core.adjustment.prior import station_priors
from core.adjustment.slips import SlipKind, slips_of
from core.kinematics.pivots import PIVOTS
from core.readings.survey import readings_in
from tests.geometries import INCH, INSTRUMENTS, document_of, random_linkage, true_readings

LINKAGE = random_linkage(np.random.default_rng(12), "knuckle", same_side=True)
HEIGHT = "track_bar.frame.height"
METRIC = replace(INSTRUMENTS, tape=1.0)


def true():
    return true_readings(LINKAGE, datum=700.0)


def slips_in(read, instruments=INSTRUMENTS):
    return slips_of(readings_in(document_of(LINKAGE, read)), instruments, PIVOTS)


def best_in(read, instruments=INSTRUMENTS):
    """The kind, the readings and the new values of the first slip."""
    best = slips_in(read, instruments)[0]
    return best.slip, best.readings, best.now


def test_a_set_that_closes_has_no_slips():
    assert slips_in(true()) == ()


@pytest.mark.parametrize(
    ("first", "second"),
    [
        ("track_bar.frame.height", "track_bar.axle.height"),
        ("track_bar.axle.offset", "drag_link.axle.offset"),
        ("track_bar.slope", "drag_link.slope"),
    ],
)
def test_exchanged_readings_are_named_with_both_values(first, second):
    read = true()
    exchanged = {**read, first: read[second], second: read[first]}
    slip, readings, now = best_in(exchanged)
    assert (slip, set(readings)) == (SlipKind.EXCHANGED, {first, second})
    expected = [read[name] for name in readings]
    assert now == pytest.approx(expected)


@pytest.mark.parametrize("name", ["drag_link.axle.station", "drag_link.frame.offset"])
def test_a_turned_sign_is_named(name):
    read = true()
    slip, readings, now = best_in({**read, name: -read[name]})
    assert (slip, readings) == (SlipKind.SIGN, (name,))
    assert now == pytest.approx((read[name],))


@pytest.mark.parametrize("factor", [2.54, 1 / 2.54])
def test_inches_read_as_centimetres_are_named(factor):
    read = true()
    slip, readings, now = best_in({**read, HEIGHT: read[HEIGHT] * factor})
    assert (slip, readings) == (SlipKind.UNIT, (HEIGHT,))
    assert now == pytest.approx((read[HEIGHT],))


@pytest.mark.parametrize(
    ("typed", "meant"), [(34.34, 34.75), (34.12, 34.5), (34.1116, 34 + 11 / 16)]
)
def test_decimals_for_a_fraction_are_named(typed, meant):
    """A person typed 34.34 for 34 3/4."""
    axle = LINKAGE.track_bar_axle
    along = (LINKAGE.track_bar_frame - axle) / true()["track_bar.length"]
    linkage = LINKAGE.with_pivots({"track_bar.frame": axle + along * meant * INCH})
    read = {**true_readings(linkage, datum=700.0), "track_bar.length": typed * INCH}
    fine = replace(INSTRUMENTS, sighting=0.5)
    slips = slips_of(readings_in(document_of(linkage, read)), fine, PIVOTS)
    units = [slip for slip in slips if slip.slip == SlipKind.UNIT]
    assert [slip.readings for slip in units] == [("track_bar.length",)]
    assert units[0].now == pytest.approx((meant * INCH,))


@pytest.mark.parametrize("mistake", [-12 * INCH, -2 * INCH, 3 * INCH, 6 * INCH])
def test_whole_inches_are_named(mistake):
    read = true()
    slip, readings, now = best_in({**read, HEIGHT: read[HEIGHT] + mistake})
    assert (slip, readings) == (SlipKind.WHOLE, (HEIGHT,))
    assert now == pytest.approx((read[HEIGHT],))


def test_a_metric_tape_is_misread_by_whole_millimetres():
    """Of 100 mm and of 4 in, which is 101.6 mm, the tape's own unit is named."""
    read = {**true(), HEIGHT: true()[HEIGHT] + 100.0}
    assert best_in(read, METRIC)[2] == pytest.approx((true()[HEIGHT],))
    assert best_in(read)[2] == pytest.approx((true()[HEIGHT] - 1.6,))


def test_both_repeats_to_the_edge_of_the_bolt_are_named():
    name = "track_bar.length"
    fine = replace(INSTRUMENTS, sighting=1.0)
    wrong = true()[name] + INCH / 2
    slips = slips_in({**true(), name: [wrong, wrong]}, fine)
    edge = next(slip for slip in slips if slip.slip == SlipKind.EDGE)
    assert edge.readings == (name,)
    assert edge.is_likely
    assert edge.now == pytest.approx((true()[name],), abs=INCH / 8)


def test_a_mistake_of_no_usual_amount_is_set_aside_with_the_value_of_the_others():
    slip, readings, now = best_in({**true(), HEIGHT: true()[HEIGHT] + 8.5 * INCH})
    assert (slip, readings) == (SlipKind.SET_ASIDE, (HEIGHT,))
    assert now == pytest.approx((true()[HEIGHT],), abs=1e-6)


def test_every_slip_closes_the_set_and_the_likely_slips_come_first():
    slips = slips_in({**true(), HEIGHT: true()[HEIGHT] + 2 * INCH})
    likely = [slip.is_likely for slip in slips]
    assert likely[0]
    assert likely == sorted(likely, reverse=True)
    for slip in slips:
        assert adjust(slip.readings_after, INSTRUMENTS, PIVOTS).closes


def test_two_mistakes_have_no_slip():
    read = {**true(), HEIGHT: true()[HEIGHT] + 3 * INCH}
    read["drag_link.axle.offset"] += 5 * INCH
    assert slips_in(read) == ()


def test_slips_are_named_without_stations():
    read = {name: value for name, value in true().items() if not name.endswith("station")}
    slopes = ("track_bar.slope", "drag_link.slope")
    read |= {slopes[0]: read[slopes[1]], slopes[1]: read[slopes[0]]}
    priors = station_priors(set(read), True, float(LINKAGE.drag_link_axle[0]), False, False)
    readings = readings_in(document_of(LINKAGE, read))
    best = slips_of(readings, INSTRUMENTS, PIVOTS, priors)[0]
    assert (best.slip, best.readings) == (SlipKind.EXCHANGED, slopes)
