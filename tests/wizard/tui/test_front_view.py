"""The front view: its drawing, its places and its words."""

from dataclasses import replace
from math import hypot, sqrt
from random import Random

import pytest
from textual.geometry import Size

from core.readings.survey import SURVEY, WHEELS
from tests.wizard.tui.picture_app import LARGE, SMALL, PictureApp, text_of
from wizard.tui.pictures.drawing import cell_of, is_braille
from wizard.tui.pictures.front_view import FrontView
from wizard.tui.pictures.front_words import TAPE_WORDS, front_words
from wizard.tui.pictures.layout import places, view_of
from wizard.views.picture_data import Aim, FrontPicture, Pose, Wheels, seen_from_front
from wizard.views.tape_path import tape_path

SIZES = [Size(29, 12), Size(38, 14), Size(60, 20), Size(100, 30)]

# An invented truck, mm: the drag link a little steeper than the track bar.
PIVOTS = {
    "track_bar.frame": (-420.0, 622.0),
    "track_bar.axle": (-1240.0, 530.0),
    "drag_link.frame": (-510.0, 560.0),
    "drag_link.axle": (-1330.0, 455.0),
}
WHEELS_ON_THE_FLOOR = Wheels((-60.0, 419.0), (-1700.0, 419.0))
LIFTED = {
    **PIVOTS,
    "track_bar.frame": (-420.0, 724.0),
    "drag_link.frame": (-510.0, 662.0),
}


def moved(heave: float) -> dict[str, tuple[float, float]]:
    """Both axle ends after a heave, each link turning about its frame end."""
    found = {}
    for link in ("track_bar", "drag_link"):
        (yf, zf), (ya, za) = PIVOTS[f"{link}.frame"], PIVOTS[f"{link}.axle"]
        up = za + heave
        found[f"{link}.axle"] = (yf - sqrt(hypot(yf - ya, zf - za) ** 2 - (zf - up) ** 2), up)
    return found


def pose(heave: float) -> Pose:
    pivots = moved(heave)
    aside = pivots["track_bar.axle"][0] - PIVOTS["track_bar.axle"][0]
    hubs = [
        (hub[0] + aside, hub[1] + heave)
        for hub in (WHEELS_ON_THE_FLOOR.left, WHEELS_ON_THE_FLOOR.right)
        if hub
    ]
    return Pose(pivots, Wheels(*hubs))


ARCS = {
    f"{link}.axle": [moved(heave)[f"{link}.axle"] for heave in range(-125, 101, 15)]
    for link in ("track_bar", "drag_link")
}


def wanted(point: tuple[float, float]) -> Aim:
    return Aim(point, "▽", ("wants to be 2 in lower", "2 in lower"), needed=True)


AXIS = Aim((-420.0, 500.0), "×", ("axis of its ball's path", "axis"))


def any_picture(chance: Random) -> FrontPicture:
    """A picture that a session could have, sometimes a wild one."""
    wild = 4 if chance.random() < 0.2 else 1

    def near(spot: tuple[float, float]) -> tuple[float, float]:
        return (
            spot[0] + chance.uniform(-120, 120) * wild,
            max(100.0, spot[1] + chance.uniform(-90, 90) * wild),
        )

    pivots = {name: near(spot) for name, spot in PIVOTS.items() if chance.random() < 0.85}
    joint = None
    if len(pivots) == 4 and chance.random() < 0.4:
        (y0, z0), (y1, z1) = pivots["drag_link.axle"], pivots["drag_link.frame"]
        joint = (y0 + (y1 - y0) / 4, z0 + (z1 - z0) / 4)
        pivots["tie_rod.near"] = near((-200.0, 420.0))
    return FrontPicture(
        pivots=pivots,
        joint=joint,
        wheels=WHEELS_ON_THE_FLOOR if chance.random() < 0.5 else Wheels(),
        before={name: near(spot) for name, spot in PIVOTS.items()} if chance.random() < 0.3 else {},
        arcs=ARCS if len(pivots) == 4 and chance.random() < 0.3 else {},
        asked_reading=chance.choice(["", *SURVEY, *WHEELS, "steering.arm"]),
        notes={"track_bar.frame": "down 4 in"} if chance.random() < 0.3 else {},
        aims=(wanted(near(PIVOTS["drag_link.frame"])), AXIS) if chance.random() < 0.3 else (),
    )


