"""One session: the vehicle, the readings and the assumed values of its document, typed."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from functools import cache
from typing import Any, get_args

from core.documents.document import value_at
from core.documents.entries import (
    EntryError,
    choice_at,
    flag_at,
    quantity_at,
    text_at,
    units_of,
)
from core.kinematics.pivots import (
    ARM_DIRECTIONS,
    PITMAN_DIRECTIONS,
    Direction,
    GuideKind,
    Layout,
)
from core.kinematics.road_events import Event, Road
from core.profiles.limits import Limits, refuse_impossible_limits
from core.profiles.profile import Profile, ProfileError
from core.profiles.profile_tables import events_at
from core.profiles.road import road_at
from core.readings import stance, walk_round
from core.readings.direct import DirectCheck, direct_at
from core.readings.photograph import HUBS, Means, Photograph, photographs_in
from core.readings.reading import Instruments, Reading
from core.readings.survey import WHEELS, reading_at, readings_in
from core.sessions import plausibility
from core.sessions.dimensions import READ, TRACK, Dimension, dimension_at, dimension_names
from core.sessions.known_entries import refuse_damaged
from core.sessions.sourced import Parse, Sources, sourced_quantity
from core.sessions.usual_places import usual_places
from core.text import quantity
from core.text.quantity import LengthUnit

SIDES = ("left", "right")


@dataclass(frozen=True)
class Session:
    """One session of a vehicle; lengths in mm, angles in rad.

    Attributes
    ----------
    id, kind, follows, profile, tag : str
    units : "in" or "mm"
    layout : Layout
    arm, pitman : Direction
        Directions of the steering arm and the pitman arm.
    guide : GuideKind
    has_track_bar : bool
    steering_box : "left", "right" or None
        Side of the steering box, where the document says it.
    instruments : Instruments
    readings : tuple of Reading
        The survey of the pivots.
    wheels : dict of Reading
        "left_offset" and "right_offset", where taken.
    dimensions : dict of Dimension
        Dimensions beside the pivots by the name of their reading, "steering.arm".
    bump, droop : float
        Suspension travel from ride height, mm.
    wheelbase : float
        mm
    limits : Limits
    events : tuple of Event
    road : Road or None
        Handling on the road; None where it is not known.
    held_back_by : tuple of str
        Failures of the walk-round and the stance, such as "stance.wheels_on_ground".
    not_checked : tuple of str
        Parts of the walk-round and the stance that nobody has looked at, such as
        "walk_round.joints.track_bar_frame".
    assumed : tuple of str
        Names of the values that nobody measured, such as "steering.arm".
    carried : tuple of str
        Names of the readings that were carried over from the session before.
    means : Means
    photographs : tuple of Photograph
        Their marks are readings too, whatever the means.
    usual : dict of Dimension
        Usual places of the pivots that photographs show; empty without photographs.
    has_unchecked_joints : bool
        True if the session is from photographs and nobody looked at a joint.
    direct : DirectCheck or None
        Steer that was read while the axle was moved, where that was done.
    """

    id: str
    kind: str
    follows: str
    units: LengthUnit
    profile: str
    tag: str
    layout: Layout
    arm: Direction
    pitman: Direction
    guide: GuideKind
    has_track_bar: bool
    steering_box: str | None
    instruments: Instruments
    readings: tuple[Reading, ...]
    wheels: dict[str, Reading]
    dimensions: dict[str, Dimension]
    bump: float
    droop: float
    wheelbase: float
    limits: Limits
    events: tuple[Event, ...]
    road: Road | None
    held_back_by: tuple[str, ...]
    not_checked: tuple[str, ...]
    assumed: tuple[str, ...]
    carried: tuple[str, ...] = ()
    direct: DirectCheck | None = None
    means: Means = Means.TAPE
    photographs: tuple[Photograph, ...] = ()
    usual: dict[str, Dimension] = field(default_factory=dict)
    has_unchecked_joints: bool = False

    @property
    def shows_hubs(self) -> bool:
        """True if both hubs are marked in a photograph."""
        marked = {mark.point for each in self.photographs for mark in each.marks if mark.counts}
        return marked >= set(HUBS)


def session_from(document: Mapping[str, Any], profile_of: Callable[[str], Profile]) -> Session:
    """The session that a document holds.

    Parameters
    ----------
    document : mapping
    profile_of : callable
        Loads a profile by its name; called only where the document leaves a value out.

    Raises
    ------
    core.documents.entries.EntryError
        A value is missing or is not what it should be, or no vehicle can have it. Or an entry
        looks damaged, and would count as one that was left out.
    core.profiles.profile.ProfileError
        The profile is needed and cannot be loaded.
    """
    refuse_damaged(document)
    profile = text_at(document, "session.profile")
    choice_at(document, "session.units", get_args(LengthUnit), "in")
    sources = Sources(document, cache(lambda: profile_of(profile)))
    layout = Layout(choice_at(document, "layout.steering", tuple(Layout)))
    guide = GuideKind(choice_at(document, "layout.guide", tuple(GuideKind), "unmeasured"))
    has_track_bar = flag_at(document, "layout.track_bar") is not False
    instruments = _instruments(sources)
    dimensions = {
        name: dimension_at(sources, name, guide, instruments)
        for name in dimension_names(layout, guide)
    }
    readings = readings_in(document, layout, has_track_bar)
    wheels = _wheels(document)
    means = Means(choice_at(document, "session.means", tuple(Means), Means.TAPE))
    photographs = photographs_in(document)
    if means == Means.PHOTOGRAPHS and not photographs:
        raise EntryError("photographs", "are missing, and the session was taken from photographs")
    usual: dict[str, Dimension] = {}
    if photographs:
        usual = usual_places(sources, layout, has_track_bar)
        if len(wheels) < len(SIDES):
            dimensions[TRACK] = dimension_at(sources, TRACK, guide, instruments)
    bump = sourced_quantity(sources, "readings.travel.bump", sources.parse_length, "4 in")
    droop = sourced_quantity(sources, "readings.travel.droop", sources.parse_length, "5 in")
    wheelbase = sourced_quantity(sources, "vehicle.wheelbase", sources.parse_length, "118 in")
    conditions = (bump, droop, wheelbase)
    session = Session(
        id=text_at(document, "session.id"),
        kind=text_at(document, "session.kind", "first"),
        follows=text_at(document, "session.follows", ""),
        units=units_of(document),
        profile=profile,
        tag=text_at(document, "vehicle.tag", ""),
        layout=layout,
        arm=_direction(document, "layout.arm", ARM_DIRECTIONS[layout]),
        pitman=_direction(document, "layout.pitman", PITMAN_DIRECTIONS[layout]),
        guide=guide,
        has_track_bar=has_track_bar,
        steering_box=_steering_box(document),
        instruments=instruments,
        readings=readings,
        wheels=wheels,
        dimensions=dimensions,
        bump=bump.value,
        droop=droop.value,
        wheelbase=wheelbase.value,
        limits=_limits(sources),
        events=_events(sources),
        road=_road(sources),
        held_back_by=(*_walk_round_failures(sources), *stance.failures(document)),
        not_checked=(
            *walk_round.not_checked(document, has_track_bar),
            *stance.not_checked(document),
        ),
        assumed=(
            *(dimension.name for dimension in dimensions.values() if dimension.is_assumed),
            *(condition.name for condition in conditions if condition.is_assumed),
        ),
        carried=_carried(document),
        means=means,
        photographs=photographs,
        usual=usual,
        has_unchecked_joints=means == Means.PHOTOGRAPHS and not walk_round.joints_checked(document),
        direct=direct_at(document),
    )
    _refuse_impossible(session)
    return session


def _direction(
    document: Mapping[str, Any], path: str, possible: tuple[Direction, ...]
) -> Direction:
    """Direction of an arm, one of those that its layout has."""
    return Direction(choice_at(document, path, possible))


def _carried(document: Mapping[str, Any]) -> tuple[str, ...]:
    """Names of the readings that were carried over from the session before."""
    carried = value_at(document, "session.carried", [])
    if not isinstance(carried, list) or not all(isinstance(name, str) for name in carried):
        raise EntryError("session.carried", 'should be a list such as ["track_bar.frame.height"]')
    return tuple(carried)


def _steering_box(document: Mapping[str, Any]) -> str | None:
    """Side of the steering box, where the document says it."""
    path = "layout.steering_box"
    return None if value_at(document, path) is None else choice_at(document, path, SIDES)


def _wheels(document: Mapping[str, Any]) -> dict[str, Reading]:
    """Offsets of the wheels, where taken, by "left_offset" and "right_offset"."""
    return {
        name.removeprefix("wheels."): reading
        for name, kind in WHEELS.items()
        if kind == "offset" and (reading := reading_at(document, name, kind))
    }


def _instruments(sources: Sources) -> Instruments:
    """Instruments of the document, completed with those of the profile."""

    def resolution(key: str, parse: Parse, example: str) -> float:
        value = quantity_at(sources.document, f"instruments.{key}", parse, example)
        if value is None:
            return float(getattr(sources.profile().instruments, key))
        if value < 0 or (value == 0 and key in ("tape", "angle_finder")):
            raise EntryError(f"instruments.{key}", f'should be more than 0, such as "{example}"')
        return value

    return Instruments(
        tape=resolution("tape", sources.parse_length, "1/16 in"),
        sighting=resolution("sighting", sources.parse_length, "1/8 in"),
        floor=resolution("floor", sources.parse_length, "1/16 in"),
        angle_finder=resolution("angle_finder", quantity.parse_angle, "0.5 deg"),
        seating=resolution("seating", quantity.parse_angle, "0.5 deg"),
    )


def _limits(sources: Sources) -> Limits:
    """Limits of the document, completed with those of the profile."""

    def limit(key: str, attribute: str, parse: Parse, example: str) -> float:
        value = quantity_at(sources.document, f"limits.{key}", parse, example)
        if value is None:
            return float(getattr(sources.profile().limits, attribute))
        if value <= 0:
            raise EntryError(f"limits.{key}", f'should be more than 0, such as "{example}"')
        return value

    return Limits(
        parallel=limit("parallel", "parallel", quantity.parse_angle, "1.5 deg"),
        flat=limit("flat", "flat", quantity.parse_angle, "10 deg"),
        length_ratio=limit("length_ratio", "length_ratio", quantity.parse_number, "0.85"),
        steer=limit("steer", "steer", quantity.parse_angle, "0.5 deg"),
        toe_change=limit("toe_change", "toe_change", quantity.parse_angle, "0.25 deg"),
        working_bump=limit("working_travel.bump", "working_bump", sources.parse_length, "2 in"),
        working_droop=limit("working_travel.droop", "working_droop", sources.parse_length, "2 in"),
    )


def _walk_round_failures(sources: Sources) -> tuple[str, ...]:
    """Failures of the walk-round.

    The profile decides between the regulations only where linkage play was measured and the
    document does not say which regulation applies.
    """
    document = sources.document
    has_play = value_at(document, "walk_round.linkage_play") is not None
    says_which = value_at(document, walk_round.OVER_10000_LB) is not None
    is_heavy = sources.profile().over_10000_lb if has_play and not says_which else False
    return walk_round.failures(document, is_heavy)


def _events(sources: Sources) -> tuple[Event, ...]:
    """Events of the document, else of the profile; () where that profile cannot be loaded."""
    if value_at(sources.document, "events") is not None:
        return events_at(sources.document)
    try:
        return sources.profile().events
    except ProfileError:
        return ()


def _road(sources: Sources) -> Road | None:
    """Handling of the document, else of the profile; None where that cannot be loaded."""
    if value_at(sources.document, "road") is not None:
        return road_at(sources.document)
    try:
        return sources.profile().road
    except ProfileError:
        return None


def _refuse_impossible(session: Session) -> None:
    """Raise EntryError for the first value that no vehicle can have."""
    taken = (*session.readings, *session.wheels.values())
    lengths = {
        f"readings.{name}": dimension.value
        for name, dimension in session.dimensions.items()
        if READ.get(name) in ("height", "station", "length")
    }
    plausibility.refuse_too_large(
        {
            **{f"readings.{reading.name}": max(reading.repeats, key=abs) for reading in taken},
            **lengths,
            **{f"assumed.{name}": place.value for name, place in session.usual.items()},
            "readings.travel.bump": session.bump,
            "readings.travel.droop": session.droop,
            "vehicle.wheelbase": session.wheelbase,
            "limits.working_travel.bump": session.limits.working_bump,
            "limits.working_travel.droop": session.limits.working_droop,
        }
    )
    plausibility.refuse_impossible_instruments(session.instruments)
    refuse_impossible_limits(session.limits)
    readings = {reading.name: reading.value for reading in session.readings}
    plausibility.refuse_links_without_run(readings, session.layout)
    if session.layout == Layout.INVERTED_Y:
        joint = session.dimensions["tie_rod.joint_from_far_ball"]
        plausibility.refuse_impossible_joint(readings, joint.value)
    plausibility.refuse_impossible_angles(
        {
            f"readings.{name}": session.dimensions[name].value
            for name in ("kingpin.castor", "kingpin.inclination")
        }
    )
