"""The short way by keys: what decides first, and how much of it there is to answer."""

import pytest

from core.documents.record_list import list_records
from tests.wizard.tui.driving import app_in, measuring
from tests.wizard.tui.technician import technician_for
from wizard.tui.widgets.field import Field


@pytest.mark.parametrize(
    ("parallel_deg", "overall", "answers", "keystrokes"),
    [(3.0, "bump steer", 38, 190), (-0.5, "steers true", 46, 260)],
)
async def test_a_vehicle_is_filed_in_few_answers(
    tmp_path, parallel_deg, overall, answers, keystrokes
):
    async with app_in(tmp_path).run_test(size=(80, 24)) as pilot:
        technician = technician_for(pilot, parallel_deg)
        await technician.file()
    print(f"{technician.answers} answers, {technician.keystrokes} keystrokes")
    print(f"{technician.on_sheets} lines of two sheets; a sheet counts as one answer")
    (record,) = list_records(tmp_path)
    assert record.overall == overall
    assert technician.answers <= answers
    assert technician.keystrokes <= keystrokes


async def test_the_next_session_offers_the_technician_of_the_last(tmp_path):
    async with app_in(tmp_path).run_test(size=(80, 24)) as pilot:
        first = technician_for(pilot, 3.0)
        await first.file()
        pilot.app.measure()
        await pilot.pause()
        second = technician_for(pilot, 3.0)
        second.texts["vehicle.tag"] = "FG-9"
        await second.answer()
        await second.answer()
        assert measuring(pilot).flow.question.path == "session.technician"
        assert pilot.app.screen.query_one(Field).value == "T. I."
        await second.press("enter")
        assert measuring(pilot).flow.question.path == "complaint.reported"
