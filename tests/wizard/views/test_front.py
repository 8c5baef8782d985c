"""The front view while the pivots are measured: what is measured, and what is only usual."""

import pytest

from core.profiles.profile import load_profile
from wizard.locations import PROFILES
from wizard.views.front import survey_picture
from wizard.views.picture_data import LINK_ENDS

PROFILE = load_profile("coil-crossover", [PROFILES])
ASKED = "readings.track_bar.frame.height"
LAYOUT = {"layout": {"steering": "knuckle"}}


def measured(*pivots):
    """A document with the height and the offset of pivots."""
    readings = {}
    for pivot in pivots:
        link, end = pivot.split(".")
        readings.setdefault(link, {})[end] = {"height": ["20 in"], "offset": ["30 in"]}
    return {**LAYOUT, "readings": readings}


def test_before_the_first_reading_both_links_stand_at_their_usual_places():
    picture = survey_picture(LAYOUT, PROFILE, ASKED)
    assert not picture.pivots
    assert picture.before.keys() == {end for ends in LINK_ENDS.values() for end in ends}
    assert picture.before_word == "usual"
    assert picture.wheels.left
    assert picture.wheels.right


def test_a_link_that_is_measured_leaves_the_usual_geometry():
    picture = survey_picture(measured(*LINK_ENDS["track_bar"]), PROFILE, ASKED)
    assert picture.pivots.keys() == set(LINK_ENDS["track_bar"])
    assert picture.before.keys() == set(LINK_ENDS["drag_link"])


def test_the_usual_line_of_a_half_measured_link_begins_at_its_measured_end():
    picture = survey_picture(measured("drag_link.axle"), PROFILE, ASKED)
    assert picture.before["drag_link.axle"] == picture.pivots["drag_link.axle"]
    assert picture.pivots["drag_link.axle"] == pytest.approx((-762.0, 508.0))


def test_a_re_measure_stands_before_the_earlier_session():
    earlier = measured(*LINK_ENDS["track_bar"])
    picture = survey_picture(LAYOUT, PROFILE, ASKED, earlier)
    assert picture.before.keys() == set(LINK_ENDS["track_bar"])
    assert picture.before_word == "before"
