"""Motion of an axle on its guide and kingpins against a rigid-body physics engine (mujoco).

The axle slides, pitches and carries its knuckles on hinges that lean as the kingpins do. Radius
arms are one body with the axle, pinned at their frame ends. Two arms a side and the equivalent
arms of leaf springs are distances. A carriage goes sideways with the axle and holds the frame ends,
because arms are measured in the side view. The bodies settle in time at a fixed heave, and the
heading of each wheel is read off its body. The engine works in metres.
"""

from dataclasses import dataclass

import mujoco
import numpy as np
import pytest

from core.kinematics.guide import guide_values
from core.kinematics.linkage import Linkage
from core.kinematics.motion import motion_at
from core.kinematics.pivots import Direction, GuideKind, Layout
from tests.axles import KINDS, random_axle

METRE = 1000.0  # mm
ANGLE = np.radians(1e-6)
LENGTH = 1e-5  # mm
AXLES, STATES = 25, 8  # of each kind: 200 states

FREEDOM = """
<joint name="ahead" type="slide" axis="1 0 0"/>
<joint name="walk" type="slide" axis="0 1 0"/>
<joint name="heave" type="slide" axis="0 0 1"/>
<joint name="pitch" type="hinge" axis="0 1 0"/>
"""
"""Degrees of freedom of the axle in the frame; constraints then fix all of them."""


@pytest.mark.slow
@pytest.mark.parametrize(("layout", "guide", "has_track_bar"), KINDS)
def test_wheel_held(layout, guide, has_track_bar):
    rng = np.random.default_rng(KINDS.index((layout, guide, has_track_bar)) + 50)
    for _ in range(AXLES):
        axle = random_axle(rng, layout, guide, has_track_bar)
        bodies = Bodies.of(axle)
        for heave in rng.uniform(-90, 90, STATES):
            bodies.settle(heave)
            motion = motion_at(axle, heave)
            assert abs(bodies.at("ahead") * METRE - motion.axle_ahead) < LENGTH
            assert abs(bodies.at("walk") * METRE - motion.axle_shift) < LENGTH
            assert abs(bodies.at("pitch") - motion.axle_pitch) < ANGLE
            far, near = bodies.heading("far_knuckle"), bodies.heading("near_knuckle")
            assert abs(far - motion.far_steer) < ANGLE
            assert abs(near - motion.near_steer) < ANGLE
            assert abs((far + near) / 2 - motion.steer) < ANGLE


@dataclass
class Bodies:
    """The axle and its links as bodies of the engine."""

    model: mujoco.MjModel
    data: mujoco.MjData

    @classmethod
    def of(cls, axle: Linkage) -> "Bodies":
        model = mujoco.MjModel.from_xml_string(described(axle))
        return cls(model, mujoco.MjData(model))

    def settle(self, heave: float) -> None:
        """Bring the axle to a heave (mm) and wait until it is at rest."""
        model, data = self.model, self.data
        mujoco.mj_resetData(model, data)
        model.equality("heave").data[0] = heave / METRE
        for _ in range(200):
            mujoco.mj_step(model, data, nstep=20)
            pinned = np.abs(data.efc_pos[: data.nefc]).max() < 1e-11
            if pinned and np.abs(data.qvel).max() < 1e-10:
                return
        raise AssertionError(f"the engine does not settle at heave {heave}")

    def at(self, joint: str) -> float:
        return float(self.data.joint(joint).qpos[0])

    def heading(self, knuckle: str) -> float:
        """Heading on the ground of the wheel on a knuckle, to the left positive, rad."""
        spin = self.data.body(knuckle).xmat.reshape(3, 3)[:, 1]
        return float(np.arctan2(-spin[0], spin[1]))


def described(axle: Linkage) -> str:
    """The axle in the description language of the engine."""
    Df, Da = axle.drag_link_frame / METRE, axle.drag_link_axle / METRE
    hub = np.array([0.0, 0.0, float(axle.hub_height) / METRE])
    side = axle.far_side
    far_foot = Da - arm(axle, axle.arm)
    near_foot = far_foot * [1, -1, 1]
    pinned_to = "far_knuckle"
    inside, tie_rod, others, pins = "", "", "", ""
    if axle.near_ball is not None:
        near = axle.near_ball / METRE
        near_foot = near - arm(axle, axle.near_arm)
        joint = Da + (Df - Da) / np.linalg.norm(Df - Da) * axle.joint_from_far_ball / METRE
        tie_rod = body("tie_rod", joint - Df, ball())
        pins += pin("tie_rod", "near_knuckle", near - joint)
    else:
        pins += '<joint joint1="near_knuckle" joint2="far_knuckle" polycoef="0 1 0 0 0"/>'
    if axle.layout == Layout.TIE_ROD:
        # The inclinations of both ends of the tie rod cancel, so its ball has a pin of its own.
        pinned_to = "rod"
        inside += body("rod", far_foot - hub, hinge("rod", kingpin(axle.castor, 0.0, side)))
        pins += '<joint joint1="rod" joint2="far_knuckle" polycoef="0 1 0 0 0"/>'
    for name, foot, its_side in (
        ("far_knuckle", far_foot, side),
        ("near_knuckle", near_foot, -side),
    ):
        axis = kingpin(axle.castor, axle.inclination, its_side)
        inside += body(name, foot - hub, hinge(name, axis))
    pins += pin("drag_link", pinned_to, Da - Df)
    if axle.track_bar_frame is not None and axle.track_bar_axle is not None:
        Tf, Ta = axle.track_bar_frame / METRE, axle.track_bar_axle / METRE
        others += body("track_bar", Tf, ball())
        pins += pin("track_bar", "axle", Ta - Tf)
    else:
        pins += '<joint joint1="walk"/>'
    guiding = guided(axle)
    return f"""
    <mujoco>
      <option gravity="0 0 0" timestep="0.002" jacobian="dense" tolerance="0" iterations="50"/>
      <default>
        <equality solref="0.01 1" solimp="0.9999 0.9999 0.001"/>
        <joint damping="1"/>
      </default>
      <worldbody>
        {body("axle", hub, FREEDOM + inside + guiding.on_axle)}
        {body("carriage", hub, slide("carriage") + guiding.on_carriage)}
        {body("drag_link", Df, ball() + tie_rod)}
        {others}
      </worldbody>
      <tendon>{guiding.arms}</tendon>
      <equality>
        <joint name="heave" joint1="heave"/>
        <joint joint1="carriage" joint2="walk" polycoef="0 1 0 0 0"/>
        {pins}
        {guiding.constraints}
      </equality>
    </mujoco>"""


