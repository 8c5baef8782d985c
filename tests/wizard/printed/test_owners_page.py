"""The owner's page: its parts, its command, and hostile text in every field of a record."""

import json
import re
import tomllib
from html.parser import HTMLParser
from pathlib import Path

import pytest

from core.documents.document import value_at, with_value
from core.documents.entries import EntryError
from core.documents.record import read_document
from core.documents.seal import sealed
from core.profiles.profile import load_profile
from core.verdict.assess import assess
from tests.conftest import ROOT
from tests.wizard.tui.fixing import press
from tests.wizard.tui.looking import DEMO, SMALL, open_session, path_of, workshop_app
from wizard.commands import main
from wizard.exit_codes import CANNOT_READ
from wizard.locations import DEMO_SESSIONS, PROFILES
from wizard.phrases.cautions import CAUTIONS
from wizard.printed.owners_page import page_html
from wizard.printed.page_file import unused_page_path

CASES = json.loads((ROOT / "tests" / "cases" / "axle_cases.json").read_text("utf-8"))["cases"]
"""Records of every layout and guide, without a track bar too; all invented."""

HOSTILE = "\"'><script>x</script><img src=x>{{ page }}&amp;\x1b[31m\u202e"
"""Text that would break a page which does not escape it; invented."""

HOSTILE_AS_TEXT = "\"'><script>x</script><img src=x>{{ page }}&amp;\\x1b[31m\\u202e"
"""The same text as a reader of the page sees it."""


class PageReader(HTMLParser):
    """Reads the text, the tags, the attributes and the links of a page."""

    def __init__(self):
        super().__init__()
        self.texts, self.tags, self.attributes, self.links = [], [], set(), []

    def handle_starttag(self, tag, attrs):
        self.tags.append(tag)
        self.attributes |= {name for name, _ in attrs}
        self.links += [value for name, value in attrs if name in ("href", "src")]

    def handle_data(self, data):
        self.texts.append(data)

    @property
    def text(self):
        """The text of the page without its line breaks."""
        return " ".join(" ".join(self.texts).split())


def record(name):
    return read_document(DEMO[name].path_in(DEMO_SESSIONS))


def profile_of(name):
    return load_profile(name, [PROFILES])


def read_page(document, unit="in"):
    """Read the owner's page of a record. The verdict is linear, which is quicker."""
    reader = PageReader()
    reader.feed(page_html(document, assess(document, profile_of, draws=0), unit))
    return reader


def text_paths(value, path=""):
    """Paths of all texts in a document; items of a list have their index as a key."""
    if isinstance(value, str):
        yield path
    elif isinstance(value, dict):
        for key, item in value.items():
            if key not in ("format", "results"):
                yield from text_paths(item, f"{path}.{key}".lstrip("."))
    elif isinstance(value, list):
        for index, item in enumerate(value):
            yield from text_paths(item, f"{path}.{index}")


def with_text(value, keys, text):
    """Document with another text at a path from `text_paths`."""
    if not keys:
        return text
    key, *rest = keys
    if isinstance(value, list):
        place = int(key)
        return [*value[:place], with_text(value[place], rest, text), *value[place + 1 :]]
    return {**value, key: with_text(value[key], rest, text)}


@pytest.mark.parametrize("name", DEMO)
def test_the_page_has_the_answer_the_vehicle_two_drawings_and_the_cautions(name):
    document = record(name)
    page = read_page(document)
    overall = assess(document, profile_of, draws=0).overall
    assert overall.capitalize() in page.text
    assert document["vehicle"]["description"] in page.text
    assert all(caution in page.text for caution in CAUTIONS)
    assert page.tags.count("svg") == 2
    assert page.links == []


def test_the_page_has_the_plan_and_the_decisions():
    assert "track bar bracket raised at the axle" in read_page(record("re-mounted")).text
    assert "Decided by the shop lead" in read_page(record("fixed")).text


def test_the_page_says_where_the_frame_end_wants_to_be_unless_readings_were_proved_wrong():
    said = "The drag link's frame end"
    lifted = read_page(record("lifted")).text
    assert f"{said} wants to be 1 in lower, give or take" in lifted
    assert f"{said} is where it wants to be, within" in read_page(record("fixed")).text
    assert said not in read_page(record("not closing")).text


@pytest.mark.parametrize("number", range(len(CASES)))
def test_every_layout_and_guide_has_a_page_with_a_drawing(number):
    page = read_page(tomllib.loads(CASES[number]["record"]))
    assert page.tags.count("svg") == 2
    assert "nan" not in page.text.split()


