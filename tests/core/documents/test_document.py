import copy

import pytest

from core.documents.document import value_at, with_value, without

DOCUMENT = {
    "vehicle": {"tag": "FG-3"},
    "readings": {"track_bar": {"bent": False, "frame": {"height": ["24 1/2 in"]}}},
}


def test_a_value_is_found_by_its_path():
    assert value_at(DOCUMENT, "vehicle.tag") == "FG-3"
    assert value_at(DOCUMENT, "readings.track_bar.frame.height") == ["24 1/2 in"]
    assert value_at(DOCUMENT, "readings.track_bar.bent") is False


@pytest.mark.parametrize("path", ["results", "vehicle.odometer", "vehicle.tag.x", "a.b.c"])
def test_a_missing_value_is_the_default(path):
    assert value_at(DOCUMENT, path) is None
    assert value_at(DOCUMENT, path, "none") == "none"


def test_a_changed_document_is_a_copy_that_shares_the_rest():
    before = copy.deepcopy(DOCUMENT)
    after = with_value(DOCUMENT, "readings.track_bar.axle.height", ["19 in"])
    assert before == DOCUMENT
    assert value_at(after, "readings.track_bar.axle.height") == ["19 in"]
    assert after["vehicle"] is DOCUMENT["vehicle"]
    assert after["readings"]["track_bar"]["frame"] is DOCUMENT["readings"]["track_bar"]["frame"]


def test_missing_tables_are_added():
    assert with_value({}, "a.b.c", 1) == {"a": {"b": {"c": 1}}}


def test_a_value_cannot_contain_another():
    with pytest.raises(ValueError, match="tag is a value"):
        with_value(DOCUMENT, "vehicle.tag.colour", "red")


def test_removing_a_value_undoes_adding_it():
    before = copy.deepcopy(DOCUMENT)
    for path in ("vehicle.odometer", "stance.ride_height.left", "note"):
        assert without(with_value(DOCUMENT, path, "x"), path) == DOCUMENT
    assert before == DOCUMENT


@pytest.mark.parametrize("path", ["results", "vehicle.odometer", "vehicle.tag.x", "a.b.c"])
def test_removing_a_missing_value_changes_nothing(path):
    assert without(DOCUMENT, path) == DOCUMENT
