"""Data of each picture and table: plain numbers, mm and deg, and the words beside them."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from itertools import chain
from math import isfinite
from typing import Literal

from core.kinematics.pivots import NEAR_BALL
from core.readings.survey import LINKS
from core.text.quantity import INCH, LengthUnit
from core.verdict.verdict import RuleKey

Point = tuple[float, float]
"""Across (towards the vehicle's left) and up, mm: a point as it is seen from the front."""

MM_IN: Mapping[LengthUnit, float] = {"in": INCH, "mm": 1.0}
"""Millimetres in one unit of an axis."""

LINK_ENDS = {link: (f"{link}.frame", f"{link}.axle") for link in LINKS}
"""Frame end and axle end of the track bar and of the drag link."""

TIE_ROD = "tie_rod"

LEFT_HUB, RIGHT_HUB = HUBS = ("wheels.left", "wheels.right")

DATUM = 0.0
"""Place of the datum line across while the pivots are measured, mm."""

USUAL_PLACES: Mapping[str, Point] = {
    "track_bar.frame": (-670.0, 640.0),
    "track_bar.axle": (-1490.0, 520.0),
    "drag_link.frame": (-750.0, 540.0),
    "drag_link.axle": (-1570.0, 420.0),
    NEAR_BALL: (-450.0, 420.0),
    LEFT_HUB: (-250.0, 420.0),
    RIGHT_HUB: (-1850.0, 420.0),
}
"""Usual places of pivots and hubs. Invented, only to show where a reading is taken."""


def link_and_end(pivot: str) -> tuple[str, str]:
    """Link and end of a pivot: "track_bar" and "frame" of "track_bar.frame"."""
    link, _, end = pivot.partition(".")
    return link, end


def seen_from_front(points: Mapping[str, Sequence[float]]) -> dict[str, Point]:
    """Points (x, y, z) as the front view has them: (y, z), mm."""
    return {name: (float(point[1]), float(point[2])) for name, point in points.items()}


def link_lines(
    pivots: Mapping[str, Point], joint: Point | None = None
) -> dict[str, tuple[Point, Point]]:
    """Both ends of every link that has both, mm: frame end first, the joint first on a tie rod."""
    lines = {
        link: (pivots[frame], pivots[axle])
        for link, (frame, axle) in LINK_ENDS.items()
        if frame in pivots and axle in pivots
    }
    if joint and NEAR_BALL in pivots:
        lines[TIE_ROD] = (joint, pivots[NEAR_BALL])
    return lines


@dataclass(frozen=True)
class Wheels:
    """Hub centres of the wheels.

    Attributes
    ----------
    left, right : Point or None
        mm; None where the hub is not known yet.
    """

    left: Point | None = None
    right: Point | None = None

    @property
    def hubs(self) -> tuple[Point, ...]:
        """The hubs that are known, mm, the right one first."""
        return tuple(hub for hub in (self.right, self.left) if hub)


@dataclass(frozen=True)
class Pose:
    """The axle at some heave and roll; the frame ends stay.

    Attributes
    ----------
    pivots : mapping of str to Point
        The axle's pivots, mm.
    wheels : Wheels
    joint : Point or None
        The tie rod's joint on the drag link (inverted-Y), mm.
    """

    pivots: Mapping[str, Point]
    wheels: Wheels = Wheels()
    joint: Point | None = None


@dataclass(frozen=True)
class Aim:
    """A place that a pivot aims at.

    Attributes
    ----------
    point : Point
        mm.
    mark : str
        One character.
    texts : tuple of str
        The same words at length and in short.
    needed : bool
        True if the picture has room for it in any case; otherwise it is left out where it lies
        outside.
    """

    point: Point
    mark: str
    texts: tuple[str, ...]
    needed: bool = False


@dataclass(frozen=True)
class FrontPicture:
    """The pivots from the front of the vehicle.

    Attributes
    ----------
    pivots : mapping of str to Point
        Every pivot known so far, mm: "track_bar.frame", "track_bar.axle", "drag_link.frame",
        "drag_link.axle", and "tie_rod.near" of an inverted-Y.
    joint : Point or None
        The tie rod's joint on the drag link (inverted-Y), mm.
    wheels : Wheels
    before : mapping of str to Point
        An earlier geometry, mm, drawn dashed and with hollow marks under the present one.
    before_joint : Point or None
        The tie rod's joint of the earlier geometry, mm.
    before_word, after_word : str
        Names of the two geometries in the legend.
    arcs : mapping of str to a sequence of Points
        Path of each axle end through the travel, mm.
    asked_reading : str
        Name of the reading that is asked for ("track_bar.frame.height"), or ""; the picture shows
        where its tape goes.
    tapes : mapping of str to str
        Word on the way of the tape for each further reading that the picture shows.
    ringed : tuple of Point
        Places with a ring round them, mm.
    notes : mapping of str to str
        Words beside the name of a pivot ("up 1 in") or of a link ("8.5 deg").
    aims : tuple of Aim
        Places that the drag link's frame end aims at.
    """

    pivots: Mapping[str, Point] = field(default_factory=dict)
    joint: Point | None = None
    wheels: Wheels = Wheels()
    before: Mapping[str, Point] = field(default_factory=dict)
    before_joint: Point | None = None
    before_word: str = "before"
    after_word: str = "after"
    arcs: Mapping[str, Sequence[Point]] = field(default_factory=dict)
    asked_reading: str = ""
    tapes: Mapping[str, str] = field(default_factory=dict)
    ringed: tuple[Point, ...] = ()
    notes: Mapping[str, str] = field(default_factory=dict)
    aims: tuple[Aim, ...] = ()


@dataclass(frozen=True)
class Trace:
    """One curve.

    Attributes
    ----------
    name : str
        Name in the legend.
    heave : sequence of float
        Suspension travel, mm, bump positive.
    value : sequence of float
        deg, positive to the left; nan where the linkage cannot reach.
    expanded_uncertainty : sequence of float or None
        U of each value (coverage factor 2), deg; None where it is not drawn.
    """

    name: str
    heave: Sequence[float]
    value: Sequence[float]
    expanded_uncertainty: Sequence[float] | None = None

    def edges(self) -> Iterator[tuple[float, float]]:
        """Lowest and highest value that the uncertainty leaves open at each heave, deg."""
        widths = self.expanded_uncertainty or [0.0] * len(self.value)
        for value, width in zip(self.value, widths, strict=True):
            yield value - width, value + width


@dataclass(frozen=True)
class MeasuredPoint:
    """Steer that was read at a height of the axle.

    Attributes
    ----------
    heave : float
        mm.
    value, expanded_uncertainty : float
        deg.
    """

    heave: float
    value: float
    expanded_uncertainty: float

    @property
    def ends(self) -> tuple[float, float]:
        """Lower and upper end of the bar, deg."""
        return self.value - self.expanded_uncertainty, self.value + self.expanded_uncertainty


@dataclass(frozen=True)
class CurvePicture:
    """An angle against suspension travel.

    Attributes
    ----------
    trace : Trace
    compared : Trace or None
        A second curve, drawn dashed: the curve before, or the planned one.
    limit : float or None
        Largest value allowed either way over the working travel, deg.
    working : pair of float
        Working travel (droop, bump), both positive, mm.
    axle_heave : float or None
        Heave of the axle at the moment, mm.
    unit : "in" or "mm"
        Unit of the axis of travel.
    upward, downward : str
        Words for the effect of a positive and of a negative value; `downward` may be empty.
    ends : (str, str)
        Words at both ends of the axis of travel.
    one_sided : bool
        True if no value is negative: the limit is drawn above zero alone.
    least_range : pair of float or None
        Lowest and highest value that the frame has room for at least, deg, so that it stands still
        while the curve moves.
    planned : Trace or None
        A third curve, which the printed page draws dotted.
    points : tuple of MeasuredPoint
        Steer of a direct check, drawn with bars.
    """

    trace: Trace
    compared: Trace | None = None
    limit: float | None = None
    working: tuple[float, float] = (0.0, 0.0)
    axle_heave: float | None = None
    unit: LengthUnit = "in"
    upward: str = "steers left"
    downward: str = "steers right"
    ends: tuple[str, str] = ("◂ droop", "bump ▸")
    one_sided: bool = False
    least_range: tuple[float, float] | None = None
    planned: Trace | None = None
    points: tuple[MeasuredPoint, ...] = ()

    @property
    def lowest_allowed(self) -> float:
        """Smallest value allowed over the working travel, deg."""
        return 0.0 if self.one_sided else -(self.limit or 0.0)

    def value_range(self) -> tuple[float, float]:
        """Lowest and highest value of curves and limits, deg; 0 lies between, and they differ."""
        limit = self.limit or 0.0
        traces = [trace for trace in (self.trace, self.compared, self.planned) if trace]
        edges = chain.from_iterable(edge for trace in traces for edge in trace.edges())
        bars = chain.from_iterable(point.ends for point in self.points)
        values = [0.0, self.lowest_allowed, limit, *(self.least_range or ()), *edges, *bars]
        finite = [value for value in values if isfinite(value)]
        low, high = min(finite), max(finite)
        return (low, high) if low < high else (-1.0, 1.0)


@dataclass(frozen=True)
class RuleRow:
    """One rule of the verdict.

    Attributes
    ----------
    rule : RuleKey
    name : str
        Name of the rule in the table.
    value : float
        deg, or a ratio where `unit` is empty; nan where it is not known.
    expanded_uncertainty : float or None
        U of the value (coverage factor 2), in the same unit.
    limit : float
        In the same unit.
    verdict : str
        "within", "out", "too close to call".
    probability : float or None
        Probability that the value is within its limit.
    unit : "deg" or ""
    at_least : bool
        True if the limit is the smallest value allowed, not the largest.
    decides : bool
        True if the overall verdict rests on this rule; the other rules advise.
    """

    rule: RuleKey
    name: str
    value: float
    expanded_uncertainty: float | None
    limit: float
    verdict: str
    probability: float | None = None
    unit: Literal["deg", ""] = "deg"
    at_least: bool = False
    decides: bool = True


@dataclass(frozen=True)
class ArticulationPicture:
    """Steer over roll and heave.

    Attributes
    ----------
    roll : sequence of float
        deg, left wheel up positive.
    heave : sequence of float
        mm, bump positive, ascending.
    steer : sequence of sequences of float
        deg, to the left positive, one row a heave; nan where the linkage cannot reach.
    limit : float
        Limit that the shades are measured against, deg.
    unit : "in" or "mm"
    """

    roll: Sequence[float]
    heave: Sequence[float]
    steer: Sequence[Sequence[float]]
    limit: float
    unit: LengthUnit = "in"
