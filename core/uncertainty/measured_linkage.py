"""The measured linkage of a session: adjusted pivots and dimensions, with their uncertainty."""

from dataclasses import replace

import numpy as np

from core.adjustment.least_squares import Adjustment, adjust
from core.adjustment.marks import Network
from core.adjustment.prior import station_priors
from core.adjustment.slips import Slip, slips_of
from core.documents.entries import EntryError
from core.kinematics.guide import guide_of, guide_readings
from core.kinematics.linkage import Linkage, with_scalars
from core.kinematics.pivots import NEAR_BALL, Direction, Layout, pivots_of
from core.kinematics.vectors import Array
from core.readings.photograph import HUBS
from core.readings.reading import Reading
from core.sessions.session import SIDES, Session
from core.uncertainty.photographed import adjusted_with_photographs, slips_with_photographs
from core.uncertainty.propagation import MeasuredLinkage, Source, parameter_names

LEFT, RIGHT = 1, -1

HUB_HEIGHT = "wheels.hub_height"


def adjusted(session: Session, readings: tuple[Reading, ...] | None = None) -> Adjustment:
    """The pivots of a session, adjusted to its readings or to other readings of its vehicle.

    Stations that were not taken, or are set aside, are unknowns that stand about their usual
    places.

    Parameters
    ----------
    session : Session
    readings : tuple of Reading
        Readings in place of those of the session.

    Raises
    ------
    core.adjustment.least_squares.MissingReading
        A pivot has no place.
    core.adjustment.bundle.MissingMark
        A pivot is neither marked in a photograph nor read.
    core.adjustment.least_squares.NoSolution
        The readings do not settle on one set of pivots.
    """
    readings = session.readings if readings is None else readings
    if session.photographs:
        return adjusted_with_photographs(session, readings)
    pivots = pivots_of(session.layout, session.has_track_bar)
    along = session.arm in (Direction.AHEAD, Direction.BEHIND)
    arm = session.dimensions["steering.arm"].value
    priors = station_priors(
        {reading.name for reading in readings if reading.counts},
        has_track_bar=session.has_track_bar,
        ball=session.arm.sign * arm if along else None,
        has_near_ball=NEAR_BALL in pivots,
        fore_aft=session.layout == Layout.FORE_AFT,
    )
    return adjust(readings, session.instruments, pivots, priors)


def slips_in(session: Session, adjustment: Adjustment) -> tuple[Slip, ...]:
    """Slips that explain why the readings of a session do not close, the best first.

    Parameters
    ----------
    session : Session
    adjustment : Adjustment
        The adjusted pivots of the session's readings.
    """
    if session.photographs:
        return slips_with_photographs(session, adjustment)
    return slips_of(session.readings, session.instruments, adjustment.pivots, adjustment.priors)


def measured_linkage(session: Session, adjustment: Adjustment) -> MeasuredLinkage:
    """The linkage of a session with the uncertainty of its parameters.

    With both wheel offsets, or both hubs marked in photographs, y = 0 lies midway between the
    wheels. Else it lies on the datum line.

    Parameters
    ----------
    session : Session
    adjustment : Adjustment
        The adjusted pivots of the session's readings.

    Raises
    ------
    core.documents.entries.EntryError
        Nothing says on which side of the vehicle a fore-and-aft drag link runs.
    """
    points, of_pivots = adjustment.points, adjustment.sensitivity
    if has_centre_plane(session):
        centre, of_centre = _centre_plane(session, adjustment)
        points = points - np.array([0.0, centre, 0.0])
        of_pivots = of_pivots - np.outer(np.tile([0.0, 1.0, 0.0], len(points)), of_centre)
    linkage = _linkage(session, dict(zip(adjustment.pivots, points, strict=True)))
    names = parameter_names(linkage)
    coordinates = 3 * len(adjustment.pivots)
    dimensions = [session.dimensions[name] for name in names[coordinates:]]
    u_dimensions = np.array([dimension.u for dimension in dimensions])
    u_sources = np.array([source.u for source in adjustment.sources])
    influence = np.zeros((len(names), len(u_sources) + len(dimensions)))
    influence[:coordinates, : len(u_sources)] = of_pivots * u_sources
    influence[coordinates:, len(u_sources) :] = np.diag(u_dimensions)
    if adjustment.network is not None:  # the hub height is one of the unknowns
        middle, of_middle = _middle_of_hubs(adjustment.network)
        linkage = with_scalars(linkage, {HUB_HEIGHT: float(middle[2])})
        row = names.index(HUB_HEIGHT)
        influence[row] = np.append(of_middle[2] * u_sources, np.zeros(len(dimensions)))
    taken = {each.name for each in adjustment.observed}
    taken |= {name for name, dimension in session.dimensions.items() if not dimension.is_assumed}
    taken |= {f"wheels.{name}" for name in session.wheels}
    sources = (
        *(Source(source.name, source.name not in taken) for source in adjustment.sources),
        *(Source(dimension.name, dimension.is_assumed) for dimension in dimensions),
    )
    return MeasuredLinkage(linkage, sources, influence)


