"""Profiles: kinds of axle and steering with usual ranges, limits, corrections and events.

A profile is a TOML file in one of several folders; its name is the name of the file. The shipped
folder comes last, after a shop's own folders. Where two folders have a profile of one name, the
shop's is used, and `Profile.shop_own` says so.
"""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from core.documents.entries import EntryError, choice_at, flag_at
from core.documents.tables import (
    angle_with_unit,
    length_with_unit,
    line_at,
    quantity_above_zero,
    range_at,
    refuse_unknown,
    required_quantity,
    tables_at,
)
from core.documents.toml_file import TomlFileError, read_toml
from core.kinematics.pivots import Layout, Side
from core.kinematics.road_events import Event
from core.profiles.adjuster import Adjuster, adjuster_at
from core.profiles.corrections import Correction
from core.profiles.limits import Limits
from core.profiles.profile_tables import corrections_at, event_from, exclusions_known
from core.readings.reading import Instruments
from core.readings.survey import LINKS, SURVEY, WHEELS
from core.text import quantity
from core.text.plain_text import plain

DEFAULTS = {
    "arm": "6 1/2 in",
    "pitman_arm": "6 in",
    "ratio": "16",
    "bump": "4 in",
    "droop": "5 in",
    "wheelbase": "110 in",
    "hub_height": "16 in",
    "near_arm": "6 1/2 in",
    "joint_from_far_ball": "8 in",
}
"""Keys of the defaults, each with an example."""

RANGES: tuple[str, ...] = (
    *SURVEY,
    *WHEELS,
    "tie_rod.joint_from_far_ball",
    "tie_rod.near_arm",
    "steering.arm",
    "steering.pitman_arm",
    "steering.ratio",
    "travel.bump",
    "travel.droop",
    "wheelbase",
    "ride_height",
)
"""Names of the readings that a profile has a usual range for."""

_KNOWN = {
    *("name", "title", "purpose", "walk_round.over_10000_lb"),
    *("layout.steering", "layout.arm", "layout.pitman"),
    *(f"ranges.{name}" for name in RANGES),
    *(f"defaults.{name}" for name in DEFAULTS),
    *(f"instruments.{name}" for name in Instruments.__dataclass_fields__),
    *(f"limits.{name}" for name in ("parallel", "flat", "length_ratio", "steer", "toe_change")),
    *(f"limits.working_travel.{way}" for way in ("bump", "droop")),
    *(f"adjusters.{link}.{key}" for link in LINKS for key in ("kind", "pitch")),
    *("corrections", "events"),
}


class ProfileError(ValueError):
    """No such profile, or a faulty one; one line with file, table, key and what would be right."""


@dataclass(frozen=True)
class Defaults:
    """Values that are assumed where nothing was measured: mm; the ratio is a plain number."""

    arm: float
    pitman_arm: float
    ratio: float
    bump: float
    droop: float
    wheelbase: float
    hub_height: float
    near_arm: float
    joint_from_far_ball: float

    def __getitem__(self, reading: str) -> float:
        """Default for a reading, by its name, such as "steering.arm"."""
        value: float = getattr(self, reading.rpartition(".")[2])
        return value


@dataclass(frozen=True)
class Profile:
    """One kind of axle and steering.

    Attributes
    ----------
    name, title, purpose : str
    steering : Layout
    arm, pitman : Side
        The wizard offers these three first.
    ranges : dict of (float, float)
        Usual smallest and largest value by the name of the reading (those of RANGES), mm or rad;
        the ratio a plain number.
    defaults : Defaults
    instruments : Instruments
    limits : Limits
    over_10000_lb : bool
        49 CFR 570.60 applies instead of 570.7.
    adjusters : dict of Adjuster
        By link, "track_bar" and "drag_link".
    corrections : tuple of Correction
    events : tuple of Event
    source : Path
        The file it was read from.
    shop_own : bool
        It comes from a shop's own folder.
    as_written : mapping
        Tables of the file, from which [limits] and [instruments] are copied word for word.
    """

    name: str
    title: str
    purpose: str
    steering: Layout
    arm: Side
    pitman: Side
    ranges: dict[str, tuple[float, float]]
    defaults: Defaults
    instruments: Instruments
    limits: Limits
    over_10000_lb: bool
    adjusters: dict[str, Adjuster]
    corrections: tuple[Correction, ...]
    events: tuple[Event, ...]
    source: Path
    shop_own: bool
    as_written: Mapping[str, Any] = field(repr=False)


def profile_names(folders: Sequence[Path]) -> tuple[str, ...]:
    """Names of the profiles in some folders, in alphabetical order; a missing folder has none."""
    return tuple(
        sorted(
            {
                file.stem
                for folder in folders
                for file in folder.glob("*.toml")
                if not file.name.startswith(".")
            }
        )
    )


