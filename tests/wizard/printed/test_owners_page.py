"""The page to print: everything on it, all text as text, nothing from elsewhere."""

import re
from html.parser import HTMLParser
from pathlib import Path

import pytest

from core.documents.document import with_value
from core.documents.record import read_document
from core.profiles.profile import load_profile
from core.verdict.assess import assess
from tests.wizard.tui.fixing import press
from tests.wizard.tui.looking import DEMO, SMALL, open_session, path_of, workshop_app
from wizard.commands import main
from wizard.exit_codes import CANNOT_READ
from wizard.locations import DEMO_SESSIONS, PROFILES
from wizard.phrases.cautions import CAUTIONS
from wizard.printed.owners_page import page_html
from wizard.printed.page_file import free_beside


class Words(HTMLParser):
    """The words of a page, and where it points to."""

    def __init__(self):
        super().__init__()
        self.text, self.tags, self.links = [], [], []

    def handle_starttag(self, tag, attrs):
        self.tags.append(tag)
        self.links += [value for name, value in attrs if name in ("href", "src")]

    def handle_data(self, data):
        self.text.append(data)


def record(name):
    return read_document(DEMO[name].path_in(DEMO_SESSIONS))


def page(document, unit="in"):
    verdict = assess(document, lambda name: load_profile(name, [PROFILES]))
    found = Words()
    found.feed(page_html(document, verdict, unit))
    return found


def flowing(found):
    return " ".join(" ".join(found.text).split())


@pytest.mark.parametrize("name", DEMO)
def test_the_answer_comes_first_and_the_cautions_are_there(name):
    document = record(name)
    found = page(document)
    text = flowing(found)
    overall = assess(document, lambda name: load_profile(name, [PROFILES])).overall
    assert overall.capitalize() in text
    assert document["vehicle"]["description"] in text
    assert all(caution in text for caution in CAUTIONS)
    assert found.tags.count("svg") == 2
    assert found.links == []


def test_what_is_planned_and_how_it_was_signed():
    assert "track bar bracket raised at the axle" in flowing(page(record("over the knuckle")))
    assert "Decided by the shop lead" in flowing(page(record("fixed")))


def test_held_back_says_why_before_the_geometry():
    text = flowing(page(record("worn joint")))
    assert text.index("held back: ") < text.index("by its geometry alone")


def test_units():
    assert "50 mm" in flowing(page(record("lifted"), "mm"))


@pytest.mark.parametrize(
    "path", ["vehicle.tag", "vehicle.description", "vehicle.odometer", "session.technician"]
)
def test_text_from_a_record_is_shown_as_text(path):
    nasty = "<script>alert(1)</script>&amp;\x1b[31m\u202e"
    found = page(with_value(record("over the knuckle"), path, nasty))
    assert "script" not in found.tags
    assert "<script>alert(1)</script>&amp;\\x1b[31m\\u202e" in flowing(found)


def test_the_command_makes_it_and_leaves_what_is_there(tmp_path, capsys):
    made = tmp_path / "page.html"
    given = ["page", str(DEMO["lifted"].path_in(DEMO_SESSIONS)), str(made)]
    assert main(given) == 0
    content = made.read_text("utf-8")
    assert content.startswith("<!DOCTYPE html>")
    assert str(made) in capsys.readouterr().out
    made.write_text("mine", "utf-8")
    assert main(given) == CANNOT_READ
    assert made.read_text("utf-8") == "mine"
    refusal = capsys.readouterr().err
    assert re.fullmatch(r"evenarc: .*page\.html: is there already .*\n", refusal)


@pytest.mark.parametrize(
    ("record", "into"), [("none.toml", "page.html"), (None, "no/such/folder/page.html")]
)
def test_what_cannot_be_made_is_one_line(tmp_path, capsys, record, into):
    record = record or str(DEMO["lifted"].path_in(DEMO_SESSIONS))
    assert main(["page", record, str(tmp_path / into)]) == CANNOT_READ
    assert capsys.readouterr().err.count("\n") == 1
    assert not list(tmp_path.rglob("*.html"))


async def test_the_wizard_puts_it_beside_the_record(tmp_path):
    async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
        await open_session(pilot, "lifted")
        filed = path_of(pilot.app, "lifted")
        for name in (filed.with_suffix(".html"), Path(f"{filed.with_suffix('')}-2.html")):
            assert free_beside(filed) == name
            await press(pilot, "w")
            assert name.read_text("utf-8").startswith("<!DOCTYPE html>")
            assert name.name in list(pilot.app._notifications)[-1].message


async def test_in_a_folder_that_takes_nothing_a_line_says_so(tmp_path, monkeypatch):
    def full(*_):
        raise OSError(28, "No space left on device")

    async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
        await open_session(pilot, "lifted")
        monkeypatch.setattr("core.documents.atomic_write.create_file", full)
        await press(pilot, "w")
        (warning,) = pilot.app._notifications
        assert "cannot be made" in warning.message
