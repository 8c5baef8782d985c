"""The result of a search as plain numbers."""

import json
from math import degrees

import pytest

from core.as_json.fix import search_as_json
from core.fix.moves import Move
from core.fix.plan import plan_of
from core.fix.search import SearchResult, search
from core.kinematics.raising import raised
from tests.geometries import INCH, parallel_pair
from tests.plans import COARSE, verdict_on

CROSSED = raised(parallel_pair(), "drag_link.frame", 3 * INCH)


@pytest.fixture(scope="module")
def verdict():
    return verdict_on(CROSSED)


def through_json(verdict, result):
    return json.loads(json.dumps(search_as_json(verdict, result), allow_nan=False))


def test_a_search_has_the_fields_of_the_specification(verdict):
    written = through_json(verdict, search(verdict, [COARSE[1]]))
    assert list(written) == ["id", "before", "searched", "plans"]
    assert written["before"].keys() == {
        *("overall", "parallel_deg", "effective_deg", "peak_steer_deg"),
    }
    (plan,) = written["plans"]
    assert list(plan) == [
        *("moves", "after", "set_length_mm", "length_change_mm", "worse"),
        *("answer", "marks", "parts", "price", "price_known", "hours", "in_stock"),
        "heights",
    ]
    assert plan["moves"][0].keys() == {"correction", "pivot", "rise_mm"}
    assert plan["after"].keys() == {
        "overall",
        "parallel_deg",
        "effective_deg",
        "peak_steer_deg",
        "peak_toe_change_deg",
        "track_bar_slope_deg",
        "drag_link_slope_deg",
        "length_ratio",
        "p_true",
        "roll_centre_rise_mm",
        "castor_deg",
        "roll_steer_deg_per_deg",
        "clearance_mm",
    }
    links = {"track_bar", "drag_link"}
    assert plan["set_length_mm"].keys() == plan["length_change_mm"].keys() == links


def test_angles_are_in_degrees_and_lengths_in_mm(verdict):
    result = search(verdict, [COARSE[1]])
    written = through_json(verdict, result)
    assert written["searched"] == 4
    assert written["before"]["parallel_deg"] == pytest.approx(degrees(verdict.rules.parallel.value))
    (plan,), after = written["plans"], result.plans[0].after
    assert plan["moves"] == [
        {"correction": "more drop", "pivot": "drag_link.frame", "rise_mm": pytest.approx(-76.2)}
    ]
    assert plan["after"]["overall"] == "steers true"
    assert plan["after"]["track_bar_slope_deg"] == pytest.approx(8.0)
    assert plan["set_length_mm"]["drag_link"] == pytest.approx(after.lengths[1])


def test_without_plans_the_list_is_empty(verdict):
    assert through_json(verdict, SearchResult(0, ()))["plans"] == []


def test_a_peak_during_which_a_link_binds_is_none(verdict):
    plan = plan_of(verdict, (Move(COARSE[3], 120 * INCH),))
    (written,) = through_json(verdict, SearchResult(1, (plan,)))["plans"]
    assert written["after"]["peak_steer_deg"] is None
    assert written["after"]["parallel_deg"] is not None
    assert "steer" in written["worse"]


def test_without_wheels_the_rise_of_the_roll_centre_is_none():
    wheels = ("wheels.left_offset", "wheels.right_offset")
    verdict = verdict_on(CROSSED, leave_out=wheels)
    (plan,) = through_json(verdict, search(verdict, [COARSE[1]]))["plans"]
    assert plan["after"]["roll_centre_rise_mm"] is None
