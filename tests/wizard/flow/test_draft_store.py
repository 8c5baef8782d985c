"""Drafts on the disk that two programs, or a program and a text editor, have open."""

from datetime import UTC, datetime

import pytest

from core.documents.document import value_at, with_value
from core.documents.record import RecordError, draft_path, file_record, read_document
from tests.wizard.tui.driving import app_in, at, draft_at, measuring, type_text
from tests.wizard.tui.looking import flowing, shown
from wizard.flow import drafts
from wizard.flow.draft_store import DraftStore

OPENED = datetime(2026, 11, 25, 14, 12, 5, tzinfo=UTC)


@pytest.fixture
def document():
    return drafts.with_id(with_value(drafts.new_session(OPENED), "vehicle.tag", "FG-3"))


def test_answers_kept_by_another_program_are_not_overwritten(tmp_path, document):
    first, second = DraftStore(tmp_path), DraftStore(tmp_path)
    first.keep(document)
    path = draft_path(tmp_path, document)
    second.remember(path)
    theirs = with_value(document, "vehicle.odometer", "1 km")
    second.keep(theirs, document)
    with pytest.raises(RecordError, match="in another window"):
        first.keep(with_value(document, "vehicle.odometer", "2 km"), document)
    assert value_at(read_document(path), "vehicle.odometer") == "1 km"
    second.keep(with_value(theirs, "vehicle.odometer", "3 km"), theirs)


def test_a_draft_that_is_opened_again_can_be_changed(tmp_path, document):
    store = DraftStore(tmp_path)
    store.keep(document)
    path = draft_path(tmp_path, document)
    DraftStore(tmp_path).keep(with_value(document, "vehicle.odometer", "1 km"))
    store.remember(path)
    store.keep(with_value(document, "vehicle.odometer", "2 km"))
    assert value_at(read_document(path), "vehicle.odometer") == "2 km"


def test_a_session_filed_by_another_program_is_not_kept_as_a_draft(tmp_path, document):
    store = DraftStore(tmp_path)
    store.keep(document)
    file_record(tmp_path, document)
    with pytest.raises(RecordError, match="was filed from another window"):
        store.keep(with_value(document, "vehicle.odometer", "2 km"), document)
    assert not draft_path(tmp_path, document).exists()


def test_a_removed_draft_is_written_again(tmp_path, document):
    store = DraftStore(tmp_path)
    store.keep(document)
    path = draft_path(tmp_path, document)
    path.unlink()
    store.keep(document)
    assert path.exists()


async def test_the_wizard_refuses_an_answer_to_a_draft_that_was_changed_elsewhere(tmp_path):
    path = draft_at(tmp_path, "stance.ride_height.left")
    async with app_in(tmp_path).run_test(size=(120, 40)) as pilot:
        pilot.app.resume(path)
        await pilot.pause()
        theirs = path.read_bytes() + b"\n# by another hand\n"
        path.write_bytes(theirs)
        await type_text(pilot, "21")
        await pilot.press("enter")
        await pilot.pause()
        assert at(pilot) == "stance.ride_height.left"
        assert "changed in another window" in flowing(shown(pilot))
        assert path.read_bytes() == theirs
        await pilot.press("f9")
        await pilot.pause()
        pilot.app.resume(path)
        await pilot.pause()
        await type_text(pilot, "21")
        await pilot.press("enter")
        await pilot.pause()
        assert measuring(pilot).flow.question.path == "stance.ride_height.right"
