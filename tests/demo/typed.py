"""Answers typed into the wizard for a demo session, and answers that most sessions share.

Everything is invented: vehicles, people, dates and readings.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

Answers = Mapping[str, Any]


@dataclass(frozen=True)
class Drawn:
    """A drawn picture and the places of its points, pixels across and down."""

    path: Path
    marks: Mapping[str, tuple[float, float]]


@dataclass(frozen=True)
class TypedSession:
    """A session as it was typed.

    Attributes
    ----------
    id : str
        Fixed here; the program draws its last letters at random.
    opened, closed : str
        Times in RFC 3339 with offset.
    answers : mapping
        Typed or chosen answers by the path of their question. A question without an answer is
        skipped.
    reasons : mapping of str to str
        Reasons for keeping queried answers, by path.
    follows : str
        Id of the session that it measures again; empty if it is the first.
    plan : tuple of str
        Names of the corrections of the chosen plan; empty without a plan.
    mends : bool
        True if the likeliest slip is mended after the readings were typed.
    decision : tuple of str or None
        Decision of the lead, its time, and a note; None if it is not decided.
    draw : callable or None
        Draws the pictures of a session from photographs into a folder; None with the tape.
    direct : mapping or None
        Direct check as the record has it; None if the steer was not measured.
    """

    id: str
    opened: str
    closed: str
    answers: Answers
    reasons: Mapping[str, str] = field(default_factory=dict)
    follows: str = ""
    plan: tuple[str, ...] = ()
    mends: bool = False
    decision: tuple[str, str, str] | None = None
    draw: Callable[[Path], tuple[Drawn, ...]] | None = None
    direct: Mapping[str, Any] | None = None

    def path_in(self, files: Path) -> Path:
        """Path of the filed session in a folder of files."""
        return files / self.id.partition("_")[0] / f"{self.id}.toml"


TECHNICIAN = "duty mechanic (invented)"


def vehicle(tag: str, description: str, odometer: str, profile: str, *reported: str) -> Answers:
    """Answers of the first step."""
    return {
        "vehicle.tag": tag,
        "vehicle.description": description,
        "session.technician": TECHNICIAN,
        "vehicle.odometer": odometer,
        "session.profile": profile,
        "complaint.reported": list(reported),
    }


def pivot(name: str, height: str, offset: str, station: str) -> Answers:
    """Answers on one pivot."""
    place = f"readings.{name}"
    return {
        f"{place}.height": height,
        f"{place}.offset": offset,
        f"{place}.station": station,
    }


def link(name: str, length: str, slope: str) -> Answers:
    """Answers of the cross-checks of a straight bar."""
    place = f"readings.{name}"
    return {f"{place}.length": length, f"{place}.bent": False, f"{place}.slope": slope}


def wheels(hub_height: str, left: str, right: str) -> Answers:
    """Answers on the wheels; they give the centre plane."""
    return {
        "readings.wheels.hub_height": hub_height,
        "readings.wheels.left_offset": left,
        "readings.wheels.right_offset": right,
    }


def guide_pivot(name: str, height: str, station: str) -> Answers:
    """Answers on one pivot of the guide."""
    return {f"readings.guide.{name}.height": height, f"readings.guide.{name}.station": station}


def kingpin(castor: str, inclination: str = "9") -> Answers:
    """Answers on the kingpin, from an alignment sheet."""
    return {"readings.kingpin.castor": castor, "readings.kingpin.inclination": inclination}


WALK_ROUND: Answers = {
    "walk_round.steering_wheel_diameter": "15 1/2",
    "walk_round.rim_play": "3/4",
    "walk_round.linkage_play": "1/16",
    "walk_round.joints.track_bar_frame": "tight",
    "walk_round.joints.track_bar_axle": "tight",
    "walk_round.joints.drag_link_frame": "tight",
    "walk_round.joints.drag_link_axle": "tight",
    "walk_round.bolts_torqued": True,
    "walk_round.tyres_alike": True,
}
"""A walk-round without a fault."""

STANCE: Answers = {
    "stance.level_floor": True,
    "stance.tyres_set": True,
    "stance.usual_load": True,
    "stance.settled": True,
    "stance.wheels_on_ground": True,
    "stance.straight_ahead": True,
}
"""A vehicle that stands as required."""


def layout(steering: str, units: str = "in", guide: str = "unmeasured") -> Answers:
    """Answers of the layout step. The instruments are those of the profile."""
    return {
        "layout.steering": steering,
        "layout.arm": "ahead",
        "layout.pitman": "ahead",
        "layout.track_bar": True,
        "layout.guide": guide,
        "layout.steering_box": "left",
        "layout.ball": "below",
        "session.units": units,
    }


def board_check(side: str, *rows: tuple[str, str, str]) -> Mapping[str, Any]:
    """Direct check with a board of 36 in; each row has a height, a front and a rear reading."""
    return {
        "method": "board",
        "board": "36 in",
        "line": side,
        "rows": [
            {
                "side": side,
                "height": [f"{height} in"],
                "front": [f"{front} in"],
                "rear": [f"{rear} in"],
                "going": "",
            }
            for height, front, rear in rows
        ],
    }
