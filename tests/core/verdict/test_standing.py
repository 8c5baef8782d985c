"""The verdict as it stands: the same as the verdict, with what is left to take."""

from dataclasses import replace

import numpy as np
import pytest

from core.documents.document import with_value
from core.profiles.profile import load_profile
from core.statistics.conformity import Conformity
from core.verdict.standing import DECIDING, LABOUR, standing_of, standing_of_session
from core.verdict.verdict import Overall, evaluate, rulings_of
from tests.direct_rows import board_check
from tests.geometries import document_of, parallel_pair, session_of, true_readings
from wizard.locations import PROFILES

PIVOTS = ("track_bar.frame", "track_bar.axle", "drag_link.frame", "drag_link.axle")


def document(parallel_deg, *further, without=()):
    linkage = parallel_pair(parallel_deg=parallel_deg)
    true = true_readings(linkage)
    names = [f"{pivot}.{kind}" for pivot in PIVOTS for kind in ("height", "offset")]
    names += ["steering.arm", "steering.pitman_arm", "wheels.hub_height"]
    readings = {name: true[name] for name in (*names, *further) if name not in without}
    return document_of(linkage, readings)


def standing(parallel_deg, *further):
    return standing_of_session(session_of(document(parallel_deg, *further)))


SLOPES = ("track_bar.slope", "drag_link.slope")


@pytest.mark.parametrize("parallel_deg", [0.0, 0.9, 1.4, 2.0, 4.0])
def test_it_is_the_verdict_with_the_same_draws(parallel_deg):
    session = session_of(document(parallel_deg, *SLOPES))
    verdict, stands = evaluate(session), standing_of_session(session)
    assert stands.geometry == verdict.geometry
    rulings = rulings_of(verdict)
    assert list(stands.rulings) == [rulings[rule] for rule in DECIDING]


def test_it_is_none_until_every_pivot_has_a_place():
    incomplete = document(2.0, without=("drag_link.axle.offset",))
    assert standing_of(incomplete, pytest.fail) is None


def test_nothing_is_decided_before_each_link_is_checked():
    assert standing(5.0).unchecked == ("track_bar", "drag_link")
    assert not standing(5.0).is_decided
    one = standing(5.0, "track_bar.slope")
    assert one.unchecked == ("drag_link",)
    assert one.left[0].reading == "drag_link.slope"
    assert standing(5.0, *SLOPES).is_decided


def test_nothing_is_decided_on_readings_that_do_not_close():
    linkage = parallel_pair(parallel_deg=5.0)
    true = true_readings(linkage)
    readings = {name: value for name, value in true.items() if "station" not in name}
    readings["track_bar.frame.height"] += 60.0
    stands = standing_of_session(session_of(document_of(linkage, readings)))
    assert not stands.closes
    assert not stands.is_decided


def test_the_reading_that_takes_most_doubt_out_of_the_open_rules_comes_first():
    unsure = with_value(document(1.6, *SLOPES), "assumed_within.guide.pitch_gain", "1.1 deg/in")
    stands = standing_of_session(session_of(unsure))
    assert Conformity.TOO_CLOSE in [ruling.verdict for ruling in stands.rulings]
    shares = [
        sum(worth.of(rule) for rule in stands.open_rules) / LABOUR.get(worth.reading, 1.0)
        for worth in stands.worths
    ]
    assert shares == sorted(shares, reverse=True)
    assert stands.left
    assert stands.left[0] is stands.worths[0]


def test_a_reading_that_is_much_work_waits_for_the_quick_ones():
    profile = load_profile("coil-crossover", [PROFILES])
    arm_skipped = document(1.6, *SLOPES, without=("steering.arm",))
    unsure = with_value(arm_skipped, "assumed_within.guide.pitch_gain", "0.3 deg/in")
    stands = standing_of(unsure, lambda _: profile)
    quick, slow = stands.left
    assert (quick.reading, slow.reading) == ("steering.arm", "guide.pitch_gain")
    assert slow.of("peak_steer") > quick.of("peak_steer")


def test_the_chance_is_that_of_steering_true():
    assert standing(0.0, *SLOPES).chance > 0.5
    assert standing(5.0, *SLOPES).chance < 0.05
    assert standing(5.0, *SLOPES).geometry == Overall.BUMP_STEER


def test_a_session_stands_as_its_direct_check_decides():
    """The steer that was read at the wheels counts, although the pivots are parallel."""
    linkage = parallel_pair()
    session = session_of(document_of(linkage, true_readings(linkage)))
    soft = replace(session, direct=board_check(lambda heave: np.radians(0.02) * heave))
    assert standing_of_session(session, 0).geometry == Overall.STEERS_TRUE
    assert standing_of_session(soft, 0).geometry == Overall.BUMP_STEER
