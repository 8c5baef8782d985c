"""The axle's guide from the vehicle's left side, as data; the front is on the left-hand side."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from core.documents.document import Document, value_at
from core.entry_checks.known import KnownAnswers
from core.kinematics.pivots import (
    DRAG_LINK_ENDS,
    GUIDE_PIVOTS,
    PITMAN_DIRECTIONS,
    Direction,
    GuideKind,
    Layout,
)
from core.kinematics.places import AxlePose, guide_points
from wizard.views.picture_data import Point

if TYPE_CHECKING:
    from core.profiles.profile import Profile
    from core.verdict.verdict import Verdict

SHAFT = "pitman.shaft"
"""Name of the shaft that the pitman arm swings about."""

USUAL_HUB, USUAL_PITMAN_ARM = 410.0, 150.0
"""mm; invented, only to draw a vehicle without a profile."""

USUAL_DRAG_LINK = {"drag_link.frame": (-760.0, 620.0), "drag_link.axle": (60.0, 560.0)}
"""Usual places of a lengthwise drag link's ends. Invented, only to show where a tape goes."""


@dataclass(frozen=True)
class SidePicture:
    """The guide of the axle in the side view.

    Attributes
    ----------
    guide : GuideKind
    hub : Point
        Middle of the axle at hub height, mm: across towards the rear, and up.
    castor : float
        Lean of the kingpin, rad; positive where its top leans back.
    pivots : mapping of str to Point
        Pivots of the guide, mm. A lengthwise drag link has its ends and its pitman shaft here too.
    assumed : frozenset of str
        Pivots that were not measured wholly.
    asked_reading : str
        Name of the reading that is asked for, or "".
    """

    guide: GuideKind = GuideKind.UNMEASURED
    hub: Point = (0.0, USUAL_HUB)
    castor: float = 0.0
    pivots: Mapping[str, Point] = field(default_factory=dict)
    assumed: frozenset[str] = frozenset()
    asked_reading: str = ""


@dataclass(frozen=True)
class SidePose:
    """The axle at some heave.

    Attributes
    ----------
    hub : Point
        mm.
    pitch : float
        rad; positive where the top of the axle goes ahead.
    pivots : mapping of str to Point
        The pivots that move, mm.
    """

    hub: Point
    pitch: float
    pivots: Mapping[str, Point]


def seen_from_side(station: float, height: float) -> Point:
    """A point in the side view from its station ahead of the axle and its height, mm."""
    return -station, height


def side_of_answers(
    document: Document, profile: Profile | None, asked_path: str = ""
) -> SidePicture:
    """The guide as it is measured so far; a reading that is missing has the profile's default."""
    known = KnownAnswers(document, profile)
    kind = value_at(document, "layout.guide")
    guide = GuideKind(kind) if kind in tuple(GuideKind) else GuideKind.UNMEASURED
    pivots, assumed = {}, set()
    for pivot in GUIDE_PIVOTS[guide]:
        names = (f"{pivot}.station", f"{pivot}.height")
        places = [_value(known, name, guide) for name in names]
        if None not in places:
            pivots[pivot] = seen_from_side(*(place or 0.0 for place in places))
        if any(known.value(name) is None for name in names):
            assumed.add(pivot)
    if value_at(document, "layout.steering") == Layout.FORE_AFT:
        link = {end: _place(known, end) for end in DRAG_LINK_ENDS}
        pivots |= {end: place or USUAL_DRAG_LINK[end] for end, place in link.items()}
        assumed |= {end for end, place in link.items() if place is None}
        arm = _value(known, "steering.pitman_arm", guide) or USUAL_PITMAN_ARM
        points = value_at(document, "layout.pitman")
        if points in PITMAN_DIRECTIONS[Layout.FORE_AFT]:
            pivots[SHAFT] = _shaft(pivots["drag_link.frame"], arm, Direction(points))
    return SidePicture(
        guide,
        (0.0, _value(known, "wheels.hub_height", guide) or USUAL_HUB),
        _value(known, "kingpin.castor", guide) or 0.0,
        pivots,
        frozenset(assumed),
        asked_path.removeprefix("readings."),
    )


def _value(known: KnownAnswers, name: str, guide: GuideKind) -> float | None:
    """A reading, or else the profile's default for it, mm or rad."""
    value = known.value(name)
    if value is None and known.profile is not None:
        return known.profile.defaults.value(name, guide)
    return value


def _place(known: KnownAnswers, pivot: str) -> Point | None:
    station, height = known.value(f"{pivot}.station"), known.value(f"{pivot}.height")
    return None if station is None or height is None else seen_from_side(station, height)


def _shaft(ball: Point, arm: float, points: Direction) -> Point:
    """The shaft of a pitman arm that points down or up to its ball."""
    return ball[0], ball[1] - points.sign * arm


def side_of(verdict: Verdict) -> SidePicture:
    """The side view of a measured vehicle."""
    linkage, session = verdict.measured.linkage, verdict.session
    pivots = {
        name: seen_from_side(float(station), float(height))
        for name, (station, height) in guide_points(linkage, 0.0).items()
    }
    assumed = {
        name
        for name in pivots
        if any(session.dimensions[f"{name}.{kind}"].is_assumed for kind in ("height", "station"))
    }
    if session.layout == Layout.FORE_AFT:
        for end in DRAG_LINK_ENDS:
            x, _, z = linkage.pivot(end).tolist()
            pivots[end] = seen_from_side(x, z)
        arm = float(linkage.pitman_arm)
        pivots[SHAFT] = _shaft(pivots["drag_link.frame"], arm, session.pitman)
    hub = (0.0, float(linkage.hub_height))
    return SidePicture(session.guide, hub, float(linkage.castor), pivots, frozenset(assumed))


def side_pose_of(pose: AxlePose, picture: SidePicture) -> SidePose:
    """The axle of a side view at the heave and roll of a pose."""
    moved = {name: seen_from_side(*place) for name, place in pose.guide.items()}
    if "drag_link.axle" in picture.pivots:
        x, _, z = pose.points["drag_link.axle"].tolist()
        moved["drag_link.axle"] = seen_from_side(x, z)
    return SidePose(
        (picture.hub[0] - pose.axle_ahead, picture.hub[1] + pose.heave), pose.axle_pitch, moved
    )
