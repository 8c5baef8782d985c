"""Values that no vehicle can have.

`core.entry_checks` queries an unusual value when it is entered. A record that was edited by hand
or written by another program was never checked at entry, so its values are checked here.
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
"""mm; a link that runs less far across the vehicle can neither hold nor steer an axle."""

FINEST, COARSEST = 0.01, 1_000.0
"""mm; no tape has finer marks, and a coarser tape is of no use."""

COARSEST_ANGLE = radians(45.0)
"""rad; a coarser angle finder is of no use."""

_NO_RUN = "leaves the {} no run across the vehicle: measure both its ends from one datum line"


def refuse_too_large(lengths: Mapping[str, float]) -> None:
    """Raise EntryError for the first length that no vehicle has.

    Parameters
    ----------
    lengths : mapping of float
        Lengths by path in the document, mm.
    """
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
            raise EntryError(
                f"instruments.{key}", 'is more than 45 deg; it should be such as "0.5 deg"'
            )


def refuse_links_without_run(readings: Mapping[str, float]) -> None:
    """Raise EntryError for a link that has both ends at one offset.

    Parameters
    ----------
    readings : mapping of float
        Values of the readings by name, mm.
    """
    for link in LINKS:
        axle_end = f"{link}.axle.offset"
        run = _difference(readings, f"{link}.frame.offset", axle_end)
        if run is not None and abs(run) < NARROWEST:
            raise EntryError(f"readings.{axle_end}", _NO_RUN.format(link.replace("_", " ")))


def refuse_impossible_joint(readings: Mapping[str, float], from_far_ball: Reading) -> None:
    """Raise EntryError for a joint beyond the drag link, or a tie rod without run across.

    Parameters
    ----------
    readings : mapping of float
        Values of the readings by name, mm.
    from_far_ball : Reading
        The tie rod's joint on the drag link, from the link's axle end.
    """
    along = from_far_ball.value
    across, up = (
        _difference(readings, f"drag_link.frame.{kind}", f"drag_link.axle.{kind}")
        for kind in ("offset", "height")
    )
    ahead = _difference(readings, "drag_link.frame.station", "drag_link.axle.station") or 0.0
    near = _difference(readings, f"{NEAR_BALL}.offset", "drag_link.axle.offset")
    if across is None or up is None or near is None:
        return
    length = hypot(across, up, ahead)
    if along >= length:
        raise EntryError(
            f"readings.{from_far_ball.name}",
            "lies beyond the drag link's frame end; the joint is on the link",
        )
    if abs(near - across * along / length) < NARROWEST:
        raise EntryError(f"readings.{NEAR_BALL}.offset", _NO_RUN.format("tie rod"))


def _difference(readings: Mapping[str, float], first: str, second: str) -> float | None:
    """First reading less second, mm; None where one of them was not taken."""
    if first not in readings or second not in readings:
        return None
    return readings[first] - readings[second]
