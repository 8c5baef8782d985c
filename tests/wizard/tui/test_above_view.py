"""The view from above: its drawing, the way of the tape, and its words."""

import pytest
from textual.geometry import Size

from core.kinematics.pivots import Layout, pivots_of
from core.profiles.profile import load_profile
from tests.wizard.tui.picture_app import PictureApp, text_of
from wizard.locations import PROFILES
from wizard.tui.pictures.above_view import AboveView, tyre
from wizard.views.above import FAR_KINGPIN, SHAFT, above_of_answers
from wizard.views.above_path import PARTS, WORDS, above_path

PROFILE = load_profile("coil-crossover", [PROFILES])
SIZES = [Size(30, 10), Size(38, 15), Size(58, 30), Size(100, 30)]


def picture(steering, asked=""):
    return above_of_answers({"layout": {"steering": steering}}, PROFILE, asked)


class TestPath:
    def test_a_station_goes_from_the_axle_to_the_pivot(self):
        seen = picture("knuckle")
        across, rear = seen.points["drag_link.axle"]
        path = above_path(seen, "drag_link.axle.station").path
        assert path == ((across, 0.0), (across, rear))

    def test_an_arm_goes_from_its_kingpin_or_its_shaft_to_the_ball(self):
        seen = picture("knuckle")
        assert above_path(seen, "steering.arm").path[0] == seen.points[FAR_KINGPIN]
        assert above_path(seen, "steering.pitman_arm").path[0] == seen.points[SHAFT]

    @pytest.mark.parametrize("name", ["", "wheels.left_offset", "layout.guide"])
    def test_what_is_not_seen_from_above_has_no_path(self, name):
        assert above_path(picture("knuckle"), name) is None


@pytest.mark.parametrize("size", SIZES, ids=str)
@pytest.mark.parametrize("layout", list(Layout))
async def test_words_do_not_meet_and_are_not_cut(size, layout):
    readings = [f"readings.{pivot}.station" for pivot in pivots_of(layout)]
    asked = [*readings, *PARTS, "readings.steering.arm", "readings.steering.pitman_arm"]
    view = AboveView()
    async with PictureApp(view).run_test(size=(size.width, size.height)) as pilot:
        for name in asked:
            view.show(picture(layout.value, name))
            await pilot.pause()
            taken = set()
            for word in view.words:
                cells = {(word.column + i, word.row) for i in range(len(word.text))}
                assert not cells & taken, (name, word)
                taken |= cells
                assert word.column >= 0
                assert word.column + len(word.text) <= view.size.width, (name, word)


@pytest.mark.parametrize("size", SIZES, ids=str)
async def test_wheels_are_not_cut(size):
    view = AboveView(picture("knuckle"))
    async with PictureApp(view).run_test(size=(size.width, size.height)) as pilot:
        await pilot.pause()
        for hub in view.picture.hubs:
            for across, down in view.view().line(tyre(hub, view.picture.radius)):
                assert 0 <= across < 2 * view.size.width
                assert 0 <= down < 4 * view.size.height


async def test_the_way_of_the_tape_is_named():
    view = AboveView(picture("knuckle", "readings.steering.arm"))
    async with PictureApp(view).run_test(size=(60, 24)) as pilot:
        await pilot.pause()
        assert WORDS["steering.arm"][0] in text_of(view)
        assert "vehicle's left ▸" in text_of(view)
