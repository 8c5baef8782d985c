"""A truck with every reading taken and usual: each objection comes from the one answer tested."""

from functools import reduce
from pathlib import Path

import pytest

from core.documents.document import with_value
from core.profiles.profile import load_profile

SHIPPED = Path(__file__).parents[3] / "profiles"

# Invented. Frame ends on the vehicle's left, axle ends on its right.
AS_BUILT = {
    "session.units": "in",
    "session.profile": "coil-crossover",
    "layout.steering": "knuckle",
    "layout.arm": "ahead",
    "layout.pitman": "ahead",
    "readings.track_bar.frame.height": ["22 1/2 in"],
    "readings.track_bar.frame.offset": ["17 in"],
    "readings.track_bar.frame.station": ["6 in"],
    "readings.track_bar.axle.height": ["18 1/2 in"],
    "readings.track_bar.axle.offset": ["50 in"],
    "readings.track_bar.axle.station": ["5 in"],
    "readings.drag_link.frame.height": ["21 in"],
    "readings.drag_link.frame.offset": ["18 in"],
    "readings.drag_link.frame.station": ["7 in"],
    "readings.drag_link.axle.height": ["16 3/4 in"],
    "readings.drag_link.axle.offset": ["56 in"],
    "readings.drag_link.axle.station": ["6 1/2 in"],
    "readings.wheels.hub_height": ["16 in"],
    "readings.wheels.left_offset": ["4 in"],
    "readings.wheels.right_offset": ["66 in"],
    "readings.steering.arm": ["6 1/2 in"],
    "readings.track_bar.bent": False,
    "readings.drag_link.bent": False,
}
STATIONS = [path for path in AS_BUILT if path.endswith(".station")]


def built(changes=(), without=()):
    """The document of the truck with some answers changed and some left out."""
    answers = AS_BUILT | dict(changes)
    kept = {path: value for path, value in answers.items() if path not in without}
    return reduce(lambda document, path: with_value(document, path, kept[path]), kept, {})


@pytest.fixture
def document():
    return built()


@pytest.fixture
def without_stations():
    return built(without=STATIONS)


@pytest.fixture(scope="session")
def profile():
    return load_profile("coil-crossover", [SHIPPED])


@pytest.fixture(scope="session")
def heavy():
    return load_profile("heavy-truck", [SHIPPED])


@pytest.fixture(scope="session")
def inverted_y():
    return load_profile("coil-inverted-y", [SHIPPED])
