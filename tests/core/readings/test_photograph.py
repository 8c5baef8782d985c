"""Photographs of a record: their marks, and every fault in one line."""

import pytest

from core.documents.entries import EntryError
from core.readings.photograph import is_mark, photographs_in, without_mark

TABLE = {
    "file": "photographs/FG-2_1.jpg",
    "sha256": "0" * 64,
    "width": 4032,
    "height": 3024,
    "f35": "26",
    "note": "from the front",
    "marks": {"track_bar.frame": [1820.5, 1210], "own.1": [10.0, 20.0]},
}


def test_a_photograph_is_read_with_its_marks():
    (photograph,) = photographs_in({"photographs": [TABLE]})
    assert (photograph.width, photograph.height, photograph.f35) == (4032, 3024, 26.0)
    frame_end, own = photograph.marks
    assert (frame_end.point, frame_end.across, frame_end.down) == ("track_bar.frame", 1820.5, 1210)
    assert photograph.name_of(own) == "photographs.1.own.1"
    assert is_mark(photograph.name_of(own))
    assert not is_mark("track_bar.frame.height")


def test_what_the_record_leaves_out_is_not_known():
    (photograph,) = photographs_in({"photographs": [{"width": 640, "height": 480}]})
    assert photograph.f35 is None
    assert photograph.marks == ()
    assert photograph.file == ""


def test_a_mark_is_set_aside_by_its_name():
    photographs = photographs_in({"photographs": [TABLE, TABLE]})
    first, second = without_mark(photographs, "photographs.2.own.1")
    assert all(mark.counts for mark in first.marks)
    assert [mark.point for mark in second.marks if not mark.counts] == ["own.1"]


@pytest.mark.parametrize(
    ("change", "place", "reason"),
    [
        ({"width": "wide"}, "photographs 1.width", "whole number of pixels"),
        ({"width": 4032.5}, "photographs 1.width", "whole number of pixels"),
        ({"width": True}, "photographs 1.width", "whole number of pixels"),
        ({"height": 0}, "photographs 1.height", "between 100 and 100000"),
        ({"f35": "wide"}, "photographs 1.f35", "not a number"),
        ({"f35": "1"}, "photographs 1.f35", "between 5 and 2000 mm"),
        ({"file": "../FG-3/x.jpg"}, "photographs 1.file", "in the vehicle's folder"),
        ({"file": "/etc/passwd"}, "photographs 1.file", "in the vehicle's folder"),
        ({"file": 3}, "photographs 1.file", "a text in quotes"),
        ({"marks": [1]}, "photographs 1.marks", "a table of marks"),
        ({"marks": {"bumper": [1, 2]}}, "photographs 1.marks", "no point that can be marked"),
        ({"marks": {"own.9": [1, 2]}}, "photographs 1.marks", "no point that can be marked"),
        ({"marks": {"own.1": [1]}}, "photographs 1.marks.own.1", "two numbers of pixels"),
        ({"marks": {"own.1": [1, "2"]}}, "photographs 1.marks.own.1", "two numbers"),
        ({"marks": {"own.1": [1, float("nan")]}}, "photographs 1.marks.own.1", "two numbers"),
        ({"marks": {"own.1": [5000, 1]}}, "photographs 1.marks.own.1", "outside the picture"),
    ],
)
def test_a_fault_is_said_with_its_place(change, place, reason):
    with pytest.raises(EntryError, match=reason) as fault:
        photographs_in({"photographs": [{**TABLE, **change}]})
    assert fault.value.path == place
    assert "\n" not in str(fault.value)


@pytest.mark.parametrize("photographs", [{"width": 1}, ["picture"], "picture", [TABLE] * 13])
def test_photographs_that_are_no_list_or_too_many_are_refused(photographs):
    with pytest.raises(EntryError):
        photographs_in({"photographs": photographs})
