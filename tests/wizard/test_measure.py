"""Measuring by keys: from an empty folder to a filed record, and everything that can go wrong."""

from core.document import value_at
from core.record import read_document
from core.record_list import drafts, list_records
from tests.wizard.driving import TRUE_TRUCK, answer_until, app_in, at, measuring, type_text
from wizard.screens.home import HomeScreen
from wizard.widgets.asking import Asking
from wizard.widgets.field import Field
from wizard.widgets.remark import Remark

SMALL, LARGE = (80, 24), (120, 40)


def said(pilot):
    """What stands under the field."""
    return str(pilot.app.screen.query_one(Remark).content)


def field(pilot):
    """What stands in the field."""
    return pilot.app.screen.query_one(Field).value


def only_draft(files):
    """The one draft there is, as it lies on the disk."""
    (entry,) = drafts(files)
    return read_document(entry.path)


class TestFromNothingToARecord:
    async def test_the_whole_way(self, tmp_path):
        async with app_in(tmp_path).run_test(size=SMALL) as pilot:
            await pilot.press("enter")
            await answer_until(pilot, "file", TRUE_TRUCK)
            await pilot.press("1")
            await pilot.pause()
            assert isinstance(pilot.app.screen, HomeScreen)
        (entry,) = list_records(tmp_path)
        assert entry.fault == ""
        assert entry.overall == "steers true"
        assert drafts(tmp_path) == []
        record = read_document(entry.path)
        assert value_at(record, "readings.drag_link.frame.height") == ["22 3/4 in", "22 11/16 in"]
        assert value_at(record, "walk_round.joints.track_bar_axle") == "tight"
        assert value_at(record, "stance.ride_height") == {"left": "21 3/8 in", "right": "21 1/4 in"}
        assert value_at(record, "limits.parallel") == "1.5 deg"
        assert value_at(record, "instruments.tape") == "1/16 in"
        assert value_at(record, "session.closed") is not None
        assert "draft" not in record
