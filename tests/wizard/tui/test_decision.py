"""The lead's decision on a filed session."""

import pytest

from core.documents.record import read_document
from core.documents.signature import filed_state, signatures_of
from tests.wizard.tui.driving import type_text
from tests.wizard.tui.looking import (
    LARGE,
    SMALL,
    flowing,
    open_session,
    path_of,
    screen_text,
    workshop_app,
)
from wizard.tui.screens.decision import DecisionScreen
from wizard.tui.screens.record import RecordScreen
from wizard.tui.widgets.remark import Remark


async def decide(pilot, name="close"):
    """Open the decision on a demo session."""
    await open_session(pilot, name)
    await pilot.press("d")
    await pilot.pause()


def remark(pilot):
    """Text under the field."""
    return str(pilot.app.screen.query_one(Remark).content)


@pytest.mark.parametrize("size", [SMALL, LARGE])
def test_it_looks_like_any_other_question(snap_compare, tmp_path, size):
    async def run(pilot):
        await decide(pilot)
        await pilot.press("2", "enter")
        await type_text(pilot, "Lead")
        await pilot.press("enter")
        await pilot.pause()

    assert snap_compare(workshop_app(tmp_path), terminal_size=size, run_before=run)


async def test_a_session_is_signed_with_a_valid_signature(tmp_path):
    app = workshop_app(tmp_path)
    async with app.run_test(size=SMALL) as pilot:
        await decide(pilot)
        await pilot.press("1", "enter")
        await type_text(pilot, "Lead")
        await pilot.press("enter", "enter")
        await pilot.pause()
        assert isinstance(pilot.app.screen, RecordScreen)
        assert "✓ signed by Lead" in flowing(screen_text(pilot))
    document = read_document(path_of(app, "close"))
    (decision,) = filed_state(document).decisions
    assert decision.signature["decision"] == "signed"
    assert decision.signature["note"] == ""
    assert decision.stands


async def test_the_decision_before_is_said(tmp_path):
    async with workshop_app(tmp_path).run_test(size=LARGE) as pilot:
        await decide(pilot, "fixed")
        assert "so far: signed by workshop lead (invented), 2026-11-10 16:20" in remark(pilot)


async def test_a_decision_is_needed(tmp_path):
    app = workshop_app(tmp_path)
    before = path_of(app, "close").read_bytes()
    async with app.run_test(size=SMALL) as pilot:
        await decide(pilot)
        await pilot.press("enter")
        assert "nothing is chosen yet" in remark(pilot)
        await pilot.press("1", "enter", "escape", "enter")
        assert "nothing is chosen yet" in remark(pilot)
    assert path_of(app, "close").read_bytes() == before


async def test_sending_back_needs_a_reason(tmp_path):
    app = workshop_app(tmp_path)
    async with app.run_test(size=SMALL) as pilot:
        await decide(pilot)
        await pilot.press("2", "enter")
        await type_text(pilot, "Lead")
        await pilot.press("enter", "enter")
        await pilot.pause()
        assert "nothing was typed" in remark(pilot)
        await type_text(pilot, "take the heights again")
        await pilot.press("enter")
        await pilot.pause()
        assert "! sent back by Lead" in flowing(screen_text(pilot))
    (signature,) = signatures_of(read_document(path_of(app, "close")))
    assert signature["note"] == "take the heights again"


async def test_a_name_is_needed(tmp_path):
    async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
        await decide(pilot)
        await pilot.press("1", "enter", "enter")
        await pilot.pause()
        assert isinstance(pilot.app.screen, DecisionScreen)
        assert "nothing was typed" in remark(pilot)


async def test_escape_leads_back_question_by_question_and_signs_nothing(tmp_path):
    app = workshop_app(tmp_path)
    before = path_of(app, "close").read_bytes()
    async with app.run_test(size=SMALL) as pilot:
        await decide(pilot)
        await pilot.press("1", "enter")
        await type_text(pilot, "Lead")
        await pilot.press("enter", "escape")
        await pilot.pause()
        assert "Who decides?" in screen_text(pilot)
        await pilot.press("escape", "escape")
        await pilot.pause()
        assert isinstance(pilot.app.screen, RecordScreen)
    assert path_of(app, "close").read_bytes() == before


async def test_a_record_changed_since_it_was_opened_is_not_signed(tmp_path):
    app = workshop_app(tmp_path)
    async with app.run_test(size=SMALL) as pilot:
        await decide(pilot)
        path = path_of(app, "close")
        path.write_text(path.read_text("utf-8").replace("FG-4", "FG-9", 1), "utf-8")
        changed = path.read_bytes()
        await pilot.press("1", "enter")
        await type_text(pilot, "Lead")
        await pilot.press("enter", "enter")
        await pilot.pause()
        assert isinstance(pilot.app.screen, DecisionScreen)
        assert "has changed since it was opened" in remark(pilot)
    assert path.read_bytes() == changed


async def test_a_signature_on_a_changed_record_is_reported_as_invalid(tmp_path):
    app = workshop_app(tmp_path)
    path = path_of(app, "fixed")
    text = path.read_text("utf-8")
    path.write_text(text.replace("technician = ", 'technician = "X" # ', 1), "utf-8")
    async with app.run_test(size=SMALL) as pilot:
        await open_session(pilot, "fixed")
        assert "it no longer stands" in flowing(screen_text(pilot))
