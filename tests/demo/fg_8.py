"""FG-8: judged from two drawn pictures, and measured with the tape afterwards. Invented."""

from math import atan2, hypot, radians
from pathlib import Path

import numpy as np
from PIL import Image

from core.adjustment.camera import project
from core.readings.photograph import CONTACTS, HUBS
from core.text.quantity import INCH
from tests.demo.drawn_picture import SIZE, drawn_picture
from tests.demo.typed import (
    STANCE,
    TECHNICIAN,
    WALK_ROUND,
    Drawn,
    TypedSession,
    kingpin,
    layout,
    link,
    pivot,
    vehicle,
    wheels,
)

POINTS = {
    name: np.array(place) * INCH
    for name, place in {
        "track_bar.frame": (2.0, 16.0, 22.0),
        "track_bar.axle": (1.5, -16.5, 17.5),
        "drag_link.frame": (6.5, 17.0, 25.5),
        "drag_link.axle": (6.0, -19.5, 17.0),
        HUBS[0]: (0.0, 31.25, 16.25),
        HUBS[1]: (0.0, -31.25, 16.25),
        CONTACTS[0]: (0.25, 31.0, 0.0),
        CONTACTS[1]: (0.25, -31.0, 0.0),
    }.items()
}
"""The invented axle, mm."""

F35 = 28
FOCAL = F35 * hypot(*SIZE) / 43.27 * 1.02
"""Focal length of the drawn camera, pixels: 2 % longer than it says."""

PLACES = ((2600.0, 150.0, 550.0), (2250.0, 1150.0, 800.0))
"""Places of the camera, mm."""

MISSED = ((0.4, -0.6), (-0.7, 0.3), (0.5, 0.5), (-0.3, -0.4))
"""Pixels by which the marks miss their points, in turn."""


def camera_at(place: tuple[float, float, float]) -> np.ndarray:
    """The unknowns of a camera that looks at the axle's middle."""
    x, y, z = place
    yaw, pitch = atan2(y, x), atan2(420.0 - z, hypot(x, y))
    return np.array([x, y, z, yaw, pitch, radians(1.0), FOCAL, -0.01, 0.0, 0.0])


def pixels(camera: np.ndarray, points: np.ndarray) -> np.ndarray:
    """Places of points (n, 3) in the picture of a camera, (n, 2)."""
    seen = project(np.tile(camera, (len(points), 1)), points).pixels
    return seen + np.array(SIZE) / 2


def draw(folder: Path) -> tuple[Drawn, ...]:
    """The drawn pictures as files with their marks."""
    drawn = []
    for number, place in enumerate(PLACES, start=1):
        camera = camera_at(place)
        picture = drawn_picture(POINTS, lambda points, camera=camera: pixels(camera, points))
        exif = Image.Exif()
        exif.get_ifd(0x8769)[0xA405] = F35
        path = folder / f"drawn_{number}.png"
        picture.save(path, exif=exif)
        marks = {}
        for i, (point, at) in enumerate(POINTS.items()):
            across, down = pixels(camera, at[None])[0] + MISSED[(i + number) % len(MISSED)]
            marks[point] = (float(across), float(down))
        drawn.append(Drawn(path, marks))
    return tuple(drawn)


PHOTOGRAPHED = TypedSession(
    id="FG-8_20260824-091005_first_p5k3",
    opened="2026-08-24T09:10:05+02:00",
    closed="2026-08-24T09:26:40+02:00",
    answers={
        **vehicle(
            "FG-8",
            "invented: survey truck, judged from two drawn pictures",
            "52040 km",
            "coil-crossover",
            "steers-when-held",
        ),
        **layout("knuckle"),
        "readings.track_bar.bent": False,
        "readings.drag_link.bent": False,
    },
    draw=draw,
)

TAPED = TypedSession(
    id="FG-8_20260826-140211_re-measure_v8d4",
    opened="2026-08-26T14:02:11+02:00",
    closed="2026-08-26T14:48:30+02:00",
    follows=PHOTOGRAPHED.id,
    answers={
        "vehicle.description": "invented: survey truck, measured with the tape",
        "session.technician": TECHNICIAN,
        "vehicle.odometer": "52110 km",
        "complaint.reported": ["steers-when-held"],
        "session.altered": [],
        **WALK_ROUND,
        **STANCE,
        **pivot("track_bar.frame", "22 1/16; 22", "18", "2 1/8"),
        **pivot("track_bar.axle", "17 1/2; 17 7/16", "50 9/16", "1 3/8"),
        **pivot("drag_link.frame", "25 1/2; 25 9/16", "16 15/16", "6 1/2"),
        **pivot("drag_link.axle", "17; 16 15/16", "53 1/2", "6 1/8"),
        **wheels("16 1/4", "2 3/4", "65 1/4"),
        **link("track_bar", "32 13/16", "8"),
        **link("drag_link", "37 1/2", "13"),
        **kingpin("5"),
        "readings.steering.arm": "6 1/2",
    },
)

SESSIONS = (PHOTOGRAPHED, TAPED)
