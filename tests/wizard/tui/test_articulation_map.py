"""The map of steer over roll and heave."""

from math import nan

import pytest

from tests.wizard.tui.picture_app import LARGE, SMALL, PictureApp, text_of
from wizard.tui.pictures.articulation_map import ArticulationMap, worst_words
from wizard.views.picture_data import ArticulationPicture

ROLL = [float(roll) for roll in range(-8, 9, 2)]
HEAVE = [-127.0, 0.0, 101.6]
STEER = [
    [0.12 * roll + 0.002 * heave * (1 + roll / 12) + 0.0001 * roll**2 * heave for roll in ROLL]
    for heave in HEAVE
]
PICTURE = ArticulationPicture(ROLL, HEAVE, STEER, 0.5)
CALM = ArticulationPicture(
    ROLL,
    HEAVE,
    [[nan if roll > 4 and heave < 0 else 0.01 * roll for roll in ROLL] for heave in HEAVE],
    0.5,
    "mm",
)


async def drawn_lines(picture: ArticulationPicture | None, size: tuple[int, int]) -> list[str]:
    widget = ArticulationMap(picture)
    async with PictureApp(widget).run_test(size=size):
        return [line.rstrip() for line in text_of(widget).splitlines()]


class TestText:
    async def test_bump_is_on_top_and_the_left_wheel_up_on_the_right(self):
        lines = await drawn_lines(PICTURE, SMALL)
        assert lines[0].split() == ["◂", "right", "wheel", "up", "left", "wheel", "up", "▸"]
        assert lines[1].split()[2:] == ["-8", "-6", "-4", "-2", "level", "+2", "+4", "+6", "+8"]
        names = [line[:11].strip() for line in lines[2:8:2]]
        assert names == ["4 in bump", "ride height", "5 in droop"]

    async def test_every_steer_has_its_sign(self):
        lines = await drawn_lines(PICTURE, SMALL)
        bump = lines[2].removeprefix("4 in bump").replace("[", "").replace("]", "").split()
        assert [float(value) for value in bump] == pytest.approx(STEER[-1], abs=0.051)
        assert all(value.startswith(("+", "-", "0.0")) for value in bump)

    async def test_shades_follow_the_limit(self):
        lines = await drawn_lines(ArticulationPicture([0.0, 1.0, 2.0, 3.0], [0.0],
            [[0.5, -0.6, 1.1, 2.1]], 0.5), SMALL)  # fmt: skip
        assert [char for char in "░▒▓" if char in lines[3]] == ["░", "▒", "▓"]
        assert lines[3].index("░") < lines[3].index("▒") < lines[3].index("▓")

    async def test_the_largest_steer_is_marked_and_said(self):
        lines = await drawn_lines(PICTURE, SMALL)
        assert sum(line.count("[") for line in lines) == 1
        assert "Worst: 1.9 deg to the left at 4 in bump, left wheel up 8 deg" in lines

    @pytest.mark.parametrize("size", [SMALL, LARGE])
    async def test_no_line_wraps(self, size):
        for picture in (PICTURE, CALM):
            lines = await drawn_lines(picture, size)
            assert len(lines) == 11 + (picture is CALM)
            assert max(map(len, lines)) <= size[0] - 2

    async def test_a_place_out_of_reach_has_a_dash_and_a_legend(self):
        lines = await drawn_lines(CALM, SMALL)
        assert lines[6].count("—") == 2
        assert lines[-1] == "— cannot reach"

    async def test_without_a_picture_the_map_is_empty(self):
        assert "".join(await drawn_lines(None, SMALL)) == ""


class TestLargestSteer:
    def test_a_steer_within_the_limit(self):
        assert worst_words(CALM, (2, 0)) == (
            "Worst: 0.1 deg to the right at 102 mm bump, right wheel up 8 deg (within)"
        )

    def test_a_steer_of_the_level_axle(self):
        assert worst_words(PICTURE, (0, 4)).endswith("at 5 in droop, axle level (within)")

    def test_no_steer_within_reach(self):
        assert worst_words(PICTURE, None) == "The linkage cannot reach anywhere on this map."


class TestLooks:
    @pytest.mark.parametrize("size", [SMALL, LARGE], ids=["80x24", "120x40"])
    @pytest.mark.parametrize("picture", [PICTURE, CALM], ids=["over", "within"])
    def test_map(self, snap_compare, picture, size):
        assert snap_compare(PictureApp(ArticulationMap(picture)), terminal_size=size)
