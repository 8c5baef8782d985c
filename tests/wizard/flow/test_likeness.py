"""A second vehicle of the same kind takes over layout, arms and guide, and no reading."""

import shutil
from dataclasses import replace

import pytest

from core.documents.document import value_at, with_value
from core.documents.record import read_document
from core.entry_checks.outcome import Refused
from core.profiles.profile import load_profile
from core.sessions.session import session_from
from tests.conftest import ROOT
from wizard.flow import drafts
from wizard.flow.answering import answer_question
from wizard.flow.answers import applicable_answers
from wizard.flow.flow import Flow
from wizard.flow.likeness import LIKE, like_choices
from wizard.locations import PROFILES

DEMO = ROOT / "demo_sessions"


@pytest.fixture
def files(tmp_path):
    shutil.copytree(DEMO / "FG-2", tmp_path / "FG-2")
    return tmp_path


@pytest.fixture
def tagged():
    document = drafts.on_short_way(drafts.new_session(drafts.now()), {})
    flow = Flow(with_value(document, "vehicle.tag", "FG-9"))
    flow = flow.with_document(drafts.with_id(flow.document))
    assert flow.question.path == "session.profile"
    return flow


def alike(flow, files):
    (choice,) = like_choices(files, flow.document)
    assert choice.words == "like FG-2"
    return answer_question(flow, choice.value, [PROFILES], files)


def test_layout_and_profile_are_taken_over_and_not_asked(files, tagged):
    flow = alike(tagged, files)
    record = read_document(next((files / "FG-2").glob("*.toml")))
    assert value_at(flow.document, "session.profile") == value_at(record, "session.profile")
    for key in ("steering", "arm", "pitman", "guide"):
        assert value_at(flow.document, f"layout.{key}") == value_at(record, f"layout.{key}")
    assert flow.question.path == "session.technician"
    assert value_at(flow.document, "readings") is None


def test_arms_are_assumed_with_half_the_usual_half_width(files, tagged):
    flow = alike(tagged, files)
    like = value_at(flow.document, "session.like")
    assert like.startswith("FG-2_")
    record = read_document(files / "FG-2" / f"{like}.toml")
    profile = load_profile("coil-crossover", [PROFILES])
    other = session_from(record, lambda _: profile).dimensions["steering.arm"]
    answers = with_value(applicable_answers(flow.document, profile), "layout.pitman", "ahead")
    arm = session_from(answers, lambda _: profile).dimensions["steering.arm"]
    assert arm.is_assumed
    assert arm.value == pytest.approx(other.value, abs=1e-3)
    usual = profile.defaults.within("steering.arm", "unmeasured")
    assert arm.u == pytest.approx(usual / 2 / 3**0.5, rel=1e-4)


def test_the_own_vehicle_is_not_offered(files, tagged):
    own = with_value(tagged.document, "vehicle.tag", "fg-2")
    assert like_choices(files, own) == ()


def test_a_record_that_is_gone_is_refused_in_one_line(files, tagged):
    gone = answer_question(tagged, f"{LIKE}FG-7_nothing", [PROFILES], files)
    assert isinstance(gone, Refused)
    assert "is not filed any more" in gone.message


def test_undo_takes_everything_back(files, tagged):
    flow = alike(tagged, files)
    assert replace(flow.undone(), past=()) == replace(tagged, past=())
