"""What each picture shows: plain numbers, mm and deg, and the words beside them."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from core.text.quantity import LengthUnit

Point = tuple[float, float]
"""Across (towards the vehicle's left) and up, mm: what is seen of a point from the front."""

USUAL: Mapping[str, Point] = {
    "track_bar.frame": (-420.0, 640.0),
    "track_bar.axle": (-1240.0, 520.0),
    "drag_link.frame": (-500.0, 560.0),
    "drag_link.axle": (-1320.0, 440.0),
    "tie_rod.near": (-200.0, 420.0),
    "wheels.left": (0.0, 420.0),
    "wheels.right": (-1600.0, 420.0),
}
"""Where pivots and hubs about are, the datum line at 0. Invented, only to place what is asked."""


def seen_from_front(points: Mapping[str, Sequence[float]]) -> dict[str, Point]:
    """Points (x, y, z) as the front view has them: (y, z), mm."""
    return {name: (float(point[1]), float(point[2])) for name, point in points.items()}


@dataclass(frozen=True)
class Wheels:
    """Hub centres of the wheels; None where one is not known yet."""

    left: Point | None = None
    right: Point | None = None


@dataclass(frozen=True)
class Pose:
    """Where the axle has moved to: the frame ends stay."""

    pivots: Mapping[str, Point]
    wheels: Wheels = Wheels()
    joint: Point | None = None


@dataclass(frozen=True)
class FrontPicture:
    """The pivots from the front of the vehicle.

    Attributes
    ----------
    pivots : mapping of str to Point
        Every pivot known so far: "track_bar.frame", "track_bar.axle", "drag_link.frame",
        "drag_link.axle", and "tie_rod.near" of an inverted-Y.
    joint : Point, optional
        The tie rod's joint on the drag link (inverted-Y).
    wheels : Wheels
    before : mapping of str to Point
        An earlier geometry, drawn dashed and with hollow marks under the present one.
    before_joint : Point, optional
        The tie rod's joint of the earlier geometry.
    before_word, after_word : str
        What the two are called.
    arcs : mapping of str to a sequence of Points
        Path of an axle end through the travel.
    asked : str
        Name of the reading now being asked for ("track_bar.frame.height"); the picture shows
        where the tape goes.
    usual : mapping of str to Point
        Where a pivot that is not known yet is about to be; overrides USUAL.
    datum : float
        Where the datum line stands, across.
    notes : mapping of str to str
        Words beside the name of a pivot ("up 1 in") or of a link ("8.5 deg").
    """

    pivots: Mapping[str, Point] = field(default_factory=dict)
    joint: Point | None = None
    wheels: Wheels = Wheels()
    before: Mapping[str, Point] = field(default_factory=dict)
    before_joint: Point | None = None
    before_word: str = "before"
    after_word: str = "after"
    arcs: Mapping[str, Sequence[Point]] = field(default_factory=dict)
    asked: str = ""
    usual: Mapping[str, Point] = field(default_factory=dict)
    datum: float = 0.0
    notes: Mapping[str, str] = field(default_factory=dict)


@dataclass(frozen=True)
class Trace:
    """One curve.

    Attributes
    ----------
    name : str
        What the legend calls it.
    heave : sequence of float
        Suspension travel, mm, bump positive.
    value : sequence of float
        deg, positive to the left; nan where the linkage cannot reach.
    give : sequence of float, optional
        Expanded uncertainty U of each value, deg.
    """

    name: str
    heave: Sequence[float]
    value: Sequence[float]
    give: Sequence[float] | None = None


@dataclass(frozen=True)
class CurvePicture:
    """Something in degrees against suspension travel.

    Attributes
    ----------
    trace : Trace
    other : Trace, optional
        Drawn dashed: the curve before, or the planned one.
    limit : float, optional
        Largest value allowed either way over the working travel, deg.
    working : pair of float
        Working travel (droop, bump), both positive, mm.
    heave : float, optional
        Where the axle is now, mm.
    unit : str
        "in" or "mm", of the axis.
    upward, downward : str
        What a positive and a negative value do.
    spans : pair of float, optional
        Lowest and highest value that the frame has to hold, so that it stands still while the
        curve moves, deg.
    """

    trace: Trace
    other: Trace | None = None
    limit: float | None = None
    working: tuple[float, float] = (0.0, 0.0)
    heave: float | None = None
    unit: LengthUnit = "in"
    upward: str = "steers left"
    downward: str = "steers right"
    spans: tuple[float, float] | None = None


@dataclass(frozen=True)
class RuleRow:
    """One rule of the verdict.

    Attributes
    ----------
    name : str
    value : float
        deg, or a ratio where `unit` is empty; nan where it cannot be told.
    give : float, optional
        Expanded uncertainty U of the value.
    limit : float
    verdict : str
        "within", "out", "too close to call".
    probability : float, optional
        Probability that the value is within its limit.
    unit : str
        "deg" or "".
    at_least : bool
        The limit is the smallest value allowed, not the largest.
    decides : bool
        Whether the overall verdict rests on this rule; the others advise.
    """

    name: str
    value: float
    give: float | None
    limit: float
    verdict: str
    probability: float | None = None
    unit: str = "deg"
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
        What the shades are measured against, deg.
    unit : str
        "in" or "mm".
    """

    roll: Sequence[float]
    heave: Sequence[float]
    steer: Sequence[Sequence[float]]
    limit: float
    unit: LengthUnit = "in"
