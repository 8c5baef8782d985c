"""Simulated photographs of simulated vehicles, drawn by OpenCV; nothing of core's camera is used.

`python -m tests.photographed` prints the uncertainty of the parallel angle by the number of
photographs and by what is in view, and how often it covers the truth, from 500 vehicles.
"""

import sys
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import atan, cos, degrees, hypot, radians, sin, sqrt

import cv2
import numpy as np

from core.adjustment.bundle import NoCamera
from core.adjustment.least_squares import Adjustment
from core.adjustment.photograph_priors import Surroundings, Usual
from core.adjustment.photographs import adjust_with_photographs
from core.readings.photograph import CONTACTS, HUBS, OWN_POINTS, PLUMB, Mark, Photograph
from core.readings.reading import Reading
from tests.geometries import INCH, INSTRUMENTS

PIVOTS = ("track_bar.frame", "track_bar.axle", "drag_link.frame", "drag_link.axle")
LINKS_ALONE = PIVOTS
WITH_WHEELS = (*PIVOTS, *HUBS, *CONTACTS)
EVERYTHING = (*WITH_WHEELS, *PLUMB, *OWN_POINTS[:6])

WIDTH, HEIGHT, F35 = 4032, 3024, 26.0
FOCAL = F35 * hypot(WIDTH, HEIGHT) / 43.27

HEIGHTS = dict(zip(PIVOTS, ((24, 6), (18, 5), (23.5, 6.5), (18.5, 5.5)), strict=True))
STATIONS = dict(zip(PIVOTS, ((0, 5), (0, 5), (6.5, 4), (6.5, 2)), strict=True))
"""Usual heights and stations with their half-widths, in: coil-crossover and the design."""


def _usual(value: float, within: float) -> Usual:
    return Usual(value * INCH, within * INCH / sqrt(3))


SURROUNDINGS = Surroundings(
    heights={pivot: _usual(*HEIGHTS[pivot]) for pivot in PIVOTS},
    stations={pivot: _usual(*STATIONS[pivot]) for pivot in PIVOTS},
    hub_height=_usual(16, 1),
    track=_usual(62, 4),
    wheels={},
)

VIEWS = ((2500, 0, 500), (2200, 1100, 700), (2200, -1100, 500), (1800, 300, 1300))
"""Usual places of a camera, mm."""


@dataclass(frozen=True, eq=False)
class Camera:
    """A camera for OpenCV.

    Attributes
    ----------
    place : array (3,)
        mm
    rotation : array (3, 3)
        From world axes to right, down and forward.
    focal, radial : float
    shift : (float, float)
        Of the principal point from the picture's middle, pixels.
    """

    place: np.ndarray
    rotation: np.ndarray
    focal: float = FOCAL
    radial: float = 0.0
    shift: tuple[float, float] = (0.0, 0.0)

    def pixels(self, points: np.ndarray) -> np.ndarray:
        """Pictures (n, 2) of points (n, 3), from the top left corner."""
        across, down = WIDTH / 2 + self.shift[0], HEIGHT / 2 + self.shift[1]
        matrix = np.array([[self.focal, 0, across], [0, self.focal, down], [0, 0, 1]])
        turn, _ = cv2.Rodrigues(self.rotation)
        distortion = np.array([self.radial, 0.0, 0.0, 0.0])
        points = np.asarray(points, float).reshape(-1, 3)
        pictures, _ = cv2.projectPoints(
            points, turn, -self.rotation @ self.place, matrix, distortion
        )
        return pictures.reshape(-1, 2)

    def depth(self, points: np.ndarray) -> np.ndarray:
        """Distances (n,) of points (n, 3) in front of the camera."""
        return (points - self.place) @ self.rotation[2]


