"""Drafts on the disk that two windows, or a window and a text editor, have open."""

import errno
import os
import subprocess
import sys
from datetime import UTC, datetime
from pathlib import Path

import pytest

from core.documents import file_lock
from core.documents.document import value_at, with_value
from core.documents.file_lock import locked
from core.documents.record import (
    DiskError,
    RecordError,
    draft_path,
    file_record,
    read_document,
    record_path,
)
from core.documents.record_list import list_drafts
from tests.core.documents.late_errors import refuse_to_force_folders
from wizard.flow import drafts
from wizard.flow.answers import PASSED
from wizard.flow.draft_store import AnsweredElsewhere, DraftStore
from wizard.flow.flow import PLACE
from wizard.phrases.other_window import THROWN_AWAY

OPENED = datetime(2026, 11, 25, 14, 12, 5, tzinfo=UTC)
ODOMETER, NOTE = "vehicle.odometer", "complaint.note"


@pytest.fixture
def document():
    return drafts.with_id(with_value(drafts.new_session(OPENED), "vehicle.tag", "FG-3"))


class Window:
    """A window that has a session open.

    Parameters
    ----------
    files : Path
    document : mapping
        The session, which is on the disk.
    """

    def __init__(self, files, document):
        self.store = DraftStore(files)
        self.document = read_document(draft_path(files, document))
        self.store.remember(self.document)

    def answer(self, path, value):
        """Keep one answer. A refused answer leaves the window as it was."""
        try:
            kept = self.store.keep(with_value(self.document, path, value), self.document)
        except AnsweredElsewhere as error:
            self.document = error.document
            raise
        self.document = kept.document
        return kept


@pytest.fixture
def windows(tmp_path, document):
    """Two windows that have the same session open."""
    DraftStore(tmp_path).keep(document)
    return Window(tmp_path, document), Window(tmp_path, document)


def on_disk(files, path):
    """Value in the only draft."""
    (entry,) = list_drafts(files)
    return value_at(read_document(entry.path), path)


def make_pipe(path):
    """A pipe, which nobody writes to: opening it would wait for ever."""
    os.mkfifo(path)


def make_device(path):
    """A device that never ends."""
    path.symlink_to("/dev/zero")


class TestTwoWindows:
    def test_an_answer_of_one_window_does_not_remove_an_answer_of_the_other(
        self, tmp_path, windows
    ):
        first, second = windows
        first.answer(ODOMETER, "1 km")
        second.answer(NOTE, "wanders")
        first.answer("vehicle.description", "crew truck")
        assert on_disk(tmp_path, ODOMETER) == "1 km"
        assert on_disk(tmp_path, NOTE) == "wanders"
        assert value_at(first.document, NOTE) == "wanders"
        assert value_at(second.document, ODOMETER) == "1 km"

    def test_a_second_answer_to_one_question_waits_until_it_is_given_again(self, tmp_path, windows):
        first, second = windows
        first.answer(ODOMETER, "1 km")
        with pytest.raises(AnsweredElsewhere, match="answered in another window: 1 km") as refusal:
            second.answer(ODOMETER, "2 km")
        assert str(refusal.value).startswith("Odometer was ")
        assert on_disk(tmp_path, ODOMETER) == "1 km"
        second.answer(ODOMETER, "2 km")
        assert on_disk(tmp_path, ODOMETER) == "2 km"

    def test_reasons_and_skipped_questions_of_both_windows_are_kept(self, tmp_path, windows):
        first, second = windows
        first.answer(PASSED, ["vehicle.description"])
        second.answer(PASSED, [ODOMETER])
        first.answer("kept", [{"reading": "a", "reason": "seen"}])
        second.answer("kept", [{"reading": "b", "reason": "felt"}])
        assert on_disk(tmp_path, PASSED) == ["vehicle.description", ODOMETER]
        assert [item["reading"] for item in on_disk(tmp_path, "kept")] == ["a", "b"]

    def test_each_window_has_a_place_of_its_own(self, tmp_path, windows):
        first, second = windows
        first.answer(PLACE, ODOMETER)
        second.answer(PLACE, NOTE)
        first.answer("vehicle.description", "crew truck")
        assert value_at(first.document, PLACE) == ODOMETER
        assert on_disk(tmp_path, "vehicle.description") == "crew truck"

    def test_a_new_tag_takes_the_answers_of_the_other_window_along(self, tmp_path, windows):
        first, second = windows
        second.answer(NOTE, "wanders")
        renamed = drafts.with_id(with_value(first.document, "vehicle.tag", "FG-4"))
        first.store.keep(renamed, first.document)
        assert on_disk(tmp_path, "vehicle.tag") == "FG-4"
        assert on_disk(tmp_path, NOTE) == "wanders"

    def test_an_undone_tag_does_not_remove_a_draft_that_the_other_window_has_answered(
        self, tmp_path, windows
    ):
        first, second = windows
        second.answer(NOTE, "wanders")
        with pytest.raises(AnsweredElsewhere, match="it is not removed"):
            first.store.keep(drafts.new_session(OPENED), first.document)
        assert on_disk(tmp_path, NOTE) == "wanders"

    def test_an_undone_tag_removes_its_draft(self, tmp_path, windows):
        first, _ = windows
        first.store.keep(drafts.new_session(OPENED), first.document)
        assert list_drafts(tmp_path) == []

    def test_a_draft_that_this_window_never_read_is_not_overwritten(self, tmp_path, windows):
        first, _ = windows
        first.answer(NOTE, "wanders")
        DraftStore(tmp_path).keep(with_value(first.document, ODOMETER, "2 km"))
        with pytest.raises(AnsweredElsewhere):
            DraftStore(tmp_path).keep(with_value(first.document, ODOMETER, "3 km"))
        assert on_disk(tmp_path, ODOMETER) == "2 km"
        assert on_disk(tmp_path, NOTE) == "wanders"

    def test_a_draft_that_was_thrown_away_is_written_again_and_said(
        self, tmp_path, document, windows
    ):
        first, _ = windows
        draft_path(tmp_path, document).unlink()
        kept = first.answer(ODOMETER, "1 km")
        assert on_disk(tmp_path, ODOMETER) == "1 km"
        assert THROWN_AWAY in kept.remark
        assert first.answer(ODOMETER, "2 km").remark == ""

    def test_a_draft_is_held_while_another_window_writes_it(
        self, tmp_path, document, windows, monkeypatch
    ):
        monkeypatch.setattr(file_lock, "PATIENCE", 0.0)
        with locked(draft_path(tmp_path, document)), pytest.raises(RecordError) as refusal:
            windows[0].answer(ODOMETER, "1 km")
        assert "cannot be kept: another program is writing it" in str(refusal.value)
        assert "\n" not in str(refusal.value)
        windows[0].answer(ODOMETER, "1 km")


