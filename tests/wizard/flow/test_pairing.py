"""Which two sessions are laid beside each other."""

from core.documents.record import read_document
from tests.wizard.tui.looking import DEMO, workshop
from wizard.flow.pairing import as_choices, followed_session, oldest_first, other_sessions


def test_a_re_measure_is_laid_beside_what_it_follows(tmp_path):
    files = workshop(tmp_path)
    fixed = read_document(DEMO["fixed"].path_in(files))
    assert followed_session(files, fixed).path == DEMO["lifted"].path_in(files)


def test_a_first_session_follows_nothing(tmp_path):
    files = workshop(tmp_path)
    assert followed_session(files, read_document(DEMO["close"].path_in(files))) is None


def test_others_are_those_of_the_same_vehicle_newest_first(tmp_path):
    files = workshop(tmp_path)
    found = other_sessions(files, read_document(DEMO["as built"].path_in(files)))
    paths = [DEMO[name].path_in(files) for name in ("fixed", "lifted")]
    assert [entry.path for entry in found] == paths
    first, _ = as_choices(found)
    assert first.value == str(paths[0])
    assert "re-measure" in first.words
    assert first.note == "✓ steers true"


def test_the_earlier_one_is_before(tmp_path):
    files = workshop(tmp_path)
    lifted, fixed = (read_document(DEMO[name].path_in(files)) for name in ("lifted", "fixed"))
    assert oldest_first(fixed, lifted) == (lifted, fixed)
