"""The work order: its parts, its command, and hostile text in every field."""

import re
import tomllib

import pytest

from core.documents.document import with_value
from core.documents.record import read_document
from core.fix.plan_record import plan_of_document
from core.profiles.adjuster import adjusters_of
from core.profiles.profile import load_profile
from core.profiles.shop import Shop
from core.verdict.assess import assess
from tests.wizard.printed.test_owners_page import (
    CASES,
    HOSTILE,
    HOSTILE_AS_TEXT,
    PageReader,
    record,
    text_paths,
    with_text,
)
from tests.wizard.tui.fixing import press
from tests.wizard.tui.looking import DEMO, LARGE, open_session, path_of, workshop_app
from wizard.commands import main
from wizard.locations import DEMO_SESSIONS, PROFILES
from wizard.printed.work_order import order_html
from wizard.views.work_order import work_order_of

SHOP = Shop(HOSTILE_AS_TEXT, ("Bay 4",))


def read_order(document):
    """Read the work order of a record's plan."""
    profile = load_profile(document["session"]["profile"], [PROFILES])
    verdict = assess(document, lambda _: profile, draws=0)
    plan = plan_of_document(document, verdict, profile.changes)
    adjusters = adjusters_of(document, profile.adjusters)
    order = work_order_of(document, verdict, plan, adjusters, profile.clearance, "in")
    reader = PageReader()
    reader.feed(order_html(document, verdict, plan, order, "in", SHOP, "letter"))
    return reader


def test_the_order_has_what_to_move_set_torque_and_check():
    text = read_order(record("re-mounted")).text
    for words in (
        "track bar bracket raised at the axle, up 2 1/4 in",
        "up 2 1/4 in 15 1/4 in 17 1/2 in",  # move, height now, height then
        "33 1/8 in 32 7/8 in 1/4 in shorter: about 4 turns",
        "in the direction that makes the bar shorter",
        "track bar's axle end: bolt, and every bolt of the bracket",
        "Torque, to the maker's figure",
        "castor: It stays at 5.0 deg.",
        "number ____________",
        "moved: height of the track bar's axle end",
    ):
        assert words in text
    assert "pitman arm" not in text.lower(), "a caution of a part that is not in the plan"


def test_the_steps_begin_with_stands_and_end_with_a_road_test():
    page = read_order(record("re-mounted"))
    steps = page.text[page.text.index("The work, in order") : page.text.index("Torque, to")]
    assert steps.index("rated stands") < steps.index("track bar bracket raised at the axle")
    assert steps.index("Centre the axle by the track bar") < steps.index("set the drag link last")
    assert steps.rstrip().endswith("Road-test from low speed.")


@pytest.mark.parametrize("path", ["vehicle.tag", "vehicle.description", "plan.moves.0.correction"])
def test_hostile_text_is_printed_as_text(path):
    document = record("re-mounted")
    assert path in set(text_paths(document))
    page = read_order(with_text(document, path.split("."), HOSTILE))
    assert HOSTILE_AS_TEXT in page.text
    assert not {"script", "img"} & set(page.tags)
    assert page.links == []


def test_the_command_writes_the_plan_that_was_filed(tmp_path, capsys):
    files = tmp_path / "record.toml"
    source = DEMO["re-mounted"].path_in(DEMO_SESSIONS).read_text("utf-8")
    files.write_text(source.replace('rise = "2 1/4 in"', 'rise = "2 in"'), "utf-8")
    page = tmp_path / "order.html"
    assert main(["order", str(files), str(page)]) == 0
    assert "up 2 in" in page.read_text("utf-8")
    assert main(["order", str(files), str(page)]) == 2
    assert "exists already" in capsys.readouterr().err


def test_the_order_is_printed_in_words_without_a_page(capsys):
    assert main(["order", str(DEMO["re-mounted"].path_in(DEMO_SESSIONS))]) == 0
    out = " ".join(capsys.readouterr().out.split())
    assert "Work order: FG-2, first session" in out
    assert "[ ] Level floor" in out


def test_another_plan_is_taken_by_its_number(capsys):
    record_file = str(DEMO["re-mounted"].path_in(DEMO_SESSIONS))
    assert main(["order", record_file, "--plan", "2"]) == 0
    assert "track bar bracket lowered at the frame" in capsys.readouterr().out
    assert main(["order", record_file, "--plan", "9"]) == 1
    assert "there is no plan 9" in capsys.readouterr().err


@pytest.mark.parametrize("name", ["as built", "worn joint", "close"])
def test_a_vehicle_without_bump_steer_has_no_order(capsys, name):
    record_file = DEMO[name].path_in(DEMO_SESSIONS)
    document = read_document(record_file)
    assert "plan" not in document
    assert main(["order", str(record_file)]) == 1
    captured = capsys.readouterr()
    assert captured.out == ""
    assert re.fullmatch(r"evenarc: .*no work order: .*\n", captured.err)


@pytest.mark.parametrize("number", range(0, len(CASES), 3))
def test_every_layout_and_guide_has_an_order(number):
    document = tomllib.loads(CASES[number]["record"])
    move = {"correction": "pitman arm", "pivot": "drag_link.frame", "rise": "1 in"}
    page = read_order(with_value(document, "plan", {"moves": [move]}))
    assert "drag link's frame end" in page.text
    assert "nan" not in page.text.split()


async def test_the_wizard_writes_the_order_of_the_filed_plan_beside_the_record(tmp_path):
    async with workshop_app(tmp_path).run_test(size=LARGE) as pilot:
        await open_session(pilot, "re-mounted")
        await press(pilot, "p")
        await press(pilot, "o")
        page = path_of(pilot.app, "re-mounted")
        page = page.with_name(f"{page.stem}-order.html")
        assert "track bar bracket raised at the axle, up 2 1/4 in" in page.read_text("utf-8")
        assert page.name in list(pilot.app._notifications)[-1].message
