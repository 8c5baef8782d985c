"""Conversions: several changes of a vehicle that are made together and count as one part.

A conversion moves pivots, and may change the layout and the lengths of arms. Examples are a tie
rod taken off the drag link, and high steering arms with their track bar bracket.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from typing import Any, ClassVar

from core.documents.document import value_at
from core.documents.entries import EntryError, choice_at, flag_at, quantity_at
from core.documents.tables import (
    Parse,
    angle_with_unit,
    length_with_unit,
    line_at,
    refuse_unknown,
    tables_at,
    texts_at,
)
from core.kinematics.pivots import (
    ARM_DIRECTIONS,
    GUIDE_PIVOTS,
    PITMAN_DIRECTIONS,
    PIVOTS,
    RIDE_HEIGHT,
    TRACK_BAR_ENDS,
    Direction,
    GuideKind,
    Layout,
)
from core.profiles.corrections import MOVABLE, Correction, PivotStep, ball_at
from core.profiles.part import NO_PART, PART_KEYS, Part, part_at
from core.text import quantity

CONVERSION_KEYS = (
    *("name", "caution", "moves", "not_with", *PART_KEYS),
    *(f"layout.{key}" for key in ("steering", "arm", "pitman")),
    *("readings.arm", "readings.pitman_arm", "readings.ratio", "readings.castor"),
    *("readings.steering.arm", "readings.steering.pitman_arm", "readings.steering.ratio"),
    "readings.kingpin.castor",
)
"""Keys of a [[conversions]] table."""

LAYOUTS = (Layout.KNUCKLE, Layout.TIE_ROD, Layout.FORE_AFT)
"""Layouts that a conversion can lead to: the inverted-Y needs a ball that no reading has."""

_READINGS: dict[str, tuple[Parse, str, float, float]] = {
    "steering.arm": (length_with_unit, "6 1/2 in", 25.0, 610.0),
    "steering.pitman_arm": (length_with_unit, "6 in", 25.0, 610.0),
    "steering.ratio": (quantity.parse_number, "16", 1.0, 60.0),
    "kingpin.castor": (angle_with_unit, "5 deg", -0.35, 0.35),
}
"""Readings that a conversion can set: parser, example, smallest and largest value."""

FARTHEST = 2500.0
"""mm; no pivot lies further from the axle's middle or from the datum line."""

LARGEST_RISE = 1000.0
"""mm; no pivot can be moved further."""


@dataclass(frozen=True)
class Conversion:
    """Several changes that are made together.

    Attributes
    ----------
    name, caution : str
    moves : tuple of PivotStep
    steering : Layout or None
        Layout afterwards; None where it stays.
    arm, pitman : Direction or None
        Directions of the arms afterwards; None where they stay.
    readings : mapping of float
        Readings that have another value afterwards, by name: "steering.arm", mm.
    not_with, needs : tuple of str
        As of a correction.
    part : Part
    middle : float
        Offset of y = 0 of the vehicle's linkage, from which y counts to the left, mm.
    """

    name: str
    moves: tuple[PivotStep, ...]
    caution: str = ""
    steering: Layout | None = None
    arm: Direction | None = None
    pitman: Direction | None = None
    readings: Mapping[str, float] = field(default_factory=dict, hash=False)
    not_with: tuple[str, ...] = ()
    needs: tuple[str, ...] = ()
    part: Part = NO_PART
    middle: float = 0.0

    table: ClassVar[str] = "conversions"
    rises_tried: ClassVar[tuple[float, ...]] = (0.0,)

    def steps(self, rise: float) -> tuple[PivotStep, ...]:
        """Steps of the conversion, one for each pivot; it has no choice of rises."""
        return self.moves

    def fits(
        self,
        layout: Layout,
        arm: Direction,
        pitman: Direction,
        guide: GuideKind,
        has_track_bar: bool,
    ) -> bool:
        """True if a vehicle can be converted: it has the pivots, and its arms fit the layout."""
        after = self.steering or layout
        if self.steering == layout or not all(
            _has_pivot(step.pivot, guide, has_track_bar) for step in self.moves
        ):
            return False
        arms_fit = (self.arm or arm) in ARM_DIRECTIONS[after]
        return arms_fit and (self.pitman or pitman) in PITMAN_DIRECTIONS[after]


Change = Correction | Conversion
"""A correction of one pivot, or a conversion; a search combines both."""


def fitting(changes: Iterable[Change], document: Mapping[str, Any]) -> tuple[Change, ...]:
    """Changes that fit the vehicle in a document, by the answers in its [layout].

    A correction that fits only a layout that a conversion leads to is kept.

    Raises
    ------
    core.documents.entries.EntryError
        An answer is missing or is not what it should be.
    """
    changes = tuple(changes)
    layout = Layout(choice_at(document, "layout.steering", tuple(Layout)))
    guide = GuideKind(
        choice_at(document, "layout.guide", tuple(GuideKind), GuideKind.UNMEASURED.value)
    )
    arm = _answered(document, "layout.arm", ARM_DIRECTIONS[layout])
    pitman = _answered(document, "layout.pitman", PITMAN_DIRECTIONS[layout])
    has_track_bar = flag_at(document, "layout.track_bar") is not False
    ball = ball_at(document, "layout.ball")
    conversions = tuple(
        change
        for change in changes
        if isinstance(change, Conversion) and change.fits(layout, arm, pitman, guide, has_track_bar)
    )
    layouts = (layout, *(change.steering for change in conversions if change.steering))
    corrections = tuple(
        change
        for change in changes
        if isinstance(change, Correction)
        and change.fits_ball(ball)
        and any(change.applies_to(guide, has_track_bar, each) for each in layouts)
    )
    return (*corrections, *conversions)


