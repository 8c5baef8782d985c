"""The last step: a note, and the session is filed."""

from wizard.questions.question import Choice, Question, Step

STEP = Step(
    "File",
    "The session goes into the vehicle's folder.",
    (
        Question(
            "session.note",
            "text",
            "Note",
            "Is there anything to add for the next reader?",
            "Things you saw and did not measure: a weld, a bent bracket, oil, a noise.",
            "A note often says why the numbers are as they are.",
            optional=True,
        ),
        Question(
            "file",
            "file",
            "File",
            "Is this session ready to be filed?",
            "Evenarc writes it into the vehicle's folder, reads it back and compares it. A filed "
            "session is never changed. You can measure the vehicle again at any time.",
            "Before and after are compared from filed sessions.",
            choices=(
                Choice("file", "file it"),
                Choice("leave", "leave it unfinished for now", "it waits at home"),
            ),
        ),
    ),
)
