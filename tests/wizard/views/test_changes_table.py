"""Contents of the table that compares two sessions."""

from core.documents.record import read_document
from core.fix.comparison import compare
from core.profiles.profile import load_profile
from core.verdict.assess import assess
from tests.wizard.tui.looking import DEMO
from wizard.locations import DEMO_SESSIONS, PROFILES
from wizard.views.changes_table import change_rows


def verdict_of(name):
    document = read_document(DEMO[name].path_in(DEMO_SESSIONS))
    return assess(document, lambda profile: load_profile(profile, [PROFILES]), draws=0)


def test_no_decision_stands_beside_values_of_readings_that_were_proved_wrong():
    before, after = verdict_of("as built"), verdict_of("not closing")
    rows = change_rows(before, after, compare(before, after, None), "in")
    assert any(row.verdicts[0] for row in rows)
    assert all(row.verdicts[1] == "" for row in rows)
