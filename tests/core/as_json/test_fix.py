"""A search as plain numbers: the field names of the specification, mm and deg."""

import json

import numpy as np
import pytest

from core.as_json.fix import search_as_json
from core.fix.search import search
from tests.geometries import INCH, parallel_pair
from tests.plans import COARSE, verdict_on


@pytest.fixture(scope="module")
def searched():
    """A vehicle with bump steer, and the search for its plans."""
    verdict = verdict_on(parallel_pair().raised("drag_link.axle", 3 * INCH))
    return verdict, search(verdict, COARSE)


def test_the_fields_are_those_of_the_specification(searched):
    fields = search_as_json(*searched)
    assert fields.keys() == {"id", "before", "searched", "plans"}
    assert fields["before"]["overall"] == "bump steer"
    (plan, *_) = fields["plans"]
    assert plan.keys() >= {"moves", "after", "set_length_mm", "length_change_mm"}
    assert plan["moves"][0].keys() == {"correction", "pivot", "rise_mm"}
    assert json.loads(json.dumps(fields, allow_nan=False)) == fields


def test_numbers_are_those_of_the_plans(searched):
    verdict, result = searched
    fields = search_as_json(verdict, result)
    assert fields["searched"] == result.searched
    for plan, listed in zip(result.plans, fields["plans"], strict=True):
        assert [move["rise_mm"] for move in listed["moves"]] == [move.rise for move in plan.moves]
        assert listed["after"]["peak_steer_deg"] == np.degrees(plan.after.peak_steer)
        assert listed["after"]["p_true"] == plan.after.p_true
        assert listed["set_length_mm"]["drag_link"] == plan.after.lengths[1]


def test_a_vehicle_that_steers_true_has_no_plans():
    verdict = verdict_on(parallel_pair())
    fields = search_as_json(verdict, search(verdict, COARSE))
    assert (fields["searched"], fields["plans"]) == (0, [])
