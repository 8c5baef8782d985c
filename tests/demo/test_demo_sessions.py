"""demo_sessions/ holds the records that the program makes of the typed answers.

Each record has the verdict that it is meant to demonstrate. To build the records again:
python -m tests.demo.build
"""

from collections.abc import Mapping
from math import radians

import pytest

from core.documents.document import value_at, with_value, without
from core.documents.record import read_document
from core.documents.record_list import list_records
from core.documents.seal import SealState
from core.documents.signature import filed_state, signatures_of
from core.fix.comparison import FixOutcome, altered_pivots, compare
from core.fix.plan_record import filed_plan
from core.fix.reached import reached_moves
from core.fix.search import search
from core.profiles.profile import load_profile
from core.statistics.conformity import Conformity
from core.text.quantity import INCH
from core.verdict.direct_check import DecidedBy
from core.verdict.direct_shape import LookAt
from core.verdict.method import METHOD_VERSION
from core.verdict.verdict import Overall
from tests.demo import fg_1, fg_2, fg_3, fg_4, fg_5, fg_6, fg_8
from tests.demo.build import SESSIONS, build
from wizard.flow.filed_records import read_and_judge
from wizard.locations import DEMO_SESSIONS, PROFILES
from wizard.phrases.search_result import search_result_words


@pytest.fixture(scope="module")
def rebuilt(tmp_path_factory):
    folder = tmp_path_factory.mktemp("rebuilt")
    build(folder)
    return folder


def document_and_verdict(typed):
    """The document of a demo session, and its verdict computed again."""
    return read_and_judge(str(typed.path_in(DEMO_SESSIONS)), [PROFILES])


def first_difference(one, other, place="record"):
    """The first place where two records differ; "" if they agree.

    The last figures of a number depend on the machine and do not count.
    """
    if isinstance(one, Mapping) and isinstance(other, Mapping):
        if list(one) != list(other):
            return f"{place}: {list(one)} is not {list(other)}"
        places = [first_difference(one[key], other[key], f"{place}.{key}") for key in one]
    elif isinstance(one, list) and isinstance(other, list) and len(one) == len(other):
        pairs = enumerate(zip(one, other, strict=True), 1)
        places = [first_difference(*pair, f"{place} {number}") for number, pair in pairs]
    elif isinstance(one, float) and isinstance(other, float):
        same = one == pytest.approx(other, rel=1e-6, abs=1e-9, nan_ok=True)
        return "" if same else f"{place}: {one} is not {other}"
    else:
        return "" if one == other else f"{place}: {one!r} is not {other!r}"
    return next(filter(None, places), "")


def comparable(path):
    """A record without the entries that differ between machines or versions."""
    document = without(without(read_document(path), "program_version"), "seal")
    for photograph in document.get("photographs", ()):
        photograph.pop("sha256")  # each version of Pillow writes other bytes
    signatures = [without(signature, "digest") for signature in signatures_of(document)]
    return {**document, "signatures": signatures}


def test_the_folder_holds_every_demo_session(rebuilt):
    paths = {path.relative_to(DEMO_SESSIONS) for path in DEMO_SESSIONS.rglob("*.toml")}
    assert paths == {path.relative_to(rebuilt) for path in rebuilt.glob("*/*.toml")}
    assert not list(rebuilt.glob("unfinished/*"))


@pytest.mark.parametrize("typed", SESSIONS, ids=lambda typed: typed.id)
def test_a_session_typed_again_gives_the_same_record(typed, rebuilt):
    assert not first_difference(
        comparable(typed.path_in(DEMO_SESSIONS)), comparable(typed.path_in(rebuilt))
    )


def test_a_difference_between_records_is_found():
    record = comparable(fg_1.AS_BUILT.path_in(DEMO_SESSIONS))
    peak = value_at(record, "results.steer.peak_deg")
    assert "steer.peak_deg" in first_difference(
        record, with_value(record, "results.steer.peak_deg", 0.3)
    )
    assert not first_difference(
        record, with_value(record, "results.steer.peak_deg", peak * (1 + 1e-8))
    )
    assert first_difference(record, without(record, "readings.track_bar.frame"))
    assert first_difference(
        record, with_value(record, "readings.track_bar.frame.height", ["22 in"])
    )


@pytest.mark.parametrize("typed", SESSIONS, ids=lambda typed: typed.id)
def test_a_session_says_that_it_is_invented(typed):
    document = read_document(typed.path_in(DEMO_SESSIONS))
    assert "invented" in value_at(document, "vehicle.description")
    assert "invented" in value_at(document, "session.technician")
    assert all("invented" in signature["by"] for signature in signatures_of(document))


@pytest.mark.parametrize("typed", SESSIONS, ids=lambda typed: typed.id)
def test_each_seal_holds_and_each_decision_stands(typed):
    state = filed_state(read_document(typed.path_in(DEMO_SESSIONS)))
    assert state.seal == SealState.HOLDS
    assert not state.is_changed
    assert all(decision.stands for decision in state.decisions)


@pytest.mark.parametrize("typed", SESSIONS, ids=lambda typed: typed.id)
def test_each_session_was_filed_by_the_method_of_this_program(typed):
    document = read_document(typed.path_in(DEMO_SESSIONS))
    assert value_at(document, "results.method_version") == METHOD_VERSION


@pytest.mark.parametrize("typed", SESSIONS, ids=lambda typed: typed.id)
def test_the_filed_verdict_equals_the_computed_verdict(typed):
    document, verdict = document_and_verdict(typed)
    assert value_at(document, "results.overall") == verdict.overall


def test_the_list_has_eight_trucks_latest_first():
    entries = list_records(DEMO_SESSIONS)
    assert [entry.id for entry in entries] == [typed.id for typed in reversed(SESSIONS)]
    assert {entry.tag for entry in entries} == {f"FG-{number}" for number in range(1, 9)}
    assert not any(entry.fault for entry in entries)


