"""Photographs by keys and mouse: pictures are added, points are marked, the draft is kept."""

from pathlib import Path

import numpy as np
import pytest
from PIL import Image

from core.documents.document import value_at, with_value
from core.documents.picture import keep_picture
from core.documents.record import read_document, save_draft
from core.profiles.profile import load_profile
from core.verdict.assess import assess
from tests.photographed import photographed
from tests.wizard.tui.driving import settle
from tests.wizard.tui.looking import screen_text, workshop_app
from wizard.commands import application
from wizard.flow import drafts
from wizard.flow.filing import finished_record
from wizard.flow.flow import Flow
from wizard.flow.photographs import new_photograph_session, with_mark, with_picture
from wizard.locations import PROFILES
from wizard.tui.screens.photographs import PhotographsStep
from wizard.tui.widgets.contents import Contents
from wizard.tui.widgets.photograph_view import PhotographView
from wizard.tui.widgets.photographs_part import PhotographsPart
from wizard.tui.widgets.verdict_view import VerdictView

SIZE = (120, 40)


def picture_in(folder: Path, name: str = "from_the_front.jpg") -> Path:
    path = folder / name
    Image.new("RGB", (800, 600), "#8090a0").save(path)
    return path


def draft(files: Path, pictures=()) -> Path:
    """Draft of a session from photographs at its step."""
    document = new_photograph_session([str(path) for path in pictures])
    for path, value in {
        "vehicle.tag": "FG-8",
        "session.profile": "coil-crossover",
        "session.units": "in",
        "layout.steering": "knuckle",
        "layout.arm": "ahead",
        "layout.pitman": "ahead",
        "draft.at": "photographs",
    }.items():
        document = with_value(document, path, value)
    return save_draft(files, drafts.with_id(document))


def app_at(files: Path, pictures=()):
    app = application(files, [PROFILES])
    return app, draft(files, pictures)


async def opened(pilot, path):
    pilot.app.resume(path)
    await pilot.pause()
    assert isinstance(pilot.app.screen, PhotographsStep)
    return pilot.app.screen


async def test_named_pictures_are_taken_and_marked_by_keys(tmp_path):
    app, path = app_at(tmp_path, [picture_in(tmp_path), picture_in(tmp_path, "second.jpg")])
    async with app.run_test(size=SIZE) as pilot:
        screen = await opened(pilot, path)
        assert screen.number == 1  # the first of them
        assert screen.point == "track_bar.frame"
        await pilot.press("right", "right", "down", "enter")
        await pilot.press("f4")
        kept = read_document(path)
        (first, _) = kept["photographs"]
        across, down = first["marks"]["track_bar.frame"]
        assert across > 400
        assert down > 300
        assert value_at(kept, "draft.unseen") == ["1.track_bar.axle"]
        assert screen.point == "drag_link.frame"
        await pilot.press("f8")
        assert screen.point == "track_bar.axle"
        await pilot.press("f8")
        assert read_document(path)["photographs"][0]["marks"] == {}
    assert (tmp_path / "FG-8" / "photographs" / "FG-8_2.jpg").exists()


async def test_a_click_marks_and_the_lines_appear(tmp_path):
    app, path = app_at(tmp_path, [picture_in(tmp_path)])
    async with app.run_test(size=SIZE) as pilot:
        screen = await opened(pilot, path)
        before = screen.query_one("#photograph", PhotographView).rows
        await pilot.click("#photograph", offset=(30, 10))
        await pilot.click("#photograph", offset=(60, 14))
        await pilot.pause()
        marks = screen.picture.marks
        assert marks["track_bar.frame"][0] < marks["track_bar.axle"][0]
        after = screen.query_one("#photograph", PhotographView).rows
        far_from_both = [row[5] for row in after]
        assert far_from_both != [row[5] for row in before]


async def test_zoom_keeps_the_crosshair_and_moves_it_by_less(tmp_path):
    app, path = app_at(tmp_path, [picture_in(tmp_path)])
    async with app.run_test(size=SIZE) as pilot:
        screen = await opened(pilot, path)
        start = screen.crosshair
        await pilot.press("right")
        coarse = screen.crosshair[0] - start[0]
        await pilot.press("plus", "plus", "right")
        fine = screen.crosshair[0] - start[0] - coarse
        assert 0 < fine < coarse
        await pilot.press("minus", "minus", "minus")
        assert screen.window.middle == (400, 300)


async def test_a_faulty_picture_is_refused_in_one_line(tmp_path):
    bad = tmp_path / "bad.jpg"
    bad.write_text("no picture")
    app, path = app_at(tmp_path, [bad])
    async with app.run_test(size=SIZE) as pilot:
        screen = await opened(pilot, path)
        assert screen.number == 0
        assert "photographs" not in read_document(path)


async def test_a_picture_whose_file_is_gone_keeps_its_marks(tmp_path):
    app, path = app_at(tmp_path, [picture_in(tmp_path)])
    async with app.run_test(size=SIZE) as pilot:
        screen = await opened(pilot, path)
        await pilot.press("enter")
        screen.dismiss(None)
        await pilot.pause()
        (tmp_path / "FG-8" / "photographs" / "FG-8_1.jpg").unlink()
        screen = await opened(pilot, path)
        assert screen.picture.marks.keys() == {"track_bar.frame"}
        assert screen.image is None
        await pilot.press("right", "plus", "enter")
        assert screen.picture.marks.keys() == {"track_bar.frame"}


