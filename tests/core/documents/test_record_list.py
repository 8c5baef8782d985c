import errno
import os
import time
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from core.documents import record
from core.documents.document import with_value
from core.documents.record import RecordError
from core.documents.record_list import list_drafts, list_records, remove_leftovers
from core.documents.signature import sign

OPENED = datetime(2026, 11, 25, 14, 12, 5, tzinfo=UTC)


def session(number=0, tag="FG-3"):
    opened = OPENED + timedelta(days=number)
    return {
        "format": "evenarc session",
        "format_version": 1,
        "session": {
            "id": f"{tag}_{opened:%Y%m%d-%H%M%S}_first_{number:04}",
            "kind": "first",
            "opened": opened,
            "technician": "T. One",
        },
        "vehicle": {"tag": tag, "description": "crew truck"},
        "results": {"overall": "bump steer"},
    }


@pytest.fixture
def files(tmp_path):
    return tmp_path / "files"


def test_sessions_of_every_vehicle_newest_first(files):
    for number, tag in enumerate(["FG-3", "FG-1", "FG-3"]):
        record.file_record(files, session(number, tag))
    entries = list_records(files)
    assert [(entry.tag, entry.opened) for entry in entries] == [
        ("FG-3", OPENED + timedelta(days=2)),
        ("FG-1", OPENED + timedelta(days=1)),
        ("FG-3", OPENED),
    ]
    assert entries[0].overall == "bump steer"
    assert entries[0].technician == "T. One"
    assert entries[0].description == "crew truck"
    assert entries[0].decision == ""


def test_times_of_other_zones_and_without_an_offset_are_in_order(files):
    later = OPENED.astimezone().replace(tzinfo=None) + timedelta(minutes=1)
    record.file_record(files, with_value(session(1), "session.opened", later))
    record.file_record(files, session(0))
    assert [entry.path.stem[-4:] for entry in list_records(files)] == ["0001", "0000"]


def test_the_last_decision_is_listed_as_soon_as_it_is_there(files):
    path = record.file_record(files, session())
    assert list_records(files)[0].decision == ""
    for decision in ("returned", "signed"):
        record.replace_signed(path, sign(record.read_document(path), decision, "A. Lead", OPENED))
        assert list_records(files)[0].decision == decision


def test_no_folder_is_no_sessions(files):
    assert list_records(files) == []
    assert list_drafts(files) == []
    remove_leftovers(files)
    assert not files.exists()


@pytest.mark.parametrize(
    ("content", "reason"),
    [
        ("", "format: is no Evenarc record"),
        ("x = ", "is not TOML"),
        ('format = "evenarc session"\nformat_version = 7', "7 is newer than this program"),
        ('format = "evenarc session"\nformat_version = 1', "[session] opened: should be a date"),
        (
            'format = "evenarc session"\nformat_version = 1\nsession.opened = 0001-01-01T00:00:00',
            "",
        ),
        (
            'format = "evenarc session"\nformat_version = 1\n'
            "session = {id = 3, opened = 2026-01-01T00:00:00Z}",
            "[session] id: ",
        ),
    ],
)
def test_a_file_that_cannot_be_read_is_listed_with_its_reason(files, content, reason):
    record.file_record(files, session())
    broken = files / "FG-3" / "broken.toml"
    broken.write_text(content)
    faults = {entry.path: entry.fault for entry in list_records(files)}
    assert len(faults) == 2
    assert faults[broken].startswith(f"{broken}: ")
    assert reason in faults[broken]
    assert faults[broken].isprintable()


def test_a_broken_link_and_a_folder_are_listed_with_a_fault(files):
    (files / "FG-3" / "folder.toml").mkdir(parents=True)
    (files / "FG-3" / "gone.toml").symlink_to(files / "nowhere")
    assert [bool(entry.fault) for entry in list_records(files)] == [True, True]


