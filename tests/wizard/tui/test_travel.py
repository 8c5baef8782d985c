"""The axle through its travel: by keys, by the mouse, played."""

from math import degrees

import pytest
from textual.events import MouseScrollUp

from core.documents.record import read_document
from core.text.quantity import INCH
from tests.wizard.tui.driving import app_in, draft_at
from tests.wizard.tui.looking import (
    LARGE,
    SMALL,
    flowing,
    open_session,
    screen_text,
    settle,
    until,
    workshop_app,
)
from wizard.tui.pictures.front_view import FrontView
from wizard.tui.pictures.side_view import SideView
from wizard.tui.screens.help import HelpScreen
from wizard.tui.screens.record import RecordScreen
from wizard.tui.screens.travel import TravelScreen
from wizard.tui.widgets.travel_curve import TravelCurve


async def open_travel(pilot, name="lifted"):
    """Open the travel of a demo session."""
    await open_session(pilot, name)
    await pilot.press("t")
    await pilot.pause()


def moved_to(*keys, name="toe"):
    """Return a function that opens the travel and presses keys before a picture is taken."""

    async def run(pilot):
        await open_travel(pilot, name)
        await pilot.press(*keys)
        await pilot.pause()

    return run


class TestPictures:
    @pytest.mark.parametrize("size", [SMALL, LARGE])
    @pytest.mark.parametrize("keys", [(), ("pageup",) * 2 + ("right",) * 3])
    def test_the_axle_in_its_place(self, snap_compare, tmp_path, keys, size):
        app = workshop_app(tmp_path)
        assert snap_compare(app, terminal_size=size, run_before=moved_to(*keys))


