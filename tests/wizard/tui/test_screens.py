"""Pictures of home and of the questions, at both sizes of terminal."""

from pathlib import Path
from shutil import copytree, ignore_patterns

import pytest

from tests.wizard.tui.driving import app_in, draft_at, type_text
from tests.wizard.tui.looking import settle
from wizard.locations import DEMO_SESSIONS

SIZES = pytest.mark.parametrize("size", [(80, 24), (120, 40)], ids=["80x24", "120x40"])
FILES = Path("files")
HEIGHT = "readings.track_bar.axle.height"


@pytest.fixture(autouse=True)
def here(tmp_path, monkeypatch):
    """Give the files folder the same name in every picture: home shows it."""
    monkeypatch.chdir(tmp_path)


@pytest.fixture
def demo():
    """Files folder with the sessions of the invented workshop."""
    copytree(DEMO_SESSIONS, FILES, ignore=ignore_patterns("*.py", "__pycache__"))


def typed(text, *keys):
    """Return a function that resumes the draft, types and presses keys."""

    async def before(pilot):
        await pilot.press("enter")
        await type_text(pilot, text)
        await pilot.press(*keys)
        await pilot.pause()

    return before


@SIZES
class TestHome:
    def test_with_nothing_filed(self, snap_compare, size):
        assert snap_compare(app_in(FILES), terminal_size=size, run_before=settle)

    def test_with_the_invented_workshop(self, snap_compare, demo, size):
        assert snap_compare(app_in(FILES), terminal_size=size, run_before=settle)

    def test_showing_what_was_looked_for(self, snap_compare, demo, size):
        assert snap_compare(app_in(FILES), terminal_size=size, run_before=sought)


async def sought(pilot):
    """Wait until home has listed, and type a word to find."""
    await settle(pilot)
    await pilot.press(*"bump")
    await settle(pilot)


@SIZES
class TestAQuestion:
    @pytest.mark.parametrize(
        "path",
        [
            *("vehicle.tag", "session.profile", "cautions", "walk_round.rim_play"),
            *("layout.steering", "instruments.tape", HEIGHT, "readings.braces.frame_ends"),
            *("readings.steering.arm", "file"),
        ],
    )
    def test_as_it_is_asked(self, snap_compare, size, path):
        if path != "vehicle.tag":
            draft_at(FILES, path)
        assert snap_compare(app_in(FILES), terminal_size=size, run_before=typed(""))

    @pytest.mark.parametrize("text", ["19 9/", "34; 30"], ids=["refused", "queried"])
    def test_with_an_answer_that_is_not_accepted(self, snap_compare, size, text):
        draft_at(FILES, HEIGHT)
        assert snap_compare(app_in(FILES), terminal_size=size, run_before=typed(text, "enter"))

    def test_whose_answer_is_kept(self, snap_compare, size):
        draft_at(FILES, HEIGHT)
        before = typed("34", "enter", "f5")
        assert snap_compare(app_in(FILES), terminal_size=size, run_before=before)

    @pytest.mark.parametrize("key", ["f1", "f3"], ids=["help", "steps"])
    def test_with_a_page_over_it(self, snap_compare, size, key):
        draft_at(FILES, HEIGHT)
        assert snap_compare(app_in(FILES), terminal_size=size, run_before=typed("", key))
