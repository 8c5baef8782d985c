"""Pictures of a plan: pivots and curve now, and after the planned work."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from core.fix.plan import Plan
from core.text.quantity import LengthUnit
from core.verdict.verdict import Verdict
from wizard.phrases.rises import rise_words
from wizard.views.aims import aims_of_plan
from wizard.views.picture_data import CurvePicture, FrontPicture, Trace
from wizard.views.verdict import (
    curve_of,
    front_of,
    joint_of,
    pivots_at_rest,
    slope_notes,
    trace_of,
)

NOW, PLANNED = "now", "planned"


def front_of_plan(
    verdict: Verdict, plan: Plan, unit: LengthUnit, word: str = PLANNED, at_hand: str = ""
) -> FrontPicture:
    """The front view with every pivot now and planned, and the rise of each pivot that moves.

    The drag link's frame end aims at the places of the planned geometry.

    Parameters
    ----------
    verdict : Verdict
    plan : Plan
    unit : "in" or "mm"
    word : str
        Name of the planned geometry in the legend.
    at_hand : str
        A pivot that is marked, whether it moves or not; "" for none.
    """
    front, now, planned = front_of(verdict), verdict.measured.linkage, plan.after.linkage
    notes = {
        pivot: rise_words(float(planned.pivot(pivot)[2] - now.pivot(pivot)[2]), unit)
        for pivot in plan.moved
        if pivot in now.pivots
    }
    if at_hand in now.pivots:
        notes[at_hand] = f"◂ {notes.get(at_hand, 'at hand')}"
    notes |= slope_notes(plan.after.slopes)
    return replace(
        front,
        pivots=pivots_at_rest(planned),
        joint=joint_of(planned),
        before=front.pivots if plan.moves else {},
        before_joint=front.joint if plan.moves else None,
        before_word=NOW,
        after_word=word,
        arcs={},
        notes=notes,
        aims=aims_of_plan(verdict, plan, unit),
    )


def curve_of_plan(
    verdict: Verdict, plan: Plan, unit: LengthUnit, word: str = PLANNED
) -> CurvePicture:
    """Steer against travel now and planned, on one plot."""
    heave, steer = verdict.sweep.heave.tolist(), np.degrees(plan.after.motion.steer).tolist()
    return replace(
        curve_of(verdict, unit),
        trace=Trace(word, heave, steer),
        compared=trace_of(verdict, NOW),
    )
