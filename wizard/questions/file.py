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
            "Anything to add for the one who opens this later?",
            "What was seen and not measured: a weld, a bent bracket, oil, a noise.",
            "The numbers say what; a note often says why.",
            optional=True,
        ),
        Question(
            "file",
            "file",
            "File",
            "Is this session ready to be filed?",
            "It is written into the vehicle's folder, read back and compared before it counts as "
            "filed. A filed session is not changed any more; the vehicle can be measured again at "
            "any time.",
            "Filed sessions are what before and after are told from.",
            choices=(
                Choice("file", "file it"),
                Choice("leave", "leave it unfinished for now", "it waits on the first page"),
            ),
        ),
    ),
)
