"""Pairs of sessions that are compared."""

from core.documents.record import read_document
from tests.demo.build import profile_of
from tests.wizard.tui.looking import DEMO, workshop
from wizard.flow.pairing import followed_session, oldest_first, other_sessions, session_choices


def test_a_re_measure_is_paired_with_the_session_it_follows(tmp_path):
    files = workshop(tmp_path)
    fixed = read_document(DEMO["fixed"].path_in(files))
    assert followed_session(files, fixed).path == DEMO["lifted"].path_in(files)


def test_a_first_session_follows_no_session(tmp_path):
    files = workshop(tmp_path)
    assert followed_session(files, read_document(DEMO["close"].path_in(files))) is None


def test_other_sessions_are_of_the_same_vehicle_newest_first(tmp_path):
    files = workshop(tmp_path)
    others = other_sessions(files, read_document(DEMO["as built"].path_in(files)), profile_of)
    paths = [DEMO[name].path_in(files) for name in ("measured", "fixed", "lifted")]
    assert [entry.path for entry in others] == paths
    first, *_ = session_choices(others)
    assert first.value == str(paths[0])
    assert "re-measure" in first.words
    assert first.note == "✓ steers true"


def test_the_earlier_session_is_before(tmp_path):
    files = workshop(tmp_path)
    lifted, fixed = (read_document(DEMO[name].path_in(files)) for name in ("lifted", "fixed"))
    assert oldest_first(fixed, lifted) == (lifted, fixed)


def test_a_changed_session_is_offered_with_the_verdict_computed_afresh(tmp_path):
    files = workshop(tmp_path)
    lifted = DEMO["lifted"].path_in(files)
    text = lifted.read_text("utf-8").replace('overall = "bump steer"', 'overall = "steers true"')
    lifted.write_text(text, "utf-8")
    document = read_document(DEMO["as built"].path_in(files))
    *_, changed = session_choices(other_sessions(files, document, profile_of))
    assert changed.note == "✗ bump steer"
