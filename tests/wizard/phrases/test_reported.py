"""What was said and written beside the readings."""

from core.documents.record import read_document
from tests.wizard.tui.looking import DEMO
from wizard.locations import DEMO_SESSIONS
from wizard.phrases.reported import reported_facts


def test_everything_under_its_name():
    found = {
        fact.name: fact.text
        for fact in reported_facts(read_document(DEMO["lifted"].path_in(DEMO_SESSIONS)))
    }
    assert found == {
        "description": "invented: crew carrier, only lifted by 5 in",
        "odometer": "19115 km",
        "technician": "duty mechanic (invented)",
        "driver reports": "a bump steers it, with the wheel held; it pulls to a side under braking",
        "in their words": "Steers to the left by itself at every bridge joint since the long "
        "springs.",
        "altered since": "ride height: springs, load or tyres",
    }


def test_nothing_said_is_nothing():
    assert list(reported_facts({"complaint": {"reported": []}})) == []


def test_control_characters_are_shown_as_text():
    (fact,) = reported_facts({"session": {"note": "\x1b[31mred"}})
    assert fact.text == "\\x1b[31mred"
