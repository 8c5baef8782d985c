"""Vehicles drawn at random: as built, then lifted, then partly put right. All numbers are invented.

Each vehicle is first drawn as a maker might build it: the drag link's frame end stands where the
wheels hardly steer over small travel. Then its frame is lifted by 0 to 4 in and its castor is set
again. Some of the vehicles have another pitman arm or a raised bracket by then. Left and right
are not exact mirror images.
"""

from collections.abc import Callable
from dataclasses import replace

import numpy as np

from tests.full_axle.moves import raised
from tests.full_axle.rotations import Array, unit
from tests.full_axle.steering import INCH, steer
from tests.full_axle.vehicle import SIDES, GuideKind, LayoutName, Vehicle

UNLIKE = 4.0
"""Half-width of the differences between left and right of the guide's pivots, mm."""

Uniform = Callable[[float, float], Array]
"""Draws N values between two limits."""


def drawn(rng: np.random.Generator, guide: GuideKind, layout: LayoutName, count: int) -> Vehicle:
    """Vehicles as they come to the workshop."""

    def uniform(low: float, high: float) -> Array:
        return rng.uniform(low, high, count)

    built = _with_links_matched(_drawn_links(rng, uniform, guide, layout, count))
    near_enough = raised(built, "drag_link.frame", uniform(-0.4, 0.4) * INCH)
    lifted = raised(near_enough, "ride_height", np.maximum(uniform(-1.0, 4.0), 0) * INCH)
    upright_again = replace(lifted, kingpins=_kingpins(uniform, lifted.far_side))
    pitman = np.where(rng.random(count) < 0.5, uniform(-2.5, 1.5), 0) * INCH
    bracket = np.where(rng.random(count) < 0.4, uniform(0.0, 2.5), 0) * INCH
    return raised(raised(upright_again, "drag_link.frame", pitman), "track_bar.axle", bracket)


def _drawn_links(
    rng: np.random.Generator,
    uniform: Uniform,
    guide: GuideKind,
    layout: LayoutName,
    count: int,
) -> Vehicle:
    """Vehicles with links that have all but one dimension of the finished ones."""
    box, arm_side, pitman_side = (rng.choice([-1.0, 1.0], count) for _ in range(3))
    far_side = -box
    hub = uniform(15.1, 16.9) * INCH
    kingpins = _kingpins(uniform, far_side)
    knuckle_across, knuckle_station = uniform(23.5, 25.5) * INCH, uniform(-8, 8)
    feet = {
        name: point(knuckle_station + uniform(-2, 2), side * knuckle_across + uniform(-2, 2), hub)
        for name, side in (("far", far_side), ("near", box))
    }
    arm = uniform(5.5, 7.5) * INCH
    rod_side = arm_side if layout == "tie-rod" else rng.choice([-1.0, 1.0], count)
    rod_arm = arm if layout == "tie-rod" else uniform(5.5, 7.5) * INCH
    rod_height, toed = hub - uniform(0, 3) * INCH, np.radians(uniform(-12, 12))
    rods = {
        name: _ball(
            feet[name],
            kingpins[name],
            rod_height + uniform(-3, 3),
            rod_side,
            rod_arm * (1 + uniform(-0.01, 0.01)),
            side * toed + np.radians(uniform(-1.5, 1.5)),
        )
        for name, side in (("far", far_side), ("near", box))
    }
    if layout == "tie-rod":
        ball = rods["far"] + uniform(0.03, 0.2)[:, None] * (rods["near"] - rods["far"])
    else:
        height, askew = hub + uniform(-1, 3) * INCH, np.radians(uniform(-4, 4))
        ball = _ball(feet["far"], kingpins["far"], height, arm_side, arm, askew)
    station, twist = uniform(-4.5, 4.5) * INCH, uniform(-0.85, 0.85) * INCH
    bar_axle = point(
        station - twist, far_side * uniform(13, 17) * INCH, hub + uniform(-0.5, 2) * INCH
    )
    bar_slope = np.radians(uniform(0, 6))
    bar_across = bar_axle[:, 1] + box * uniform(29, 36) * INCH
    bar_rise = np.abs(bar_across - bar_axle[:, 1]) * np.tan(bar_slope)
    link_across = ball[:, 1] + box * uniform(36, 43) * INCH
    return Vehicle(
        guide=guide,
        layout=layout,
        far_side=far_side,
        arm_side=arm_side,
        pitman_side=pitman_side,
        points={
            "track_bar.axle": bar_axle,
            "track_bar.frame": point(station + twist, bar_across, bar_axle[:, 2] + bar_rise),
            "drag_link.axle": ball,
            "drag_link.frame": point(
                ball[:, 0] + uniform(-1.9, 1.9) * INCH, link_across, ball[:, 2] + bar_rise
            ),
            **{f"kingpin.{name}": foot for name, foot in feet.items()},
            **{f"tie_rod.{name}": end for name, end in rods.items()},
            **_guide_points(uniform, guide, hub),
        },
        kingpins=kingpins,
        stiffness=_stiffness(uniform),
        hub_height=hub,
        pitman_arm=uniform(5.2, 6.8) * INCH,
        tread=uniform(58, 64) * INCH,
    )