@dataclass
class Guided:
    """Parts of the description that guide the axle lengthwise."""

    on_axle: str = ""
    on_carriage: str = ""
    arms: str = ""
    constraints: str = ""

    def add_arm(self, name: str, frame: np.ndarray, end: np.ndarray) -> None:
        """An arm of constant length between the carriage and the axle."""
        self.on_carriage += f'<site name="{name}_frame" pos="{numbers(frame)}"/>'
        self.on_axle += f'<site name="{name}_axle" pos="{numbers(end)}"/>'
        sites = f'<site site="{name}_frame"/><site site="{name}_axle"/>'
        self.arms += f'<spatial name="{name}">{sites}</spatial>'
        self.constraints += f'<tendon tendon1="{name}"/>'

    def add_gain(self, joint: str, gain: float) -> None:
        """A movement in proportion to heave."""
        self.constraints += (
            f'<joint joint1="{joint}" joint2="heave" polycoef="0 {gain:.17g} 0 0 0"/>'
        )


def guided(axle: Linkage) -> Guided:
    """The guide on both sides, seen from the middle of the axle."""
    value = {name: float(number) for name, number in guide_values(axle.guide).items()}
    kind, parts = axle.guide.kind, Guided()
    if "guide.pitch_gain" in value:
        parts.add_gain("pitch", value["guide.pitch_gain"] * METRE)
    if kind == GuideKind.UNMEASURED:
        parts.add_gain("ahead", value["guide.fore_aft_gain"])
        return parts
    for side, left in (("left", 1), ("right", -1)):

        def pivot(name: str, left: int = left) -> np.ndarray:
            station, height = (value[f"guide.{name}.{kind}"] for kind in ("station", "height"))
            across = left * float(axle.span) / 2
            return np.array([station, across, height - float(axle.hub_height)]) / METRE

        if kind == GuideKind.RADIUS_ARMS:
            parts.constraints += pin("axle", "carriage", pivot("frame"))
        elif kind == GuideKind.TWO_ARMS:
            for arm_name in ("lower", "upper"):
                ends = pivot(f"{arm_name}_frame"), pivot(f"{arm_name}_axle")
                parts.add_arm(f"{arm_name}_{side}", *ends)
        else:
            eye, seat = pivot("eye"), pivot("seat")
            centre = seat + (eye - seat) * value["guide.effective_length"]
            parts.add_arm(f"spring_{side}", centre, seat)
    return parts


def arm(axle: Linkage, length: float) -> np.ndarray:
    """Steering arm from its kingpin to its ball, m."""
    outboard = np.array([0, axle.far_side, 0])
    pointing = {
        Direction.AHEAD: np.array([1, 0, 0]),
        Direction.BEHIND: np.array([-1, 0, 0]),
        Direction.INBOARD: -outboard,
        Direction.OUTBOARD: outboard,
    }
    return pointing[axle.arm_direction] * float(length) / METRE


def kingpin(castor: float, inclination: float, side: int) -> np.ndarray:
    """Direction of a kingpin whose top leans back and inboard."""
    return np.array([-np.tan(castor), -side * np.tan(inclination), 1.0])


def body(name: str, place: np.ndarray, inside: str) -> str:
    weight = '<inertial pos="0 0 0" mass="1" diaginertia="0.1 0.1 0.1"/>'
    return f'<body name="{name}" pos="{numbers(place)}">{weight}{inside}</body>'


def hinge(name: str, axis: np.ndarray) -> str:
    return f'<joint name="{name}" type="hinge" axis="{numbers(axis)}"/>'


def slide(name: str) -> str:
    return f'<joint name="{name}" type="slide" axis="0 1 0"/>'


def ball() -> str:
    return '<joint type="ball"/>'


def pin(first: str, second: str, place: np.ndarray) -> str:
    return f'<connect body1="{first}" body2="{second}" anchor="{numbers(place)}"/>'


def numbers(place: np.ndarray) -> str:
    return " ".join(f"{value:.17g}" for value in place)
