"""The question for a picture: a file, a folder, and names that are neither."""

import pytest

from tests.wizard.tui.driving import type_text
from tests.wizard.tui.test_photographs import app_at, opened, picture_in
from wizard.flow.photographs import pictures_of
from wizard.tui.screens.photographs import PhotographsStep
from wizard.tui.screens.pick import PickScreen
from wizard.tui.screens.prompt import PromptScreen
from wizard.tui.widgets.remark import Remark


async def name(pilot, text):
    await pilot.press("a")
    await type_text(pilot, text)
    await pilot.press("enter")
    await pilot.pause()


def remark(pilot):
    return " ".join(str(pilot.app.screen.query_one(Remark).content).split())


@pytest.mark.parametrize(
    "text", ["~nosuchuser/x.jpg", "x" * 300, "/nowhere/x.jpg", "[bold]x[/bold]"]
)
async def test_a_name_that_is_no_file_is_refused_in_one_line(tmp_path, text):
    app, path = app_at(tmp_path)
    async with app.run_test(size=(80, 24)) as pilot:
        await opened(pilot, path)
        await name(pilot, text)
        assert isinstance(app.screen, PromptScreen)
        assert "there is no such file or folder" in remark(pilot)


async def test_pictures_of_a_folder_are_offered(tmp_path):
    folder = tmp_path / "sent"
    folder.mkdir()
    picture_in(folder)
    app, path = app_at(tmp_path)
    async with app.run_test(size=(80, 24)) as pilot:
        await opened(pilot, path)
        await name(pilot, str(folder))
        assert isinstance(app.screen, PickScreen)
        await pilot.press("enter")
        await pilot.pause()
        assert len(pictures_of(app.screen.flow.document)) == 1


async def test_a_folder_without_a_picture_says_so(tmp_path):
    (tmp_path / "empty").mkdir()
    app, path = app_at(tmp_path)
    async with app.run_test(size=(80, 24)) as pilot:
        await opened(pilot, path)
        await name(pilot, str(tmp_path / "empty"))
        assert isinstance(app.screen, PhotographsStep)
        assert "holds no picture" in remark(pilot)


async def test_a_folder_that_cannot_be_read_says_so(tmp_path, monkeypatch):
    folder = tmp_path / "closed"
    folder.mkdir()
    app, path = app_at(tmp_path)
    async with app.run_test(size=(80, 24)) as pilot:
        await opened(pilot, path)

        def refuse(_folder):
            raise PermissionError(13, "Permission denied")

        monkeypatch.setattr("pathlib.Path.iterdir", refuse)
        await name(pilot, str(folder))
        assert "cannot be read: Permission denied" in remark(pilot)
