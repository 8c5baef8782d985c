"""Values with their source: read, assumed in the record, or assumed by the profile."""

from pathlib import Path

import pytest

from core.documents.entries import EntryError
from core.kinematics.pivots import GuideKind
from core.profiles.profile import ProfileError, load_profile
from core.sessions.sourced import Sources, sourced_quantity
from core.text.quantity import INCH, parse_number

RATIO = "readings.steering.ratio"
PROFILES = Path(__file__).parents[3] / "profiles"


def profile():
    """One of the delivered profiles."""
    return load_profile("coil-crossover", [PROFILES])


def no_profile():
    """A profile that cannot be loaded."""
    raise ProfileError("no such profile")


def test_a_value_in_neither_table_is_the_profiles_default():
    ratio = sourced_quantity(Sources({}, profile), RATIO, parse_number, "16")
    assert (ratio.value, ratio.is_assumed) == (
        profile().defaults.value("steering.ratio", GuideKind.UNMEASURED),
        True,
    )
    assert ratio.name == "steering.ratio"
    with pytest.raises(ProfileError):
        sourced_quantity(Sources({}, no_profile), RATIO, parse_number, "16")


@pytest.mark.parametrize("table", ["readings", "assumed"])
def test_a_value_that_is_not_above_zero_is_refused(table):
    document = {table: {"steering": {"ratio": "0"}}}
    with pytest.raises(EntryError, match=rf"^\[{table}\.steering\] ratio: should be more than 0"):
        sourced_quantity(Sources(document, profile), RATIO, parse_number, "16")


def test_a_bare_length_is_in_the_unit_of_the_document():
    assert Sources({}, no_profile).parse_length("2") == pytest.approx(2 * INCH)
    assert Sources({"session": {"units": "mm"}}, no_profile).parse_length("2") == 2.0