async def test_a_picture_is_taken_out(tmp_path):
    app, path = app_at(tmp_path, [picture_in(tmp_path), picture_in(tmp_path, "second.jpg")])
    async with app.run_test(size=SIZE) as pilot:
        screen = await opened(pilot, path)
        await pilot.press("tab", "enter", "d")
        assert len(read_document(path)["photographs"]) == 1
        assert screen.number == 1
        await pilot.press("d")
        assert screen.number == 0


@pytest.mark.parametrize("size", [(80, 24), (120, 40)])
async def test_question_picture_and_keys_have_room(tmp_path, size):
    app, path = app_at(tmp_path, [picture_in(tmp_path)])
    async with app.run_test(size=size) as pilot:
        screen = await opened(pilot, path)
        view = screen.query_one("#photograph", PhotographView)
        assert view.size.width >= 40
        assert view.size.height >= 12
        assert len(view.rows) == 2 * view.size.height


async def test_f4_at_home_begins_a_session_from_photographs(tmp_path):
    app = application(tmp_path, [PROFILES])
    async with app.run_test(size=SIZE) as pilot:
        await pilot.press("f4")
        await pilot.pause()
        assert value_at(app.screen.flow.document, "session.means") == "photographs"


def test_a_marked_session_is_filed_with_all_that_it_needs(tmp_path):
    """The record can be judged without its profile and without its pictures."""
    _, pictures = photographed(np.random.default_rng(3), 1)
    document = read_document(draft(tmp_path))
    table = {"file": "photographs/FG-8_1.jpg", "width": 4032, "height": 3024, "f35": "26"}
    document = with_value(document, "photographs", [table])
    for mark in pictures[0].marks:
        document = with_mark(document, 1, mark.point, (mark.across, mark.down))
    profile = load_profile("coil-crossover", [PROFILES])
    missing = {question.path.rpartition(".")[2] for question in Flow(document, profile).missing}
    assert not {"height", "offset", "station", "photographs"} & missing
    record = finished_record(document, profile, drafts.now())
    assert "draft" not in record

    def no_profile(name):
        raise AssertionError(name)

    verdict = assess(record, no_profile)
    assert verdict.overall == value_at(record, "results.overall")


@pytest.mark.parametrize("size", [(80, 24), (120, 40)], ids=str)
async def test_the_verdict_has_the_pictures_as_a_part_of_it(tmp_path, size):
    app = workshop_app(tmp_path)
    (record,) = (app.files / "FG-8").glob("*_first_*.toml")
    async with app.run_test(size=size) as pilot:
        app.open_record(record)
        await settle(pilot)
        part = app.screen.query_one(PhotographsPart)
        views = [*part.query(PhotographView)]
        assert len(views) == len(part.photographs) == 2
        number = app.screen.query_one(VerdictView).visible_sections.index("photographs") + 1
        await pilot.press(str(number))
        await pilot.pause()
        assert app.screen.query_one(Contents).at == number - 1
        assert "0\xa0care" in screen_text(app)  # the tenth section has its key too
        assert views[0].rows
        assert "The camera stood" in " ".join(screen_text(app).split())


async def test_a_verdict_whose_pictures_are_gone_says_so(tmp_path):
    app = workshop_app(tmp_path)
    (record,) = (app.files / "FG-8").glob("*_first_*.toml")
    for picture in (app.files / "FG-8" / "photographs").iterdir():
        picture.unlink()
    async with app.run_test(size=(80, 200)) as pilot:
        app.open_record(record)
        await settle(pilot)
        assert not app.screen.query_one(PhotographsPart).query(PhotographView)
        assert "its marks are kept" in " ".join(screen_text(app).split())
        assert app.screen.verdict is not None


@pytest.mark.parametrize("size", [(80, 24), (120, 40)], ids=str)
def test_looks_in_half_blocks(snap_compare, tmp_path, size):
    picture = tmp_path / "wheels.png"
    drawn = Image.new("RGB", (800, 600), "#8090a0")
    for left in (120, 620):
        drawn.paste("#202020", (left, 200, left + 60, 420))
    drawn.save(picture)
    app, path = app_at(tmp_path)
    kept = keep_picture(picture, tmp_path / "FG-8", "FG-8")
    document = with_value(
        with_picture(read_document(path), kept), "session.opened", "2026-09-01T08:00:00"
    )
    for point, place in {
        "track_bar.frame": (560.0, 260.0),
        "track_bar.axle": (240.0, 320.0),
        "drag_link.frame": (580.0, 280.0),
    }.items():
        document = with_mark(document, 1, point, place)
    save_draft(tmp_path, document)

    async def mark(pilot):
        screen = await opened(pilot, path)
        assert screen.point == "drag_link.axle"
        await pilot.press(*["left"] * 20, *["down"] * 3, "plus", "plus")

    assert snap_compare(app, terminal_size=size, run_before=mark)
