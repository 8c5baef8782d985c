"""The way of the tape for each reading."""

import pytest

from core.readings.survey import SURVEY, WHEELS
from wizard.tui.pictures.front_words import TAPE_WORDS
from wizard.views.picture_data import DATUM, USUAL_PLACES
from wizard.views.tape_path import tape_path


@pytest.mark.parametrize("name", [*SURVEY, *WHEELS])
def test_every_reading_of_the_survey_has_a_path(name):
    path = tape_path(name, USUAL_PLACES)
    assert path is not None
    assert len(path.path) == 2
    assert TAPE_WORDS[path.kind]


@pytest.mark.parametrize("name", ["steering.arm", "steering.pitman_arm", "tie_rod.near_arm"])
def test_a_reading_fore_and_aft_has_a_ring_alone(name):
    path = tape_path(name, USUAL_PLACES)
    assert path is not None
    assert len(path.rings) == 1
    assert path.path == ()


@pytest.mark.parametrize("name", ["vehicle.tag", "", "stance.ride_height.left", "travel.bump"])
def test_a_reading_not_seen_from_the_front_has_no_path(name):
    assert tape_path(name, USUAL_PLACES) is None


def test_a_height_goes_up_from_the_floor_to_the_pivot():
    path = tape_path("track_bar.frame.height", USUAL_PLACES)
    across, up = USUAL_PLACES["track_bar.frame"]
    assert path.path == ((across, 0.0), (across, up))
    assert path.rings == ((across, up),)


def test_an_offset_goes_level_from_the_datum_line_to_the_pivot():
    path = tape_path("drag_link.axle.offset", USUAL_PLACES)
    across, up = USUAL_PLACES["drag_link.axle"]
    assert path.path == ((DATUM, up), (across, up))


def test_a_station_is_a_plumb_line():
    path = tape_path("drag_link.axle.station", USUAL_PLACES)
    across, up = USUAL_PLACES["drag_link.axle"]
    assert path.path == ((across, up), (across, 0.0))


def test_a_brace_runs_between_its_pivots():
    path = tape_path("braces.frame_to_axle", USUAL_PLACES)
    assert path.path == (USUAL_PLACES["track_bar.frame"], USUAL_PLACES["drag_link.axle"])


def test_the_joint_is_on_the_drag_link():
    path = tape_path("tie_rod.joint_from_far_ball", USUAL_PLACES)
    (y0, z0), (y1, z1), (y2, z2) = (*path.path, USUAL_PLACES["drag_link.frame"])
    assert (y1 - y0) * (z2 - z0) == pytest.approx((z1 - z0) * (y2 - y0))
