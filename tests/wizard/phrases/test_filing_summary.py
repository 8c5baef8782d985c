"""What is said before a session is filed."""

from core.documents.document import with_value, without
from core.documents.record import read_document
from core.profiles.profile import load_profile
from tests.wizard.tui.looking import DEMO
from wizard.locations import DEMO_SESSIONS, PROFILES
from wizard.phrases.filing_summary import filing_summary

PROFILE = load_profile("coil-crossover", [PROFILES])


def record(name):
    return read_document(DEMO[name].path_in(DEMO_SESSIONS))


def test_the_verdict_and_the_plan():
    assert filing_summary(record("lifted"), PROFILE, "in") == (
        "✗ bump steer; planned: the drag link's frame end down 1 in"
    )


def test_without_a_plan():
    assert filing_summary(record("as built"), PROFILE, "in") == "✓ steers true; planned: nothing"


def test_arms_of_another_length_are_planned_too():
    document = with_value(record("lifted"), "plan.arms.steering.arm", "7 in")
    assert filing_summary(document, PROFILE, "in").endswith("down 1 in and steering arm 7 in")


def test_without_a_verdict_nothing_is_said():
    document = without(record("lifted"), "readings.track_bar.axle.height")
    assert filing_summary(document, PROFILE, "in") == ""