def looking_at(place: np.ndarray, target: np.ndarray, roll: float = 0.0) -> np.ndarray:
    """Rotation of a camera that looks from a place at a target, upright but for its roll."""
    forward = (target - place) / np.linalg.norm(target - place)
    right = np.cross(forward, [0.0, 0.0, 1.0])
    right /= np.linalg.norm(right)
    down = np.cross(forward, right)
    turned = cos(roll) * right + sin(roll) * down, cos(roll) * down - sin(roll) * right
    return np.array([*turned, forward])


def drawn_camera(rng: np.random.Generator, view: Sequence[float]) -> Camera:
    """A camera near a usual place that looks about at the axle."""
    place = np.array(view) + rng.uniform(-1, 1, 3) * [400, 300, 250]
    target = np.array([0.0, 0.0, 420.0]) + rng.uniform(-1, 1, 3) * [0, 120, 120]
    return Camera(
        place,
        looking_at(place, target, rng.normal(0, radians(2))),
        FOCAL * (1 + 0.05 * rng.uniform(-1, 1)),
        rng.uniform(-0.03, 0.03),
        tuple(0.01 * WIDTH * rng.uniform(-1, 1, 2)),
    )


def drawn_vehicle(rng: np.random.Generator) -> dict[str, np.ndarray]:
    """Points of a vehicle with a drag link across to the far knuckle, mm."""

    def inches(low: float, high: float) -> float:
        return rng.uniform(low, high) * INCH

    points = {}
    slope = radians(rng.uniform(3, 14))
    for link, length, station, slant, tilt in (
        ("track_bar", inches(30, 36), inches(-3, 3), inches(-1, 1), slope),
        ("drag_link", inches(34, 42), inches(5, 8), inches(-1, 1), slope + rng.normal(0, 0.05)),
    ):
        left, low = inches(14, 20), inches(14, 20)
        points[f"{link}.frame"] = np.array([station + slant, left, low + length * sin(tilt)])
        points[f"{link}.axle"] = np.array([station, left - length * cos(tilt), low])
    hub, track = inches(15.1, 16.9), inches(58.5, 65.5)
    for side, mark, contact in zip((1, -1), HUBS, CONTACTS, strict=True):
        points[mark] = np.array([inches(-0.25, 0.25), side * track / 2, hub + inches(-0.2, 0.2)])
        across = side * track / 2 + inches(-1, 1)
        points[contact] = np.array([inches(-1, 1), across, inches(-0.25, 0.25)])
    for point in OWN_POINTS:
        points[point] = np.array([inches(-15, 15), inches(-25, 25), inches(8, 30)])
    ahead, left = inches(5, 15), inches(-20, 20)
    points[PLUMB[0]] = np.array([ahead, left, inches(25, 30)])
    points[PLUMB[1]] = np.array([ahead, left, inches(1, 5)])
    return points


def photograph(
    number: int,
    camera: Camera,
    vehicle: Mapping[str, np.ndarray],
    in_view: Sequence[str],
    rng: np.random.Generator | None = None,
) -> Photograph:
    """A photograph with its marks; without `rng` they are exact."""
    places = np.array([vehicle[point] for point in in_view])
    pixels = camera.pixels(places)
    if rng is not None:
        sighting = camera.focal * INSTRUMENTS.sighting / camera.depth(places)
        pixels = pixels + 0.002 * WIDTH * rng.uniform(-1, 1, pixels.shape)
        pixels = pixels + sighting[:, None] * rng.uniform(-1, 1, pixels.shape)
    marks = tuple(
        Mark(point, float(across), float(down))
        for point, (across, down) in zip(in_view, pixels, strict=True)
        if 0 <= across <= WIDTH and 0 <= down <= HEIGHT
    )
    return Photograph(number, "", "", WIDTH, HEIGHT, F35, "", marks)


def photographed(
    rng: np.random.Generator, count: int, in_view: Sequence[str] = WITH_WHEELS
) -> tuple[dict[str, np.ndarray], tuple[Photograph, ...]]:
    """A drawn vehicle and drawn photographs of it."""
    vehicle = drawn_vehicle(rng)
    return vehicle, tuple(
        photograph(number, drawn_camera(rng, view), vehicle, in_view, rng)
        for number, view in enumerate(VIEWS[:count], start=1)
    )


