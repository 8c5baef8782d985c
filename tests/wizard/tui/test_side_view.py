"""The side view: its drawing, the way of the tape, and its words."""

from math import radians

import pytest
from textual.geometry import Size

from core.documents.document import with_value
from core.kinematics.pivots import GUIDE_PIVOTS, GuideKind
from core.profiles.profile import load_profile
from tests.wizard.tui.driving import answered_until, app_in, draft_at, measuring, settle
from tests.wizard.tui.looking import LARGE, SMALL
from tests.wizard.tui.picture_app import PictureApp, text_of
from wizard.flow import drafts
from wizard.flow.flow import Flow
from wizard.locations import PROFILES
from wizard.tui.pictures.side_view import SideView, bowed, ends_row
from wizard.tui.widgets.worksheet import picture_of
from wizard.views.side import SidePose, side_of_answers
from wizard.views.side_path import WORDS, side_path

PROFILE = load_profile("coil-crossover", [PROFILES])
SIZES = [Size(30, 12), Size(38, 17), Size(58, 30), Size(100, 30)]


def picture(guide, asked="", steering="knuckle"):
    layout = {"guide": guide, "steering": steering, "pitman": "down"}
    return side_of_answers({"layout": layout}, PROFILE, asked)


class TestPath:
    def test_a_height_goes_up_from_the_floor(self):
        path = side_path(picture("leaf", "readings.guide.eye.height"))
        (start, end) = path.path
        assert start == (end[0], 0.0)
        assert path.pivot == "guide.eye"

    def test_a_station_goes_along_the_floor_from_the_axle_to_a_plumb_line(self):
        view = picture("radius-arms", "readings.guide.frame.station")
        path = side_path(view)
        assert [across for across, _ in path.path] == [0.0, view.pivots["guide.frame"][0]]
        assert path.plumb[0] == view.pivots["guide.frame"]
        assert path.plumb[1][1] == 0.0

    def test_a_kingpin_that_leans_back_leans_to_the_right(self):
        path = side_path(picture("unmeasured", "readings.kingpin.castor"))
        bottom, top = path.path
        assert top[0] > bottom[0]
        assert top[1] > bottom[1]

    @pytest.mark.parametrize("name", ["", "readings.wheels.left_offset", "layout.guide"])
    def test_what_is_not_seen_from_the_side_has_no_path(self, name):
        assert side_path(picture("leaf", name)) is None


@pytest.mark.parametrize("size", SIZES, ids=str)
@pytest.mark.parametrize("guide", list(GuideKind))
@pytest.mark.parametrize("steering", ["knuckle", "fore-aft"])
async def test_words_do_not_meet_and_are_not_cut(size, guide, steering):
    asked = [f"{pivot}.{kind}" for pivot in GUIDE_PIVOTS[guide] for kind in ("height", "station")]
    view = SideView()
    async with PictureApp(view).run_test(size=size):
        for name in ["", "guide.span", "guide.castor", "kingpin.castor", *asked]:
            shown = picture(guide, f"readings.{name}", steering)
            view.show(shown)
            path = side_path(shown)
            for number, word in enumerate(view.words):
                assert 0 <= word.column <= word.cells.stop <= size.width
                assert 0 <= word.row < size.height
                assert not any(word.touches(other) for other in view.words[number + 1 :])
            if path:
                assert {word.text for word in view.words} & set(path.words)


class TestDrawing:
    async def test_the_front_is_on_the_left_and_the_picture_says_so(self):
        view = SideView(picture("radius-arms"))
        async with PictureApp(view).run_test(size=SMALL):
            rows = text_of(view).splitlines()
        assert rows[-1].startswith("◂ front")
        assert rows[-1].rstrip().endswith("rear ▸")
        assert "arms' frame pivot" in "\n".join(rows)
        hub, pivot = (max(row.find(mark) for row in rows) for mark in "+◇")
        assert hub < pivot

    async def test_an_axle_whose_guide_is_not_known_is_drawn_alone(self):
        view = SideView(picture("unmeasured"))
        async with PictureApp(view).run_test(size=SMALL):
            text = text_of(view)
        assert "guide not known" in text
        assert not {"◇", "◆"} & set(text)

    async def test_the_words_stay_while_the_axle_moves(self):
        view = SideView(picture("two-arms"))
        async with PictureApp(view).run_test(size=LARGE):
            words, before = view.words, text_of(view)
            view.move(SidePose((5.0, 480.0), radians(-2), {"guide.lower_axle": (20.0, 380.0)}))
            assert view.words == words
            assert text_of(view) != before
            view.move(None)
            assert text_of(view) == before

    def test_a_spring_goes_through_its_ends_and_its_seat(self):
        line = bowed((-500.0, 500.0), (0.0, 450.0), (500.0, 500.0))
        assert line[0] == (-500.0, 500.0)
        assert line[-1] == (500.0, 500.0)
        assert line.count((0.0, 450.0)) == 2

    def test_a_narrow_picture_leaves_the_middle_word_out(self):
        assert [word.text for word in ends_row(30, 5)] == ["◂ front", "rear ▸"]


def words_on(pilot):
    """Words in the side view of the worksheet."""
    return {word.text for word in pilot.app.screen.query_one(SideView).words}


class TestQuestions:
    async def test_the_marked_line_of_the_list_is_drawn(self, tmp_path):
        path = draft_at(tmp_path, "layout.guide")
        async with app_in(tmp_path).run_test(size=SMALL) as pilot:
            pilot.app.resume(path)
            await settle(pilot)
            for key, word in (("2", "radius arm"), ("3", "upper arm"), ("4", "leaf spring")):
                await pilot.press(key)
                await pilot.pause()
                assert word in words_on(pilot)

    async def test_questions_of_the_guide_are_seen_from_the_side(self, tmp_path):
        path = draft_at(tmp_path, "readings.kingpin.castor")
        async with app_in(tmp_path).run_test(size=SMALL) as pilot:
            pilot.app.resume(path)
            await settle(pilot)
            assert picture_of(measuring(pilot).flow) == "side"
            assert words_on(pilot) & set(WORDS["kingpin.castor"])

    @pytest.mark.parametrize(
        ("steering", "kind", "seen_from"),
        [
            ("knuckle", "height", "front"),
            ("fore-aft", "height", "side"),
            ("fore-aft", "station", "side"),
            ("fore-aft", "offset", "front"),
        ],
    )
    def test_a_lengthwise_drag_link_is_seen_from_the_side(self, steering, kind, seen_from):
        flow = answered_until(Flow(drafts.new_session(drafts.now())), "verdict")
        path = f"readings.drag_link.frame.{kind}"
        flow = flow.with_document(with_value(flow.document, "layout.steering", steering))
        assert picture_of(flow.going_to(path)) == seen_from