@pytest.mark.parametrize("size", SIZES, ids=str)
def test_words_do_not_meet_and_are_not_cut(size):
    chance = Random(20261125)
    for _ in range(200):
        picture = any_picture(chance)
        path = tape_path(picture.asked_reading, places(picture))
        found = front_words(picture, path, {}, view_of(picture, (path,), size), size, set())
        texts = [word.text for word in found]
        for number, word in enumerate(found):
            assert word.column >= 0
            assert word.cells.stop <= size.width
            assert 0 <= word.row < size.height
            assert not any(word.touches(other) for other in found[number + 1 :])
        for link in ("track_bar", "drag_link"):
            if {f"{link}.frame", f"{link}.axle"} <= picture.pivots.keys():
                assert link.replace("_", " ") in texts
        if picture.aims:
            assert any("2 in lower" in text for text in texts)
        if path:
            assert TAPE_WORDS[path.kind] in texts


class TestDrawing:
    async def test_the_vehicles_left_is_on_the_right_and_the_picture_says_so(self):
        view = FrontView(FrontPicture(PIVOTS))
        async with PictureApp(view).run_test(size=SMALL):
            rows = text_of(view).splitlines()
        assert rows[-1].startswith("◂ vehicle's right")
        assert rows[-1].rstrip().endswith("vehicle's left ▸")
        frame, axle = (max(row.find(mark) for row in rows) for mark in "◆●")
        assert axle < frame

    async def test_it_is_to_scale(self):
        view = view_of(FrontPicture(PIVOTS), (), Size(60, 20))
        for start in PIVOTS.values():
            for end in PIVOTS.values():
                (x0, y0), (x1, y1) = view.dot(start), view.dot(end)
                real = hypot(start[0] - end[0], start[1] - end[1])
                assert hypot(x0 - x1, y0 - y1) == pytest.approx(view.scale * real)

    async def test_the_floor_is_the_row_above_the_words(self):
        view = FrontView(FrontPicture(PIVOTS))
        async with PictureApp(view).run_test(size=SMALL):
            rows = text_of(view).splitlines()
        assert set(rows[-2]) <= set("⠉⠒⠤⣀⡀⢀ ")
        assert rows[-2].count(" ") < 4

    def test_a_drag_link_alone_is_framed_with_its_wheels_and_nothing_else(self):
        alone = {name: point for name, point in PIVOTS.items() if name.startswith("drag_link")}
        view = view_of(FrontPicture(alone, wheels=WHEELS_ON_THE_FLOOR), (), Size(60, 20))
        hubs = [view.dot(hub)[0] for hub in WHEELS_ON_THE_FLOOR.hubs]
        assert sum(hubs) == pytest.approx(119)
        assert min(hubs) >= 0

    async def test_an_unknown_pivot_is_not_drawn(self):
        view = FrontView(FrontPicture({"track_bar.frame": PIVOTS["track_bar.frame"]}))
        async with PictureApp(view).run_test(size=SMALL):
            text = text_of(view)
        assert text.count("◆") == 1
        assert "●" not in text
        assert "track bar frame end" in text
        assert "drag link" not in text

    async def test_the_picture_grows_with_the_pivots(self):
        view = FrontView()
        async with PictureApp(view).run_test(size=SMALL):
            marks = []
            for count in range(5):
                view.show(FrontPicture(dict(list(PIVOTS.items())[:count])))
                marks.append(sum(text_of(view).count(mark) for mark in "◆●"))
        assert marks == [0, 1, 2, 3, 4]

    async def test_the_pivot_asked_for_has_a_ring_and_a_path(self):
        known = {"track_bar.frame": PIVOTS["track_bar.frame"]}
        view = FrontView(FrontPicture(known, asked_reading="track_bar.axle.height"))
        async with PictureApp(view).run_test(size=SMALL):
            text = text_of(view)
            asked = view.colour("front-view--tape")
            dots = [
                (column, row)
                for column, row in view.drawn_cells()
                for char, style in [view.get_pixel(column, row)]
                if is_braille(char) and style == asked
            ]
            floor = view.size.height - 2
        assert "track bar axle end" in text
        assert "up from the floor" in text
        assert text.count("+") == 1
        (column,) = {text.splitlines()[row].find("+") for row in range(floor)} - {-1}
        (row,) = {row for row, line in enumerate(text.splitlines()) if "+" in line}
        below = {row for _, row in dots} - {row - 1, row, row + 1}
        assert {aside for aside, down in dots if down in below} == {column}
        assert max(below) == floor
        assert len(below) > (floor - row) / 2

    async def test_before_and_after_differ_in_their_marks(self):
        view = FrontView(FrontPicture(PIVOTS, before=LIFTED, after_word="planned"))
        async with PictureApp(view).run_test(size=SMALL):
            first, *rows = text_of(view).splitlines()
        assert "before" in first
        assert "planned" in first
        assert sum(row.count("◇") for row in rows) == 2
        assert sum(row.count("◆") for row in rows) == 2

    async def test_the_height_wanted_and_the_axis_are_marked_in_their_places(self):
        aims = (wanted((-510.0, 480.0)), AXIS)
        view = FrontView(FrontPicture(PIVOTS, aims=aims))
        async with PictureApp(view).run_test(size=LARGE):
            text = text_of(view)
            here = view_of(view.picture, (), view.size)
            marked = [view.get_pixel(*cell_of(here.dot(aim.point)))[0] for aim in aims]
        assert marked == ["▽", "×"]
        assert "▽ wants to be 2 in lower" in text
        assert "× axis of its ball's path" in text

    async def test_a_mark_hidden_by_its_pivot_still_stands_before_its_words(self):
        close = wanted((-510.0, 559.0))
        view = FrontView(FrontPicture(PIVOTS, aims=(close,)))
        async with PictureApp(view).run_test(size=SMALL):
            text = text_of(view)
        assert text.count("◆") == 2
        assert "▽ wants to be 2 in lower" in text

    async def test_the_picture_makes_room_for_the_height_but_not_for_the_axis(self):
        high = replace(AXIS, point=(-420.0, 2500.0))
        view = FrontView(FrontPicture(PIVOTS, aims=(wanted((-510.0, 1500.0)), high)))
        async with PictureApp(view).run_test(size=SMALL):
            text = text_of(view)
        assert text.count("▽") == 2  # in its place, and before its words
        assert "axis" not in text

    @pytest.mark.parametrize("size", [SMALL, (40, 10), (24, 7)])
    async def test_no_mark_stands_without_its_words(self, size):
        aims = (wanted((-510.0, 480.0)), AXIS)
        view = FrontView(FrontPicture(PIVOTS, aims=aims))
        async with PictureApp(view).run_test(size=size):
            text = text_of(view)
        for aim in aims:
            has_words = any(f"{aim.mark} {words}" in text for words in aim.texts)
            assert has_words == (aim.mark in text)

    async def test_the_inverted_y_has_a_tie_rod(self):
        pivots = {**PIVOTS, "tie_rod.near": (-180.0, 430.0)}
        view = FrontView(FrontPicture(pivots, joint=(-1130.0, 480.0)))
        async with PictureApp(view).run_test(size=LARGE):
            text = text_of(view)
        assert "tie rod" in text
        assert "near ball" in text

    async def test_notes_are_text_without_markup(self):
        view = FrontView(FrontPicture(PIVOTS, notes={"track_bar": "[red]8.5[/red] deg"}))
        async with PictureApp(view).run_test(size=LARGE):
            assert "track bar [red]8.5[/red] deg" in text_of(view)

    async def test_the_text_is_the_same_without_colour(self, monkeypatch):
        said = []
        for colour in (True, False):
            if not colour:
                monkeypatch.setenv("NO_COLOR", "1")
            view = FrontView(FrontPicture(PIVOTS, before=LIFTED))
            app = PictureApp(view)
            async with app.run_test(size=SMALL):
                said.append(text_of(view))
            assert app.no_color != colour
        assert said[0] == said[1]

    def test_points_from_the_front_are_across_and_up(self):
        assert seen_from_front({"drag_link.frame": (100, -510, 560)}) == {
            "drag_link.frame": (-510.0, 560.0)
        }