def test_the_truck_as_built_steers_true():
    _, verdict = document_and_verdict(fg_1.AS_BUILT)
    assert verdict.overall == Overall.STEERS_TRUE
    assert verdict.adjustment.closes
    assert not verdict.suspect_groups


def test_the_lifted_truck_has_bump_steer():
    document, verdict = document_and_verdict(fg_1.LIFTED)
    assert verdict.overall == Overall.BUMP_STEER
    assert verdict.steer.ruling.verdict == Conformity.OUT
    assert value_at(document, "session.altered") == ["ride_height"]
    _, as_built = document_and_verdict(fg_1.AS_BUILT)
    assert all(
        control.unchanged for control in compare(as_built, verdict, {"ride_height"}).controls
    )


def test_the_lifted_truck_has_a_plan_that_steers_true():
    document, verdict = document_and_verdict(fg_1.LIFTED)
    planned = filed_plan(document)
    assert planned.moved == {"drag_link.frame"}
    assert abs(planned.expected["effective"]) < verdict.session.limits.parallel
    assert value_at(document, "plan.expected.p_true") >= 0.95


def test_the_fix_is_shown_and_reaches_its_plan():
    lifted, before = document_and_verdict(fg_1.LIFTED)
    fixed, after = document_and_verdict(fg_1.FIXED)
    comparison = compare(before, after, altered_pivots(lifted, fixed))
    assert comparison.outcome == FixOutcome.SHOWN
    assert comparison.controls
    assert all(control.unchanged for control in comparison.controls)
    (move,) = reached_moves(filed_plan(lifted), before, after)
    assert move.fits
    assert move.planned == pytest.approx(-1 * INCH)
    assert value_at(fixed, "session.follows") == value_at(lifted, "session.id")


def test_the_re_mounted_drag_link_is_flatter_than_the_track_bar():
    document, verdict = document_and_verdict(fg_2.RE_MOUNTED)
    assert verdict.overall == Overall.BUMP_STEER
    assert verdict.rules.parallel.value < -radians(3)
    assert filed_plan(document).moved == {"track_bar.axle"}


def test_the_wrong_reading_is_named_alone_with_its_error():
    document, verdict = document_and_verdict(fg_3.NOT_CLOSING)
    assert not verdict.adjustment.closes
    (group,) = verdict.suspect_groups
    assert group.readings == ("track_bar.axle.height",)
    assert group.mistakes[0] == pytest.approx(2 * INCH, abs=INCH / 4)
    kept = [entry["reading"] for entry in value_at(document, "kept")]
    assert kept == ["track_bar.slope", "braces.axle_ends"]


def test_a_verdict_too_close_to_call_names_the_skipped_reading_that_settles_it():
    _, verdict = document_and_verdict(fg_4.CLOSE)
    assert verdict.overall == Overall.TOO_CLOSE
    assert verdict.advice.settles
    assert verdict.advice.skipped == ("guide.pitch_gain",)


def test_the_inverted_y_changes_its_toe():
    _, verdict = document_and_verdict(fg_5.TOE)
    assert verdict.overall == Overall.BUMP_STEER
    assert verdict.rules.parallel.verdict == Conformity.WITHIN
    assert verdict.toe.ruling.verdict == Conformity.OUT


def test_a_worn_joint_holds_a_sound_geometry_back():
    _, verdict = document_and_verdict(fg_6.WORN_JOINT)
    assert verdict.overall == Overall.HELD_BACK
    assert verdict.geometry == Overall.STEERS_TRUE
    assert verdict.session.held_back_by == ("walk_round.joints.drag_link_axle",)
    assert search(verdict, ()).plans == ()


def test_the_photographs_and_the_tape_agree():
    photographed, before = document_and_verdict(fg_8.PHOTOGRAPHED)
    taped, after = document_and_verdict(fg_8.TAPED)
    assert before.overall == after.overall == Overall.BUMP_STEER
    assert before.adjustment.closes
    comparison = compare(before, after, altered_pivots(photographed, taped))
    assert not any(comparison.change(name).changed for name in ("parallel", "peak_steer"))
    assert all(control.unchanged for control in comparison.controls)
    assert before.rules.parallel.u > after.rules.parallel.u
    for table in photographed["photographs"]:
        file = DEMO_SESSIONS / "FG-8" / table["file"]
        assert file.stat().st_size < 60_000


def test_the_fixed_truck_does_what_its_pivots_say():
    _, fixed = document_and_verdict(fg_1.FIXED)
    _, measured = document_and_verdict(fg_1.MEASURED)
    assert measured.overall == Overall.STEERS_TRUE
    assert measured.direct.decided_by == DecidedBy.BOTH
    assert measured.steer.ruling.u < fixed.steer.ruling.u / 2


def test_the_truck_with_a_soft_bush_does_not_do_what_its_pivots_say():
    document, verdict = document_and_verdict(fg_3.SOFT_BUSH)
    assert verdict.direct.by_pivots.ruling.verdict == Conformity.WITHIN
    assert verdict.overall == Overall.BUMP_STEER
    assert verdict.direct.decided_by == DecidedBy.DIRECT
    assert verdict.direct.look_at == (LookAt.SLOPE,)
    assert value_at(document, "results.steer.decided_by") == "direct"


def test_no_plan_moves_the_pivots_of_a_truck_with_a_soft_bush():
    _, verdict = document_and_verdict(fg_3.SOFT_BUSH)
    corrections = load_profile("coil-tie-rod", [PROFILES]).corrections
    result = search(verdict, corrections)
    assert result.plans == ()
    assert "does not do what its pivots say" in search_result_words(verdict, result)