def adjust(photographs: Sequence[Photograph], readings: Sequence[Reading] = ()) -> Adjustment:
    """The pivots of photographs, adjusted."""
    return adjust_with_photographs(readings, INSTRUMENTS, PIVOTS, photographs, SURROUNDINGS)


def parallel(points: Sequence[np.ndarray]) -> float:
    """Slope of the drag link less slope of the track bar, rad."""
    bar_frame, bar_axle, link_frame, link_axle = points

    def slope(frame: np.ndarray, axle: np.ndarray) -> float:
        return atan((frame[2] - axle[2]) / (frame[1] - axle[1]))

    return slope(link_frame, link_axle) - slope(bar_frame, bar_axle)


def parallel_and_u(adjustment: Adjustment) -> tuple[float, float]:
    """The parallel angle of an adjustment and its standard uncertainty, rad."""
    points = adjustment.points
    gradient = np.zeros(points.size)
    for i, step in enumerate(1e-3 * np.eye(points.size)):
        ends = (parallel((points.ravel() + sign * step).reshape(-1, 3)) for sign in (1, -1))
        gradient[i] = np.subtract(*ends) / 2e-3
    return parallel(points), sqrt(gradient @ adjustment.covariance @ gradient)


@dataclass(frozen=True)
class Coverage:
    """Figures of many simulated vehicles.

    Attributes
    ----------
    u : float
        Median standard uncertainty of the parallel angle, rad.
    covered : float
        Share of vehicles whose true parallel angle lies within U = 2 u.
    false_calls : float
        Share called within or out of 1.5 deg that are not.
    refused : float
        Share whose cameras could not be placed.
    """

    u: float
    covered: float
    false_calls: float
    refused: float


def coverage(vehicles: int, count: int, in_view: Sequence[str], seed: int = 1) -> Coverage:
    """Coverage of the true parallel angle by the uncertainty of photographs."""
    rng = np.random.default_rng(seed)
    uncertainties, misses, false_calls, refused = [], [], 0, 0
    limit = radians(1.5)
    for _ in range(vehicles):
        vehicle, pictures = photographed(rng, count, in_view)
        try:
            value, u = parallel_and_u(adjust(pictures))
        except NoCamera:
            refused += 1
            continue
        truth = parallel([vehicle[pivot] for pivot in PIVOTS])
        uncertainties.append(u)
        misses.append(abs(value - truth) / u)
        surely = 1.645 * u
        false_calls += abs(value) + surely <= limit < abs(truth)
        false_calls += abs(value) - surely >= limit > abs(truth)
    judged = len(misses)
    return Coverage(
        float(np.median(uncertainties)),
        float(np.mean(np.array(misses) < 2)),
        false_calls / judged,
        refused / vehicles,
    )


CASES = {
    "1, links alone": (1, LINKS_ALONE),
    "1, hubs and tyre contacts": (1, WITH_WHEELS),
    "2, links alone": (2, LINKS_ALONE),
    "2, hubs and tyre contacts": (2, WITH_WHEELS),
    "3, hubs and tyre contacts": (3, WITH_WHEELS),
    "4, all with plumb line and own points": (4, EVERYTHING),
}


def main(vehicles: int = 500) -> None:
    """Print the table."""
    print(f"{'photographs, in view':40}{'u, deg':>8}{'covered':>9}{'false':>7}{'refused':>9}")
    for name, (count, in_view) in CASES.items():
        figures = coverage(vehicles, count, in_view)
        print(
            f"{name:40}{degrees(figures.u):8.2f}{figures.covered:9.1%}"
            f"{figures.false_calls:7.1%}{figures.refused:9.1%}"
        )


if __name__ == "__main__":
    main(*map(int, sys.argv[1:]))
