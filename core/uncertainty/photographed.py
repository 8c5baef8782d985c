"""The adjustment of a session with photographs, and its slips."""

from collections.abc import Sequence
from dataclasses import replace
from math import sqrt

from core.adjustment.least_squares import Adjustment
from core.adjustment.mark_slips import Photographs, trials_of_marks
from core.adjustment.marks import Network
from core.adjustment.photograph_priors import Surroundings, Usual
from core.adjustment.photographs import adjust_with_photographs
from core.adjustment.slips import Slip, in_order, trials_of_readings
from core.kinematics.pivots import DRAG_LINK_ENDS, NEAR_BALL, TRACK_BAR_ENDS, Direction, pivots_of
from core.readings.reading import Reading, standard_uncertainty
from core.sessions.dimensions import TRACK, Dimension
from core.sessions.session import Session
from core.text.quantity import INCH

TRACK_BAR_STATION_WITHIN = 5 * INCH
BALL_STATION_WITHIN = 2 * INCH
FRAME_END_STATION_WITHIN = 4 * INCH
"""Half-widths of the stations, mm (common practice, no source)."""


def adjusted_with_photographs(
    session: Session,
    readings: Sequence[Reading],
    near: Network | None = None,
    has_small_residuals: bool = False,
) -> Adjustment:
    """The pivots of a session, adjusted to its photographs and some readings of its vehicle.

    Raises
    ------
    core.adjustment.bundle.MissingMark
        A pivot is neither marked nor read.
    core.adjustment.bundle.NoCamera
        The marks do not place the cameras.
    """
    return adjust_with_photographs(
        readings,
        session.instruments,
        pivots_of(session.layout, session.has_track_bar),
        session.photographs,
        surroundings_of(session),
        near,
        has_small_residuals,
    )


def surroundings_of(session: Session) -> Surroundings:
    """Values about the vehicle of a session that are known without its photographs."""
    pivots = pivots_of(session.layout, session.has_track_bar)
    track = session.dimensions.get(TRACK)
    return Surroundings(
        heights={pivot: _usual(session.usual[f"{pivot}.height"]) for pivot in pivots},
        stations={pivot: _station(session, pivot) for pivot in pivots},
        hub_height=_usual(session.dimensions["wheels.hub_height"]),
        track=None if track is None else _usual(track),
        wheels={
            f"wheels.{name}": Usual(
                reading.value, standard_uncertainty(reading, session.instruments)
            )
            for name, reading in session.wheels.items()
        },
    )


def _usual(dimension: Dimension) -> Usual:
    return Usual(dimension.value, dimension.u)


def _station(session: Session, pivot: str) -> Usual:
    """Usual station of a pivot."""
    if f"{pivot}.station" in session.usual:
        return _usual(session.usual[f"{pivot}.station"])
    if pivot in TRACK_BAR_ENDS:
        return Usual(0.0, TRACK_BAR_STATION_WITHIN / sqrt(3))
    arm = "tie_rod.near_arm" if pivot == NEAR_BALL else "steering.arm"
    ahead = (
        session.dimensions[arm].value
        if session.arm == Direction.AHEAD
        else (-session.dimensions[arm].value)
    )
    is_frame_end = pivot == DRAG_LINK_ENDS[0]
    within = FRAME_END_STATION_WITHIN if is_frame_end else BALL_STATION_WITHIN
    return Usual(ahead, within / sqrt(3))


def slips_with_photographs(session: Session, adjustment: Adjustment) -> tuple[Slip, ...]:
    """Slips that explain why a session with photographs does not close; () where it closes."""
    if adjustment.closes:
        return ()

    def with_readings(readings: Sequence[Reading]) -> Adjustment:
        return adjusted_with_photographs(session, readings, adjustment.network, True)

    def with_photographs(photographs: Photographs) -> Adjustment:
        return adjusted_with_photographs(
            replace(session, photographs=photographs), session.readings, None, True
        )

    return in_order(
        (
            *(
                replace(trial, photographs_after=session.photographs)
                for trial in trials_of_readings(
                    session.readings, session.instruments, adjustment, with_readings
                )
            ),
            *trials_of_marks(session.readings, session.photographs, adjustment, with_photographs),
        )
    )
