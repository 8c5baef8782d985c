"""demo_sessions/ is what the program makes of what was typed, and shows what it is there for.

When the program files something else than before: python -m tests.demo.build
"""

from collections.abc import Mapping
from math import radians

import pytest

from core.documents.document import value_at, with_value, without
from core.documents.record import read_document
from core.documents.record_list import list_records
from core.documents.signature import signature_is_valid, signatures_of
from core.fix.comparison import FixOutcome, altered_pivots, compare
from core.fix.plan_record import filed_plan
from core.fix.reached import reached_moves
from core.fix.search import search
from core.statistics.conformity import Conformity
from core.verdict.verdict import Overall
from tests.demo import fg_1, fg_2, fg_3, fg_4, fg_5, fg_6
from tests.demo.build import SESSIONS, build
from wizard.flow.filed_records import read_and_judge
from wizard.locations import DEMO_SESSIONS, PROFILES

INCH = 25.4


@pytest.fixture(scope="module")
def rebuilt(tmp_path_factory):
    folder = tmp_path_factory.mktemp("rebuilt")
    build(folder)
    return folder


def told(typed):
    """A demo session's document and its verdict, computed afresh."""
    return read_and_judge(str(typed.path_in(DEMO_SESSIONS)), [PROFILES])


def unlike(one, other, place="record"):
    """The first place where two records differ; "" where they do not.

    The last figures of a number are the machine's; which version filed a record does not count.
    """
    if isinstance(one, Mapping) and isinstance(other, Mapping):
        if list(one) != list(other):
            return f"{place}: {list(one)} is not {list(other)}"
        places = [unlike(one[key], other[key], f"{place}.{key}") for key in one]
    elif isinstance(one, list) and isinstance(other, list) and len(one) == len(other):
        pairs = enumerate(zip(one, other, strict=True), 1)
        places = [unlike(*pair, f"{place} {number}") for number, pair in pairs]
    elif isinstance(one, float) and isinstance(other, float):
        same = one == pytest.approx(other, rel=1e-6, abs=1e-9, nan_ok=True)
        return "" if same else f"{place}: {one} is not {other}"
    else:
        return "" if one == other else f"{place}: {one!r} is not {other!r}"
    return next(filter(None, places), "")


def compared(path):
    """A record without what differs from one machine or version to another."""
    document = without(read_document(path), "program_version")
    signatures = [without(signature, "digest") for signature in signatures_of(document)]
    return {**document, "signatures": signatures}


def test_the_same_sessions_are_there(rebuilt):
    there = {path.relative_to(DEMO_SESSIONS) for path in DEMO_SESSIONS.rglob("*.toml")}
    assert there == {path.relative_to(rebuilt) for path in rebuilt.glob("*/*.toml")}
    assert not list(rebuilt.glob("unfinished/*"))


@pytest.mark.parametrize("typed", SESSIONS, ids=lambda typed: typed.id)
def test_a_session_typed_again_is_filed_as_it_is(typed, rebuilt):
    assert not unlike(compared(typed.path_in(DEMO_SESSIONS)), compared(typed.path_in(rebuilt)))


def test_a_difference_would_be_seen():
    record = compared(fg_1.AS_BUILT.path_in(DEMO_SESSIONS))
    peak = value_at(record, "results.steer.peak_deg")
    assert "steer.peak_deg" in unlike(record, with_value(record, "results.steer.peak_deg", 0.3))
    assert not unlike(record, with_value(record, "results.steer.peak_deg", peak * (1 + 1e-8)))
    assert unlike(record, without(record, "readings.track_bar.frame"))
    assert unlike(record, with_value(record, "readings.track_bar.frame.height", ["22 in"]))


@pytest.mark.parametrize("typed", SESSIONS, ids=lambda typed: typed.id)
def test_a_session_says_that_it_is_invented(typed):
    document = read_document(typed.path_in(DEMO_SESSIONS))
    assert "invented" in value_at(document, "vehicle.description")
    assert "invented" in value_at(document, "session.technician")
    assert all("invented" in signature["by"] for signature in signatures_of(document))


@pytest.mark.parametrize("typed", SESSIONS, ids=lambda typed: typed.id)
def test_what_was_signed_is_what_is_there(typed):
    document = read_document(typed.path_in(DEMO_SESSIONS))
    assert all(signature_is_valid(document, signature) for signature in signatures_of(document))


