"""The verdict asks nothing: it is shown on a screen of its own."""

from wizard.questions.question import Question, Step

STEP = Step(
    "Verdict",
    "What the readings say.",
    (
        Question(
            "verdict",
            "show",
            "Verdict",
            "The verdict",
            "Look at the verdict, and at how sure it is.",
        ),
    ),
)
