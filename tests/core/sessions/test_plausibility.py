"""Values that no vehicle can have are refused with their entry."""

from math import radians

import pytest

from core.documents.entries import EntryError
from core.kinematics.pivots import Layout
from core.readings.reading import Instruments
from core.sessions import plausibility

TAPE = Instruments(tape=1.0, sighting=3.0, floor=1.0, angle_finder=0.01, seating=0.01)
READINGS = {
    "drag_link.frame.offset": 0.0,
    "drag_link.axle.offset": 800.0,
    "drag_link.frame.height": 500.0,
    "drag_link.axle.height": 500.0,
    "tie_rod.near.offset": 100.0,
}


def test_a_length_of_more_than_100_m_is_refused():
    plausibility.refuse_too_large({"readings.travel.bump": 100_000.0})
    with pytest.raises(EntryError, match=r"^\[readings\.travel\] bump: is more than 100 m"):
        plausibility.refuse_too_large({"readings.travel.bump": -100_001.0})


@pytest.mark.parametrize(
    ("key", "value"),
    [("tape", 0.0), ("tape", 1001.0), ("floor", -1.0), ("seating", radians(46))],
)
def test_an_impossible_instrument_is_refused(key, value):
    values = {name: getattr(TAPE, name) for name in Instruments.__dataclass_fields__}
    plausibility.refuse_impossible_instruments(TAPE)
    with pytest.raises(EntryError, match=rf"^\[instruments\] {key}: "):
        plausibility.refuse_impossible_instruments(Instruments(**{**values, key: value}))


def test_a_link_without_run_is_refused():
    plausibility.refuse_links_without_run({"track_bar.frame.offset": 0.0}, Layout.KNUCKLE)
    at_one_offset = {"track_bar.frame.offset": 300.0, "track_bar.axle.offset": 300.5}
    with pytest.raises(EntryError, match="leaves the track bar no run across the vehicle"):
        plausibility.refuse_links_without_run(at_one_offset, Layout.KNUCKLE)


def test_a_joint_beyond_the_drag_link_is_refused():
    plausibility.refuse_impossible_joint(READINGS, 200.0)
    with pytest.raises(EntryError, match="lies beyond the drag link's frame end"):
        plausibility.refuse_impossible_joint(READINGS, 800.0)


def test_a_tie_rod_without_run_is_refused():
    with pytest.raises(EntryError, match="leaves the tie rod no run across the vehicle"):
        plausibility.refuse_impossible_joint(READINGS, 700.0)


def test_nothing_is_compared_while_a_reading_is_missing():
    for name in READINGS:
        others = {other: value for other, value in READINGS.items() if other != name}
        plausibility.refuse_impossible_joint(others, 800.0)


def test_a_fore_and_aft_drag_link_needs_a_run_ahead():
    abreast = {"drag_link.frame.station": 100.0, "drag_link.axle.station": 100.5}
    plausibility.refuse_links_without_run(abreast, Layout.KNUCKLE)
    with pytest.raises(EntryError, match="leaves the drag link no run along the vehicle"):
        plausibility.refuse_links_without_run(abreast, Layout.FORE_AFT)


def test_a_kingpin_that_leans_too_far_is_refused():
    with pytest.raises(EntryError, match=r"^\[readings\.kingpin\] castor: is more than 40 deg"):
        plausibility.refuse_impossible_angles({"readings.kingpin.castor": radians(41)})