class TestFiling:
    def test_a_session_with_answers_of_the_other_window_is_filed_when_they_are_known(
        self, tmp_path, windows
    ):
        first, second = windows
        second.answer(NOTE, "wanders")
        with pytest.raises(AnsweredElsewhere, match="Look at the verdict again") as refusal:
            first.store.file(first.document, first.document)
        first.document = refusal.value.document
        filed = first.store.file(first.document, first.document)
        assert value_at(read_document(filed), NOTE) == "wanders"
        assert list((tmp_path / "unfinished").iterdir()) == []

    def test_another_place_in_the_other_window_does_not_matter(self, windows):
        first, second = windows
        second.answer(PLACE, NOTE)
        assert first.store.file(first.document, first.document).is_file()

    def test_a_session_that_was_filed_takes_no_answer(self, tmp_path, document, windows):
        first, second = windows
        first.store.file(first.document, first.document)
        for _ in range(2):
            with pytest.raises(RecordError, match="was filed from another window"):
                second.answer(ODOMETER, "2 km")
        with pytest.raises(RecordError, match="was filed from another window"):
            second.store.file(second.document, second.document)
        assert not draft_path(tmp_path, document).exists()

    def test_an_answer_waits_while_the_other_window_files(
        self, tmp_path, document, windows, monkeypatch
    ):
        monkeypatch.setattr(file_lock, "PATIENCE", 0.0)
        first, second = windows

        def answer_meanwhile(files, record):
            with pytest.raises(RecordError, match="another program is writing it"):
                second.answer(ODOMETER, "2 km")
            return file_record(files, record)

        monkeypatch.setattr("wizard.flow.draft_store.file_record", answer_meanwhile)
        first.store.file(first.document, first.document)
        with pytest.raises(RecordError, match="was filed from another window"):
            second.answer(ODOMETER, "2 km")
        assert value_at(read_document(record_path(tmp_path, document)), ODOMETER) is None


