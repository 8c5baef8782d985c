"""A session that another window, played by a draft store, has open too."""

from contextlib import asynccontextmanager

from core.documents.document import value_at, with_value, without
from core.documents.record import read_document
from core.documents.record_list import list_drafts, list_records
from tests.wizard.tui.driving import app_in, at, draft_at, measuring, settle, type_text
from tests.wizard.tui.looking import flowing
from wizard.flow.draft_store import DraftStore
from wizard.tui.widgets.field import Field
from wizard.tui.widgets.remark import Remark

LEFT, RIGHT = "stance.ride_height.left", "stance.ride_height.right"
SIZE = (120, 40)


class OtherWindow:
    """Another window that has a draft open."""

    def __init__(self, files, draft):
        self.draft, self.store = draft, DraftStore(files)
        self.store.remember(read_document(draft))

    def answer(self, path, value):
        """Keep an answer there."""
        document = read_document(self.draft)
        self.store.keep(with_value(document, path, value), document)


@asynccontextmanager
async def two_windows(files, path):
    """The wizard at a question of a session, and another window on the same session."""
    draft = draft_at(files, path)
    async with app_in(files).run_test(size=SIZE) as pilot:
        pilot.app.resume(draft)
        await pilot.pause()
        yield pilot, OtherWindow(files, draft)


async def enter(pilot, text):
    """Type a text and press Enter."""
    await type_text(pilot, text)
    await pilot.press("enter")
    await pilot.pause()


def remark(pilot):
    """Text under the field."""
    return flowing(str(pilot.app.screen.query_one(Remark).content))


def notices(pilot):
    """Messages over the screen."""
    return [notice.message for notice in pilot.app._notifications]


def draft_in(files):
    """Contents of the only draft."""
    (entry,) = list_drafts(files)
    return read_document(entry.path)


async def test_answers_of_both_windows_are_kept_and_shown(tmp_path):
    async with two_windows(tmp_path, LEFT) as (pilot, other):
        other.answer("vehicle.odometer", "1 km")
        await enter(pilot, "21 3/8")
        assert at(pilot) == RIGHT
        assert notices(pilot) == ["taken over from another window: Odometer"]
        assert value_at(measuring(pilot).flow.document, "vehicle.odometer") == "1 km"
    assert value_at(draft_in(tmp_path), "vehicle.odometer") == "1 km"
    assert value_at(draft_in(tmp_path), LEFT) == "21 3/8 in"


async def test_the_same_question_is_answered_twice_only_on_purpose(tmp_path):
    async with two_windows(tmp_path, LEFT) as (pilot, other):
        other.answer(LEFT, "20 in")
        await enter(pilot, "21 3/8")
        assert at(pilot) == LEFT
        assert "was answered in another window: 20 in. To put yours in its place" in remark(pilot)
        assert pilot.app.screen.query_one(Field).value == "21 3/8 in"
        assert value_at(draft_in(tmp_path), LEFT) == "20 in"
        await pilot.press("enter")
        assert at(pilot) == RIGHT
        assert value_at(draft_in(tmp_path), LEFT) == "21 3/8 in"


async def test_an_undo_leaves_the_answers_of_the_other_window(tmp_path):
    async with two_windows(tmp_path, LEFT) as (pilot, other):
        await enter(pilot, "21 3/8")
        other.answer("vehicle.odometer", "1 km")
        await enter(pilot, "21 1/4")
        other.answer("vehicle.description", "crew truck")
        await pilot.press("f8", "f8")
        assert at(pilot) == LEFT
        draft = draft_in(tmp_path)
        assert value_at(draft, LEFT) is value_at(draft, RIGHT) is None
        assert value_at(draft, "vehicle.odometer") == "1 km"
        assert value_at(draft, "vehicle.description") == "crew truck"


async def test_another_profile_of_the_other_window_is_used_at_once(tmp_path):
    async with two_windows(tmp_path, LEFT) as (pilot, other):
        other.answer("session.profile", "heavy-truck")
        await enter(pilot, "21 3/8")
        assert measuring(pilot).flow.profile.name == "heavy-truck"
        assert at(pilot) == RIGHT


async def test_a_session_is_filed_only_with_answers_that_this_window_has_shown(tmp_path):
    async with two_windows(tmp_path, "file") as (pilot, other):
        other.answer("vehicle.odometer", "1 km")
        await pilot.press("1", "enter")
        await pilot.pause()
        assert at(pilot) == "file"
        assert "has answers from another window. They are taken over now" in remark(pilot)
        assert list_records(tmp_path) == []
        await pilot.press("1", "enter")
        await settle(pilot)
    (entry,) = list_records(tmp_path)
    assert value_at(read_document(entry.path), "vehicle.odometer") == "1 km"
    assert list_drafts(tmp_path) == []


async def test_an_answer_to_a_session_that_was_filed_is_said_and_stays_in_the_field(tmp_path):
    async with two_windows(tmp_path, LEFT) as (pilot, other):
        document = read_document(other.draft)
        other.store.file(document, without(document, "draft"))
        await enter(pilot, "21 3/8")
        assert at(pilot) == LEFT
        assert "was filed from another window" in remark(pilot)
        assert pilot.app.screen.query_one(Field).value == "21 3/8"
    assert list_drafts(tmp_path) == []


async def test_a_change_of_the_plans_leaves_the_answers_of_the_other_window(tmp_path):
    async with two_windows(tmp_path, "fix") as (pilot, other):
        await settle(pilot)
        other.answer("vehicle.odometer", "1 km")
        screen = pilot.app.screen
        screen.keep_document(with_value(screen.flow.document, "draft.switched_off", ["a"]))
        assert value_at(screen.flow.document, "vehicle.odometer") == "1 km"
        await pilot.press("escape")
        await settle(pilot)
        assert notices(pilot) == ["taken over from another window: Odometer"]
    assert value_at(draft_in(tmp_path), "vehicle.odometer") == "1 km"
    assert value_at(draft_in(tmp_path), "draft.switched_off") == ["a"]
