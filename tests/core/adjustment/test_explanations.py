"""Readings without the mistake, for each leading explanation."""

import numpy as np

from core.adjustment.explanations import Evidence, leading_explanations
from core.adjustment.least_squares import adjust
from core.adjustment.outliers import suspect_groups
from core.adjustment.slips import SlipKind, slips_of
from core.kinematics.pivots import PIVOTS
from core.readings.survey import readings_in
from tests.geometries import INCH, INSTRUMENTS, document_of, random_linkage, true_readings

HEIGHT = "track_bar.frame.height"


def explained(mistake):
    linkage = random_linkage(np.random.default_rng(12), "knuckle", same_side=True)
    read = true_readings(linkage)
    readings = readings_in(document_of(linkage, {**read, HEIGHT: read[HEIGHT] + mistake}))
    groups = suspect_groups(adjust(readings, INSTRUMENTS, PIVOTS))
    slips = slips_of(readings, INSTRUMENTS, PIVOTS)
    return readings, groups, slips, leading_explanations(readings, groups, slips)


def test_each_suspect_is_set_aside_and_each_slip_is_undone():
    readings, groups, slips, explanations = explained(2 * INCH)
    aside = [
        {reading.name for reading in explanation.readings if not reading.counts}
        for explanation in explanations
    ]
    for name in groups[0].readings:
        assert {name} in aside
    for slip in slips:
        assert Evidence(slip.readings_after) in explanations
    assert all(
        [reading.name for reading in explanation.readings] == [reading.name for reading in readings]
        for explanation in explanations
    )


def test_an_explanation_is_given_only_once():
    _, groups, slips, explanations = explained(2 * INCH)
    set_aside = {slip.readings[0] for slip in slips if slip.slip == SlipKind.SET_ASIDE}
    assert set_aside & set(groups[0].readings)
    assert len(explanations) == len(slips) + len(set(groups[0].readings) - set_aside)


def test_readings_that_close_have_no_explanations():
    assert explained(0.0)[3] == ()