def test_a_part_without_facts_has_no_heading():
    page = read_page(record("close"))
    assert value_at(record("close"), "plan") is None
    assert "What is planned" not in page.text


def test_the_reason_for_a_verdict_held_back_comes_before_the_geometry():
    text = read_page(record("worn joint")).text
    assert text.index("held back: ") < text.index("by its geometry alone")


def test_lengths_are_in_the_unit_of_the_page():
    assert "50 mm" in read_page(record("lifted"), "mm").text


@pytest.mark.parametrize(
    "path",
    [
        "vehicle.tag",
        "vehicle.description",
        "vehicle.odometer",
        "session.technician",
        "session.kind",
        "complaint.note",
        "plan.moves.0.correction",
        "signatures.0.by",
        "signatures.0.note",
        "signatures.0.decision",
    ],
)
def test_hostile_text_is_printed_as_text(path):
    document = record("lifted")
    assert path in set(text_paths(document))
    page = read_page(with_text(document, path.split("."), HOSTILE))
    assert HOSTILE_AS_TEXT in page.text
    assert not {"script", "img"} & set(page.tags)


@pytest.mark.parametrize("name", DEMO)
def test_no_field_of_a_record_can_add_a_tag_or_an_attribute(name):
    document = record(name)
    sound = read_page(document)
    judged = 0
    for path in text_paths(document):
        try:
            page = read_page(with_text(document, path.split("."), HOSTILE))
        except EntryError:  # a quantity or a choice; such a record is refused
            continue
        judged += 1
        assert set(page.tags) <= set(sound.tags), path
        assert page.attributes <= sound.attributes, path
        assert page.links == [], path
    assert judged > 5


def test_hostile_text_in_all_fields_at_once_leaves_the_tags_as_they_are():
    document = record("lifted")
    for path in ("vehicle.tag", "vehicle.description", "vehicle.odometer", "complaint.note"):
        document = with_value(document, path, HOSTILE)
    assert read_page(sealed(document)).tags == read_page(record("lifted")).tags


def test_the_command_makes_the_page_and_does_not_replace_a_file(tmp_path, capsys):
    page = tmp_path / "page.html"
    arguments = ["page", str(DEMO["lifted"].path_in(DEMO_SESSIONS)), str(page)]
    assert main(arguments) == 0
    assert page.read_text("utf-8").startswith("<!DOCTYPE html>")
    assert str(page) in capsys.readouterr().out
    page.write_text("mine", "utf-8")
    assert main(arguments) == CANNOT_READ
    assert page.read_text("utf-8") == "mine"
    refusal = capsys.readouterr().err
    assert re.fullmatch(r"evenarc: .*page\.html: exists already .*\n", refusal)


@pytest.mark.parametrize(
    ("record", "into"), [("none.toml", "page.html"), (None, "no/such/folder/page.html")]
)
def test_a_page_that_cannot_be_made_is_refused_in_one_line(tmp_path, capsys, record, into):
    record = record or str(DEMO["lifted"].path_in(DEMO_SESSIONS))
    assert main(["page", record, str(tmp_path / into)]) == CANNOT_READ
    assert capsys.readouterr().err.count("\n") == 1
    assert not list(tmp_path.rglob("*.html"))


async def test_the_wizard_writes_the_page_beside_the_record(tmp_path):
    async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
        await open_session(pilot, "lifted")
        filed = path_of(pilot.app, "lifted")
        for path in (filed.with_suffix(".html"), Path(f"{filed.with_suffix('')}-2.html")):
            assert unused_page_path(filed) == path
            await press(pilot, "w")
            assert path.read_text("utf-8").startswith("<!DOCTYPE html>")
            assert path.name in list(pilot.app._notifications)[-1].message


async def test_a_full_disk_is_said_in_one_line(tmp_path, monkeypatch):
    def full(*_):
        raise OSError(28, "No space left on device")

    async with workshop_app(tmp_path).run_test(size=SMALL) as pilot:
        await open_session(pilot, "lifted")
        monkeypatch.setattr("core.documents.atomic_write.create_file", full)
        await press(pilot, "w")
        (warning,) = pilot.app._notifications
        assert "cannot be made" in warning.message


def test_measured_steer_stands_on_the_curve_with_its_bars():
    def bars(name):
        html = page_html(record(name), assess(record(name), profile_of, draws=0), "in")
        return html.count('<circle class="point"'), html.count('<path class="bar"')

    count = len(assess(record("measured"), profile_of, draws=0).direct.heave_mm)
    assert count >= 6
    assert bars("measured") == (count, count)
    assert bars("fixed") == (0, 0)
