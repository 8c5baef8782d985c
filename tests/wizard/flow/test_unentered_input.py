"""Text that was typed and not entered."""

from datetime import UTC, datetime

from core.profiles.profile import load_profile
from wizard.flow.drafts import new_session
from wizard.flow.flow import Flow
from wizard.flow.unentered_input import UnenteredInput
from wizard.locations import PROFILES

TAG = "vehicle.tag"
HEIGHT = "readings.track_bar.frame.height"


def flow_at_a_height():
    """Flow at the question for a height."""
    flow = Flow(new_session(datetime(2026, 11, 25, tzinfo=UTC)))
    flow = flow.answered("FG-3").going_to("session.profile").answered("coil-crossover")
    return flow.with_profile(load_profile("coil-crossover", [PROFILES])).going_to(HEIGHT)


def test_a_text_is_taken_once():
    texts = UnenteredInput()
    texts.keep(Flow(new_session(datetime(2026, 11, 25, tzinfo=UTC))), "FG")
    assert (texts.take(TAG), texts.take(TAG)) == ("FG", "")


def test_a_length_is_kept_with_its_unit():
    texts = UnenteredInput()
    flow = flow_at_a_height()
    assert flow.question.path == HEIGHT
    texts.keep(flow, "24 1/2; 622 mm")
    assert texts.take(HEIGHT) == "24 1/2 in; 622 mm"


def test_every_text_that_would_be_lost_has_a_line():
    texts = UnenteredInput()
    texts.keep(Flow(new_session(datetime(2026, 11, 25, tzinfo=UTC))), "F\x1bG")
    assert list(texts.words("24")) == [
        "“F\\x1bG” was typed and not entered",
        "“24” was typed and not entered",
    ]
