"""The canvas under the pictures."""

import pytest

from tests.wizard.tui.picture_app import PictureApp
from wizard.tui.pictures.drawing import DASHED, Drawing, along, cell_of


class Crossing(Drawing):
    """Two lines that cross, and words."""

    def draw(self) -> None:
        style = self.rich_style
        self.colour = lambda _: str(style)
        self.line([(0, 0), (19, 19)], "")
        self.line([(0, 19), (19, 0)], "")
        self.write(0, 6, "[b]x[/b]\x1b漢", "")


def test_a_line_has_a_dot_on_every_step():
    dots = along([(0, 0), (10, 4), (10, 9)])
    assert dots[0] == (0, 0)
    assert dots[-1] == pytest.approx((10, 9))
    assert len({(round(x), round(y)) for x, y in dots}) == 16


def test_a_dashed_line_leaves_gaps():
    dots = along([(0, 0), (17, 0)], DASHED)
    assert [round(x) for x, _ in dots] == [0, 1, 2, 3, 4, 9, 10, 11, 12, 13]


def test_a_line_of_one_point_is_a_dot():
    assert along([(3, 4)]) == [(3, 4)]


def test_cells_are_two_dots_wide_and_four_high():
    assert [cell_of(dot) for dot in ((0, 0), (1, 3), (2, 4))] == [(0, 0), (0, 0), (1, 1)]


async def test_lines_that_cross_keep_the_dots_of_both():
    drawing = Crossing()
    async with PictureApp(drawing).run_test(size=(30, 10)):
        dots = sum(
            (ord(drawing.get_pixel(column, row)[0]) - 0x2800).bit_count()
            for column, row in drawing.drawn_cells()
            if row < 5
        )
    assert dots == 40


async def test_text_is_drawn_without_markup():
    drawing = Crossing()
    async with PictureApp(drawing).run_test(size=(30, 10)):
        row = "".join(drawing.get_pixel(column, 6)[0] for column in range(10))
    assert row == "[b]x[/b]··"
