"""A session as a document tells it: what the vehicle is, what was read, what is assumed.

What was not measured comes from what the record itself says was assumed when it was filed, and
else from the profile; every such value is named in `Session.assumed`.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import partial
from typing import TYPE_CHECKING, Any, get_args

from core.documents.document import value_at
from core.documents.entries import EntryError, ProfileError, choice_at, quantity_at, text_at
from core.documents.tables import event_from
from core.kinematics.linkage import AHEAD, BEHIND, Layout
from core.kinematics.road_events import Event
from core.profiles.limits import Limits
from core.readings import stance, walk_round
from core.readings.reading import Instruments, Reading
from core.readings.survey import WHEELS, reading_at, readings_in
from core.sessions.plausibility import refuse_impossible
from core.text import quantity

if TYPE_CHECKING:
    from core.profiles.profile import Profile

LAYOUTS: tuple[Layout, ...] = get_args(Layout)
SIDES = {"ahead": AHEAD, "behind": BEHIND}

LENGTHS = {
    "arm": "steering.arm",
    "pitman_arm": "steering.pitman_arm",
    "near_arm": "tie_rod.near_arm",
    "joint_from_far_ball": "tie_rod.joint_from_far_ball",
    "hub_height": "wheels.hub_height",
}
"""Lengths that a profile can stand in for, and the names of their readings."""


@dataclass(frozen=True, eq=False)
class Session:
    """What one session knows of a vehicle; lengths in mm, angles in rad.

    Attributes
    ----------
    id, kind, follows, units, profile, tag : str
    layout : Layout
    arm_side, pitman_side : int
        +1 ahead, -1 behind.
    instruments : Instruments
    readings : tuple of Reading
        The survey of the pivots.
    wheels : dict of Reading
        "left_offset" and "right_offset", where taken.
    lengths : dict of Reading
        By the keys of LENGTHS; those in `assumed` have a single repeat and no doubt.
    ratio, bump, droop, wheelbase : float
    limits : Limits
    events : tuple of Event
    held_back_by : tuple of str
        What the walk-round and the stance failed on, such as "stance.wheels_on_ground".
    assumed : tuple of str
        Names of what was not measured, such as "steering.arm".
    """

    id: str
    kind: str
    follows: str
    units: str
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


def session_from(document: Mapping[str, Any], profile_of: "Callable[[str], Profile]") -> Session:
    """The session that a document holds.

    Parameters
    ----------
    document : mapping
    profile_of : callable
        Finds a profile by its name; asked only where the document leaves something out.

    Raises
    ------
    core.documents.entries.EntryError
        Something is missing or is not what it should be.
    core.profiles.profile.ProfileError
        The profile is needed and cannot be had.
    """
    session = _Reader(document, profile_of).session()
    refuse_impossible(session)
    return session


class _Reader:
    """Reads one document, and remembers what it had to take from the profile."""

    def __init__(self, document: Mapping[str, Any], profile_of: "Callable[[str], Profile]") -> None:
        self.document = document
        self.name = text_at(document, "session.profile")
        self.units = choice_at(document, "session.units", ("in", "mm"), "in")
        self.length = partial(quantity.length, unit="mm" if self.units == "mm" else "in")
        self.assumed: list[str] = []
        self._profile_of = profile_of
        self._profile: Profile | None = None

    @property
    def profile(self) -> "Profile":
        if self._profile is None:
            self._profile = self._profile_of(self.name)
        return self._profile

    def session(self) -> Session:
        document = self.document
        layout: Layout = choice_at(document, "layout.steering", LAYOUTS)  # type: ignore[assignment]
        wheels = {
            name.removeprefix("wheels."): reading
            for name, kind in WHEELS.items()
            if kind == "offset" and (reading := reading_at(document, name, kind))
        }
        return Session(
            id=text_at(document, "session.id"),
            kind=text_at(document, "session.kind", "first"),
            follows=text_at(document, "session.follows", ""),
            units=self.units,
            profile=self.name,
            tag=text_at(document, "vehicle.tag", ""),
            layout=layout,
            arm_side=SIDES[choice_at(document, "layout.arm", tuple(SIDES))],
            pitman_side=SIDES[choice_at(document, "layout.pitman", tuple(SIDES))],
            instruments=self.instruments(),
            readings=readings_in(document, layout),
            wheels=wheels,
            lengths=self.lengths(layout, "left_offset" in wheels and "right_offset" in wheels),
            ratio=self.single("readings.steering.ratio", quantity.number, "16"),
            bump=self.single("readings.travel.bump", self.length, "4 in"),
            droop=self.single("readings.travel.droop", self.length, "5 in"),
            wheelbase=self.single("vehicle.wheelbase", self.length, "118 in"),
            limits=self.limits(),
            events=self.events(),
            held_back_by=(*self.walk_round(), *stance.failures(document)),
            assumed=tuple(self.assumed),
        )

    def lengths(self, layout: str, centred: bool) -> dict[str, Reading]:
        """Arms, joint and hub height: those that this layout and these wheels make use of."""
        wanted = ["arm", "pitman_arm"]
        wanted += ["near_arm", "joint_from_far_ball"] if layout == "inverted-y" else []
        wanted += ["hub_height"] if centred else []
        return {name: self.length_reading(name) for name in wanted}

    def length_reading(self, name: str) -> Reading:
        path = LENGTHS[name]
        kind = WHEELS.get(path, "length")
        reading = reading_at(self.document, path, kind) or Reading(
            path, kind, (self.assume(path, self.length, "6 1/2 in"),)
        )
        if reading.value <= 0:
            raise EntryError(f"readings.{path}", 'should be more than 0, such as ["6 1/2 in"]')
        return reading

    def single(self, path: str, parse: Callable[[str], float], example: str) -> float:
        value = quantity_at(self.document, path, parse, example)
        if value is None:
            return self.assume(path.removeprefix("readings."), parse, example)
        if value <= 0:
            raise EntryError(path, f'should be more than 0, such as "{example}"')
        return value

    def assume(self, name: str, parse: Callable[[str], float], example: str) -> float:
        """A value that was not measured, from the record's own copy or from the profile."""
        self.assumed.append(name)
        copied = quantity_at(self.document, f"assumed.{name}", parse, example)
        if copied is not None and copied <= 0:
            raise EntryError(f"assumed.{name}", f'should be more than 0, such as "{example}"')
        return self.profile.defaults[name] if copied is None else copied

    def instruments(self) -> Instruments:
        def one(key: str, parse: Callable[[str], float], example: str) -> float:
            value = quantity_at(self.document, f"instruments.{key}", parse, example)
            if value is None:
                return float(getattr(self.profile.instruments, key))
            if value < 0 or (value == 0 and key in ("tape", "angle_finder")):
                raise EntryError(
                    f"instruments.{key}", f'should be more than 0, such as "{example}"'
                )
            return value

        return Instruments(
            tape=one("tape", self.length, "1/16 in"),
            sighting=one("sighting", self.length, "1/8 in"),
            floor=one("floor", self.length, "1/16 in"),
            angle_finder=one("angle_finder", quantity.angle, "0.5 deg"),
            seating=one("seating", quantity.angle, "0.5 deg"),
        )

    def limits(self) -> Limits:
        def one(key: str, attribute: str, parse: Callable[[str], float], example: str) -> float:
            value = quantity_at(self.document, f"limits.{key}", parse, example)
            if value is None:
                return float(getattr(self.profile.limits, attribute))
            if value <= 0:
                raise EntryError(f"limits.{key}", f'should be more than 0, such as "{example}"')
            return value

        return Limits(
            parallel=one("parallel", "parallel", quantity.angle, "1.5 deg"),
            flat=one("flat", "flat", quantity.angle, "10 deg"),
            length_ratio=one("length_ratio", "length_ratio", quantity.number, "0.85"),
            steer=one("steer", "steer", quantity.angle, "0.5 deg"),
            toe_change=one("toe_change", "toe_change", quantity.angle, "0.25 deg"),
            working_bump=one("working_travel.bump", "working_bump", self.length, "2 in"),
            working_droop=one("working_travel.droop", "working_droop", self.length, "2 in"),
        )

    def walk_round(self) -> tuple[str, ...]:
        """What the walk-round failed on; which regulation counts only matters to linkage play."""
        played = value_at(self.document, "walk_round.linkage_play") is not None
        said = value_at(self.document, walk_round.OVER_10000_LB) is not None
        return walk_round.failures(self.document, self.profile if played and not said else None)

    def events(self) -> tuple[Event, ...]:
        """Events of the record, else of the profile; none where that profile is not known here."""
        tables = value_at(self.document, "events")
        if tables is None:
            try:
                return self.profile.events
            except ProfileError:
                return ()
        if not isinstance(tables, list):
            raise EntryError("events", "should be a list of tables, [[events]]")
        return tuple(event_from(table, f"events {i + 1}") for i, table in enumerate(tables))