def _centre_plane(session: Session, adjustment: Adjustment) -> tuple[float, Array]:
    """y of the centre plane, mm, and its change with each source (s,); read offsets are exact."""
    if adjustment.network is not None:
        middle, of_middle = _middle_of_hubs(adjustment.network)
        return float(middle[1]), of_middle[1]
    left, right = (session.wheels[f"{side}_offset"].value for side in SIDES)
    return -(left + right) / 2, np.zeros(len(adjustment.sources))


def _middle_of_hubs(network: Network) -> tuple[Array, Array]:
    """Middle between the hubs (3,), mm, and its change with each source (3, s)."""
    left, right = (network.rows(hub) for hub in HUBS)
    middle = (network.unknowns[left] + network.unknowns[right]) / 2
    return middle, (network.sensitivity[left] + network.sensitivity[right]) / 2


def _linkage(session: Session, points: dict[str, Array]) -> Linkage:
    """The linkage of a session with its pivots at some points."""
    value = {name: dimension.value for name, dimension in session.dimensions.items()}
    linkage = Linkage(
        layout=session.layout,
        track_bar_frame=points.get("track_bar.frame"),
        track_bar_axle=points.get("track_bar.axle"),
        drag_link_frame=points["drag_link.frame"],
        drag_link_axle=points["drag_link.axle"],
        arm=value["steering.arm"],
        arm_direction=session.arm,
        pitman_arm=value["steering.pitman_arm"],
        pitman_direction=session.pitman,
        ratio=value["steering.ratio"],
        far_side=_far_side(session, points),
        hub_height=value["wheels.hub_height"],
        guide=guide_of(
            session.guide, {name: value[name] for name in guide_readings(session.guide)}
        ),
        span=value["guide.span"],
        castor=value["kingpin.castor"],
        inclination=value["kingpin.inclination"],
        near_ball=points.get(NEAR_BALL),
    )
    if NEAR_BALL not in points:
        return linkage
    return replace(
        linkage,
        near_arm=value["tie_rod.near_arm"],
        joint_from_far_ball=value["tie_rod.joint_from_far_ball"],
    )


def _far_side(session: Session, points: dict[str, Array]) -> int:
    """Side of the wheel that the drag link reaches: +1 left, -1 right.

    The centre plane shows it. Without a centre plane the drag link shows it where it runs across,
    and the side of the steering box where it runs fore and aft.
    """
    ball, frame_end = points["drag_link.axle"], points["drag_link.frame"]
    if has_centre_plane(session):
        return LEFT if ball[1] > 0 else RIGHT
    if session.layout != Layout.FORE_AFT:
        return LEFT if ball[1] > frame_end[1] else RIGHT
    if session.steering_box is None:
        raise EntryError(
            "layout.steering_box", 'is missing; it should be "left" or "right" of the driver'
        )
    return LEFT if session.steering_box == "left" else RIGHT


def has_centre_plane(session: Session) -> bool:
    """True if both wheel offsets were read or both hubs marked: they place the centre plane."""
    return {"left_offset", "right_offset"} <= session.wheels.keys() or session.shows_hubs


def hub_centres(
    session: Session, linkage: Linkage, adjustment: Adjustment | None = None
) -> dict[str, Array]:
    """Hub centres at ride height by name, arrays (3,), mm; empty without a centre plane.

    The names are "wheels.left" and "wheels.right". A session with photographs needs its
    adjustment.
    """
    if not has_centre_plane(session):
        return {}
    network = adjustment.network if adjustment else None
    if network is not None:
        left, right = (-float(network.place(hub)[1]) for hub in HUBS)
    else:
        left, right = (session.wheels[f"{side}_offset"].value for side in SIDES)
    half_track = (right - left) / 2
    height = float(linkage.hub_height)
    return {
        "wheels.left": np.array([0.0, half_track, height]),
        "wheels.right": np.array([0.0, -half_track, height]),
    }
