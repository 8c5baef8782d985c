"""Places and extent of the front view, in mm, and the frame that holds it."""

from collections.abc import Collection
from itertools import chain
from math import cos, hypot, sin

from textual.geometry import Size

from core.kinematics.pivots import NEAR_BALL, PIVOTS
from wizard.tui.pictures.drawing import ACROSS, DOWN
from wizard.tui.pictures.scale import View, fit
from wizard.views.picture_data import (
    DATUM,
    HUBS,
    LEFT_HUB,
    LINK_ENDS,
    RIGHT_HUB,
    USUAL_PLACES,
    FrontPicture,
    Point,
    Wheels,
)
from wizard.views.tape_path import TapeKind, TapePath

TYRE_WIDTH, TYRE_CORNER = 0.55, 0.12
"""Shares of the hub height. Invented, only for the drawing: nobody measures them."""

FEWEST_DOTS = 44
"""Dots that the longer link must have for the wheels to be framed with it."""


def places(picture: FrontPicture) -> dict[str, Point]:
    """Place of every pivot and hub, mm; an earlier or usual place where it is not measured."""
    hubs = {LEFT_HUB: picture.wheels.left, RIGHT_HUB: picture.wheels.right}
    known = {name: hub for name, hub in hubs.items() if hub}
    return {**USUAL_PLACES, **picture.before, **known, **picture.pivots}


def tyre(hub: Point, tilt: float, rest: Wheels) -> list[Point]:
    """Outline of a tyre about its hub, mm, with its corners cut.

    Parameters
    ----------
    hub : Point
        mm.
    tilt : float
        rad, the left wheel up positive.
    rest : Wheels
        The hubs at ride height, which give the radius.
    """
    standing = rest.left or rest.right or hub
    radius = standing[1]
    half, corner = TYRE_WIDTH / 2 * radius, TYRE_CORNER * radius
    outline = [
        (half, radius - corner), (half - corner, radius),
        (corner - half, radius), (-half, radius - corner),
        (-half, corner - radius), (corner - half, -radius),
        (half - corner, -radius), (half, corner - radius),
    ]  # fmt: skip
    return [
        (hub[0] + y * cos(tilt) - z * sin(tilt), hub[1] + y * sin(tilt) + z * cos(tilt))
        for y, z in outline
    ]


def whole_wheels(wheels: Wheels, view: View, size: Size) -> Wheels:
    """The wheels that a view holds wholly; a wheel that would be cut is left out.

    Parameters
    ----------
    wheels : Wheels
        The hubs at ride height.
    view : View
    size : Size
        Columns and rows.
    """

    def is_whole(hub: Point | None) -> bool:
        dots = view.line(tyre(hub, 0.0, wheels)) if hub else []
        right, bottom = size.width * ACROSS, size.height * DOWN
        return all(0 <= x < right and 0 <= y < bottom for x, y in dots)

    return Wheels(
        wheels.left if is_whole(wheels.left) else None,
        wheels.right if is_whole(wheels.right) else None,
    )


def view_of(picture: FrontPicture, paths: Collection[TapePath | None], size: Size) -> View:
    """The view that holds the whole picture, with a row for words above and below it.

    Parameters
    ----------
    picture : FrontPicture
    paths : collection of TapePath or None
        The ways of the tape, which are framed too.
    size : Size
        Columns and rows.
    """
    where = places(picture)
    tapes = [path for path in paths if path]
    targets = [target for path in tapes for target in path.targets]
    points = [where[name] for name in _framed(picture, targets)]
    points += chain(picture.before.values(), *picture.arcs.values())
    points += [*picture.ringed, *(aim.point for aim in picture.aims if aim.needed)]
    points.append((points[0][0], 0.0))
    if any(path.kind is TapeKind.OFFSET for path in tapes):
        points.append((DATUM, 0.0))
    if picture.arcs:
        drop = min(
            min(up for _, up in arc) - where[pivot][1] for pivot, arc in picture.arcs.items()
        )
        points.append((points[0][0], min(drop, 0.0)))
    hubs = picture.wheels.hubs
    rise = max(
        (up - where[pivot][1] for pivot, arc in picture.arcs.items() for _, up in arc), default=0.0
    )
    tyres = [
        (across + aside * TYRE_WIDTH / 2 * up, 2 * up + rise)
        for across, up in hubs
        for aside in (-1, 1)
    ]
    right, bottom = size.width * ACROSS - 1, size.height * DOWN - 1
    frame = (3 * ACROSS, 2 * DOWN, right - 3 * ACROSS, bottom - DOWN - 1)
    whole = fit([*points, *hubs, *tyres], *frame)
    ends = [(where[frame_end], where[axle_end]) for frame_end, axle_end in LINK_ENDS.values()]
    longest = max(hypot(end[0] - start[0], end[1] - start[1]) for start, end in ends)
    is_clear = whole.scale * longest >= FEWEST_DOTS or _has_drag_link_alone(picture)
    return whole if is_clear else fit(points, *frame)


def _framed(picture: FrontPicture, targets: Collection[str]) -> list[str]:
    """Pivots and hubs that the frame always holds."""
    if not targets and _has_drag_link_alone(picture):
        return [*picture.pivots]
    names = [*PIVOTS]
    if NEAR_BALL in picture.pivots or NEAR_BALL in targets:
        names.append(NEAR_BALL)
    if any(target in HUBS for target in targets):
        names += HUBS
    return names


def _has_drag_link_alone(picture: FrontPicture) -> bool:
    """True for a whole drag link without a track bar, so that one link needs less room."""
    return picture.pivots.keys() & set(PIVOTS) == set(LINK_ENDS["drag_link"])
