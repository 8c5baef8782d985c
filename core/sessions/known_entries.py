"""The entries of a record or draft that this program knows."""

from collections.abc import Mapping
from dataclasses import fields
from itertools import product
from typing import Any

from core.documents.damage import refuse_damaged as refuse_damaged_by
from core.documents.damage import tree_of, unknown_entries
from core.kinematics.pivots import DRAG_LINK_ENDS, NEAR_BALL, PIVOTS, GuideKind, Layout
from core.kinematics.road_events import Event
from core.profiles.road import ROAD
from core.readings import stance, walk_round
from core.readings.direct import DirectRow
from core.readings.guide_survey import CASTOR_LIST
from core.readings.photograph import PHOTOGRAPHS
from core.readings.reading import Instruments
from core.readings.survey import LINKS, SURVEY, WHEELS
from core.sessions.dimensions import READ, TRACK, dimension_names

_DIMENSIONS = {
    name for layout, guide in product(Layout, GuideKind) for name in dimension_names(layout, guide)
}
_USUAL = {
    *(f"{pivot}.height" for pivot in (*PIVOTS, NEAR_BALL)),
    *(f"{pivot}.station" for pivot in DRAG_LINK_ENDS),
}
_ASSUMED = {*_DIMENSIONS, *_USUAL, TRACK, "travel.bump", "travel.droop", "vehicle.wheelbase"}

_SESSION = ("id", "kind", "follows", "opened", "closed", "technician", "units", "profile", "means")
_VEHICLE = ("tag", "description", "odometer", "wheelbase")
_WALK_ROUND = ("steering_wheel_diameter", "rim_play", "rim_size", "linkage_play", "over_10000_lb")
_LAYOUT = ("steering", "arm", "pitman", "track_bar", "guide", "steering_box", "ball")
_PHOTOGRAPH = ("file", "sha256", "width", "height", "f35", "note", "marks.*")
_LIMITS = ("parallel", "flat", "length_ratio", "steer", "toe_change")

KNOWN = tree_of(
    {
        *("format", "format_version", "program_version", "results.*", "draft.*", "signatures[].*"),
        *("seal.record", "seal.decisions"),
        *(f"session.{key}" for key in (*_SESSION, "altered", "carried", "like", "note")),
        *(f"vehicle.{key}" for key in _VEHICLE),
        *("complaint.reported", "complaint.note"),
        *(f"walk_round.{key}" for key in (*_WALK_ROUND, *walk_round.SEEN_TO)),
        *(f"walk_round.joints.{link}_{end}" for link in LINKS for end in ("frame", "axle")),
        *(f"stance.{statement}" for statement in stance.STATEMENTS),
        *("stance.ride_height.left", "stance.ride_height.right"),
        *(f"layout.{key}" for key in _LAYOUT),
        *(f"instruments.{instrument.name}" for instrument in fields(Instruments)),
        *(f"readings.{name}" for name in {*SURVEY, *WHEELS, *READ}),
        *(f"readings.{link}.bent" for link in LINKS),
        *("readings.steering.ratio", "readings.travel.bump", "readings.travel.droop"),
        *(f"{CASTOR_LIST}[].{key}" for key in ("heave", "castor")),
        *(f"{table}.{name}" for table in ("assumed", "assumed_within") for name in _ASSUMED),
        *(f"{PHOTOGRAPHS}[].{key}" for key in _PHOTOGRAPH),
        *(f"limits.{key}" for key in (*_LIMITS, "working_travel.bump", "working_travel.droop")),
        *(f"events[].{key}" for key in Event.__dataclass_fields__),
        *(f"road.{key}" for key in ROAD),
        *(f"adjusters.{link}.{key}" for link in LINKS for key in ("kind", "pitch")),
        *(f"direct.{key}" for key in ("method", "board", "distance", "line")),
        *(f"direct.rows[].{row.name}" for row in fields(DirectRow)),
        *("kept[].reading", "kept[].reason"),
        *(f"mended[].{key}" for key in ("readings", "was", "now", "slip")),
        *(f"plan.moves[].{key}" for key in ("correction", "pivot", "rise")),
        *("plan.set_length.*", "plan.expected.*", "plan.conversions[].*"),
        *(f"plan.arms.steering.{arm}" for arm in ("arm", "pitman_arm")),
    }
)
"""Every known entry of a document, as a tree of tables."""


def refuse_damaged(document: Mapping[str, Any]) -> None:
    """Raise core.documents.entries.EntryError for the first entry that looks damaged."""
    refuse_damaged_by(document, KNOWN)


def unknown_names(document: Mapping[str, Any]) -> tuple[str, ...]:
    """Dotted paths of the entries that this program does not know; they are kept as they are.

    Raises core.documents.entries.EntryError where an entry looks damaged.
    """
    return tuple(unknown_entries(document, KNOWN))