class TestTravel:
    async def test_axle_ends_move_while_frame_ends_and_words_stay(self):
        view = FrontView(FrontPicture(PIVOTS, wheels=WHEELS_ON_THE_FLOOR, arcs=ARCS))
        async with PictureApp(view).run_test(size=LARGE):
            words = view.words
            marks = []
            for heave in (-120.0, 0.0, 95.0):
                view.move(pose(heave))
                marks.append(
                    {
                        mark: {
                            cell for cell in view.drawn_cells() if view.get_pixel(*cell)[0] == mark
                        }
                        for mark in "◆●"
                    }
                )
            assert view.words == words
        down, rest, up = marks
        assert down["◆"] == rest["◆"] == up["◆"]
        lowest = [max(row for _, row in mark["●"]) for mark in (down, rest, up)]
        assert lowest == sorted(lowest, reverse=True)
        assert len(set(lowest)) == 3

    async def test_the_axle_returns_to_rest(self):
        view = FrontView(FrontPicture(PIVOTS, wheels=WHEELS_ON_THE_FLOOR, arcs=ARCS))
        async with PictureApp(view).run_test(size=LARGE):
            before = text_of(view)
            view.move(pose(60.0))
            assert text_of(view) != before
            view.move(None)
            assert text_of(view) == before

    async def test_every_pivot_stays_inside_through_the_travel(self):
        view = view_of(FrontPicture(PIVOTS, arcs=ARCS), (), Size(60, 20))
        for heave in (-125.0, 100.0):
            for x, y in view.line(moved(heave).values()):
                assert 0 <= x < 120
                assert 0 <= y < 76


