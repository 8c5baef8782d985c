"""Whether the readings agree while they are taken."""

from core.documents.document import without
from core.verdict.closure import closure_of
from tests.geometries import document_of, parallel_pair, true_readings

LINKAGE = parallel_pair(parallel_deg=-4.0)


def no_profile(name):
    raise AssertionError(f"asked for the profile {name!r}")


def found_in(document):
    return closure_of(document, no_profile)


def test_as_long_as_a_pivot_has_no_place_nothing_can_be_said():
    document = without(
        document_of(LINKAGE, true_readings(LINKAGE)), "readings.drag_link.axle.offset"
    )
    assert found_in(document) is None


def test_true_readings_agree():
    found = found_in(document_of(LINKAGE, true_readings(LINKAGE)))
    assert found.is_checked
    assert found.closes


def test_pivots_alone_are_checked_by_nothing():
    document = document_of(LINKAGE, true_readings(LINKAGE))
    for path in ("track_bar.length", "track_bar.slope", "drag_link.length", "drag_link.slope"):
        document = without(document, f"readings.{path}")
    found = found_in(without(document, "readings.braces"))
    assert not found.is_checked
    assert found.closes


def test_a_slip_of_two_inches_does_not_close_and_is_named():
    read = true_readings(LINKAGE)
    read["track_bar.frame.height"] += 50.8
    found = found_in(document_of(LINKAGE, read))
    assert not found.closes
    assert found.suspect_groups[0].readings[0] == "track_bar.frame.height"
