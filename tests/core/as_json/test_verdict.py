"""A verdict as plain numbers: the field names of the specification, None for no number."""

import json

import numpy as np
import pytest

from core.as_json.verdict import degrees, numbers, verdict_as_json
from tests.geometries import parallel_pair, random_linkage
from tests.plans import verdict_on

LINKAGE = random_linkage(np.random.default_rng(4), "inverted-y", same_side=True)

FIELDS = {
    *("record", "id", "overall", "held_back_by", "assumed", "links", "rules", "steer", "toe"),
    *("sweep", "articulation", "events", "roll_centre_height_mm", "travel_limits", "readings"),
    *("budget", "advice"),
}


@pytest.fixture(scope="module")
def verdict():
    """The verdict on a random inverted-Y."""
    return verdict_on(LINKAGE)


@pytest.fixture(scope="module")
def fields(verdict):
    """Its plain numbers."""
    return verdict_as_json(verdict, "FG-9.toml")


def test_the_fields_are_those_of_the_specification(fields):
    assert fields.keys() == FIELDS
    assert fields["record"] == "FG-9.toml"
    assert fields["links"].keys() == {"track_bar", "drag_link"}
    assert fields["rules"].keys() == {"parallel", "flat", "length"}


def test_angles_are_in_degrees_and_lengths_in_mm(fields, verdict):
    assert fields["rules"]["parallel"]["value_deg"] == np.degrees(verdict.rules.parallel.value)
    assert fields["links"]["track_bar"]["length_mm"] == verdict.lengths[0]
    assert fields["steer"]["peak_deg"] == np.degrees(verdict.steer.ruling.value)
    assert len(fields["sweep"]["steer_deg"]) == len(fields["sweep"]["heave_mm"]) == 41
    assert np.shape(fields["articulation"]["steer_deg"]) == (3, 9)


def test_slopes_are_in_degrees_among_the_readings(fields, verdict):
    values = {item["reading"]: item["value"] for item in fields["readings"]["items"]}
    slope = next(i for i in verdict.adjustment.items if i.reading.name == "track_bar.slope")
    assert values["track_bar.slope"] == np.degrees(slope.reading.value)


def test_it_is_json_without_nan(fields):
    assert json.loads(json.dumps(fields, allow_nan=False)) == fields


def test_a_value_without_wheels_is_none():
    verdict = verdict_on(
        parallel_pair(), leave_out=("wheels.left_offset", "wheels.right_offset"), draws=0
    )
    fields = verdict_as_json(verdict, "")
    assert fields["roll_centre_height_mm"] is None
    assert fields["articulation"] is None


def test_nan_becomes_none_at_any_depth():
    assert numbers(np.array([[1.0, np.nan], [2.0, 3.0]])) == [[1.0, None], [2.0, 3.0]]
    assert numbers(np.inf) is None
    assert degrees(np.pi) == 180.0
