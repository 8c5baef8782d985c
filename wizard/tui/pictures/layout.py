"""What of a front view goes where, in mm, and how much of it the frame has to hold."""

from collections.abc import Mapping
from itertools import chain
from math import cos, hypot, sin

from textual.geometry import Size

from wizard.tui.pictures.drawing import ACROSS, DOWN
from wizard.tui.pictures.scale import View, fit
from wizard.views.picture_data import USUAL, FrontPicture, Point, Wheels

TYRE_WIDTH = 0.55
"""Of the hub height: only for the drawing, nobody measures it."""

ENOUGH = 76
"""Dots that the longer link has to have for the wheels to be framed with it."""

BARS = {
    "track_bar": ("track_bar.frame", "track_bar.axle"),
    "drag_link": ("drag_link.frame", "drag_link.axle"),
}


def links(pivots: Mapping[str, Point], joint: Point | None) -> dict[str, tuple[Point, Point]]:
    """Both ends of every link that is known whole."""
    found = {
        bar: (pivots[frame], pivots[axle])
        for bar, (frame, axle) in BARS.items()
        if frame in pivots and axle in pivots
    }
    if joint and "tie_rod.near" in pivots:
        found["tie_rod"] = (joint, pivots["tie_rod.near"])
    return found


def bars(where: Mapping[str, Point]) -> list[tuple[Point, Point]]:
    """Both ends of track bar and drag link."""
    return [(where[frame], where[axle]) for frame, axle in BARS.values()]


def places(picture: FrontPicture) -> dict[str, Point]:
    """Where everything is, or about is while it is not known."""
    hubs = {"wheels.left": picture.wheels.left, "wheels.right": picture.wheels.right}
    known = {name: hub for name, hub in hubs.items() if hub}
    return {**USUAL, **picture.usual, **known, **picture.pivots}


def tyre(hub: Point, tilt: float, rest: Wheels) -> list[Point]:
    """Outline of a tyre about its hub, mm, with its corners taken off."""
    standing = rest.left or rest.right or hub
    radius = standing[1]
    half, corner = TYRE_WIDTH / 2 * radius, 0.12 * radius
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


def view_of(picture: FrontPicture, size: Size) -> View:
    """The view that holds the whole picture, with a row for words above and below it."""
    where = places(picture)
    wanted = [name for name in where if name.split(".")[0] in BARS]
    if "tie_rod.near" in picture.pivots or picture.asked.startswith("tie_rod.near"):
        wanted.append("tie_rod.near")
    if picture.asked.startswith("wheels"):
        wanted += ["wheels.left", "wheels.right"]
    points = [where[name] for name in wanted]
    points += chain(picture.before.values(), *picture.arcs.values())
    points.append((points[0][0], 0.0))
    if picture.asked.endswith("offset"):
        points.append((picture.datum, 0.0))
    if picture.arcs:
        drop = min(
            min(up for _, up in arc) - where[pivot][1] for pivot, arc in picture.arcs.items()
        )
        points.append((points[0][0], min(drop, 0.0)))
    hubs = [hub for hub in (picture.wheels.left, picture.wheels.right) if hub]
    tyres = [(across, 2 * up) for across, up in hubs]
    right, bottom = size.width * ACROSS - 1, size.height * DOWN - 1
    frame = (3 * ACROSS, 2 * DOWN, right - 3 * ACROSS, bottom - DOWN - 1)
    whole = fit([*points, *hubs, *tyres], *frame)
    runs = [hypot(end[0] - start[0], end[1] - start[1]) for start, end in bars(where)]
    return whole if whole.scale * max(runs) >= ENOUGH else fit(points, *frame)
