"""Linkages for the tests: from the worked cases, drawn at random, and as documents.

The readings of a tape are computed here from the points alone, so that the tests do not depend on
the code that they test.
"""

import json
from collections.abc import Iterable, Mapping
from pathlib import Path
from typing import Any

import numpy as np

from core.kinematics.linkage import Linkage
from core.kinematics.pivots import Direction, Layout
from core.readings.reading import Instruments
from core.sessions.session import Session, session_from

OPEN_CASES = json.loads((Path(__file__).parent / "cases" / "open_cases.json").read_text("utf-8"))
LAYOUTS = (Layout.KNUCKLE, Layout.TIE_ROD, Layout.INVERTED_Y)
"""Layouts whose drag link runs across."""
INCH = 25.4
AHEAD, BEHIND = Direction.AHEAD, Direction.BEHIND
ALONG = (AHEAD, BEHIND)

INSTRUMENTS = Instruments(
    tape=INCH / 16,
    sighting=INCH / 8,
    floor=INCH / 16,
    angle_finder=np.radians(0.5),
    seating=np.radians(0.5),
)
"""Default instruments; half-widths and graduations in mm and rad."""

LIMITS = {
    "parallel": "1.5 deg",
    "flat": "10 deg",
    "length_ratio": 0.85,
    "steer": "0.5 deg",
    "toe_change": "0.25 deg",
    "working_travel": {"bump": "2 in", "droop": "2 in"},
}

EVENTS = [
    {
        "name": "dip",
        "rise": "0.25 s",
        "hold": "0.1 s",
        "returns": True,
        "travel": "2 in",
        "speed": "60 km/h",
        "deceleration": "0 m/s2",
    },
    {
        "name": "hard stop",
        "rise": "0.5 s",
        "hold": "1.5 s",
        "returns": False,
        "travel": "1.5 in",
        "speed": "80 km/h",
        "deceleration": "7 m/s2",
    },
]

ROAD = {
    "mass": "2300 kg",
    "front_share": "0.55",
    "cornering_front": "95 kN/rad",
    "cornering_rear": "110 kN/rad",
}

UPRIGHT = {
    "guide": {"span": "34 in", "pitch_gain": "0 deg/in", "fore_aft_gain": "0"},
    "kingpin": {"castor": "0 deg", "inclination": "0 deg"},
    "wheels": {"hub_height": "16 in"},
}
"""An axle that goes straight up and down, with upright kingpins."""

CERTAIN = {
    "guide": {"span": "0 in", "pitch_gain": "0 deg/in", "fore_aft_gain": "0"},
    "kingpin": {"castor": "0 deg", "inclination": "0 deg"},
    "wheels": {"hub_height": "0 in"},
}

BRACES = {
    "braces.frame_ends": ("track_bar.frame", "drag_link.frame"),
    "braces.axle_ends": ("track_bar.axle", "drag_link.axle"),
    "braces.frame_to_axle": ("track_bar.frame", "drag_link.axle"),
}


def linkage_of(case: Mapping[str, Any]) -> Linkage:
    """The linkage of one worked case."""
    points = {name: np.array(point) for name, point in case["points_mm"].items()}
    inverted = case["layout"] == "inverted-y"
    return Linkage(
        layout=Layout(case["layout"]),
        track_bar_frame=points["Tf"],
        track_bar_axle=points["Ta"],
        drag_link_frame=points["Df"],
        drag_link_axle=points["Da"],
        arm=case["arm_mm"],
        arm_direction=Direction(case["arm"]),
        pitman_arm=case["pitman_arm_mm"],
        pitman_direction=Direction(case["pitman"]),
        ratio=case["ratio"],
        far_side=1 if points["Da"][1] > 0 else -1,
        hub_height=case["hub_height_mm"],
        near_ball=np.array(case["near_ball_mm"]) if inverted else None,
        near_arm=case["near_arm_mm"] if inverted else 0.0,
        joint_from_far_ball=case["joint_from_far_ball_mm"] if inverted else 0.0,
    )


