"""Every step of the wizard in order, and every question by its path."""

from wizard.questions import (
    cross_checks,
    file,
    fix,
    guide,
    layout,
    photographs,
    pivots,
    stance,
    steering_and_travel,
    vehicle,
    verdict,
    walk_round,
)
from wizard.questions.question import Step

STEPS: tuple[Step, ...] = (
    vehicle.STEP,
    walk_round.STEP,
    stance.STEP,
    layout.STEP,
    photographs.STEP,
    pivots.STEP,
    cross_checks.STEP,
    guide.STEP,
    steering_and_travel.STEP,
    verdict.STEP,
    fix.STEP,
    file.STEP,
)

QUESTIONS = {question.path: question for step in STEPS for question in step.questions}
"""Every question by its path."""
