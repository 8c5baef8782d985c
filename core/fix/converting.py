"""A vehicle after a conversion: pivots elsewhere, another layout, arms of another length."""

from dataclasses import replace
from typing import Any

import numpy as np

from core.kinematics.linkage import Linkage, with_scalars
from core.kinematics.pivots import Layout
from core.kinematics.raising import raised
from core.kinematics.vectors import Scalars
from core.profiles.conversions import Conversion
from core.profiles.corrections import PivotStep

LEFT, RIGHT = 1, -1


def converted(linkage: Linkage, conversion: Conversion, lift: Scalars = 0.0) -> Linkage:
    """The linkage after a conversion; each bar is set to its new length.

    Parameters
    ----------
    linkage : Linkage
    conversion : Conversion
        With its `middle` set for this vehicle.
    lift : array (...)
        Zeros whose shape the pivots take, so that one conversion fits into arrays of combinations.
    """
    linkage = raised(linkage, "drag_link.frame", lift)
    for step in conversion.moves:
        linkage = raised(linkage, step.pivot, step.rise + lift) if step.rise else linkage
        linkage = _placed(linkage, step, conversion.middle)
    if conversion.steering is not None:
        linkage = _with_layout(linkage, conversion.steering)
    directions = {
        key: direction
        for key, direction in (
            ("arm_direction", conversion.arm),
            ("pitman_direction", conversion.pitman),
        )
        if direction is not None
    }
    changed: Linkage = replace(linkage, **directions)  # type: ignore[arg-type]
    return with_scalars(changed, conversion.readings)


def _placed(linkage: Linkage, step: PivotStep, middle: float) -> Linkage:
    """The linkage with a pivot at another station or offset."""
    if step.pivot.startswith("guide."):
        if step.to_station is None:
            return linkage
        station: dict[str, Any] = {f"{step.pivot.removeprefix('guide.')}_station": step.to_station}
        return replace(linkage, guide=replace(linkage.guide, **station))
    if step.to_station is None and step.to_offset is None:
        return linkage
    point = np.array(linkage.pivot(step.pivot), dtype=float)
    if step.to_station is not None:
        point[..., 0] = step.to_station
    if step.to_offset is not None:
        point[..., 1] = middle - step.to_offset  # offsets count to the right, y to the left
    return linkage.with_pivots({step.pivot: point})


def _with_layout(linkage: Linkage, layout: Layout) -> Linkage:
    """The linkage in another layout, without the tie rod that hangs on the drag link.

    A drag link across leads towards the wheel that it steers; a lengthwise one stays on its side.
    """
    ball, frame_end = linkage.drag_link_axle[..., 1], linkage.drag_link_frame[..., 1]
    towards = np.mean(ball if layout == Layout.FORE_AFT else ball - frame_end)
    return replace(
        linkage,
        layout=layout,
        near_ball=None,
        near_arm=0.0,
        joint_from_far_ball=0.0,
        far_side=LEFT if towards > 0 else RIGHT,
    )
