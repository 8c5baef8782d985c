"""The typical geometry of each profile."""

from pathlib import Path

import pytest

from core.documents.document import with_value, without
from core.documents.entries import EntryError
from core.profiles.profile import load_profile, profile_names
from core.profiles.typical import refuse_faulty_typical, typical_document
from core.verdict.assess import assess
from core.verdict.verdict import Overall

SHIPPED = Path(__file__).parents[3] / "profiles"


@pytest.mark.parametrize("name", profile_names([SHIPPED]))
def test_a_typical_vehicle_does_not_bump_steer(name):
    profile = load_profile(name, [SHIPPED])
    verdict = assess(typical_document(profile.as_written), lambda _: profile)
    assert verdict.overall in (Overall.STEERS_TRUE, Overall.TOO_CLOSE)
    assert verdict.adjustment.closes
    assert verdict.steer.ruling.value < verdict.session.limits.steer


@pytest.mark.parametrize(
    ("path", "value", "words"),
    [
        ("typical.track_bar.frame.height", None, "[typical.track_bar.frame] height: is missing"),
        ("typical.track_bar.frame.height", "high", "[typical.track_bar.frame] height: "),
        ("typical.drag_link.axle.offset", "5", "[typical.drag_link.axle] offset: "),
    ],
)
def test_a_faulty_typical_geometry_is_refused(path, value, words):
    tables = load_profile("coil-crossover", [SHIPPED]).as_written
    faulty = without(tables, path) if value is None else with_value(tables, path, value)
    with pytest.raises(EntryError) as refused:
        refuse_faulty_typical(faulty)
    assert str(refused.value).startswith(words)


def test_a_profile_need_not_have_a_typical_geometry():
    tables = without(load_profile("coil-crossover", [SHIPPED]).as_written, "typical")
    refuse_faulty_typical(tables)
    assert typical_document(tables) is None
