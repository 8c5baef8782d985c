"""The marks in the front view of the place where the drag link's frame end wants to be."""

from dataclasses import replace
from math import degrees, hypot

import numpy as np
import pytest

from core.documents.record import read_document
from core.fix.bench import Bench
from core.kinematics.ball_path import effective_angle
from core.kinematics.series import derivatives
from core.profiles.profile import load_profile
from core.text.quantity import INCH
from core.verdict.assess import assess
from tests.wizard.tui.looking import DEMO
from wizard.locations import DEMO_SESSIONS, PROFILES
from wizard.views.aims import AXIS, HIGHER, LOWER, aims_of
from wizard.views.plans import front_of_plan
from wizard.views.verdict import front_of_both, front_with_aims

TO_THE_FAR_KNUCKLE = ("as built", "lifted", "fixed", "re-mounted")
"""Demo sessions whose drag link alone steers both wheels."""


def verdict_on(path):
    """Verdict on a record; linear, which is quicker."""
    document = read_document(path)
    return assess(document, lambda name: load_profile(name, [PROFILES]), draws=0)


def verdict_of(name):
    return verdict_on(DEMO[name].path_in(DEMO_SESSIONS))


def on_leaf_springs():
    """Verdict on the demo truck whose drag link runs fore and aft, and which has no track bar."""
    (path,) = (DEMO_SESSIONS / "FG-7").glob("*.toml")
    return verdict_on(path)


def with_frame_end_at(verdict, point):
    """The linkage with the drag link's frame end at a point of the front view, to any length."""
    linkage = verdict.measured.linkage
    frame = np.array([linkage.drag_link_frame[0], *point])
    return replace(linkage, drag_link_frame=frame)


def aims_by_mark(verdict, unit="in"):
    return {aim.mark: aim for aim in aims_of(verdict, unit)}


@pytest.mark.parametrize("name", ["lifted", "re-mounted"])
def test_at_the_marked_height_the_drag_link_is_square_to_its_path(name):
    verdict = verdict_of(name)
    aims = aims_by_mark(verdict)
    moved = with_frame_end_at(verdict, (aims.get(LOWER) or aims[HIGHER]).point)
    assert abs(degrees(effective_angle(verdict.measured.linkage))) > 1
    assert degrees(effective_angle(moved)) == pytest.approx(0, abs=1e-9)


@pytest.mark.parametrize("name", TO_THE_FAR_KNUCKLE)
def test_a_frame_end_on_the_marked_axis_neither_steers_nor_begins_to(name):
    verdict = verdict_of(name)
    on_axis = derivatives(with_frame_end_at(verdict, aims_by_mark(verdict)[AXIS].point))
    assert float(on_axis.gradient) == pytest.approx(0, abs=1e-9)
    assert float(on_axis.curvature) == pytest.approx(0, abs=1e-9)


def test_the_mark_and_the_words_say_the_way():
    aim = aims_by_mark(verdict_of("lifted"))[LOWER]
    frame = front_with_aims(verdict_of("lifted"), "in").pivots["drag_link.frame"]
    assert aim.texts == ("wants to be 1 in lower",)
    assert aim.point[0] == frame[0]
    assert frame[1] - aim.point[1] == pytest.approx(25.4, abs=25.4 / 16)
    assert "mm lower" in aims_by_mark(verdict_of("lifted"), "mm")[LOWER].texts[0]


def test_a_frame_end_that_is_where_it_wants_to_be_has_no_marked_height():
    assert not {HIGHER, LOWER} & aims_by_mark(verdict_of("fixed")).keys()


def test_a_plan_aims_at_the_places_of_its_own_geometry():
    verdict = verdict_of("lifted")
    (now,) = (aim for aim in aims_of(verdict, "in") if aim.needed)
    bench = Bench(verdict).nudged("drag_link.frame", -INCH / 4).nudged("drag_link.axle", -INCH)
    picture = front_of_plan(verdict, bench.plan(), "in")
    (planned,) = (aim for aim in picture.aims if aim.needed)
    assert planned.point[1] - now.point[1] == pytest.approx(-INCH, abs=INCH / 8)
    assert planned.texts != now.texts


def test_a_comparison_aims_at_the_places_of_the_later_session():
    before, after = verdict_of("as built"), verdict_of("lifted")
    assert front_of_both(before, after, "in").aims == aims_of(after, "in")


def test_readings_that_were_proved_wrong_mark_nothing():
    verdict = verdict_of("not closing")
    assert not aims_by_mark(verdict)
    plan = Bench(verdict).nudged("drag_link.axle", INCH).plan()
    assert not front_of_plan(verdict, plan, "in").aims


def test_a_link_that_runs_fore_and_aft_has_a_marked_height_and_no_axis():
    assert aims_by_mark(on_leaf_springs()).keys() == {LOWER}


def test_parallel_links_of_one_length_have_the_axis_near_the_frame_end():
    verdict = verdict_of("as built")
    frame = front_with_aims(verdict, "in").pivots["drag_link.frame"]
    axis = aims_by_mark(verdict)[AXIS].point
    assert hypot(axis[0] - frame[0], axis[1] - frame[1]) < 0.2 * hypot(820, 120)
