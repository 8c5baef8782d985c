"""The short way by keys: what decides first, and how much of it there is to answer."""

import pytest

from core.documents.record_list import list_records
from tests.wizard.tui.driving import app_in
from tests.wizard.tui.technician import technician_for


@pytest.mark.parametrize(
    ("parallel_deg", "overall", "answers", "keystrokes"),
    [(3.0, "bump steer", 38, 190), (-0.5, "steers true", 46, 260)],
)
async def test_a_vehicle_is_filed_in_few_answers(
    tmp_path, parallel_deg, overall, answers, keystrokes
):
    async with app_in(tmp_path).run_test(size=(80, 24)) as pilot:
        technician = technician_for(pilot, parallel_deg)
        try:
            await technician.file()
        finally:
            print(technician.answers, technician.on_sheets, technician.keystrokes)
            print(technician.asked)
    (record,) = list_records(tmp_path)
    assert record.overall == overall
    assert technician.answers <= answers
    assert technician.keystrokes <= keystrokes
