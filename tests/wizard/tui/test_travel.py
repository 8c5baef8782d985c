"""The axle through its travel: by keys, by the mouse, played."""

from math import degrees

import pytest
from textual.events import MouseScrollUp

from core.documents.record import read_document
from tests.wizard.tui.driving import app_in, draft_at
from tests.wizard.tui.looking import (
    LARGE,
    SMALL,
    flowing,
    open_session,
    settle,
    shown,
    workshop_app,
)
from wizard.tui.pictures.front_view import FrontView
from wizard.tui.screens.help import HelpScreen
from wizard.tui.screens.record import RecordScreen
from wizard.tui.screens.travel import TravelScreen
from wizard.tui.widgets.travel_curve import TravelCurve


async def travel(pilot, name="lifted"):
    """The travel of a demo session."""
    await open_session(pilot, name)
    await pilot.press("t")
    await pilot.pause()


def moved_to(*keys, name="toe"):
    """Goes to the travel and presses some keys before a picture is taken."""

    async def run(pilot):
        await travel(pilot, name)
        await pilot.press(*keys)
        await pilot.pause()

    return run


class TestPictures:
    @pytest.mark.parametrize("size", [SMALL, LARGE])
    @pytest.mark.parametrize("keys", [(), ("pageup",) * 2 + ("right",) * 3])
    def test_the_axle_in_its_place(self, snap_compare, tmp_path, keys, size):
        app = workshop_app(tmp_path)
        assert snap_compare(app, terminal_size=size, run_before=moved_to(*keys))


class TestByKeys:
    async def test_steps_go_up_and_down_on_the_marks_of_the_tape(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
            await travel(pilot)
            await pilot.press("up", "up", "up")
            assert "travel 3/4 in bump" in flowing(shown(pilot))
            await pilot.press("pagedown")
            assert "travel 1/4 in droop" in flowing(shown(pilot))
            await pilot.press("0")
            assert "travel ride height" in flowing(shown(pilot))

    async def test_the_travel_ends_where_the_axle_does(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
            await travel(pilot)
            await pilot.press(*["pageup"] * 12)
            assert pilot.app.screen.state.heave == pilot.app.screen.verdict.session.bump

    async def test_right_lifts_what_is_on_the_right_of_the_picture(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
            await travel(pilot)
            await pilot.press("right", "right")
            assert "left wheel up 2.0 deg" in flowing(shown(pilot))
            wheels = pilot.app.screen.query_one(FrontView).pose.wheels
            assert wheels.left[1] > wheels.right[1]
            await pilot.press(*["left"] * 20)
            assert degrees(pilot.app.screen.state.roll) == pytest.approx(-8.0)

    async def test_numbers_agree_with_the_verdict(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=LARGE) as pilot:
            await open_session(pilot, "lifted")
            verdict = pilot.app.screen.verdict
            await pilot.press("t")
            await pilot.press(*(["pageup"] * 2 if verdict.steer.at_heave > 0 else ["pagedown"] * 2))
            await pilot.pause()
            assert f"{degrees(verdict.steer.ruling.value):.2f} deg" in shown(pilot)

    async def test_units_help_and_back(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
            await travel(pilot)
            await pilot.press("f2", "up")
            assert "travel 5 mm bump" in flowing(shown(pilot))
            await pilot.press("f1")
            assert isinstance(pilot.app.screen, HelpScreen)
            await pilot.press("escape", "escape")
            assert isinstance(pilot.app.screen, RecordScreen)


class TestPlay:
    async def test_space_plays_and_stops(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
            await travel(pilot)
            await pilot.press("space")
            await pilot.pause(0.4)
            assert "Space stop" in flowing(shown(pilot))
            assert pilot.app.screen.state.heave != 0.0
            await pilot.press("space")
            stood = pilot.app.screen.state.heave
            await pilot.pause(0.2)
            assert pilot.app.screen.state.heave == stood

    async def test_a_step_stops_the_play(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
            await travel(pilot)
            await pilot.press("x")
            await pilot.pause(0.2)
            assert pilot.app.screen.state.roll != 0.0
            await pilot.press("up")
            assert pilot.app.screen.state.plays == ""


class TestByMouse:
    async def test_pressing_the_curve_moves_the_axle_there(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=LARGE) as pilot:
            await travel(pilot)
            curve = pilot.app.screen.query_one(TravelCurve)
            await pilot.mouse_down(TravelCurve, offset=(curve.size.width - 4, 4))
            assert pilot.app.screen.state.heave > 80.0
            await pilot.hover(TravelCurve, offset=(10, 4))
            assert pilot.app.screen.state.heave < -60.0
            await pilot.mouse_up(TravelCurve, offset=(10, 4))
            await pilot.hover(TravelCurve, offset=(curve.size.width - 4, 4))
            assert pilot.app.screen.state.heave < -60.0

    async def test_the_wheel_moves_it_by_steps(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=LARGE) as pilot:
            await travel(pilot)
            turn = {"x": 5, "y": 5, "delta_x": 0, "delta_y": 0, "button": 0}
            keys = {"meta": False, "ctrl": False}
            screen = pilot.app.screen
            pilot.app.post_message(MouseScrollUp(None, **turn, shift=False, **keys))
            pilot.app.post_message(MouseScrollUp(None, **turn, shift=True, **keys))
            await pilot.pause()
            assert screen.state.heave == pytest.approx(25.4 / 4)
            assert degrees(screen.state.roll) == pytest.approx(1.0)


class TestWithoutTheMiddleOfTheVehicle:
    async def test_it_does_not_roll_and_offers_no_key_for_it(self, tmp_path):
        path = draft_at(tmp_path, "verdict")
        async with app_in(tmp_path).run_test(size=SMALL) as pilot:
            pilot.app.resume(path)
            await settle(pilot)
            await pilot.press("t")
            await pilot.press("right", "x", "up")
            await pilot.pause()
            assert isinstance(pilot.app.screen, TravelScreen)
            assert pilot.app.screen.state.roll == 0.0
            assert "roll  " not in shown(pilot).splitlines()[-2]
        assert read_document(path)


class TestWhereALinkBinds:
    async def test_it_is_said_and_the_picture_stays_where_it_reached(self, tmp_path):
        app = workshop_app(tmp_path)
        async with app.run_test(size=SMALL) as pilot:
            await open_session(pilot, "lifted")
            await pilot.press("t")
            screen = pilot.app.screen
            reached = screen.query_one(FrontView).pose
            screen.show(screen.state.reset().__class__(2000.0, 2000.0, heave=1500.0))
            await pilot.pause()
            assert "! a link binds here" in shown(pilot)
            assert screen.query_one(FrontView).pose is reached
