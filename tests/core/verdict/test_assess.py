"""The verdict on a document, and the entries that its failures name."""

from unittest.mock import Mock

import pytest

from core.adjustment.least_squares import NoSolution
from core.documents.document import with_value, without
from core.documents.entries import EntryError
from core.profiles.profile import ProfileError
from core.verdict.assess import assess
from core.verdict.peak import Method
from core.verdict.verdict import Overall
from tests.geometries import document_of, parallel_pair, true_readings

LINKAGE = parallel_pair()
DOCUMENT = document_of(LINKAGE, true_readings(LINKAGE))


def no_profile(name):
    """A loader of profiles that has none."""
    raise ProfileError(f"no profile {name}")


def test_a_complete_document_needs_no_profile():
    assert assess(DOCUMENT, no_profile, draws=0).overall == Overall.STEERS_TRUE


def test_without_draws_a_peak_is_linear_in_any_case():
    assert assess(DOCUMENT, no_profile, draws=0).steer.method == Method.LINEAR
    assert assess(DOCUMENT, no_profile, draws=2_000).steer.method == Method.MONTE_CARLO


@pytest.mark.parametrize("reading", ["track_bar.frame.height", "drag_link.axle.offset"])
def test_a_missing_reading_is_named_by_its_entry(reading):
    with pytest.raises(EntryError) as refused:
        assess(without(DOCUMENT, f"readings.{reading}"), no_profile)
    assert refused.value.path == f"readings.{reading}"
    assert "is missing" in str(refused.value)


def test_an_invalid_entry_is_named():
    with pytest.raises(EntryError) as refused:
        assess(with_value(DOCUMENT, "readings.steering.arm", "6 in"), no_profile)
    assert refused.value.path == "readings.steering.arm"


def test_readings_that_do_not_settle_are_an_entry_error(monkeypatch):
    no_solution = Mock(side_effect=NoSolution("the readings do not settle"))
    monkeypatch.setattr("core.verdict.assess.evaluate", no_solution)
    with pytest.raises(EntryError, match="readings: the readings do not settle"):
        assess(DOCUMENT, no_profile)


def test_a_profile_that_is_needed_and_cannot_be_loaded_is_refused():
    with pytest.raises(ProfileError):
        assess(without(DOCUMENT, "limits"), no_profile)