@pytest.mark.parametrize("typed", SESSIONS, ids=lambda typed: typed.id)
def test_the_verdict_filed_is_the_verdict_computed_afresh(typed):
    document, verdict = told(typed)
    assert value_at(document, "results.overall") == verdict.overall


def test_the_list_tells_of_six_trucks_the_latest_first():
    entries = list_records(DEMO_SESSIONS)
    assert [entry.id for entry in entries] == [typed.id for typed in reversed(SESSIONS)]
    assert {entry.tag for entry in entries} == {f"FG-{number}" for number in range(1, 7)}
    assert not any(entry.fault for entry in entries)


def test_the_truck_as_built_steers_true():
    _, verdict = told(fg_1.AS_BUILT)
    assert verdict.overall == Overall.STEERS_TRUE
    assert verdict.adjustment.closes
    assert not verdict.suspect_groups


def test_lifted_with_nothing_corrected_it_has_bump_steer():
    document, verdict = told(fg_1.LIFTED)
    assert verdict.overall == Overall.BUMP_STEER
    assert verdict.steer.ruling.verdict == Conformity.OUT
    assert value_at(document, "session.altered") == ["ride_height"]
    _, as_built = told(fg_1.AS_BUILT)
    assert all(
        control.unchanged for control in compare(as_built, verdict, {"ride_height"}).controls
    )


def test_the_lift_has_a_plan_that_would_steer_true():
    document, verdict = told(fg_1.LIFTED)
    planned = filed_plan(document)
    assert planned.moved == {"track_bar.axle"}
    assert abs(planned.expected["parallel"]) < verdict.session.limits.parallel
    assert value_at(document, "plan.expected.p_true") >= 0.95


def test_the_fix_is_shown_as_it_was_planned():
    lifted, before = told(fg_1.LIFTED)
    fixed, after = told(fg_1.FIXED)
    comparison = compare(before, after, altered_pivots(lifted, fixed))
    assert comparison.outcome == FixOutcome.SHOWN
    assert comparison.controls
    assert all(control.unchanged for control in comparison.controls)
    (move,) = reached_moves(filed_plan(lifted), before, after)
    assert move.fits
    assert move.planned == pytest.approx(0.75 * INCH)
    assert value_at(fixed, "session.follows") == value_at(lifted, "session.id")


def test_the_drag_link_over_the_knuckle_lies_flatter_than_the_track_bar():
    document, verdict = told(fg_2.OVER_THE_KNUCKLE)
    assert verdict.overall == Overall.BUMP_STEER
    assert verdict.rules.parallel.value < -radians(3)
    assert filed_plan(document).moved == {"track_bar.axle"}


def test_the_mistaken_reading_is_named_by_itself_and_by_how_much():
    document, verdict = told(fg_3.NOT_CLOSING)
    assert not verdict.adjustment.closes
    (group,) = verdict.suspect_groups
    assert group.readings == ("track_bar.axle.height",)
    assert group.mistakes[0] == pytest.approx(2 * INCH, abs=INCH / 4)
    kept = [entry["reading"] for entry in value_at(document, "kept")]
    assert kept == ["track_bar.slope", "braces.axle_ends"]


def test_the_close_one_says_which_reading_would_settle_it():
    _, verdict = told(fg_4.CLOSE)
    assert verdict.overall == Conformity.TOO_CLOSE
    assert verdict.advice.readings
    assert verdict.advice.repeats <= 3


def test_the_inverted_y_changes_its_toe():
    _, verdict = told(fg_5.TOE)
    assert verdict.overall == Overall.BUMP_STEER
    assert verdict.rules.parallel.verdict == Conformity.WITHIN
    assert verdict.toe.ruling.verdict == Conformity.OUT


def test_the_worn_joint_holds_a_sound_geometry_back():
    _, verdict = told(fg_6.WORN_JOINT)
    assert verdict.overall == Overall.HELD_BACK
    assert verdict.geometry == Overall.STEERS_TRUE
    assert verdict.session.held_back_by == ("walk_round.joints.drag_link_axle",)
    assert search(verdict, ()).plans == ()