def test_a_folder_that_cannot_be_read_is_listed(files, monkeypatch):
    record.file_record(files, session(1, "FG-1"))
    record.file_record(files, session(2, "FG-2"))
    scandir = os.scandir

    def closed(folder):
        if folder.name == "FG-1":
            raise PermissionError(errno.EACCES, "Permission denied")
        return scandir(folder)

    monkeypatch.setattr(os, "scandir", closed)
    faults = {entry.path.name: entry.fault for entry in list_records(files)}
    assert "FG-1: cannot be read: that is not allowed there" in faults["FG-1"]
    assert len(faults) == 2


def test_a_file_in_the_place_of_the_files_folder_is_refused(files):
    files.write_text("")
    with pytest.raises(RecordError, match="a file is where a folder should be"):
        list_records(files)


def test_other_files_are_not_listed(files):
    record.file_record(files, session())
    record.save_draft(files, session(1))
    (files / "shop" / "profiles").mkdir(parents=True)
    for name in ("shop/parts_shelf.toml", "FG-3/notes.txt", "FG-3/.hidden.toml", "read me.toml"):
        (files / name).write_text("")
    assert [entry.path.stem for entry in list_records(files)] == [session()["session"]["id"]]


def test_texts_of_a_record_are_safe_to_display(files):
    record.file_record(files, with_value(session(), "vehicle.description", "\x1b[2J\nup\u202e"))
    assert list_records(files)[0].description == r"\x1b[2J\nup\u202e"


def test_a_draft_that_was_filed_meanwhile_is_not_listed(files):
    for number in (0, 1, 2):
        record.save_draft(files, session(number))
    filed = record.file_record(files, session(2))
    record.save_draft(files, session(2))  # the program was killed before it removed the draft
    (files / "unfinished" / "broken.toml").write_text("x = ")
    drafts = list_drafts(files)
    assert {entry.path.stem[-4:] for entry in drafts if not entry.fault} == {"0000", "0001"}
    assert [entry.path.name for entry in drafts if entry.fault] == ["broken.toml"]
    remove_leftovers(files)
    assert list_drafts(files) == drafts
    assert not (files / "unfinished" / filed.name).exists()
    assert filed.exists()


def test_half_written_files_are_ignored_and_removed_when_old(files):
    path = record.file_record(files, session())
    old, new = (path.with_name(f".{path.name}.{name}.part") for name in ("old", "new"))
    old.write_text("x")
    new.write_text("x")
    os.utime(old, (time.time() - 3600,) * 2)
    assert len(list_records(files)) == 1
    remove_leftovers(files)
    assert not old.exists()
    assert new.exists()  # another program may still be writing it
    assert len(list_records(files)) == 1


def test_a_draft_with_more_answers_than_its_record_is_not_removed(files):
    filed = record.file_record(files, session())
    draft = record.save_draft(files, with_value(session(), "vehicle.odometer", "12 km"))
    remove_leftovers(files)
    assert draft.exists()
    assert [entry.path for entry in list_drafts(files)] == [draft]
    assert filed.exists()


def test_a_draft_is_listed_where_its_vehicles_folder_cannot_be_read(files, monkeypatch):
    record.save_draft(files, session())

    def closed(_):
        raise PermissionError(errno.EACCES, "Permission denied")

    monkeypatch.setattr(Path, "is_file", closed)
    assert [entry.tag for entry in list_drafts(files)] == ["FG-3"]


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="this system has no named pipes")
def test_a_pipe_in_the_place_of_a_record_is_not_opened(files):
    (files / "FG-3").mkdir(parents=True)
    os.mkfifo(files / "FG-3" / "pipe.toml")
    (entry,) = list_records(files)
    assert "it is not a file" in entry.fault


def test_a_byte_order_mark_is_skipped(files):
    filed = record.file_record(files, session())
    filed.write_bytes(b"\xef\xbb\xbf" + filed.read_bytes())
    assert list_records(files)[0].fault == ""
