"""A verdict as plain numbers."""

import json
from dataclasses import replace

import numpy as np
import pytest

from core.as_json.verdict import degrees, numbers, verdict_as_json
from core.kinematics.linkage import Linkage
from core.verdict.verdict import evaluate
from tests.direct_rows import AT, board_check, steer_of_left
from tests.geometries import INCH, document_of, parallel_pair, session_of, true_readings
from tests.plans import vehicle, verdict_on

RECORD = "FG-0.toml"


def as_json(linkage: Linkage, **options):
    """The verdict on a linkage with its plain numbers, which have passed through JSON."""
    verdict = verdict_on(linkage, draws=0, **options)
    return verdict, json.loads(json.dumps(verdict_as_json(verdict, RECORD), allow_nan=False))


@pytest.fixture(scope="module")
def crossed():
    return as_json(vehicle(0, "inverted-y"))


def test_a_verdict_has_the_fields_of_the_specification(crossed):
    _, written = crossed
    assert list(written) == [
        "record",
        "id",
        "overall",
        "held_back_by",
        "assumed",
        "assumed_u",
        "guide",
        "castor_deg",
        "links",
        "rules",
        "steer",
        "toe",
        "sweep",
        "articulation",
        "events",
        "roll_centre_height_mm",
        "travel_limits",
        "readings",
        "ball_path",
        "roll_steer",
        "clearance",
        "budget",
        "advice",
        "photographs",
        "direct",
    ]
    peak = {"at_heave_mm", "limit_deg", "u_deg", "p_within", "verdict", "method"}
    angle = {"value_deg", "u_deg", "p_within", "verdict"}
    assert written["links"].keys() == {"track_bar", "drag_link"}
    assert written["links"]["track_bar"].keys() == {"length_mm", "slope_deg", "u_slope_deg"}
    assert written["rules"].keys() == {"parallel", "flat", "length"}
    assert written["rules"]["parallel"].keys() == {
        *angle,
        *("effective_deg", "u_effective_deg", "limit_deg"),
    }
    assert written["rules"]["flat"].keys() == {"track_bar", "drag_link", "limit_deg", "verdict"}
    assert written["rules"]["flat"]["track_bar"].keys() == angle
    assert written["rules"]["length"].keys() == {"ratio", "limit", "u", "p_within", "verdict"}
    assert written["steer"].keys() == {
        *(
            "gradient_deg_per_mm",
            "curvature_deg_per_mm2",
            "peak_deg",
            "split",
            "budget",
            "decided_by",
        ),
        *peak,
    }
    assert written["steer"]["split"][0].keys() == {
        *("heave_mm", "not_parallel_deg", "slope_and_length_deg"),
    }
    assert written["toe"].keys() == {"peak_change_deg", *peak}
    assert written["sweep"].keys() == {
        "heave_mm",
        "axle_shift_mm",
        "axle_ahead_mm",
        "axle_pitch_deg",
        "steer_deg",
        "toe_in_change_deg",
        "steering_wheel_deg",
    }
    assert written["articulation"].keys() == {
        *("roll_deg", "heave_mm", "steer_deg", "axle_yaw_deg"),
    }
    assert written["events"][0].keys() == {"name", "drift_mm", "heading_deg"}
    assert written["travel_limits"].keys() == {"droop_mm", "bump_mm"}
    assert written["readings"].keys() == {
        "redundancy",
        "chi_square",
        "chi_square_limit",
        "items",
        "suspects",
        "slips",
    }
    assert written["readings"]["items"][0].keys() == {
        "reading",
        "value",
        "u",
        "residual",
        "redundancy_number",
        "w",
    }
    assert written["budget"][0].keys() == {"reading", "share"}
    assert written["steer"]["budget"][0].keys() == {"of", "share"}
    assert written["ball_path"].keys() == {
        *("centre_mm", "direction", "radius_mm", "rise_mm", "u_rise_mm"),
    }
    assert written["roll_steer"].keys() == {"deg_per_deg", "u"}
    assert written["clearance"].keys() == {"smallest_mm", "at_heave_mm"}


def test_angles_are_in_degrees_and_lengths_in_mm(crossed):
    verdict, written = crossed
    rules, heaves = verdict.rules, verdict.sweep.heave
    assert written["record"] == RECORD
    assert written["overall"] == verdict.overall
    parallel = written["rules"]["parallel"]
    assert parallel["value_deg"] == pytest.approx(np.degrees(rules.parallel.value))
    assert parallel["limit_deg"] == pytest.approx(1.5)
    assert written["rules"]["flat"]["drag_link"]["u_deg"] == pytest.approx(
        np.degrees(rules.flat_drag_link.u)
    )
    assert written["links"]["drag_link"]["length_mm"] == pytest.approx(verdict.lengths[1])
    assert written["steer"]["peak_deg"] == pytest.approx(np.degrees(verdict.steer.ruling.value))
    assert written["toe"]["peak_change_deg"] == pytest.approx(np.degrees(verdict.toe.ruling.value))
    np.testing.assert_allclose(written["sweep"]["heave_mm"], heaves)
    np.testing.assert_allclose(written["sweep"]["steer_deg"], np.degrees(verdict.sweep.steer))
    assert np.shape(written["articulation"]["steer_deg"]) == (3, 9)