PICTURES = {
    "asked_for_a_height": FrontPicture(
        dict(list(PIVOTS.items())[:3]), asked_reading="drag_link.axle.height"
    ),
    "asked_for_an_offset": FrontPicture(
        dict(list(PIVOTS.items())[:1]), asked_reading="track_bar.axle.offset"
    ),
    "whole": FrontPicture(PIVOTS, wheels=WHEELS_ON_THE_FLOOR),
    "before_and_after": FrontPicture(
        PIVOTS,
        wheels=WHEELS_ON_THE_FLOOR,
        before=LIFTED,
        notes={"track_bar.frame": "down 4 in"},
    ),
}


class TestLooks:
    @pytest.mark.parametrize("size", [SMALL, LARGE], ids=["80x24", "120x40"])
    @pytest.mark.parametrize("name", PICTURES)
    def test_picture(self, snap_compare, name, size):
        assert snap_compare(PictureApp(FrontView(PICTURES[name])), terminal_size=size)

    @pytest.mark.parametrize("size", [SMALL, LARGE], ids=["80x24", "120x40"])
    def test_moved(self, snap_compare, size):
        view = FrontView(FrontPicture(PIVOTS, wheels=WHEELS_ON_THE_FLOOR, arcs=ARCS))

        async def move(pilot) -> None:
            await pilot.pause()
            view.move(pose(80.0))

        assert snap_compare(PictureApp(view), terminal_size=size, run_before=move)
