"""The [plan] table of a record: written, read back and predicted afresh."""

import tomllib

import numpy as np
import pytest
import tomli_w

from core.documents.entries import EntryError
from core.fix.moves import Move
from core.fix.plan import plan_of
from core.fix.plan_record import filed_plan, plan_of_document, plan_table
from core.fix.possible import conversion_of
from core.fix.search import search
from core.kinematics.pivots import Layout
from core.kinematics.raising import raised
from core.profiles.conversions import Conversion
from core.profiles.corrections import PivotStep
from tests.geometries import INCH, parallel_pair
from tests.plans import COARSE, done, verdict_on

CROSSED = raised(parallel_pair(), "drag_link.frame", 3 * INCH)


@pytest.fixture(scope="module")
def verdict():
    return verdict_on(CROSSED)


@pytest.fixture(scope="module")
def plan(verdict):
    return plan_of(verdict, (Move(COARSE[1], -3 * INCH), Move(COARSE[2], 12.7)))


def document(plan, units="in"):
    """A record with a plan, written as TOML and read back."""
    text = tomli_w.dumps({"session": {"units": units}, "plan": plan_table(plan, units)})
    return tomllib.loads(text)


@pytest.mark.parametrize("units", ["in", "mm"])
def test_a_plan_is_read_back_as_it_was_written(plan, units):
    planned = filed_plan(document(plan, units))
    assert [(move.correction, move.pivot) for move in planned.moves] == [
        ("more drop", "drag_link.frame"),
        ("bar up at the axle", "track_bar.axle"),
    ]
    assert [move.rise for move in planned.moves] == pytest.approx([-76.2, 12.7])
    assert planned.expected["peak_steer"] == pytest.approx(plan.after.peak_steer, abs=1e-5)
    assert planned.moved == {"drag_link.frame", "track_bar.axle"}


@pytest.mark.parametrize("units", ["in", "mm"])
def test_a_plan_is_predicted_afresh_from_its_moves(verdict, plan, units):
    again = plan_of_document(document(plan, units), verdict, COARSE)
    assert done(again.moves) == done(plan.moves)
    assert again.moves[0].correction is COARSE[1]
    assert plan_table(again, units) == plan_table(plan, units)


def test_an_unknown_correction_keeps_its_name(verdict, plan):
    again = plan_of_document(document(plan), verdict, ())
    assert [move.correction.name for move in again.moves] == ["more drop", "bar up at the axle"]
    assert again.moves[0].correction.caution == ""


def test_arms_of_another_length_are_kept(verdict):
    plan = plan_of(verdict, (Move(COARSE[1], -2 * INCH),), {"steering.arm": 7 * INCH})
    table = plan_table(plan, "in")
    assert table["arms"] == {"steering": {"arm": "7 in"}}
    again = plan_of_document(document(plan), verdict, COARSE)
    assert again.arms == {"steering.arm": pytest.approx(177.8)}
    assert again.after.peak_steer == pytest.approx(plan.after.peak_steer)


def test_no_peak_is_expected_where_a_link_binds(verdict):
    plan = plan_of(verdict, (Move(COARSE[3], 39 * INCH),) * 3)
    assert np.isnan(plan.after.peak_steer)
    planned = filed_plan(document(plan))
    assert "peak_steer" not in planned.expected
    assert "parallel" in planned.expected


def test_a_record_without_a_plan_has_none(verdict):
    assert filed_plan({}) is None
    assert plan_of_document({}, verdict, COARSE) is None


@pytest.mark.parametrize(
    ("plan", "place"),
    [
        ({"moves": "up"}, "moves"),
        ({"moves": [{"pivot": "wheel", "rise": "1 in"}]}, "moves 1"),
        ({"moves": [{"pivot": "track_bar.axle"}]}, "rise"),
        ({"moves": [{"pivot": "track_bar.axle", "rise": "up"}]}, "rise"),
        ({"moves": [], "expected": {"parallel": []}}, "parallel"),
        ({"moves": [], "arms": {"steering": {"arm": "long"}}}, "arm"),
    ],
)
def test_an_invalid_plan_is_refused_with_its_place(plan, place):
    with pytest.raises(EntryError, match=place):
        filed_plan({"plan": plan})


def test_the_ride_height_counts_for_both_frame_ends():
    planned = filed_plan(
        {
            "plan": {
                "moves": [
                    {"correction": "a", "pivot": "ride_height", "rise": "2 in"},
                    {"correction": "b", "pivot": "drag_link.frame", "rise": "-1 in"},
                ]
            }
        }
    )
    assert planned.rise("drag_link.frame") == pytest.approx(25.4)
    assert planned.rise("track_bar.frame") == pytest.approx(50.8)
    assert planned.rise("track_bar.axle") == 0


def test_the_plans_of_a_search_are_read_back(verdict):
    for plan in search(verdict, COARSE).plans:
        assert done(plan_of_document(document(plan), verdict, COARSE).moves) == done(plan.moves)


CONVERSION = Conversion(
    "cross over",
    (
        PivotStep("drag_link.axle", 50.8, to_offset=1500.0),
        PivotStep("track_bar.axle", 25.4),
        PivotStep("drag_link.frame", 0.0, to_station=203.2),
    ),
    caution="Torque it.",
    steering=Layout.TIE_ROD,
    readings={"steering.arm": 177.8, "kingpin.castor": np.radians(4.0), "steering.ratio": 14.0},
)


@pytest.mark.parametrize("units", ["in", "mm"])
def test_a_conversion_is_read_back_and_predicted_afresh(verdict, units):
    conversion = conversion_of(verdict.session, CONVERSION)
    plan = plan_of(verdict, (Move(conversion), Move(COARSE[1], -25.4)))
    written = document(plan, units)
    planned = filed_plan(written)
    assert planned.moved == {"drag_link.axle", "track_bar.axle", "drag_link.frame"}
    assert planned.rise("track_bar.axle") == pytest.approx(25.4)
    again = plan_of_document(written, verdict, COARSE)
    (first, second) = again.moves
    assert (first.correction.name, second.correction) == ("cross over", COARSE[1])
    assert again.after.linkage.layout == Layout.TIE_ROD
    tolerance = 1e-3 if units == "mm" else 1e-2  # the record has sixteenths
    assert again.after.peak_steer == pytest.approx(plan.after.peak_steer, abs=tolerance)
    assert plan_table(again, units)["conversions"] == plan_table(plan, units)["conversions"]


def test_a_faulty_conversion_of_a_record_is_refused(verdict):
    plan = plan_of(verdict, (Move(conversion_of(verdict.session, CONVERSION)),))
    written = document(plan)
    written["plan"]["conversions"][0]["moves"][0]["pivot"] = "nowhere"
    with pytest.raises(EntryError, match=r"^\[plan, conversions 1, moves 1\] pivot: "):
        filed_plan(written)
