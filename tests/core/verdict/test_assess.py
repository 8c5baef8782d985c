"""The verdict on a document: every failure is one line that names its entry."""

import pytest

from core.documents.document import value_at, with_value, without
from core.documents.entries import EntryError
from core.profiles.profile import ProfileError
from core.verdict.assess import assess
from core.verdict.verdict import Overall
from tests.geometries import document_of, parallel_pair, true_readings


def no_profile(name):
    """A machine without profiles."""
    raise ProfileError(f"no profile “{name}”")


@pytest.fixture
def document():
    """A document of a vehicle that steers true; it needs no profile."""
    linkage = parallel_pair()
    return document_of(linkage, true_readings(linkage))


def test_a_complete_document_needs_no_profile(document):
    assert assess(document, no_profile, draws=0).overall == Overall.STEERS_TRUE


def test_a_missing_height_names_its_entry(document):
    missing = without(document, "readings.track_bar.frame.height")
    with pytest.raises(EntryError, match=r"^\[readings\.track_bar\.frame\] height: is missing"):
        assess(missing, no_profile, draws=0)


def test_a_faulty_quantity_names_its_entry(document):
    faulty = with_value(document, "readings.drag_link.axle.offset", ["wide"])
    with pytest.raises(EntryError, match=r"^\[readings\.drag_link\.axle\] offset: “wide”"):
        assess(faulty, no_profile, draws=0)


def test_a_value_that_was_not_measured_asks_for_the_profile(document):
    assert value_at(document, "readings.steering.arm")
    with pytest.raises(ProfileError, match="no profile"):
        assess(without(document, "readings.steering.arm"), no_profile, draws=0)
