"""Axles for the tests: linkages drawn at random with a guide and leaning kingpins."""

from collections.abc import Callable
from dataclasses import replace

import numpy as np

from core.kinematics.guide import Guide, guide_of
from core.kinematics.linkage import Linkage
from core.kinematics.pivots import Direction, GuideKind, Layout
from tests.geometries import INCH, random_linkage

KINDS = [(layout, guide, True) for layout in Layout for guide in GuideKind] + [
    (layout, GuideKind.LEAF, False) for layout in Layout
]
"""Every layout with every guide and a track bar, and with leaf springs that replace it."""

Uniform = Callable[[float, float], float]


def random_axle(
    rng: np.random.Generator, layout: Layout, guide: GuideKind, has_track_bar: bool = True
) -> Linkage:
    """An axle as under a truck, with everything drawn."""
    base = fore_aft_linkage(rng) if layout == Layout.FORE_AFT else random_linkage(rng, layout)
    axle = replace(
        base,
        guide=random_guide(rng.uniform, guide, float(base.hub_height)),
        span=rng.uniform(28, 40) * INCH,
        castor=np.radians(rng.uniform(0, 8)),
        inclination=np.radians(rng.uniform(4, 13)),
    )
    return axle if has_track_bar else replace(axle, track_bar_frame=None, track_bar_axle=None)


def random_guide(uniform: Uniform, kind: GuideKind, hub: float) -> Guide:
    """A guide with pivots about where a truck has them."""

    def pivot(name: str, station: float, height: float) -> dict[str, float]:
        return {
            f"guide.{name}.station": (station + uniform(-4, 4)) * INCH,
            f"guide.{name}.height": hub + (height + uniform(-2, 2)) * INCH,
        }

    pitch_gain = {"guide.pitch_gain": np.radians(uniform(-1.6, 0.6)) / INCH}
    places = {
        GuideKind.UNMEASURED: pitch_gain | {"guide.fore_aft_gain": uniform(-0.12, 0.12)},
        GuideKind.RADIUS_ARMS: pivot("frame", -36, 3),
        GuideKind.TWO_ARMS: {
            **pivot("lower_frame", -30, 1),
            **pivot("lower_axle", 0, -2.5),
            **pivot("upper_frame", -25, 8),
            **pivot("upper_axle", 0, 6.5),
        },
        GuideKind.LEAF: {
            **pivot("eye", -24 if uniform(0, 1) < 0.5 else 24, 1),
            **pivot("seat", 0, 0),
            **pitch_gain,
            "guide.effective_length": uniform(0.67, 0.83),
        },
    }
    return guide_of(kind, places[kind])


def fore_aft_linkage(rng: np.random.Generator) -> Linkage:
    """A linkage whose drag link runs along the frame, with a track bar across."""
    across = random_linkage(rng, Layout.KNUCKLE)
    side = int(rng.choice([-1, 1]))
    ball = np.array(
        [
            rng.uniform(-80, 80),
            side * rng.uniform(480, 620),
            float(across.hub_height) + rng.uniform(60, 160),
        ]
    )
    along = np.array(
        [rng.choice([-1, 1]) * rng.uniform(600, 900), rng.uniform(-40, 40), rng.uniform(-90, 90)]
    )
    return replace(
        across,
        layout=Layout.FORE_AFT,
        drag_link_axle=ball,
        drag_link_frame=ball + along,
        arm_direction=Direction(rng.choice([Direction.INBOARD, Direction.OUTBOARD])),
        pitman_direction=Direction(rng.choice([Direction.DOWN, Direction.UP])),
        far_side=side,
    )
