"""A plan as pictures: the pivots and the curve now, and as the plan leaves them."""

from __future__ import annotations

from dataclasses import replace
from math import degrees

import numpy as np

from core.fix.moves import moved_pivots
from core.fix.plan import Plan
from core.kinematics.pivots import PIVOTS
from core.text.quantity import LengthUnit
from core.verdict.verdict import Verdict
from wizard.phrases.work_steps import rise_words
from wizard.views.picture_data import CurvePicture, FrontPicture, Trace
from wizard.views.verdict import curve_of, front_of, joint_of, pivots_at_rest, trace_of

NOW, PLANNED = "now", "planned"


def front_of_plan(
    verdict: Verdict, plan: Plan, unit: LengthUnit, word: str = PLANNED, at_hand: str = ""
) -> FrontPicture:
    """The front view with every pivot now and planned; what moves says how far.

    Parameters
    ----------
    verdict : Verdict
    plan : Plan
    unit : "in" or "mm"
    word : str
        What the geometry of the plan is called.
    at_hand : str
        A pivot that is marked, moved or not.
    """
    front, now, then = front_of(verdict), verdict.measured.linkage, plan.after.linkage
    notes = {
        pivot: rise_words(float(then.pivot(pivot)[2] - now.pivot(pivot)[2]), unit)
        for pivot in moved_pivots(plan.corrections)
    }
    if at_hand in PIVOTS:
        notes[at_hand] = f"◂ {notes.get(at_hand, 'at hand')}"
    notes |= {
        link: f"{abs(degrees(slope)):.1f} deg"
        for link, slope in zip(("track_bar", "drag_link"), plan.after.slopes, strict=True)
    }
    return replace(
        front,
        pivots=pivots_at_rest(then),
        joint=joint_of(then),
        before=front.pivots if plan.moves else {},
        before_joint=front.joint if plan.moves else None,
        before_word=NOW,
        after_word=word,
        arcs={},
        notes=notes,
    )


def curve_of_plan(
    verdict: Verdict, plan: Plan, unit: LengthUnit, word: str = PLANNED
) -> CurvePicture:
    """Steer against travel now and planned, on one plot."""
    heave, steer = verdict.sweep.heave.tolist(), np.degrees(plan.after.motion.steer).tolist()
    return replace(
        curve_of(verdict, unit),
        trace=Trace(word, heave, steer),
        other=trace_of(verdict, NOW),
    )
