"""The verdict in one sentence that a driver understands."""

from core.fix.answers import Answer
from core.fix.plan import Plan
from core.verdict.verdict import Overall, Verdict

NOW = {
    Overall.BUMP_STEER: "Over a bump the front wheels turn by themselves, although the steering "
    "wheel is held still.",
    Overall.STEERS_TRUE: "Over a bump the front wheels stay straight as long as the steering wheel "
    "is held still.",
    Overall.TOO_CLOSE: "The readings cannot decide yet whether the front wheels turn by themselves "
    "over a bump.",
    Overall.HELD_BACK: "Nothing is decided yet: something has to be put right first, and measured "
    "again.",
}
"""Sentence on one session."""

PLANNED = {
    Answer.CURES: "The planned work cures that.",
    Answer.LIKELY: "The planned work is likely to cure that.",
    Answer.IMPROVES: "The planned work makes that better, and does not cure it.",
    Answer.NO_BETTER: "The planned work does not cure that.",
}
"""Sentence on the plan for a vehicle with bump steer."""

CURED = (
    "Before the work the front wheels turned by themselves over a bump. Now they stay straight as "
    "long as the steering wheel is held still."
)


def plain_words(verdict: Verdict, plan: Plan | None, before: Verdict | None) -> str:
    """The verdict for the driver, with the planned work or with the session before it."""
    if before is not None:
        was_bad = before.overall == Overall.BUMP_STEER
        return CURED if was_bad and verdict.overall == Overall.STEERS_TRUE else NOW[verdict.overall]
    if plan is not None and verdict.overall == Overall.BUMP_STEER:
        return f"{NOW[verdict.overall]} {PLANNED[plan.answer]}"
    return NOW[verdict.overall]
