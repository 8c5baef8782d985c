"""Profiles: kinds of axle and steering, with usual ranges, limits, corrections and events.

A profile is a TOML file, and its name is the file's name. Profiles are looked for in several
folders: a shop's own folder first, the shipped folder last. Where both have a profile of one
name, the shop's profile is used. `Profile.shop_own` then marks it wherever it is named.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, fields
from pathlib import Path
from typing import Any

from core.documents.entries import EntryError, choice_at, flag_at
from core.documents.tables import line_at, refuse_unknown
from core.documents.toml_file import TomlFileError, read_toml
from core.kinematics.pivots import Direction, Layout
from core.kinematics.road_events import Event, Road
from core.profiles.adjuster import Adjuster, adjuster_at
from core.profiles.corrections import Correction
from core.profiles.defaults import Defaults
from core.profiles.limits import Limits
from core.profiles.profile_tables import (
    RANGES,
    corrections_at,
    defaults_at,
    events_at,
    instruments_at,
    limits_at,
    ranges_at,
    refuse_unknown_exclusions,
)
from core.readings.reading import Instruments
from core.readings.survey import LINKS
from core.text.plain_text import plain

_KNOWN = {
    *("name", "title", "purpose", "walk_round.over_10000_lb"),
    *("layout.steering", "layout.arm", "layout.pitman"),
    *(f"ranges.{name}" for name in RANGES),
    *(f"defaults.{default.name}" for default in fields(Defaults)),
    *(f"instruments.{instrument.name}" for instrument in fields(Instruments)),
    *(f"limits.{name}" for name in ("parallel", "flat", "length_ratio", "steer", "toe_change")),
    *(f"limits.working_travel.{direction}" for direction in ("bump", "droop")),
    *(f"adjusters.{link}.{key}" for link in LINKS for key in ("kind", "pitch")),
    *("corrections", "events"),
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
        The wizard offers these sides first.
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
    ranges: dict[str, tuple[float, float]]
    defaults: Defaults
    instruments: Instruments
    limits: Limits
    over_10000_lb: bool
    adjusters: dict[str, Adjuster]
    corrections: tuple[Correction, ...]
    events: tuple[Event, ...]
    road: Road
    source: Path
    shop_own: bool
    as_written: Mapping[str, Any] = field(repr=False)


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
    corrections = corrections_at(tables)
    refuse_unknown_exclusions(corrections, {correction.name for correction in corrections})
    return Profile(
        name=name,
        title=line_at(tables, "title"),
        purpose=line_at(tables, "purpose"),
        steering=Layout(choice_at(tables, "layout.steering", tuple(Layout))),
        arm=Direction(choice_at(tables, "layout.arm", tuple(Direction))),
        pitman=Direction(choice_at(tables, "layout.pitman", tuple(Direction))),
        ranges=ranges_at(tables),
        defaults=defaults_at(tables),
        instruments=instruments_at(tables),
        limits=limits_at(tables),
        over_10000_lb=_over_10000_lb(tables),
        adjusters={link: adjuster_at(tables, f"adjusters.{link}") for link in LINKS},
        corrections=corrections,
        events=events_at(tables),
        road=Road(2300.0, 0.55, 95e3, 110e3),
        source=source,
        shop_own=shop_own,
        as_written=tables,
    )


def _name(tables: Mapping[str, Any], source: Path) -> str:
    name = line_at(tables, "name")
    if name != source.stem:
        raise EntryError("name", f"is “{plain(name)}”; it should be “{source.stem}” as the file's")
    return name


def _over_10000_lb(tables: Mapping[str, Any]) -> bool:
    is_heavy = flag_at(tables, "walk_round.over_10000_lb")
    if is_heavy is None:
        raise EntryError("walk_round.over_10000_lb", "is missing; it should be true or false")
    return is_heavy