def load_profile(name: str, folders: Sequence[Path]) -> Profile:
    """The profile of this name.

    Parameters
    ----------
    name : str
    folders : sequence of Path
        Where to look, in this order: a shop's own first, the shipped one last.

    Raises
    ------
    ProfileError
        There is no such profile, or it is faulty.
    """
    names = profile_names(folders)
    if name not in names:  # a name never becomes a path before it was found in a folder
        there = ", ".join(map(plain, names)) or "none"
        raise ProfileError(f"no profile “{plain(name)}”; there are: {there}")
    files = [folder / f"{name}.toml" for folder in folders]
    place = next(place for place, file in enumerate(files) if file.exists())
    source = files[place]
    try:
        return _profile(read_toml(source), source, shop_own=place < len(folders) - 1)
    except TomlFileError as error:
        raise ProfileError(str(error)) from None
    except EntryError as error:
        raise ProfileError(f"{plain(source, 300)}: {error}") from None


def _profile(tables: dict[str, Any], source: Path, shop_own: bool) -> Profile:
    refuse_unknown(tables, _KNOWN)
    name = line_at(tables, "name")
    if name != source.stem:
        raise EntryError("name", f"is “{plain(name)}”; it should be “{source.stem}” as the file's")
    corrections = corrections_at(tables)
    exclusions_known(corrections, {correction.name for correction in corrections})
    return Profile(
        name=name,
        title=line_at(tables, "title"),
        purpose=line_at(tables, "purpose"),
        steering=Layout(choice_at(tables, "layout.steering", tuple(Layout))),
        arm=Side(choice_at(tables, "layout.arm", tuple(Side))),
        pitman=Side(choice_at(tables, "layout.pitman", tuple(Side))),
        ranges={name: range_at(tables, f"ranges.{name}", *_parser(name)) for name in RANGES},
        defaults=_defaults(tables),
        instruments=_instruments(tables),
        limits=_limits(tables),
        over_10000_lb=_over_10000_lb(tables),
        adjusters={link: adjuster_at(tables, f"adjusters.{link}") for link in LINKS},
        corrections=corrections,
        events=_events(tables),
        source=source,
        shop_own=shop_own,
        as_written=tables,
    )


def _parser(reading: str) -> tuple[Callable[[str], float], tuple[str, str]]:
    """Parser for the range of a reading, with an example of the range."""
    if reading == "steering.ratio":
        return quantity.parse_number, ("12", "22")
    if reading.endswith(".slope"):
        return angle_with_unit, ("-5 deg", "25 deg")
    return length_with_unit, ("18 in", "30 in")


def _defaults(tables: Mapping[str, Any]) -> Defaults:
    return Defaults(
        **{
            key: quantity_above_zero(
                tables,
                f"defaults.{key}",
                quantity.parse_number if key == "ratio" else length_with_unit,
                example,
            )
            for key, example in DEFAULTS.items()
        }
    )


def _instruments(tables: Mapping[str, Any]) -> Instruments:
    return Instruments(
        tape=quantity_above_zero(tables, "instruments.tape", length_with_unit, "1/16 in"),
        sighting=required_quantity(tables, "instruments.sighting", length_with_unit, "1/8 in"),
        floor=required_quantity(tables, "instruments.floor", length_with_unit, "1/16 in"),
        angle_finder=quantity_above_zero(
            tables, "instruments.angle_finder", angle_with_unit, "0.5 deg"
        ),
        seating=required_quantity(tables, "instruments.seating", angle_with_unit, "0.5 deg"),
    )


def _limits(tables: Mapping[str, Any]) -> Limits:
    length_ratio = quantity_above_zero(tables, "limits.length_ratio", quantity.parse_number, "0.85")
    if length_ratio > 1:
        raise EntryError("limits.length_ratio", "is shorter to longer link, so at most 1")
    return Limits(
        parallel=quantity_above_zero(tables, "limits.parallel", angle_with_unit, "1.5 deg"),
        flat=quantity_above_zero(tables, "limits.flat", angle_with_unit, "10 deg"),
        length_ratio=length_ratio,
        steer=quantity_above_zero(tables, "limits.steer", angle_with_unit, "0.5 deg"),
        toe_change=quantity_above_zero(tables, "limits.toe_change", angle_with_unit, "0.25 deg"),
        working_bump=quantity_above_zero(
            tables, "limits.working_travel.bump", length_with_unit, "2 in"
        ),
        working_droop=quantity_above_zero(
            tables, "limits.working_travel.droop", length_with_unit, "2 in"
        ),
    )


def _over_10000_lb(tables: Mapping[str, Any]) -> bool:
    heavy = flag_at(tables, "walk_round.over_10000_lb")
    if heavy is None:
        raise EntryError("walk_round.over_10000_lb", "is missing; it should be true or false")
    return heavy


def _events(tables: Mapping[str, Any]) -> tuple[Event, ...]:
    return tuple(event_from(table, place) for place, table in tables_at(tables, "events"))
