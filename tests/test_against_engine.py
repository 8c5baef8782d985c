"""Motion checked against a rigid-body physics engine (mujoco).

The linkage is built of bodies on slides, hinges and ball joints. The engine's connect constraints
pin its bars. The bodies settle in time at a fixed heave and roll. The lengths follow from the
places of the bodies at ride height, and no equation of Evenarc is used. The engine works in metres.
"""

from dataclasses import dataclass

import mujoco
import numpy as np
import pytest

from core.kinematics.linkage import Linkage
from core.kinematics.motion import motion_at, steering_wheel_angle
from tests.geometries import LAYOUTS, OPEN_CASES, linkage_of, random_linkage

METRE = 1000.0  # mm
ANGLE = np.radians(1e-6)
GEOMETRIES, STATES = 9, 8  # per layout: 3 x 9 x 8 = 216 states

FREEDOM = """
<joint name="walk" type="slide" axis="0 1 0"/>
<joint name="heave" type="slide" axis="0 0 1"/>
<joint name="roll" type="hinge" axis="1 0 0"/>
"""
"""Degrees of freedom of the axle in the frame; constraints then fix heave and roll."""


@pytest.mark.parametrize("layout", LAYOUTS)
def test_steering_wheel_held(layout):
    rng = np.random.default_rng(LAYOUTS.index(layout) + 20)
    for _ in range(GEOMETRIES):
        linkage = random_linkage(rng, layout)
        bodies = Bodies.of(linkage)
        for heave, roll in zip(
            rng.uniform(-100, 100, STATES), np.radians(rng.uniform(-8, 8, STATES)), strict=True
        ):
            check_held(bodies, linkage, heave, roll)


@pytest.mark.parametrize("layout", LAYOUTS)
def test_steering_wheel_let_go(layout):
    rng = np.random.default_rng(LAYOUTS.index(layout) + 30)
    for _ in range(GEOMETRIES):
        linkage = random_linkage(rng, layout)
        bodies = Bodies.of(linkage, let_go=True)
        for heave, roll in zip(
            rng.uniform(-60, 60, STATES), np.radians(rng.uniform(-5, 5, STATES)), strict=True
        ):
            bodies.settle(heave, roll)
            # The sector shaft is upright, so an arm ahead swings left for a wheel to the left. The
            # engine's hinge has no ratio and no convention of signs.
            swing = bodies.at("pitman_arm")
            commands = linkage.arm_direction.sign * linkage.pitman_direction.sign
            assert abs(
                swing * linkage.ratio * commands - steering_wheel_angle(linkage, heave, roll)
            ) < (ANGLE * linkage.ratio)


@pytest.mark.parametrize("case", OPEN_CASES["cases"])
def test_worked_cases_settle_in_the_same_place(case):
    linkage = linkage_of(case)
    bodies = Bodies.of(linkage)
    for state in case["expected"]:
        check_held(bodies, linkage, state["heave_mm"], np.radians(state["roll_deg"]))


def check_held(bodies: "Bodies", linkage: Linkage, heave: float, roll: float) -> None:
    bodies.settle(heave, roll)
    motion = motion_at(linkage, heave, roll)
    assert abs(bodies.at("walk") * METRE - motion.axle_shift) < 1e-6
    far = bodies.at("far_knuckle")
    assert abs(far - 2 * np.arctan(motion.far_turn)) < ANGLE
    if linkage.near_ball is None:
        # The tie rod with equal parallel arms is a parallelogram: both wheels steer alike.
        assert motion.near_turn == motion.far_turn
        assert motion.toe_in_change == 0
        return
    near = bodies.at("near_knuckle")
    assert abs(near - 2 * np.arctan(motion.near_turn)) < ANGLE
    far_is_left = linkage.drag_link_axle[1] > linkage.near_ball[1]
    right_less_left = near - far if far_is_left else far - near
    if roll == 0:
        assert abs(right_less_left - motion.toe_in_change) < ANGLE
        assert abs((near + far) / 2 - motion.steer) < ANGLE