class TestLateErrors:
    def test_an_answer_that_the_disk_did_not_confirm_is_kept_and_said(
        self, tmp_path, windows, monkeypatch
    ):
        refuse_to_force_folders(monkeypatch)
        kept = windows[0].answer(ODOMETER, "1 km")
        assert "is kept and can be read back" in kept.remark
        assert on_disk(tmp_path, ODOMETER) == "1 km"

    def test_a_draft_under_an_earlier_tag_that_cannot_be_removed_is_said(
        self, tmp_path, document, windows, monkeypatch
    ):
        first, _ = windows
        remove = os.unlink

        def refuse(path, **options):
            if str(path) == str(draft_path(tmp_path, document)):
                raise OSError(errno.EIO, "Input/output error")
            remove(path, **options)

        monkeypatch.setattr(os, "unlink", refuse)
        renamed = drafts.with_id(with_value(first.document, "vehicle.tag", "FG-4"))
        kept = first.store.keep(renamed, first.document)
        assert "cannot be removed: Input/output error; it stays" in kept.remark
        assert sorted(entry.tag for entry in list_drafts(tmp_path)) == ["FG-3", "FG-4"]


class TestDisks:
    @pytest.mark.parametrize("gone", [".", "unfinished"])
    def test_a_folder_that_disappears_is_not_made_again(self, tmp_path, document, gone):
        files = tmp_path / "files"
        DraftStore(files).keep(document)
        window = Window(files, document)
        (files / gone).rename(tmp_path / "aside")
        with pytest.raises(DiskError, match="the folder is gone") as refusal:
            window.answer(ODOMETER, "1 km")
        assert "\n" not in str(refusal.value)
        with pytest.raises(DiskError, match="cannot be filed: the folder is gone"):
            window.store.file(document, document)
        assert not (files / gone).exists()
        assert not window.store.has_draft(document)
        (tmp_path / "aside").rename(files / gone)
        window.answer(ODOMETER, "1 km")
        assert on_disk(files, ODOMETER) == "1 km"

    def test_a_folder_that_was_there_at_the_start_is_not_made_again(self, tmp_path, document):
        files = tmp_path / "files"
        files.mkdir()
        store = DraftStore(files)
        files.rmdir()
        with pytest.raises(DiskError, match="the folder is gone"):
            store.keep(document)
        assert not files.exists()

    @pytest.mark.parametrize("make", [make_pipe, Path.mkdir, make_device])
    def test_a_draft_that_has_become_something_else_is_one_line_and_stays(
        self, tmp_path, document, windows, make
    ):
        path = draft_path(tmp_path, document)
        path.unlink()
        make(path)
        mode = path.lstat().st_mode
        for attempt in (
            lambda: windows[0].answer(ODOMETER, "1 km"),
            lambda: windows[0].store.file(document, document),
        ):
            with pytest.raises(DiskError, match="it is not a file") as refusal:
                attempt()
            assert "\n" not in str(refusal.value)
        assert path.lstat().st_mode == mode
        assert not record_path(tmp_path, document).exists()

    def test_a_draft_that_an_editor_has_spoilt_is_not_overwritten(
        self, tmp_path, document, windows
    ):
        path = draft_path(tmp_path, document)
        path.write_text("format = ")
        with pytest.raises(DiskError, match="is not TOML"):
            windows[0].answer(ODOMETER, "1 km")
        assert path.read_text() == "format = "

    def test_a_value_that_an_editor_has_put_into_the_draft_is_taken_over(
        self, tmp_path, document, windows
    ):
        path = draft_path(tmp_path, document)
        path.write_text(path.read_text().replace('tag = "FG-3"', 'tag = "FG-3"\nshop = "north"'))
        windows[0].answer(ODOMETER, "1 km")
        assert on_disk(tmp_path, "vehicle.shop") == "north"
        assert on_disk(tmp_path, ODOMETER) == "1 km"


KILLED_IN_THE_MIDDLE = """
import os, sys
from pathlib import Path
from core.documents.document import with_value
from core.documents.record import read_document
from wizard.flow.draft_store import DraftStore
path = Path(sys.argv[1])
document = read_document(path)
store = DraftStore(path.parent.parent)
store.remember(document)
os.fsync = lambda _: os.kill(os.getpid(), 9)
store.keep(with_value(document, "vehicle.odometer", "1 km"), document)
"""


def test_a_window_killed_while_it_writes_blocks_no_other(tmp_path, document, windows):
    path = draft_path(tmp_path, document)
    killed = subprocess.run(
        [sys.executable, "-c", KILLED_IN_THE_MIDDLE, str(path)], check=False, timeout=60
    )
    assert killed.returncode == -9
    assert path.with_name(f".{path.name}.lock").exists()
    windows[0].answer(NOTE, "wanders")
    assert on_disk(tmp_path, NOTE) == "wanders"
    assert not path.with_name(f".{path.name}.lock").exists()
