"""Values that no vehicle can have.

`core.entry_checks` queries an unusual value when it is entered. A record that was edited by hand
or written by another program was never checked at entry, so its values are checked here.
"""

from collections.abc import Mapping
from math import hypot, radians

from core.documents.entries import EntryError
from core.kinematics.pivots import NEAR_BALL, Layout
from core.readings.reading import Instruments
from core.readings.survey import LINKS

LARGEST = 100_000.0
"""mm; no length, height or offset of a vehicle is larger."""

NARROWEST = 1.0
"""mm; a link that runs less far across the vehicle can neither hold nor steer an axle."""

FINEST, COARSEST = 0.01, 1_000.0
"""mm; no tape has finer marks, and a coarser tape is of no use."""

COARSEST_ANGLE = radians(45.0)
"""rad; a coarser angle finder is of no use."""

MOST_LEAN = radians(40.0)
"""rad; no kingpin leans further."""

_NO_RUN = "leaves the {} no run across the vehicle: measure both its ends from one datum line"
_NO_RUN_AHEAD = "leaves the {} no run along the vehicle: measure both its ends from the axle"


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


def refuse_links_without_run(readings: Mapping[str, float], layout: Layout) -> None:
    """Raise EntryError for a link that has both ends at one offset.

    A drag link that runs fore and aft has both ends at one station instead.

    Parameters
    ----------
    readings : mapping of float
        Values of the readings by name, mm.
    layout : Layout
    """
    for link in LINKS:
        is_fore_aft = link == "drag_link" and layout == Layout.FORE_AFT
        kind, no_run = ("station", _NO_RUN_AHEAD) if is_fore_aft else ("offset", _NO_RUN)
        axle_end = f"{link}.axle.{kind}"
        run = _difference(readings, f"{link}.frame.{kind}", axle_end)
        if run is not None and abs(run) < NARROWEST:
            raise EntryError(f"readings.{axle_end}", no_run.format(link.replace("_", " ")))


def refuse_impossible_angles(angles: Mapping[str, float]) -> None:
    """Raise EntryError for a lean of the kingpin that no axle has.

    Parameters
    ----------
    angles : mapping of float
        Angles by path in the document, rad.
    """
    for path, angle in angles.items():
        if abs(angle) > MOST_LEAN:
            raise EntryError(path, 'is more than 40 deg; it should be such as "5 deg"')


def refuse_impossible_joint(readings: Mapping[str, float], along: float) -> None:
    """Raise EntryError for a joint beyond the drag link, or a tie rod without run across.

    Parameters
    ----------
    readings : mapping of float
        Values of the readings by name, mm.
    along : float
        The tie rod's joint on the drag link, from the link's axle end, mm.
    """
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
            "readings.tie_rod.joint_from_far_ball",
            "lies beyond the drag link's frame end; the joint is on the link",
        )
    if abs(near - across * along / length) < NARROWEST:
        raise EntryError(f"readings.{NEAR_BALL}.offset", _NO_RUN.format("tie rod"))


def _difference(readings: Mapping[str, float], first: str, second: str) -> float | None:
    """First reading less second, mm; None where one of them was not taken."""
    if first not in readings or second not in readings:
        return None
    return readings[first] - readings[second]