def _answered(document: Mapping[str, Any], path: str, possible: tuple[Direction, ...]) -> Direction:
    """Direction of an arm; the first possible one where the document does not say it."""
    return Direction(choice_at(document, path, possible, possible[0]))


def conversion_at(tables: Mapping[str, Any], place: str) -> Conversion:
    """The conversion in one table of a file.

    Raises
    ------
    core.documents.entries.EntryError
        An entry is not what it should be.
    """
    steering = _layout_at(tables, f"{place}.layout.steering")
    arms = [*ARM_DIRECTIONS[Layout.KNUCKLE], *ARM_DIRECTIONS[Layout.FORE_AFT]]
    pitmans = [*PITMAN_DIRECTIONS[Layout.KNUCKLE], *PITMAN_DIRECTIONS[Layout.FORE_AFT]]
    conversion = Conversion(
        name=line_at(tables, f"{place}.name"),
        moves=_steps_at(tables, place),
        caution=line_at(tables, f"{place}.caution"),
        steering=steering,
        arm=_direction_at(tables, f"{place}.layout.arm", arms),
        pitman=_direction_at(tables, f"{place}.layout.pitman", pitmans),
        readings=_readings_at(tables, f"{place}.readings"),
        not_with=texts_at(tables, f"{place}.not_with", "ride height"),
        needs=texts_at(tables, f"{place}.needs", "ride height"),
        part=part_at(tables, place),
    )
    changes_arms = conversion.arm or conversion.pitman or conversion.readings
    if not (conversion.moves or conversion.steering or changes_arms):
        raise EntryError(f"{place}.moves", "is empty: the conversion changes nothing")
    return conversion


def _steps_at(tables: Mapping[str, Any], place: str) -> tuple[PivotStep, ...]:
    """The pivots that a conversion moves; no pivot twice."""
    table = value_at(tables, place)
    steps: list[PivotStep] = []
    for name, entry in tables_at(table, "moves"):
        where = f"{place}, {name}"
        placed = {where: entry}
        keys = ("pivot", "rise", "to_station", "to_offset")
        refuse_unknown(placed, [f"{where}.{key}" for key in keys])
        pivot = choice_at(placed, f"{where}.pivot", MOVABLE)
        if any(step.pivot == pivot for step in steps):
            raise EntryError(f"{where}.pivot", "is moved twice; give its moves in one entry")
        step = PivotStep(
            pivot,
            _length_at(placed, f"{where}.rise", LARGEST_RISE) or 0.0,
            _length_at(placed, f"{where}.to_station", FARTHEST),
            _length_at(placed, f"{where}.to_offset", FARTHEST),
        )
        _refuse_impossible(step, where)
        steps.append(step)
    return tuple(steps)


def _refuse_impossible(step: PivotStep, where: str) -> None:
    if not step.rise and step.to_station is None and step.to_offset is None:
        raise EntryError(f"{where}.rise", 'is missing; it should be a rise such as "1 1/2 in"')
    if step.to_offset is not None and step.pivot not in PIVOTS:
        raise EntryError(f"{where}.to_offset", "belongs to an end of the track bar or drag link")
    if step.to_station is not None and step.pivot == RIDE_HEIGHT:
        raise EntryError(f"{where}.to_station", "does not go with the ride height")


def _length_at(tables: Mapping[str, Any], path: str, largest: float) -> float | None:
    value = quantity_at(tables, path, length_with_unit, "1 1/2 in")
    if value is not None and abs(value) > largest:
        raise EntryError(path, f"should be at most {largest:.0f} mm either way")
    return value


def _layout_at(tables: Mapping[str, Any], path: str) -> Layout | None:
    if value_at(tables, path) is None:
        return None
    return Layout(choice_at(tables, path, LAYOUTS))


def _direction_at(
    tables: Mapping[str, Any], path: str, possible: list[Direction]
) -> Direction | None:
    return None if value_at(tables, path) is None else Direction(choice_at(tables, path, possible))


def _readings_at(tables: Mapping[str, Any], path: str) -> dict[str, float]:
    """Readings that a conversion sets, by name; a file may leave out their table's name."""
    readings = {}
    for name, (parse, example, smallest, largest) in _READINGS.items():
        for key in (name, name.partition(".")[2]):
            value = quantity_at(tables, f"{path}.{key}", parse, example)
            if value is not None and not smallest <= value <= largest:
                raise EntryError(f"{path}.{key}", f'is out of range; it is such as "{example}"')
            if value is not None:
                readings[name] = value
    return readings


def _has_pivot(pivot: str, guide: GuideKind, has_track_bar: bool) -> bool:
    if pivot in TRACK_BAR_ENDS:
        return has_track_bar
    return not pivot.startswith("guide.") or pivot in GUIDE_PIVOTS[guide]
