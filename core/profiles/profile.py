"""Profiles: kinds of axle and steering, with usual ranges, limits, corrections and events.

A profile is a TOML file, and its name is the file's name. Profiles are looked for in several
folders: a shop's own folder first, the shipped folder last. Where both have a profile of one
name, the shop's profile is used. `Profile.shop_own` then marks it wherever it is named.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, fields
from pathlib import Path
from typing import Any

from core.documents.document import value_at
from core.documents.entries import EntryError, choice_at, flag_at
from core.documents.tables import line_at, refuse_unknown
from core.documents.toml_file import TomlFileError, read_toml
from core.kinematics.pivots import ARM_DIRECTIONS, PITMAN_DIRECTIONS, Direction, GuideKind, Layout
from core.kinematics.road_events import Event, Road
from core.profiles.adjuster import Adjuster, adjuster_at
from core.profiles.conversions import Change, Conversion
from core.profiles.correction_tables import changes_at, refuse_unknown_names
from core.profiles.corrections import Correction
from core.profiles.defaults import CONDITIONS, MEASURED, Defaults
from core.profiles.limits import Limits
from core.profiles.profile_tables import (
    RANGES,
    clearance_at,
    defaults_at,
    events_at,
    instruments_at,
    limits_at,
    ranges_at,
)
from core.profiles.road import ROAD, road_at
from core.profiles.typical import TYPICAL, refuse_faulty_typical
from core.readings.reading import Instruments
from core.readings.survey import LINKS
from core.text.plain_text import plain

_KNOWN = {
    *("name", "title", "purpose", "clearance", "least_rise", "walk_round.over_10000_lb"),
    *(f"layout.{key}" for key in ("steering", "arm", "pitman", "guide", "track_bar")),
    *(f"ranges.{name}" for name in RANGES),
    *(f"defaults.{path}" for path in (*CONDITIONS, *MEASURED)),
    *(f"defaults_within.{path}" for path in MEASURED),
    *(f"road.{key}" for key in ROAD),
    *(f"instruments.{instrument.name}" for instrument in fields(Instruments)),
    *(f"limits.{name}" for name in ("parallel", "flat", "length_ratio", "steer", "toe_change")),
    *(f"limits.working_travel.{direction}" for direction in ("bump", "droop")),
    *(f"adjusters.{link}.{key}" for link in LINKS for key in ("kind", "pitch")),
    *(f"typical.{name}" for name in TYPICAL),
    *("corrections", "conversions", "events"),
}
"""Every key of a profile, as a dotted path."""


class ProfileError(ValueError):
    """A profile that does not exist or is faulty.

    The message is one line with file, table and key, and says what would be right.
    """


@dataclass(frozen=True)
class Profile:
    """One kind of axle and steering.

    Attributes
    ----------
    name, title, purpose : str
    steering : Layout
        The wizard offers this layout first.
    arm, pitman : Direction
        The wizard offers these directions first.
    guide : GuideKind
    track_bar : bool
        The wizard offers this guide, and a track bar or none, first.
    ranges : dict of (float, float)
        Usual smallest and largest value by the name of the reading (those of RANGES, and the
        track), mm, rad or
        rad/mm; the ratio a plain number.
    defaults : Defaults
    instruments : Instruments
    limits : Limits
    over_10000_lb : bool
        49 CFR 570.60 applies instead of 570.7.
    adjusters : dict of Adjuster
        By link, "drag_link" and "track_bar"; a profile without a track bar may leave it out.
    corrections : tuple of Correction
    conversions : tuple of Conversion
    events : tuple of Event
    road : Road
        Handling that tells what an event does on the road.
    clearance : float
        Distance between the centre lines of the two bars below which a plan says so, mm.
    source : Path
        The profile's file.
    shop_own : bool
        The file is in a shop's own folder.
    as_written : mapping
        The file's tables, so that [limits] and [instruments] can be copied word for word.
    """

    name: str
    title: str
    purpose: str
    steering: Layout
    arm: Direction
    pitman: Direction
    guide: GuideKind
    track_bar: bool
    ranges: dict[str, tuple[float, float]]
    defaults: Defaults
    instruments: Instruments
    limits: Limits
    over_10000_lb: bool
    adjusters: dict[str, Adjuster]
    corrections: tuple[Correction, ...]
    conversions: tuple[Conversion, ...]
    events: tuple[Event, ...]
    road: Road
    clearance: float
    source: Path
    shop_own: bool
    as_written: Mapping[str, Any] = field(repr=False)

    @property
    def changes(self) -> tuple[Change, ...]:
        """Corrections and conversions, in this order."""
        return (*self.corrections, *self.conversions)


def profile_names(folders: Sequence[Path]) -> tuple[str, ...]:
    """Names of the profiles in some folders, in alphabetical order; a missing folder has none."""
    names = {
        file.stem
        for folder in folders
        for file in folder.glob("*.toml")
        if not file.name.startswith(".")
    }
    return tuple(sorted(names))


def load_profile(name: str, folders: Sequence[Path]) -> Profile:
    """The profile of this name.

    Parameters
    ----------
    name : str
    folders : sequence of Path
        Folders to look in, in this order: a shop's own first, the shipped one last.

    Raises
    ------
    ProfileError
        There is no such profile, or it is faulty.
    """
    names = profile_names(folders)
    if name not in names:  # A name becomes part of a path only after a folder has listed it.
        known = ", ".join(map(plain, names)) or "none"
        raise ProfileError(f"no profile “{plain(name)}”; there are: {known}")
    files = [folder / f"{name}.toml" for folder in folders]
    place = next(place for place, file in enumerate(files) if file.exists())
    source = files[place]
    try:
        return _profile_from(read_toml(source), source, shop_own=place < len(folders) - 1)
    except TomlFileError as error:
        raise ProfileError(str(error)) from None
    except EntryError as error:
        raise ProfileError(f"{plain(source, 300)}: {error}") from None


def _profile_from(tables: dict[str, Any], source: Path, shop_own: bool) -> Profile:
    refuse_unknown(tables, _KNOWN)
    name = _name(tables, source)
    steering = Layout(choice_at(tables, "layout.steering", tuple(Layout)))
    has_track_bar = _required_flag(tables, "layout.track_bar")
    defaults = defaults_at(tables)
    changes = changes_at(tables)
    refuse_unknown_names(changes, {change.name for change in changes})
    refuse_faulty_typical(tables)
    return Profile(
        name=name,
        title=line_at(tables, "title"),
        purpose=line_at(tables, "purpose"),
        steering=steering,
        arm=Direction(choice_at(tables, "layout.arm", ARM_DIRECTIONS[steering])),
        pitman=Direction(choice_at(tables, "layout.pitman", PITMAN_DIRECTIONS[steering])),
        guide=GuideKind(choice_at(tables, "layout.guide", tuple(GuideKind))),
        track_bar=has_track_bar,
        ranges={**ranges_at(tables), "wheels.track": _usual_track(defaults)},
        defaults=defaults,
        instruments=instruments_at(tables),
        limits=limits_at(tables),
        over_10000_lb=_required_flag(tables, "walk_round.over_10000_lb"),
        adjusters=_adjusters(tables, has_track_bar),
        corrections=tuple(change for change in changes if isinstance(change, Correction)),
        conversions=tuple(change for change in changes if isinstance(change, Conversion)),
        events=events_at(tables),
        road=road_at(tables),
        clearance=clearance_at(tables),
        source=source,
        shop_own=shop_own,
        as_written=tables,
    )


def _usual_track(defaults: Defaults) -> tuple[float, float]:
    """Usual range of the track: its default, less and plus two of its half-widths, mm."""
    value, within = defaults.values["track"], defaults.half_widths["track"]
    return value - 2 * within, value + 2 * within


def _name(tables: Mapping[str, Any], source: Path) -> str:
    name = line_at(tables, "name")
    if name != source.stem:
        raise EntryError("name", f"is “{plain(name)}”; it should be “{source.stem}” as the file's")
    return name


def _adjusters(tables: Mapping[str, Any], has_track_bar: bool) -> dict[str, Adjuster]:
    """Adjusters by link; that of a track bar can be left out where there is none at first."""
    return {
        link: adjuster_at(tables, f"adjusters.{link}")
        for link in LINKS
        if link != "track_bar"
        or has_track_bar
        or value_at(tables, "adjusters.track_bar") is not None
    }


def _required_flag(tables: Mapping[str, Any], path: str) -> bool:
    flag = flag_at(tables, path)
    if flag is None:
        raise EntryError(path, "is missing; it should be true or false")
    return flag