@dataclass
class Bodies:
    """The linkage as bodies of the engine."""

    model: mujoco.MjModel
    data: mujoco.MjData

    @classmethod
    def of(cls, linkage: Linkage, let_go: bool = False) -> "Bodies":
        model = mujoco.MjModel.from_xml_string(described(linkage, let_go))
        return cls(model, mujoco.MjData(model))

    def settle(self, heave: float, roll: float) -> None:
        """Bring the axle to a heave (mm) and roll (rad) and wait until it is at rest."""
        model, data = self.model, self.data
        mujoco.mj_resetData(model, data)
        for name, value in (("heave", heave / METRE), ("roll", roll)):
            model.equality(name).data[0] = value
        for _ in range(200):
            mujoco.mj_step(model, data, nstep=20)
            pinned = np.abs(data.efc_pos[: data.nefc]).max() < 1e-11
            if pinned and np.abs(data.qvel).max() < 1e-10:
                return
        raise AssertionError(f"the engine does not settle at heave {heave}, roll {roll}")

    def at(self, joint: str) -> float:
        return float(self.data.joint(joint).qpos[0])


def described(linkage: Linkage, let_go: bool) -> str:
    """The linkage in the description language of the engine."""
    Tf, Ta, Df, Da = (
        point / METRE
        for point in (
            linkage.track_bar_frame,
            linkage.track_bar_axle,
            linkage.drag_link_frame,
            linkage.drag_link_axle,
        )
    )
    hub = np.array([0.0, 0.0, linkage.hub_height / METRE])
    kingpin = Da - [linkage.arm_direction.sign * linkage.arm / METRE, 0, 0]
    shaft = Df - [linkage.pitman_direction.sign * linkage.pitman_arm / METRE, 0, 0]
    knuckles = body("far_knuckle", kingpin - hub, hinge("far_knuckle"))
    pins = pin("track_bar", "axle", Ta - Tf) + pin("drag_link", "far_knuckle", Da - Df)
    tie_rod = ""
    if linkage.near_ball is not None:
        near = linkage.near_ball / METRE
        near_kingpin = near - [linkage.arm_direction.sign * linkage.near_arm / METRE, 0, 0]
        knuckles += body("near_knuckle", near_kingpin - hub, hinge("near_knuckle"))
        along = (Df - Da) / np.linalg.norm(Df - Da)
        joint = Da + along * linkage.joint_from_far_ball / METRE
        tie_rod = body("tie_rod", joint - Df, ball())
        pins += pin("tie_rod", "near_knuckle", near - joint)
    drag_link = body("drag_link", Df - shaft, ball() + tie_rod)
    held = "far_knuckle" if let_go else "pitman_arm"
    return f"""
    <mujoco>
      <option gravity="0 0 0" timestep="0.002" jacobian="dense" tolerance="0" iterations="50"/>
      <default>
        <equality solref="0.01 1" solimp="0.9999 0.9999 0.001"/>
        <joint damping="1"/>
      </default>
      <worldbody>
        {body("axle", hub, FREEDOM + knuckles)}
        {body("track_bar", Tf, ball())}
        {body("pitman_arm", shaft, hinge("pitman_arm") + drag_link)}
      </worldbody>
      <equality>
        <joint name="heave" joint1="heave"/>
        <joint name="roll" joint1="roll"/>
        <joint joint1="{held}"/>
        {pins}
      </equality>
    </mujoco>"""


def body(name: str, place: np.ndarray, inside: str) -> str:
    weight = '<inertial pos="0 0 0" mass="1" diaginertia="0.1 0.1 0.1"/>'
    return f'<body name="{name}" pos="{numbers(place)}">{weight}{inside}</body>'


def hinge(name: str) -> str:
    return f'<joint name="{name}" type="hinge" axis="0 0 1"/>'


def ball() -> str:
    return '<joint type="ball"/>'


def pin(first: str, second: str, place: np.ndarray) -> str:
    return f'<connect body1="{first}" body2="{second}" anchor="{numbers(place)}"/>'


def numbers(place: np.ndarray) -> str:
    return " ".join(f"{value:.17g}" for value in place)
