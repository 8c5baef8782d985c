"""Disks that refuse an answer or disappear: one clear line, and nothing typed is lost."""

import errno
import os
from contextlib import asynccontextmanager

import pytest

from core.documents import atomic_write
from core.documents.document import value_at
from core.documents.record import read_document
from core.documents.record_list import list_drafts, list_records
from core.documents.signature import signatures_of
from tests.core.documents.late_errors import refuse_to_force_folders
from tests.wizard.tui.driving import app_in, at, draft_at, settle, type_text
from tests.wizard.tui.looking import flowing, open_session, path_of, screen_text, workshop_app
from wizard.tui.screens.home import HomeScreen
from wizard.tui.screens.other_folder import read_folder
from wizard.tui.screens.record import RecordScreen
from wizard.tui.widgets.field import Field
from wizard.tui.widgets.remark import Remark

HEIGHT = "readings.track_bar.frame.height"
OFFSET = "readings.track_bar.frame.offset"
SMALL = (80, 24)


@asynccontextmanager
async def measuring_at(files, path):
    """A session resumed from its draft at a question."""
    draft = draft_at(files, path)
    async with app_in(files).run_test(size=SMALL) as pilot:
        pilot.app.resume(draft)
        await pilot.pause()
        yield pilot, draft


async def enter(pilot, text):
    """Type a text and press Enter."""
    await type_text(pilot, text)
    await pilot.press("enter")
    await pilot.pause()


def remark(pilot):
    """Text under the field."""
    return flowing(str(pilot.app.screen.query_one(Remark).content))


def field(pilot):
    """Text in the field."""
    return pilot.app.screen.query_one(Field).value


async def test_a_folder_that_disappears_is_said_and_another_one_takes_the_answer(tmp_path):
    files, stick = tmp_path / "files", tmp_path / "stick"
    async with measuring_at(files, HEIGHT) as (pilot, draft):
        files.rename(tmp_path / "unplugged")
        await enter(pilot, "24 1/2")
        assert "trouble; F6 goes on in another folder" in remark(pilot)
        assert f"{files}: cannot be kept: the folder is gone" in remark(pilot)
        assert (at(pilot), field(pilot)) == (HEIGHT, "24 1/2")
        assert "F6 another folder" in screen_text(pilot)
        assert not files.exists()

        await pilot.press("f6")
        pilot.app.screen.query_one(Field).value = str(stick)
        await pilot.pause()
        assert "is made; sessions go there" in flowing(screen_text(pilot))
        await pilot.press("enter")
        await pilot.pause()
        assert at(pilot) == OFFSET
        await enter(pilot, "18 1/4")
        kept = read_document(stick / "unfinished" / draft.name)
        assert value_at(kept, HEIGHT) == ["24 1/2 in"]
        assert value_at(kept, OFFSET) == ["18 1/4 in"]
        assert value_at(kept, "vehicle.odometer") == "48210 km"
        await pilot.press("f9")
        await pilot.pause()
        assert pilot.app.surroundings.files == stick
    assert not files.exists()


async def test_a_folder_that_comes_back_takes_the_answer(tmp_path):
    files = tmp_path / "files"
    async with measuring_at(files, HEIGHT) as (pilot, _):
        files.rename(tmp_path / "unplugged")
        await enter(pilot, "24 1/2")
        (tmp_path / "unplugged").rename(files)
        await pilot.press("enter")
        assert at(pilot) == OFFSET


async def test_a_refused_folder_is_said_and_another_one_can_be_named(tmp_path):
    files, in_the_way = tmp_path / "files", tmp_path / "in the way"
    in_the_way.write_text("")
    async with measuring_at(files, HEIGHT) as (pilot, _):
        files.rename(tmp_path / "unplugged")
        await enter(pilot, "24 1/2")
        await pilot.press("f6")
        pilot.app.screen.query_one(Field).value = str(in_the_way)
        await pilot.press("enter")
        assert "is a file; type the name of a folder" in remark(pilot)
        pilot.app.screen.query_one(Field).value = str(in_the_way / "below")
        await pilot.press("enter")
        await pilot.pause()
        assert "a file is where a folder should be" in remark(pilot)
        assert (at(pilot), field(pilot)) == (HEIGHT, "24 1/2")
        await pilot.press("f6")
        pilot.app.screen.query_one(Field).value = str(tmp_path / "good")
        await pilot.press("enter")
        await pilot.pause()
        assert at(pilot) == OFFSET


