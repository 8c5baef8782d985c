"""Agreement of the readings while they are taken."""

from core.documents.document import without
from core.verdict.closure import closure_of
from tests.geometries import document_of, parallel_pair, true_readings

LINKAGE = parallel_pair(parallel_deg=-4.0)
DOCUMENT = document_of(LINKAGE, true_readings(LINKAGE))


def no_profile(name):
    """A loader of profiles for documents that need none."""
    raise AssertionError(f"asked for the profile {name!r}")


def test_without_a_place_for_every_pivot_there_is_no_closure():
    document = without(DOCUMENT, "readings.drag_link.axle.offset")
    assert closure_of(document, no_profile) is None


def test_true_readings_agree():
    closure = closure_of(DOCUMENT, no_profile)
    assert closure.is_checked
    assert closure.closes


def test_readings_of_the_pivots_alone_are_not_checked():
    document = without(DOCUMENT, "readings.braces")
    for path in ("track_bar.length", "track_bar.slope", "drag_link.length", "drag_link.slope"):
        document = without(document, f"readings.{path}")
    closure = closure_of(document, no_profile)
    assert not closure.is_checked
    assert closure.closes


def test_a_mistake_of_two_inches_does_not_close_and_is_named():
    readings = true_readings(LINKAGE)
    readings["track_bar.frame.height"] += 50.8
    closure = closure_of(document_of(LINKAGE, readings), no_profile)
    assert not closure.closes
    assert closure.suspect_groups[0].readings[0] == "track_bar.frame.height"


def test_exchanged_slopes_are_named_as_such():
    readings = true_readings(LINKAGE)
    slopes = ("track_bar.slope", "drag_link.slope")
    exchanged = {slopes[0]: readings[slopes[1]], slopes[1]: readings[slopes[0]]}
    closure = closure_of(document_of(LINKAGE, {**readings, **exchanged}), no_profile)
    assert (closure.slips[0].slip, closure.slips[0].readings) == ("exchanged", slopes)
    assert closure_of(DOCUMENT, no_profile).slips == ()
