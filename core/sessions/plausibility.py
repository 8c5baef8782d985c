"""What no vehicle can be, however unusual it is: sessions that no verdict can be worked out of.

What is only unusual is queried when it is entered (`core.entry_checks`); a record edited by hand or
written by another program comes without that.
"""

from collections.abc import Iterator
from math import hypot, radians
from typing import TYPE_CHECKING

from core.documents.entries import EntryError
from core.kinematics.linkage import NEAR_BALL
from core.readings.survey import LINKS

if TYPE_CHECKING:
    from core.sessions.session import Session

LARGEST = 100_000.0
"""mm; no length, height or offset of a vehicle is larger."""

NARROWEST = 1.0
"""mm; a link that runs less far across can neither hold nor steer an axle."""

FINEST, COARSEST = 0.01, 1_000.0
"""mm; no tape is marked finer, and none that is coarser is any use."""

COARSEST_ANGLE = radians(45.0)
"""rad"""

ACROSS = (
    "leaves the {} no run across the vehicle: its two ends have to be apart, both measured from "
    "one datum line"
)


def refuse_impossible(session: "Session") -> None:
    """Raises core.documents.entries.EntryError for the first entry that cannot be."""
    for path, value in _lengths(session):
        if abs(value) > LARGEST:
            raise EntryError(path, f"is more than {LARGEST / 1000:g} m; no vehicle is that large")
    instruments = session.instruments
    for key, finest in (("tape", FINEST), ("sighting", 0.0), ("floor", 0.0)):
        if not finest <= getattr(instruments, key) <= COARSEST:
            raise EntryError(
                f"instruments.{key}",
                f'should lie between {finest:g} mm and {COARSEST:g} mm, such as "1/16 in"',
            )
    for key in ("angle_finder", "seating"):
        if getattr(instruments, key) > COARSEST_ANGLE:
            raise EntryError(f"instruments.{key}", 'is more than 45 deg; it is such as "0.5 deg"')
    if session.limits.length_ratio > 1:
        raise EntryError("limits.length_ratio", "is shorter to longer link, so at most 1")
    read = {reading.name: reading.value for reading in session.readings}
    for link in LINKS:
        axle_end = f"{link}.axle.offset"
        run = _difference(read, f"{link}.frame.offset", axle_end)
        if run is not None and abs(run) < NARROWEST:
            raise EntryError(f"readings.{axle_end}", ACROSS.format(link.replace("_", " ")))
    if session.layout == "inverted-y":
        _refuse_joint(session, read)


def _lengths(session: "Session") -> Iterator[tuple[str, float]]:
    """Everything in mm, with its path."""
    for reading in (*session.readings, *session.wheels.values(), *session.lengths.values()):
        yield f"readings.{reading.name}", max(reading.repeats, key=abs)
    yield "readings.travel.bump", session.bump
    yield "readings.travel.droop", session.droop
    yield "vehicle.wheelbase", session.wheelbase
    yield "limits.working_travel.bump", session.limits.working_bump
    yield "limits.working_travel.droop", session.limits.working_droop


def _refuse_joint(session: "Session", read: dict[str, float]) -> None:
    """The tie rod's joint lies on the drag link, and the tie rod runs across."""
    path = session.lengths["joint_from_far_ball"].name
    along = session.lengths["joint_from_far_ball"].value
    across, up = (
        _difference(read, f"drag_link.frame.{kind}", f"drag_link.axle.{kind}")
        for kind in ("offset", "height")
    )
    ahead = _difference(read, "drag_link.frame.station", "drag_link.axle.station") or 0.0
    near = _difference(read, f"{NEAR_BALL}.offset", "drag_link.axle.offset")
    if across is None or up is None or near is None:
        return
    length = hypot(across, up, ahead)
    if along >= length:
        raise EntryError(
            f"readings.{path}", "lies beyond the drag link's frame end; the joint is on the link"
        )
    if abs(near - across * along / length) < NARROWEST:
        raise EntryError(f"readings.{NEAR_BALL}.offset", ACROSS.format("tie rod"))


def _difference(read: dict[str, float], name: str, other: str) -> float | None:
    return read[name] - read[other] if name in read and other in read else None