@pytest.mark.parametrize("text", ["", "  ", "a\0b", "~nobody of this name/x", "x" * 4000])
def test_a_text_that_can_name_no_folder_is_refused_in_one_line(text):
    with pytest.raises(ValueError, match=r"folder|cannot be looked at") as refusal:
        read_folder(text)
    assert str(refusal.value).isprintable()


async def test_f6_does_nothing_while_the_disk_takes_every_answer(tmp_path):
    async with measuring_at(tmp_path, HEIGHT) as (pilot, _):
        before = pilot.app.screen
        await pilot.press("f6")
        assert pilot.app.screen is before
        assert "another folder" not in screen_text(pilot)


@pytest.mark.parametrize("make", [os.mkfifo, os.mkdir])
async def test_a_draft_that_has_become_a_pipe_or_a_folder_is_one_line(tmp_path, make):
    async with measuring_at(tmp_path, HEIGHT) as (pilot, draft):
        draft.unlink()
        make(draft)
        await enter(pilot, "24 1/2")
        assert "it is not a file" in remark(pilot)
        assert (at(pilot), field(pilot)) == (HEIGHT, "24 1/2")
        assert not draft.is_file()


async def test_leaving_a_session_that_is_on_no_disk_is_asked(tmp_path):
    files, stick = tmp_path / "files", tmp_path / "stick"
    async with measuring_at(files, HEIGHT) as (pilot, draft):
        files.rename(tmp_path / "unplugged")
        await pilot.press("f9")
        await pilot.pause()
        assert "Nothing of this session is on the disk now. Leave?" in screen_text(pilot)
        await pilot.press("escape")
        assert at(pilot) == HEIGHT
        await pilot.press("f9", "2", "enter")
        await pilot.pause()
        pilot.app.screen.query_one(Field).value = str(stick)
        await pilot.press("enter")
        await pilot.pause()
        assert at(pilot) == HEIGHT
        assert (stick / "unfinished" / draft.name).is_file()
        await pilot.press("f9")
        await pilot.pause()
        assert isinstance(pilot.app.screen, HomeScreen)


async def test_leaving_without_a_disk_can_be_confirmed(tmp_path):
    files = tmp_path / "files"
    async with measuring_at(files, HEIGHT) as (pilot, _):
        files.rename(tmp_path / "unplugged")
        await pilot.press("f9", "3", "enter")
        await pilot.pause()
        assert isinstance(pilot.app.screen, HomeScreen)


async def test_a_session_that_cannot_be_filed_goes_to_another_folder(tmp_path, monkeypatch):
    files, stick = tmp_path / "files", tmp_path / "stick"
    create = atomic_write.create_file

    def full(path, content):
        if path.is_relative_to(files):
            raise OSError(errno.ENOSPC, "No space left on device")
        create(path, content)

    monkeypatch.setattr(atomic_write, "create_file", full)
    async with measuring_at(files, "file") as (pilot, _):
        await pilot.press("1", "enter")
        await pilot.pause()
        assert "cannot be filed: the disk is full" in remark(pilot)
        await pilot.press("f6")
        pilot.app.screen.query_one(Field).value = str(stick)
        await pilot.press("enter")
        await pilot.pause()
        assert at(pilot) == "file"
        await pilot.press("1", "enter")
        await settle(pilot)
        assert isinstance(pilot.app.screen, HomeScreen)
    assert [entry.fault for entry in list_records(stick)] == [""]
    assert list_records(files) == []
    assert list_drafts(stick) == []
    assert len(list_drafts(files)) == 1


