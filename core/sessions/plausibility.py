"""Values that no vehicle can have, however unusual it is.

An unusual value is queried when it is entered (`core.entry_checks`). A record that was edited by
hand or written by another program was never checked at entry, so it is checked here.
"""

from collections.abc import Mapping
from math import hypot, radians

from core.documents.entries import EntryError
from core.kinematics.pivots import NEAR_BALL
from core.readings.reading import Instruments, Reading
from core.readings.survey import LINKS

LARGEST = 100_000.0
"""mm; no length, height or offset of a vehicle is larger."""

NARROWEST = 1.0
"""mm; a link that runs less far across can neither hold nor steer an axle."""

FINEST, COARSEST = 0.01, 1_000.0
"""mm; no tape is marked finer, and a coarser tape is of no use."""

COARSEST_ANGLE = radians(45.0)
"""rad"""

NO_RUN = (
    "leaves the {} no run across the vehicle: its two ends have to be apart, both measured from "
    "one datum line"
)


def refuse_too_large(lengths: Mapping[str, float]) -> None:
    """Raise EntryError for the first length that no vehicle has; mm, by path."""
    for path, value in lengths.items():
        if abs(value) > LARGEST:
            raise EntryError(path, f"is more than {LARGEST / 1000:g} m; no vehicle is that large")


def refuse_impossible_instruments(instruments: Instruments) -> None:
    """Raise EntryError for a resolution that no tape and no angle finder has."""
    for key, finest in (("tape", FINEST), ("sighting", 0.0), ("floor", 0.0)):
        if not finest <= getattr(instruments, key) <= COARSEST:
            raise EntryError(
                f"instruments.{key}",
                f'should lie between {finest:g} mm and {COARSEST:g} mm, such as "1/16 in"',
            )
    for key in ("angle_finder", "seating"):
        if getattr(instruments, key) > COARSEST_ANGLE:
            raise EntryError(f"instruments.{key}", 'is more than 45 deg; it is such as "0.5 deg"')


def refuse_impossible_length_ratio(limit: float) -> None:
    """Raise EntryError for a limit above 1: the ratio is of the shorter link to the longer one."""
    if limit > 1:
        raise EntryError("limits.length_ratio", "is shorter to longer link, so at most 1")


def refuse_links_without_run(read: Mapping[str, float]) -> None:
    """Raise EntryError for a link whose two ends lie at one offset; mm, by name of the reading."""
    for link in LINKS:
        axle_end = f"{link}.axle.offset"
        run = _difference(read, f"{link}.frame.offset", axle_end)
        if run is not None and abs(run) < NARROWEST:
            raise EntryError(f"readings.{axle_end}", NO_RUN.format(link.replace("_", " ")))


def refuse_impossible_joint(read: Mapping[str, float], from_far_ball: Reading) -> None:
    """Raise EntryError for a joint beyond the drag link, or a tie rod without run across.

    Parameters
    ----------
    read : mapping of float
        Readings by name, mm.
    from_far_ball : Reading
        The tie rod's joint on the drag link, from the link's axle end.
    """
    along = from_far_ball.value
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
            f"readings.{from_far_ball.name}",
            "lies beyond the drag link's frame end; the joint is on the link",
        )
    if abs(near - across * along / length) < NARROWEST:
        raise EntryError(f"readings.{NEAR_BALL}.offset", NO_RUN.format("tie rod"))


def _difference(read: Mapping[str, float], name: str, other: str) -> float | None:
    return read[name] - read[other] if name in read and other in read else None