def random_linkage(
    rng: np.random.Generator,
    layout: Layout,
    *,
    track_bar_slope: float | None = None,
    parallel: float | None = None,
    same_side: bool | None = None,
) -> Linkage:
    """A linkage as under a truck; every value that is not given is drawn.

    Parameters
    ----------
    track_bar_slope, parallel : float
        rad, in the front view.
    same_side : bool
        True if both frame ends are on the same side; drawn where it is left out.
    """
    side = rng.choice([-1, 1])  # of the track bar's frame end: +1 is the left
    link_side = side if same_side or (same_side is None and rng.random() < 0.7) else -side
    bar = np.radians(rng.uniform(-3, 18)) if track_bar_slope is None else track_bar_slope
    angle = np.radians(rng.uniform(-6, 6)) if parallel is None else parallel
    arm_direction = ALONG[int(rng.choice([0, 1]))]
    arm, near_arm = rng.uniform(140, 200), rng.uniform(140, 200)
    hub = rng.uniform(380, 460)
    # A slope is that of a line in the front view, so its sign for a raised frame end is the side.
    run_t, run_d = side * rng.uniform(700, 950), link_side * rng.uniform(750, 1000)
    tilt_t = side * bar
    tilt_d = tilt_t + angle
    Ta = np.array([rng.uniform(-120, 120), -side * rng.uniform(330, 420), rng.uniform(390, 470)])
    Tf = Ta + np.array([rng.uniform(-40, 40), run_t, run_t * np.tan(tilt_t)])
    ball_x = arm_direction.sign * rng.uniform(140, 200)
    Da = np.array([ball_x, -link_side * rng.uniform(540, 620), rng.uniform(390, 520)])
    Df = Da + np.array([rng.uniform(-60, 60), run_d, run_d * np.tan(tilt_d)])
    inverted = layout == "inverted-y"
    near = np.array([ball_x, link_side * rng.uniform(540, 620), Da[2] + rng.uniform(-15, 15)])
    return Linkage(
        layout=Layout(layout),
        track_bar_frame=Tf,
        track_bar_axle=Ta,
        drag_link_frame=Df,
        drag_link_axle=Da,
        arm=arm,
        arm_direction=arm_direction,
        pitman_arm=rng.uniform(130, 180),
        pitman_direction=ALONG[int(rng.choice([0, 1]))],
        ratio=float(rng.integers(12, 20)),
        far_side=int(-link_side),
        hub_height=hub,
        near_ball=near if inverted else None,
        near_arm=near_arm if inverted else 0.0,
        joint_from_far_ball=rng.uniform(150, 300) if inverted else 0.0,
    )


def parallel_pair(
    *,
    slope_deg: float = 8.0,
    run: float = 850.0,
    arm: float = 165.0,
    parallel_deg: float = 0.0,
    run_ratio: float = 1.0,
) -> Linkage:
    """A plain crossover linkage with both frame ends on the left and no stations.

    The track bar has the slope given, the drag link that plus `parallel_deg`, and a lateral run
    `run_ratio` times as long.
    """
    tilt_t, tilt_d = np.radians([slope_deg, slope_deg + parallel_deg])
    run_d = run * run_ratio
    Ta, Da = np.array([0.0, -420.0, 420.0]), np.array([0.0, -580.0, 470.0])
    return Linkage(
        layout=Layout.KNUCKLE,
        track_bar_frame=Ta + np.array([0.0, run, run * np.tan(tilt_t)]),
        track_bar_axle=Ta,
        drag_link_frame=Da + np.array([0.0, run_d, run_d * np.tan(tilt_d)]),
        drag_link_axle=Da,
        arm=arm,
        arm_direction=AHEAD,
        pitman_arm=150.0,
        pitman_direction=AHEAD,
        ratio=16.0,
        far_side=-1,
        hub_height=420.0,
    )


