"""The linkage from above, as data; the front is at the bottom, as for somebody before the bumper.

The vehicle's left is on the right, as in the front view. What was not measured yet stands at a
usual place. Those places are invented, only to show where a tape goes.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from core.documents.document import Document, value_at
from core.entry_checks.known import KnownAnswers
from core.kinematics.pivots import NEAR_BALL, TRACK_BAR_ENDS, Direction, Layout, pivots_of
from wizard.views.picture_data import LEFT_HUB, RIGHT_HUB, USUAL_PLACES, Point

if TYPE_CHECKING:
    from core.profiles.profile import Profile

SHAFT, FAR_KINGPIN, NEAR_KINGPIN, JOINT = "pitman.shaft", "kingpin.far", "kingpin.near", "joint"
FAR_ARM, NEAR_ARM = "arm.far", "arm.near"
"""Names of the points that no station and offset is read of."""

USUAL_ARM, USUAL_PITMAN_ARM, USUAL_STATION, USUAL_REACH = 165.0, 150.0, 70.0, 760.0
USUAL_JOINT, USUAL_RADIUS, KINGPIN_INSET = 200.0, 410.0, 130.0
"""mm: the arms, a track bar ahead of the axle, a lengthwise drag link, the joint of a tie rod on
the drag link, a wheel, and a kingpin inboard of its wheel."""

ACROSS_FROM_BOX: Mapping[str, float] = {
    name: USUAL_PLACES[LEFT_HUB][0] - place[0] for name, place in USUAL_PLACES.items()
}
"""Usual distances across from the wheel beside the steering box, mm."""


@dataclass(frozen=True)
class AbovePicture:
    """The linkage in the view from above.

    Attributes
    ----------
    layout : Layout
    points : mapping of str to Point
        Pivots, kingpins, the ends of the tie rod and the pitman arm's shaft, mm: across towards
        the vehicle's left, and towards the rear.
    hubs : pair of Point
        Middles of the wheels, the vehicle's left one first, mm.
    radius : float
        Radius of the wheels, mm.
    assumed : frozenset of str
        Pivots that were not measured wholly.
    asked_reading : str
        Name of the reading, or of the answer on the layout, that is asked for; or "".
    tapes : mapping of str to str
        Word on the way of the tape for each further reading that the picture shows.
    """

    layout: Layout = Layout.KNUCKLE
    points: Mapping[str, Point] = field(default_factory=dict)
    hubs: tuple[Point, Point] = ((0.0, 0.0), (-1600.0, 0.0))
    radius: float = USUAL_RADIUS
    assumed: frozenset[str] = frozenset()
    asked_reading: str = ""
    tapes: Mapping[str, str] = field(default_factory=dict)

    @property
    def lines(self) -> dict[str, tuple[Point, Point]]:
        """Both ends of every part that is drawn, mm."""
        tie_rod = (JOINT, NEAR_BALL) if self.layout == Layout.INVERTED_Y else (FAR_ARM, NEAR_ARM)
        far_arm_end = FAR_ARM if self.layout == Layout.TIE_ROD else "drag_link.axle"
        ends = {
            "pitman arm": (SHAFT, "drag_link.frame"),
            "steering arm": (FAR_KINGPIN, far_arm_end),
            "near arm": (NEAR_KINGPIN, tie_rod[1]),
            "tie-rod arm": (FAR_KINGPIN, tie_rod[0]),
            "tie rod": tie_rod,
            "track bar": TRACK_BAR_ENDS,
            "drag link": ("drag_link.frame", "drag_link.axle"),
        }
        if self.layout == Layout.INVERTED_Y:
            del ends["tie-rod arm"]  # the tie rod hangs on the drag link
        return {
            part: (self.points[first], self.points[second])
            for part, (first, second) in ends.items()
            if first in self.points and second in self.points
        }


def seen_from_above(station: float, across: float) -> Point:
    """A point in the view from above from its station and its place towards the left, mm."""
    return across, -station


def above_of_answers(
    document: Document, profile: Profile | None, asked_path: str = ""
) -> AbovePicture:
    """The linkage as it is measured so far."""
    return _Places(document, profile).picture(asked_path.removeprefix("readings."))


class _Places:
    """Places of everything in the view from above, out of the answers so far."""

    def __init__(self, document: Document, profile: Profile | None) -> None:
        self.known = KnownAnswers(document, profile)
        steering = value_at(document, "layout.steering")
        self.layout = Layout(steering) if steering in tuple(Layout) else Layout.KNUCKLE
        self.box = -1.0 if value_at(document, "layout.steering_box") == "right" else 1.0
        usual = (Direction.AHEAD, Direction.BEHIND)
        if self.layout == Layout.FORE_AFT:
            usual = (Direction.INBOARD, Direction.DOWN)
        self.arm, self.pitman = (
            _direction(document, path, direction)
            for path, direction in zip(("layout.arm", "layout.pitman"), usual, strict=True)
        )
        self.has_track_bar = value_at(document, "layout.track_bar") is not False
        left, right = (self._hub(side) for side in ("left", "right"))
        self.hubs = (
            USUAL_PLACES[LEFT_HUB][0] if left is None else left,
            USUAL_PLACES[RIGHT_HUB][0] if right is None else right,
        )

    def picture(self, asked: str) -> AbovePicture:
        """The picture, with the reading that is asked for."""
        points = self._kingpins()
        assumed = set()
        for name in pivots_of(self.layout, self.has_track_bar):
            station, offset = (self.known.value(f"{name}.{kind}") for kind in ("station", "offset"))
            if station is None or offset is None:
                assumed.add(name)
            usual = self._usual(name, points)
            points[name] = seen_from_above(
                -usual[1] if station is None else station, usual[0] if offset is None else -offset
            )
        points |= self._pitman_and_tie_rod(points)
        radius = self.known.value("wheels.hub_height") or USUAL_RADIUS
        left, right = ((hub, 0.0) for hub in self.hubs)
        return AbovePicture(self.layout, points, (left, right), radius, frozenset(assumed), asked)

    def _hub(self, side: str) -> float | None:
        offset = self.known.value(f"wheels.{side}_offset")
        return None if offset is None else -offset

    def _length(self, name: str, usual: float) -> float:
        return self.known.value(name) or usual

    def _kingpins(self) -> dict[str, Point]:
        """The kingpins: the far one is the one that the drag link steers."""
        inboard = [self.hubs[0] - KINGPIN_INSET, self.hubs[1] + KINGPIN_INSET]
        near, far = inboard if self.box > 0 else inboard[::-1]
        if self.layout == Layout.FORE_AFT:
            near, far = far, near
        return {FAR_KINGPIN: (far, 0.0), NEAR_KINGPIN: (near, 0.0)}

    def _arm_end(self, kingpin: Point, length: float) -> Point:
        """End of a steering arm, mm."""
        across, rear = kingpin
        middle = sum(self.hubs) / 2
        if self.arm in (Direction.INBOARD, Direction.OUTBOARD):
            outward = 1.0 if across > middle else -1.0
            return across + self.arm.sign * outward * length, rear
        return across, rear - self.arm.sign * length

    def _usual(self, name: str, points: Mapping[str, Point]) -> Point:
        """Usual place of a pivot, mm."""
        arm = self._length("steering.arm", USUAL_ARM)
        ball = self._arm_end(points[FAR_KINGPIN], arm)
        if name == NEAR_BALL:
            return self._arm_end(points[NEAR_KINGPIN], self._length("tie_rod.near_arm", USUAL_ARM))
        if name == "drag_link.axle":
            inward = 0.1 if self.layout == Layout.TIE_ROD else 0.0
            return ball[0] + inward * (points[NEAR_KINGPIN][0] - ball[0]), ball[1]
        if name == "drag_link.frame" and self.layout == Layout.FORE_AFT:
            return ball[0], ball[1] - USUAL_REACH
        wheel = self.hubs[0] if self.box > 0 else self.hubs[1]
        across = wheel - self.box * ACROSS_FROM_BOX[name]
        return across, ball[1] if name == "drag_link.frame" else -USUAL_STATION

    def _pitman_and_tie_rod(self, points: Mapping[str, Point]) -> dict[str, Point]:
        """The pitman arm's shaft, and the ends of the tie rod, mm."""
        places: dict[str, Point] = {}
        across, rear = points["drag_link.frame"]
        if self.pitman in (Direction.AHEAD, Direction.BEHIND):
            length = self._length("steering.pitman_arm", USUAL_PITMAN_ARM)
            places[SHAFT] = across, rear + self.pitman.sign * length
        if self.layout == Layout.INVERTED_Y:
            ball, frame = points["drag_link.axle"], points["drag_link.frame"]
            run = max(abs(frame[0] - ball[0]), 1.0)
            share = self._length("tie_rod.joint_from_far_ball", USUAL_JOINT) / run
            places[JOINT] = (
                ball[0] + share * (frame[0] - ball[0]),
                ball[1] + share * (frame[1] - ball[1]),
            )
            return places
        arm = self._length("steering.arm", USUAL_ARM)
        rear = -self.arm.sign * arm if self.layout == Layout.TIE_ROD else USUAL_ARM
        if self.layout != Layout.TIE_ROD and self.arm == Direction.BEHIND:
            rear = -USUAL_ARM
        for kingpin, end in ((FAR_KINGPIN, FAR_ARM), (NEAR_KINGPIN, NEAR_ARM)):
            places[end] = points[kingpin][0], rear
        return places


def _direction(document: Document, path: str, usual: Direction) -> Direction:
    """Direction of an arm that was answered, or its usual one."""
    answer = value_at(document, path)
    return Direction(answer) if answer in tuple(Direction) else usual