def test_a_slope_that_was_read_is_in_degrees(crossed):
    _, written = crossed
    items = {item["reading"]: item for item in written["readings"]["items"]}
    read = true_readings(vehicle(0, "inverted-y"))
    assert items["track_bar.slope"]["value"] == pytest.approx(np.degrees(read["track_bar.slope"]))
    assert items["track_bar.axle.height"]["value"] == pytest.approx(read["track_bar.axle.height"])


def test_without_wheels_the_roll_centre_and_the_articulation_are_none():
    wheels = ("wheels.left_offset", "wheels.right_offset")
    _, written = as_json(parallel_pair(), leave_out=wheels)
    assert written["roll_centre_height_mm"] is None
    assert written["articulation"] is None


def test_numbers_beyond_the_reach_of_a_link_are_none():
    _, written = as_json(parallel_pair(slope_deg=0.0, run=110.0))
    steer = written["sweep"]["steer_deg"]
    assert steer[0] is None
    assert isinstance(steer[20], float)
    assert written["travel_limits"]["droop_mm"] is not None


def test_an_unchecked_reading_has_no_standardized_residual():
    redundant = [name for name in true_readings(parallel_pair()) if name.startswith("brace")]
    redundant += [
        f"{link}.{kind}" for link in ("track_bar", "drag_link") for kind in ("length", "slope")
    ]
    _, written = as_json(parallel_pair(), leave_out=redundant)
    assert written["readings"]["redundancy"] == 0
    assert {item["w"] for item in written["readings"]["items"]} == {None}


def test_advice_is_none_unless_the_verdict_is_too_close_to_call():
    assert as_json(parallel_pair(parallel_deg=4.0))[1]["advice"] is None
    verdict, written = as_json(parallel_pair(parallel_deg=1.2))
    assert written["advice"] == {
        "readings": list(verdict.advice.readings),
        "repeats": verdict.advice.repeats,
        "skipped": list(verdict.advice.skipped),
        "settles": verdict.advice.settles,
        "photograph": None,
        "tape": False,
    }


def test_a_verdict_held_back_names_its_reasons():
    verdict = verdict_on(parallel_pair(), draws=0)
    reasons = ("stance.wheels_on_ground",)
    held_back = replace(verdict, held_back_by=reasons)
    assert verdict_as_json(held_back, RECORD)["held_back_by"] == list(reasons)


def test_slips_are_in_degrees_for_slopes_and_in_mm_for_all_others():
    linkage = parallel_pair(parallel_deg=4.0)
    read = true_readings(linkage)
    slopes = ("track_bar.slope", "drag_link.slope")
    best = slips_on(linkage, {slopes[0]: read[slopes[1]], slopes[1]: read[slopes[0]]})[0]
    assert (best["slip"], best["readings"]) == ("exchanged", list(slopes))
    assert best["now"] == pytest.approx([np.degrees(read[name]) for name in slopes])
    height = "drag_link.frame.height"
    best = slips_on(linkage, {height: read[height] + 3 * INCH})[0]
    assert (best["slip"], best["readings"]) == ("whole", [height])
    assert best["now"] == pytest.approx([read[height]])
    assert slips_on(linkage, {}) == []


def slips_on(linkage, mistaken):
    """The slips as plain numbers, of true readings but for the mistaken ones."""
    read = {**true_readings(linkage), **mistaken}
    verdict = evaluate(session_of(document_of(linkage, read)), draws=0)
    return json.loads(json.dumps(verdict_as_json(verdict, RECORD)["readings"]["slips"]))


def test_nan_and_infinity_are_none():
    assert numbers(np.array([[1.0, np.nan], [np.inf, 2.0]])) == [[1.0, None], [None, 2.0]]
    assert numbers(float("nan")) is None
    assert numbers(3) == 3.0
    assert degrees(np.array([np.pi, np.nan])) == [180.0, None]


def test_a_direct_check_has_the_fields_of_the_specification():
    linkage = parallel_pair()
    session = session_of(document_of(linkage, true_readings(linkage)))
    checked = replace(session, direct=board_check(steer_of_left(linkage)))
    without = json.loads(json.dumps(verdict_as_json(evaluate(session, 0), RECORD)))
    written = json.loads(json.dumps(verdict_as_json(evaluate(checked, 0), RECORD), allow_nan=False))
    assert without["direct"] is None
    assert without["steer"]["decided_by"] == "pivots"
    assert written["steer"]["decided_by"] == "pivots and direct"
    direct = written["direct"]
    assert list(direct) == [
        *("heave_mm", "steer_deg", "u_deg", "computed_deg", "chi_square", "p", "agrees"),
        *("peak_deg", "u_peak_deg", "lash_deg", "look_at"),
    ]
    assert direct["heave_mm"] == pytest.approx(AT.tolist())
    assert (direct["agrees"], direct["lash_deg"], direct["look_at"]) == (True, None, [])
    assert direct["peak_deg"] == written["steer"]["peak_deg"]
    assert direct["u_peak_deg"] == written["steer"]["u_deg"]