def true_readings(
    linkage: Linkage, *, datum: float = 0.0, tread: float = 1600.0
) -> dict[str, float]:
    """True values of all readings, by name of the reading, mm and rad.

    Parameters
    ----------
    datum : float
        Distance of the datum line to the left of the centre plane, mm.
    tread : float
        Distance between the wheels, mm.
    """
    pivots = {
        "track_bar.frame": linkage.track_bar_frame,
        "track_bar.axle": linkage.track_bar_axle,
        "drag_link.frame": linkage.drag_link_frame,
        "drag_link.axle": linkage.drag_link_axle,
    }
    if linkage.near_ball is not None:
        pivots["tie_rod.near"] = linkage.near_ball
    read = {}
    for name, (x, y, z) in pivots.items():
        read |= {f"{name}.height": z, f"{name}.offset": datum - y, f"{name}.station": x}
    for link in ("track_bar", "drag_link"):
        ahead, left, up = pivots[f"{link}.frame"] - pivots[f"{link}.axle"]
        read[f"{link}.length"] = np.sqrt(ahead**2 + left**2 + up**2)
        read[f"{link}.slope"] = np.arctan2(up, np.sqrt(ahead**2 + left**2))
    for name, (first, second) in BRACES.items():
        read[name] = np.linalg.norm(pivots[first] - pivots[second])
    read |= {
        "wheels.hub_height": linkage.hub_height,
        "wheels.left_offset": datum - tread / 2,
        "wheels.right_offset": datum + tread / 2,
        "steering.arm": linkage.arm,
        "steering.pitman_arm": linkage.pitman_arm,
    }
    if linkage.near_ball is not None:
        read["tie_rod.near_arm"] = linkage.near_arm
        read["tie_rod.joint_from_far_ball"] = linkage.joint_from_far_ball
    return {name: float(value) for name, value in read.items()}


def half_widths(name: str, instruments: Instruments = INSTRUMENTS) -> tuple[float, ...]:
    """Half-widths of the errors of a reading without the graduation; mm or rad."""
    last = name.rpartition(".")[2]
    if last == "slope":
        return (instruments.seating,)
    if last in ("height", "hub_height"):
        return (instruments.sighting, instruments.floor)
    if last == "station":
        return (2 * instruments.sighting,)
    if last.endswith("offset"):
        return (instruments.sighting,)
    return (instruments.sighting, instruments.sighting)


def as_read(
    true: Mapping[str, float], rng: np.random.Generator, instruments: Instruments = INSTRUMENTS
) -> dict[str, float]:
    """Single readings with errors from rectangular distributions, rounded to a mark."""
    read = {}
    for name, value in true.items():
        erroneous = value + sum(rng.uniform(-w, w) for w in half_widths(name, instruments))
        mark = instruments.angle_finder if name.endswith("slope") else instruments.tape
        read[name] = round(erroneous / mark) * mark
    return read


def document_of(
    linkage: Linkage,
    read: Mapping[str, float | Iterable[float]],
    limits: Mapping[str, Any] = LIMITS,
) -> dict[str, Any]:
    """A document with these readings of a vehicle; it needs no profile."""
    document: dict[str, Any] = {
        "session": {"id": "test", "units": "mm", "profile": "none"},
        "vehicle": {"tag": "TEST", "wheelbase": "2800 mm"},
        "layout": {
            "steering": linkage.layout,
            "arm": linkage.arm_direction,
            "pitman": linkage.pitman_direction,
        },
        "instruments": {
            "tape": f"{INSTRUMENTS.tape} mm",
            "sighting": f"{INSTRUMENTS.sighting} mm",
            "floor": f"{INSTRUMENTS.floor} mm",
            "angle_finder": "0.5 deg",
            "seating": "0.5 deg",
        },
        "limits": dict(limits),
        "events": EVENTS,
        "road": ROAD,
        "assumed": UPRIGHT,
        "assumed_within": CERTAIN,
        "readings": {
            "steering": {"ratio": str(linkage.ratio)},
            "travel": {"bump": "4 in", "droop": "5 in"},
        },
    }
    for name, values in read.items():
        table = document["readings"]
        *tables, key = name.split(".")
        for inner in tables:
            table = table.setdefault(inner, {})
        repeats = [values] if isinstance(values, int | float) else list(values)
        table[key] = [_typed(name, value) for value in repeats]
    return document


def _typed(name: str, value: float) -> str:
    return f"{np.degrees(value):.12f} deg" if name.endswith("slope") else f"{value:.9f} mm"


def session_of(document: Mapping[str, Any]) -> Session:
    """Session of a document that needs no profile."""
    return session_from(document, _no_profile)


def _no_profile(name: str) -> Any:
    raise AssertionError(f"the document needs the profile {name!r}")
