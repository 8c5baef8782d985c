"""Handling on the road, from a profile or a record."""

from math import degrees
from pathlib import Path

import pytest

from core.documents.entries import EntryError
from core.profiles.profile import load_profile, profile_names
from core.profiles.road import road_at

SHIPPED = Path(__file__).parents[3] / "profiles"
GRAVITY = 9.80665  # m/s2
TABLE = {
    "mass": "5000 lb",
    "front_share": 0.55,
    "cornering_front": "1570 N/deg",
    "cornering_rear": "110 kN/rad",
}


@pytest.mark.parametrize("name", profile_names([SHIPPED]))
def test_the_understeer_gradient_is_about_2_deg_for_each_g(name):
    """Gillespie, Fundamentals of Vehicle Dynamics, from memory: K = W_f/C_f - W_r/C_r."""
    road = load_profile(name, [SHIPPED]).road
    front = road.mass * GRAVITY * road.front_share
    rear = road.mass * GRAVITY - front
    gradient = front / road.cornering_front - rear / road.cornering_rear
    assert degrees(gradient) == pytest.approx(2.0, abs=0.05)


def test_a_record_has_the_same_table():
    road = road_at({"road": TABLE})
    assert road.mass == pytest.approx(2267.96185)
    assert road.front_share == 0.55
    assert road.cornering_front == pytest.approx(89_954.4, abs=0.1)
    assert road.cornering_rear == pytest.approx(110_000)


@pytest.mark.parametrize(
    ("key", "value", "words"),
    [
        ("mass", "200 t", "at most 100,000 kg"),
        ("mass", "2300 mm", "unit of length, not of mass"),
        ("front_share", 1.0, "a share below 1"),
        ("front_share", -0.5, "negative"),
        ("cornering_front", "0 N/rad", "cannot be 0"),
        ("cornering_rear", "1000 N", "unit of stiffness"),
        ("cornering_rear", "20000 kN/rad", "at most 10,000 kN/rad"),
        ("cornering_rear", None, "is missing"),
    ],
)
def test_what_no_vehicle_has_is_refused(key, value, words):
    table = {name: entry for name, entry in (TABLE | {key: value}).items() if entry is not None}
    with pytest.raises(EntryError, match=rf"^\[road\] {key}: .*{words}"):
        road_at({"road": table})