class TestKeys:
    async def test_steps_are_on_the_marks_of_the_tape(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
            await open_travel(pilot)
            await pilot.press("up", "up", "up")
            assert "travel 3/4 in bump" in flowing(screen_text(pilot))
            await pilot.press("pagedown")
            assert "travel 1/4 in droop" in flowing(screen_text(pilot))
            await pilot.press("0")
            assert "travel ride height" in flowing(screen_text(pilot))

    async def test_the_heave_ends_at_the_bump_travel(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
            await open_travel(pilot)
            await pilot.press(*["pageup"] * 12)
            assert pilot.app.screen.state.heave == pilot.app.screen.verdict.session.bump

    async def test_the_right_arrow_lifts_the_wheel_on_the_right_of_the_picture(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
            await open_travel(pilot)
            await pilot.press("right", "right")
            assert "left wheel up 2.0 deg" in flowing(screen_text(pilot))
            wheels = pilot.app.screen.query_one(FrontView).pose.wheels
            assert wheels.left[1] > wheels.right[1]
            await pilot.press(*["left"] * 20)
            assert degrees(pilot.app.screen.state.roll) == pytest.approx(-8.0)

    async def test_the_steer_at_full_travel_is_that_of_the_verdict(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=LARGE) as pilot:
            await open_session(pilot, "lifted")
            verdict = pilot.app.screen.verdict
            await pilot.press("t")
            await pilot.press(*(["pageup"] * 2 if verdict.steer.at_heave > 0 else ["pagedown"] * 2))
            await pilot.pause()
            assert f"{degrees(verdict.steer.ruling.value):.2f} deg" in screen_text(pilot)

    async def test_units_change_help_opens_and_escape_leads_back(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
            await open_travel(pilot)
            await pilot.press("f2", "up")
            assert "travel 5 mm bump" in flowing(screen_text(pilot))
            await pilot.press("f1")
            assert isinstance(pilot.app.screen, HelpScreen)
            await pilot.press("escape", "escape")
            assert isinstance(pilot.app.screen, RecordScreen)


class TestSideView:
    async def test_a_small_screen_turns_to_the_side_and_back(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
            await open_travel(pilot)
            assert "seen from the front" in screen_text(pilot)
            await pilot.press("v")
            await pilot.pause()
            assert "seen from the left" in screen_text(pilot)
            assert "seen from the front" not in screen_text(pilot)
            assert "V from the front" in flowing(screen_text(pilot))
            await pilot.press("v")
            await pilot.pause()
            assert "seen from the front" in screen_text(pilot)

    async def test_a_large_screen_has_both_and_the_axle_pitches(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=LARGE) as pilot:
            await open_travel(pilot)
            assert "seen from the left" in screen_text(pilot)
            assert "seen from the front" in screen_text(pilot)
            assert "pitch none" in flowing(screen_text(pilot))
            await pilot.press("pageup", "pageup")
            await pilot.pause()
            assert "top back" in screen_text(pilot)
            pose = pilot.app.screen.query_one(SideView).pose
            assert pose.hub[1] - pilot.app.screen.verdict.measured.linkage.hub_height > 50.0


class TestPlay:
    async def test_space_plays_and_stops(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
            await open_travel(pilot)
            screen = pilot.app.screen
            await pilot.press("space")
            await until(lambda: screen.state.heave != 0.0)
            assert "Space stop" in flowing(screen_text(pilot))
            await pilot.press("space")
            assert screen.state.plays == ""
            heave = screen.state.heave
            screen.tick()  # a frame that was due before the stop
            assert screen.state.heave == heave

    async def test_a_step_stops_the_play(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
            await open_travel(pilot)
            await pilot.press("x")
            await until(lambda: pilot.app.screen.state.roll != 0.0)
            await pilot.press("up")
            assert pilot.app.screen.state.plays == ""


class TestMouse:
    async def test_pressing_the_curve_moves_the_axle_there(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=LARGE) as pilot:
            await open_travel(pilot)
            curve = pilot.app.screen.query_one(TravelCurve)
            await pilot.mouse_down(TravelCurve, offset=(curve.size.width - 4, 4))
            assert pilot.app.screen.state.heave > 80.0
            await pilot.hover(TravelCurve, offset=(10, 4))
            assert pilot.app.screen.state.heave < -60.0
            await pilot.mouse_up(TravelCurve, offset=(10, 4))
            await pilot.hover(TravelCurve, offset=(curve.size.width - 4, 4))
            assert pilot.app.screen.state.heave < -60.0

    async def test_the_mouse_wheel_moves_the_axle_by_steps(self, tmp_path):
        async with workshop_app(tmp_path).run_test(size=LARGE) as pilot:
            await open_travel(pilot)
            turn = {"x": 5, "y": 5, "delta_x": 0, "delta_y": 0, "button": 0}
            keys = {"meta": False, "ctrl": False}
            screen = pilot.app.screen
            pilot.app.post_message(MouseScrollUp(None, **turn, shift=False, **keys))
            pilot.app.post_message(MouseScrollUp(None, **turn, shift=True, **keys))
            await pilot.pause()
            assert screen.state.heave == pytest.approx(INCH / 4)
            assert degrees(screen.state.roll) == pytest.approx(1.0)


class TestUnmeasuredWheels:
    async def test_the_axle_does_not_roll_and_no_key_for_it_is_named(self, tmp_path):
        path = draft_at(tmp_path, "verdict")
        async with app_in(tmp_path).run_test(size=SMALL) as pilot:
            pilot.app.resume(path)
            await settle(pilot)
            await pilot.press("t")
            await pilot.press("right", "x", "up")
            await pilot.pause()
            assert isinstance(pilot.app.screen, TravelScreen)
            assert pilot.app.screen.state.roll == 0.0
            assert "roll  " not in screen_text(pilot).splitlines()[-2]
        assert read_document(path)


class TestBindingLink:
    async def test_a_binding_link_is_said_and_the_picture_stays(self, tmp_path):
        app = workshop_app(tmp_path)
        async with app.run_test(size=SMALL) as pilot:
            await open_session(pilot, "lifted")
            await pilot.press("t")
            screen = pilot.app.screen
            reached = screen.query_one(FrontView).pose
            screen.show(screen.state.reset().__class__(2000.0, 2000.0, heave=1500.0))
            await pilot.pause()
            assert "! a link binds here" in screen_text(pilot)
            assert screen.query_one(FrontView).pose is reached
