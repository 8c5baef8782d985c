"""The curve of steer against travel."""

from math import inf, nan
from random import Random

import pytest
from textual.geometry import Size

from tests.wizard.tui.picture_app import LARGE, SMALL, PictureApp, text_of
from wizard.tui.pictures.curve import Curve, value_at
from wizard.tui.pictures.curve_words import curve_words, readout
from wizard.tui.pictures.plot import plot_of
from wizard.views.picture_data import CurvePicture, Trace

SIZES = [Size(38, 14), Size(60, 20), Size(100, 30)]
HEAVE = [-127.0 + 228.6 * step / 40 for step in range(41)]
WORKING = (50.8, 50.8)


def bend(slope: float, curve: float) -> list[float]:
    return [slope * heave / 100 + curve * (heave / 100) ** 2 for heave in HEAVE]


NOW = Trace("now", HEAVE, bend(1.4, 0.5), [0.05 + abs(heave) / 400 for heave in HEAVE])
PLANNED = Trace("planned", HEAVE, bend(0.05, 0.1))
STUCK = Trace(
    "now",
    HEAVE,
    [value if -90 < heave < 85 else nan for heave, value in zip(HEAVE, bend(2, 0.5), strict=True)],
)

PICTURES = {
    "alone": CurvePicture(NOW, limit=0.5, working=WORKING, unit="mm"),
    "now_and_planned": CurvePicture(NOW, PLANNED, 0.5, WORKING, axle_heave=60.0),
    "out_of_reach": CurvePicture(STUCK, limit=0.5, working=WORKING, axle_heave=90.0),
    "nothing_at_all": CurvePicture(Trace("now", HEAVE, [0.0] * 41), limit=0.5, working=WORKING),
    "huge": CurvePicture(Trace("now", HEAVE, bend(30, 12)), limit=0.5, working=WORKING),
}


def any_picture(chance: Random) -> CurvePicture:
    scale = 10 ** chance.uniform(-4, 2)
    value = [
        nan if chance.random() < 0.05 else v
        for v in bend(chance.uniform(-scale, scale), chance.uniform(-scale, scale))
    ]
    give = [chance.uniform(0, scale / 4) for _ in HEAVE] if chance.random() < 0.5 else None
    return CurvePicture(
        Trace("before", HEAVE, value, give),
        Trace("after", HEAVE, bend(0.1, 0.1)) if chance.random() < 0.5 else None,
        limit=chance.choice([None, 0.25, 0.5, 2.0]),
        working=WORKING,
        unit=chance.choice(["in", "mm"]),
    )


@pytest.mark.parametrize("size", SIZES, ids=str)
def test_words_never_meet_and_are_never_cut(size):
    chance = Random(20261125)
    for _ in range(100):
        picture = any_picture(chance)
        found = curve_words(picture, plot_of(picture, size), size, set())
        for number, word in enumerate(found):
            assert word.column >= 0
            assert word.cells.stop <= size.width
            assert 0 <= word.row < size.height
            assert not any(word.touches(other) for other in found[number + 1 :])
        text = " ".join(word.text for word in found)
        assert "droop" in text
        assert "bump" in text
        assert ("limit" in text) == (picture.limit is not None)
        if picture.compared:
            assert "━━ before" in text
            assert "╌╌ after" in text


@pytest.mark.parametrize("name", PICTURES)
@pytest.mark.parametrize("size", SIZES, ids=str)
def test_curve_edges_and_limit_are_inside_the_frame(name, size):
    picture = PICTURES[name]
    plot = plot_of(picture, size)
    for trace in (picture.trace, picture.compared or picture.trace):
        for point in zip(trace.heave, trace.value, strict=True):
            if point[1] == point[1]:
                x, y = plot.dot(point)
                assert 0 <= x < size.width * 2
                assert 4 <= y < (size.height - 2) * 4
    assert plot.bottom < -(picture.limit or 0)
    assert plot.top > (picture.limit or 0)


class TestFrame:
    def test_bump_is_on_the_right_and_left_is_up(self):
        plot = plot_of(PICTURES["alone"], Size(60, 20))
        assert plot.dot((100, 0))[0] > plot.dot((-100, 0))[0]
        assert plot.dot((0, 1))[1] < plot.dot((0, -1))[1]

    def test_numbers_are_round_in_the_unit_shown(self):
        plot = plot_of(PICTURES["alone"], Size(60, 20))
        assert plot.heave_ticks("in") == pytest.approx((-5, -4, -3, -2, -1, 0, 1, 2, 3, 4))
        assert plot.heave_ticks("mm") == pytest.approx((-100, -50, 0, 50, 100))

    def test_a_curve_of_nothing_still_has_a_frame(self):
        nothing = CurvePicture(Trace("now", [0.0], [nan]))
        plot = plot_of(nothing, Size(60, 20))
        assert plot.high > plot.low
        assert plot.top > plot.bottom

    def test_what_is_infinite_is_left_out(self):
        plot = plot_of(CurvePicture(Trace("now", [-1.0, 1.0], [0.5, inf])), Size(60, 20))
        assert plot.top < 1


class TestWords:
    async def test_a_gap_says_so(self):
        curve = Curve(PICTURES["out_of_reach"])
        async with PictureApp(curve).run_test(size=SMALL):
            assert text_of(curve).count("cannot reach") == 3  # either gap, and where the axle is

    async def test_where_the_axle_is_and_what_that_does(self):
        curve = Curve(PICTURES["now_and_planned"])
        async with PictureApp(curve).run_test(size=SMALL):
            text = text_of(curve)
        assert "at 2 3/8 in bump: steers left 1.02 deg" in text
        assert text.count("●") == 1

    def test_it_gets_shorter_where_there_is_no_room(self):
        (word,) = readout(PICTURES["now_and_planned"], 1.02, Size(38, 14))
        assert word.text == "1.02 deg"

    async def test_names_are_text_and_no_markup(self):
        curve = Curve(CurvePicture(Trace("[b]now[/b]", HEAVE, bend(1, 1)), PLANNED))
        async with PictureApp(curve).run_test(size=SMALL):
            assert "━━ [b]now[/b]" in text_of(curve)

    async def test_no_curve_no_picture(self):
        curve = Curve()
        async with PictureApp(curve).run_test(size=SMALL):
            assert text_of(curve).strip() == ""
            curve.show(PICTURES["alone"])
            assert "give or take" in text_of(curve)

    def test_between_its_points(self):
        trace = Trace("now", [0.0, 10.0, 20.0], [0.0, 1.0, nan])
        assert value_at(trace, 5.0) == 0.5
        for heave in (15.0, 25.0, -1.0, None):
            assert value_at(trace, heave) != value_at(trace, heave)


class TestLooks:
    @pytest.mark.parametrize("size", [SMALL, LARGE], ids=["80x24", "120x40"])
    @pytest.mark.parametrize("name", PICTURES)
    def test_picture(self, snap_compare, name, size):
        assert snap_compare(PictureApp(Curve(PICTURES[name])), terminal_size=size)
