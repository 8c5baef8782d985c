"""One session as its document holds it: the vehicle, the readings, and the assumed values."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import cache, partial
from typing import Any

from core.documents.document import value_at
from core.documents.entries import EntryError, choice_at, quantity_at, text_at, units_of
from core.kinematics.pivots import Layout, Side
from core.kinematics.road_events import Event
from core.profiles.limits import Limits
from core.profiles.profile import Profile, ProfileError
from core.profiles.profile_tables import event_from
from core.readings import stance, walk_round
from core.readings.reading import Instruments, Reading
from core.readings.survey import WHEELS, reading_at, readings_in
from core.sessions import plausibility
from core.sessions.sourced import Parse, ProfileLoader, Sourced, sourced_length, sourced_quantity
from core.text import quantity
from core.text.quantity import LengthUnit

LENGTHS = {
    "arm": "steering.arm",
    "pitman_arm": "steering.pitman_arm",
    "near_arm": "tie_rod.near_arm",
    "joint_from_far_ball": "tie_rod.joint_from_far_ball",
    "hub_height": "wheels.hub_height",
}
"""Lengths that a profile has a default for, and the names of their readings."""


@dataclass(frozen=True, eq=False)
class Session:
    """One session of a vehicle; lengths in mm, angles in rad.

    Attributes
    ----------
    id, kind, follows, profile, tag : str
    units : "in" or "mm"
    layout : Layout
    arm_side, pitman_side : int
        +1 ahead, -1 behind.
    instruments : Instruments
    readings : tuple of Reading
        The survey of the pivots.
    wheels : dict of Reading
        "left_offset" and "right_offset", where taken.
    lengths : dict of Reading
        By the keys of LENGTHS; an assumed one has a single repeat and no uncertainty.
    ratio, bump, droop, wheelbase : float
    limits : Limits
    events : tuple of Event
    held_back_by : tuple of str
        Everything that the walk-round and the stance failed on, such as
        "stance.wheels_on_ground".
    assumed : tuple of str
        Names of the values that nobody measured, such as "steering.arm".
    """

    id: str
    kind: str
    follows: str
    units: LengthUnit
    profile: str
    tag: str
    layout: Layout
    arm_side: int
    pitman_side: int
    instruments: Instruments
    readings: tuple[Reading, ...]
    wheels: dict[str, Reading]
    lengths: dict[str, Reading]
    ratio: float
    bump: float
    droop: float
    wheelbase: float
    limits: Limits
    events: tuple[Event, ...]
    held_back_by: tuple[str, ...]
    assumed: tuple[str, ...]


def session_from(document: Mapping[str, Any], profile_of: Callable[[str], Profile]) -> Session:
    """The session that a document holds.

    Parameters
    ----------
    document : mapping
    profile_of : callable
        Loads a profile by its name; called only where the document leaves something out.

    Raises
    ------
    core.documents.entries.EntryError
        Something is missing or is not what it should be.
    core.profiles.profile.ProfileError
        The profile is needed and cannot be loaded.
    """
    name = text_at(document, "session.profile")
    choice_at(document, "session.units", ("in", "mm"), "in")
    units = units_of(document)
    length = partial(quantity.parse_length, unit=units)
    profile = cache(lambda: profile_of(name))
    layout = Layout(choice_at(document, "layout.steering", tuple(Layout)))
    sides = [
        Side(choice_at(document, f"layout.{arm}", tuple(Side))).sign for arm in ("arm", "pitman")
    ]
    instruments = _instruments(document, profile, length)
    readings = readings_in(document, layout)
    wheels = {
        name.removeprefix("wheels."): reading
        for name, kind in WHEELS.items()
        if kind == "offset" and (reading := reading_at(document, name, kind))
    }
    lengths = {
        key: sourced_length(document, profile, LENGTHS[key], length)
        for key in _lengths_needed(layout, wheels)
    }
    ratio, bump, droop, wheelbase = (
        sourced_quantity(document, profile, path, parse, example)
        for path, parse, example in (
            ("readings.steering.ratio", quantity.parse_number, "16"),
            ("readings.travel.bump", length, "4 in"),
            ("readings.travel.droop", length, "5 in"),
            ("vehicle.wheelbase", length, "118 in"),
        )
    )
    sourced: tuple[Sourced[Any], ...] = (*lengths.values(), ratio, bump, droop, wheelbase)
    session = Session(
        id=text_at(document, "session.id"),
        kind=text_at(document, "session.kind", "first"),
        follows=text_at(document, "session.follows", ""),
        units=units,
        profile=name,
        tag=text_at(document, "vehicle.tag", ""),
        layout=layout,
        arm_side=sides[0],
        pitman_side=sides[1],
        instruments=instruments,
        readings=readings,
        wheels=wheels,
        lengths={key: found.value for key, found in lengths.items()},
        ratio=ratio.value,
        bump=bump.value,
        droop=droop.value,
        wheelbase=wheelbase.value,
        limits=_limits(document, profile, length),
        events=_events(document, profile),
        held_back_by=(*_walk_round_failures(document, profile), *stance.failures(document)),
        assumed=tuple(found.name for found in sourced if found.is_assumed),
    )
    _refuse_impossible(session)
    return session


def _lengths_needed(layout: Layout, wheels: Mapping[str, Reading]) -> list[str]:
    """Keys of LENGTHS that this layout and these wheels make use of."""
    needed = ["arm", "pitman_arm"]
    if layout == Layout.INVERTED_Y:
        needed += ["near_arm", "joint_from_far_ball"]
    if {"left_offset", "right_offset"} <= wheels.keys():
        needed += ["hub_height"]
    return needed


def _instruments(document: Mapping[str, Any], profile: ProfileLoader, length: Parse) -> Instruments:
    def resolution(key: str, parse: Parse, example: str) -> float:
        value = quantity_at(document, f"instruments.{key}", parse, example)
        if value is None:
            return float(getattr(profile().instruments, key))
        if value < 0 or (value == 0 and key in ("tape", "angle_finder")):
            raise EntryError(f"instruments.{key}", f'should be more than 0, such as "{example}"')
        return value

    return Instruments(
        tape=resolution("tape", length, "1/16 in"),
        sighting=resolution("sighting", length, "1/8 in"),
        floor=resolution("floor", length, "1/16 in"),
        angle_finder=resolution("angle_finder", quantity.parse_angle, "0.5 deg"),
        seating=resolution("seating", quantity.parse_angle, "0.5 deg"),
    )


def _limits(document: Mapping[str, Any], profile: ProfileLoader, length: Parse) -> Limits:
    def limit(key: str, attribute: str, parse: Parse, example: str) -> float:
        value = quantity_at(document, f"limits.{key}", parse, example)
        if value is None:
            return float(getattr(profile().limits, attribute))
        if value <= 0:
            raise EntryError(f"limits.{key}", f'should be more than 0, such as "{example}"')
        return value

    return Limits(
        parallel=limit("parallel", "parallel", quantity.parse_angle, "1.5 deg"),
        flat=limit("flat", "flat", quantity.parse_angle, "10 deg"),
        length_ratio=limit("length_ratio", "length_ratio", quantity.parse_number, "0.85"),
        steer=limit("steer", "steer", quantity.parse_angle, "0.5 deg"),
        toe_change=limit("toe_change", "toe_change", quantity.parse_angle, "0.25 deg"),
        working_bump=limit("working_travel.bump", "working_bump", length, "2 in"),
        working_droop=limit("working_travel.droop", "working_droop", length, "2 in"),
    )


def _walk_round_failures(document: Mapping[str, Any], profile: ProfileLoader) -> tuple[str, ...]:
    """Failures of the walk-round.

    The profile is asked for its regulation only where linkage play was measured and the document
    does not say which regulation counts.
    """
    has_play = value_at(document, "walk_round.linkage_play") is not None
    says_which = value_at(document, walk_round.OVER_10000_LB) is not None
    is_heavy = profile().over_10000_lb if has_play and not says_which else False
    return walk_round.failures(document, is_heavy)


def _events(document: Mapping[str, Any], profile: ProfileLoader) -> tuple[Event, ...]:
    """Events of the record, else of the profile; () where that profile is not known here."""
    tables = value_at(document, "events")
    if tables is None:
        try:
            return profile().events
        except ProfileError:
            return ()
    if not isinstance(tables, list):
        raise EntryError("events", "should be a list of tables, [[events]]")
    return tuple(event_from(table, f"events {i + 1}") for i, table in enumerate(tables))


def _refuse_impossible(session: Session) -> None:
    """Raise EntryError for the first value that no vehicle can have."""
    taken = (*session.readings, *session.wheels.values(), *session.lengths.values())
    plausibility.refuse_too_large(
        {
            **{f"readings.{reading.name}": max(reading.repeats, key=abs) for reading in taken},
            "readings.travel.bump": session.bump,
            "readings.travel.droop": session.droop,
            "vehicle.wheelbase": session.wheelbase,
            "limits.working_travel.bump": session.limits.working_bump,
            "limits.working_travel.droop": session.limits.working_droop,
        }
    )
    plausibility.refuse_impossible_instruments(session.instruments)
    plausibility.refuse_impossible_length_ratio(session.limits.length_ratio)
    read = {reading.name: reading.value for reading in session.readings}
    plausibility.refuse_links_without_run(read)
    if session.layout == Layout.INVERTED_Y:
        plausibility.refuse_impossible_joint(read, session.lengths["joint_from_far_ball"])