def _with_links_matched(vehicle: Vehicle) -> Vehicle:
    """The vehicles with the drag link at a height where steer does not grow with travel.

    The growth is nearly linear in that height, so two steps of the secant method suffice.
    """

    def growth(rise: Array) -> Array:
        far, near = steer(raised(vehicle, "drag_link.frame", rise), np.array([-5.0, 5.0]))
        return (far + near)[:, 1] - (far + near)[:, 0]

    before, now = np.zeros(vehicle.count), np.full(vehicle.count, 10.0)
    growth_before = growth(before)
    for _ in range(2):
        growth_now = growth(now)
        slope = (growth_now - growth_before) / (now - before)
        before, growth_before, now = now, growth_now, now - growth_now / slope
    return raised(vehicle, "drag_link.frame", now)


def _kingpins(uniform: Uniform, far_side: Array) -> dict[str, Array]:
    """Directions of both kingpins: tops lean back and inboard, by not quite the same angles."""
    castor, inclination = uniform(2.5, 7.5), uniform(5.5, 12.5)
    axes = {}
    for name, side in (("far", far_side), ("near", -far_side)):
        back = np.tan(np.radians(castor + uniform(-0.4, 0.4)))
        inboard = np.tan(np.radians(inclination + uniform(-0.4, 0.4)))
        axes[name] = unit(np.stack([-back, -side * inboard, np.ones_like(back)], axis=-1))
    return axes


def _ball(
    foot: Array, kingpin: Array, height: Array, side: Array, arm: Array, askew: Array
) -> Array:
    """Balls of arms whose length, seen from above at the ball's height, is `arm`."""
    on_axis = foot + kingpin * ((height - foot[:, 2]) / kingpin[:, 2])[:, None]
    along = np.stack([np.cos(askew), np.sin(askew), np.zeros_like(askew)], axis=-1)
    return on_axis + (side * arm)[:, None] * along


def _guide_points(uniform: Uniform, guide: GuideKind, hub: Array) -> dict[str, Array]:
    """Pivots of the guide on both sides, nearly mirror images."""
    half_span = uniform(14.5, 19) * INCH
    if guide == "radius-arms":
        places = {"frame": (-uniform(34, 40), uniform(-1.5, 1.5), uniform(-1, 1))}
    elif guide == "two-arms":
        lower, upper = -uniform(1, 3), uniform(4.5, 6.5)
        places = {
            "lower_axle": (uniform(-1.5, 1), lower, uniform(-0.5, 0.5)),
            "lower_frame": (-uniform(22, 31), lower + uniform(0, 2.5), uniform(-1, 1)),
            "upper_axle": (uniform(-1.8, 1), upper, uniform(-0.5, 0.5)),
            "upper_frame": (-uniform(17, 25), upper + uniform(-1.5, 1.5), uniform(-1, 1)),
        }
    else:
        places = {}
    return {
        f"guide.{name}.{side}": point(
            ahead * INCH + uniform(-UNLIKE, UNLIKE),
            left * (half_span + outboard * INCH) + uniform(-UNLIKE, UNLIKE),
            hub + up * INCH + uniform(-UNLIKE, UNLIKE),
        )
        for name, (ahead, up, outboard) in places.items()
        for side, left in zip(SIDES, (1.0, -1.0), strict=True)
    }


def _stiffness(uniform: Uniform) -> dict[str, Array]:
    """Stiffness of the bushes relative to each other.

    A radius arm is held sideways by the bushes at its axle end, some 180 mm apart on an arm of
    900 mm, in shear: a few hundredths of what the bush on the frame has lengthwise.
    """
    arms = {f"{arm}.{side}": uniform(0.7, 1.3) for arm in ("lower", "upper") for side in SIDES}
    return {"sideways": uniform(0.005, 0.04), **arms}


def point(ahead: Array, left: Array, up: Array) -> Array:
    """Points (N, 3) of their coordinates, mm."""
    return np.stack(np.broadcast_arrays(ahead, left, up), axis=-1)
