"""What is typed into the wizard for one demo session, and what most of them have in common.

All of it is invented: vehicles, people, dates and readings.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

Answers = Mapping[str, Any]


@dataclass(frozen=True)
class Typed:
    """One session as it was typed.

    Attributes
    ----------
    id : str
        Fixed, where the program would draw its last letters.
    opened, closed : str
        RFC 3339 with offset.
    answers : mapping
        What was typed or chosen, by the path of the question; a question without an answer was
        skipped.
    reasons : mapping of str to str
        Why a queried answer was kept, by path.
    follows : str
        Id of the session it measures again.
    plan : tuple of str
        Names of the corrections of the plan that was chosen, if one was.
    decision : tuple of str
        The lead's decision, when it was taken, and a note.
    """

    id: str
    opened: str
    closed: str
    answers: Answers
    reasons: Mapping[str, str] = field(default_factory=dict)
    follows: str = ""
    plan: tuple[str, ...] = ()
    decision: tuple[str, str, str] | None = None

    def path_in(self, files: Path) -> Path:
        """Where it is filed."""
        return files / self.id.partition("_")[0] / f"{self.id}.toml"


TECHNICIAN = "duty mechanic (invented)"


def vehicle(tag: str, description: str, odometer: str, profile: str, *reported: str) -> Answers:
    """The first step."""
    return {
        "vehicle.tag": tag,
        "vehicle.description": description,
        "session.technician": TECHNICIAN,
        "vehicle.odometer": odometer,
        "session.profile": profile,
        "complaint.reported": list(reported),
    }


def pivot(name: str, height: str, offset: str, station: str) -> Answers:
    """The three readings of one pivot."""
    place = f"readings.{name}"
    return {
        f"{place}.height": height,
        f"{place}.offset": offset,
        f"{place}.station": station,
    }


def link(name: str, length: str, slope: str) -> Answers:
    """The cross-checks of one straight bar."""
    place = f"readings.{name}"
    return {f"{place}.length": length, f"{place}.bent": False, f"{place}.slope": slope}


def wheels(hub_height: str, left: str, right: str) -> Answers:
    """The wheels, by which the centre plane is known."""
    return {
        "readings.wheels.hub_height": hub_height,
        "readings.wheels.left_offset": left,
        "readings.wheels.right_offset": right,
    }


TIGHT: Answers = {
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
"""A walk-round that found nothing."""

STANDS: Answers = {
    "stance.level_floor": True,
    "stance.tyres_set": True,
    "stance.usual_load": True,
    "stance.settled": True,
    "stance.wheels_on_ground": True,
    "stance.straight_ahead": True,
}
"""A vehicle that stands as it should."""


def laid_out(steering: str, units: str = "in") -> Answers:
    """The layout step; the instruments stay those of the profile."""
    return {
        "layout.steering": steering,
        "layout.arm": "ahead",
        "layout.pitman": "ahead",
        "session.units": units,
    }