async def test_a_reason_that_cannot_be_kept_goes_to_another_folder(tmp_path):
    files, stick = tmp_path / "files", tmp_path / "stick"
    async with measuring_at(files, HEIGHT) as (pilot, draft):
        await enter(pilot, "33")
        await pilot.press("f5")
        files.rename(tmp_path / "unplugged")
        await enter(pilot, "lifted, seen")
        assert "the folder is gone" in remark(pilot)
        await pilot.press("f6")
        pilot.app.screen.query_one(Field).value = str(stick)
        await pilot.press("enter")
        await pilot.pause()
        assert at(pilot) == OFFSET
    kept = read_document(stick / "unfinished" / draft.name)
    assert kept["kept"] == [{"reading": "track_bar.frame.height", "reason": "lifted, seen"}]


async def test_an_answer_that_the_disk_does_not_confirm_is_kept_and_said(tmp_path, monkeypatch):
    async with measuring_at(tmp_path, HEIGHT) as (pilot, draft):
        refuse_to_force_folders(monkeypatch)
        await enter(pilot, "24 1/2")
        assert at(pilot) == OFFSET
        (notice,) = [item.message for item in pilot.app._notifications]
        assert "is kept and can be read back. But the disk did not confirm it" in notice
        assert value_at(read_document(draft), HEIGHT) == ["24 1/2 in"]


async def test_a_record_that_the_disk_does_not_confirm_is_filed_and_said(tmp_path, monkeypatch):
    async with measuring_at(tmp_path, "file") as (pilot, _):
        (tmp_path / "FG-3").mkdir()
        refuse_to_force_folders(monkeypatch)
        await pilot.press("1", "enter")
        await settle(pilot)
        assert "is filed and can be read back. But the disk did" in flowing(screen_text(pilot))
    assert [entry.fault for entry in list_records(tmp_path)] == [""]


async def test_a_signature_that_the_disk_does_not_confirm_is_signed_and_said(tmp_path, monkeypatch):
    app = workshop_app(tmp_path)
    async with app.run_test(size=SMALL) as pilot:
        await open_session(pilot, "close")
        refuse_to_force_folders(monkeypatch)
        await pilot.press("d", "1", "enter")
        await type_text(pilot, "Lead")
        await pilot.press("enter", "enter")
        await settle(pilot)
        assert isinstance(pilot.app.screen, RecordScreen)
        assert "✓ signed by Lead" in flowing(screen_text(pilot))
        assert any("is signed and can be read" in item.message for item in app._notifications)
    assert len(signatures_of(read_document(path_of(app, "close")))) == 1


async def test_home_lists_damaged_drafts_and_opens_none(tmp_path):
    folder = tmp_path / "unfinished"
    folder.mkdir()
    os.mkfifo(folder / "pipe.toml")
    (folder / "folder.toml").mkdir()
    (folder / "device.toml").symlink_to("/dev/zero")
    (folder / "loop.toml").symlink_to("loop.toml")
    with (folder / "large.toml").open("wb") as file:
        file.truncate(100_000_000)
    (folder / "closed.toml").write_text("format = 1")
    (folder / "closed.toml").chmod(0)
    async with app_in(tmp_path).run_test(size=(120, 40)) as pilot:
        await settle(pilot)
        for _ in range(6):
            await pilot.press("enter", "down")
            await pilot.pause()
            assert isinstance(pilot.app.screen, HomeScreen)
        text = screen_text(pilot)
    assert all(entry.fault for entry in list_drafts(tmp_path))
    assert len(list_drafts(tmp_path)) == 6
    assert "cannot be opened" in text


async def test_home_shows_a_folder_of_drafts_that_is_a_pipe(tmp_path):
    os.mkfifo(tmp_path / "unfinished")
    async with app_in(tmp_path).run_test(size=(200, 40)) as pilot:  # a long path
        await settle(pilot)
        assert "unfinished: cannot be read: a file" in flowing(screen_text(pilot))
