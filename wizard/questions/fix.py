"""The fix is planned on a screen of its own; a vehicle that steers true needs none."""

from wizard.questions.question import Question, Step

STEP = Step(
    "Fix",
    "What the shop can move to put it right.",
    (
        Question(
            "fix",
            "show",
            "Fix",
            "The fix",
            "Look at what the shop can move, and choose what will be done.",
            optional=True,
        ),
    ),
)
