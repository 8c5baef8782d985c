"""What F1 says: the guidance of the question at hand, the keys, the words, the cautions."""

from collections.abc import Sequence

from textual.content import Content

from wizard.phrases.cautions import CAUTION_LINES
from wizard.questions.question import Question
from wizard.tui.widgets.guidance import reason

Section = tuple[str, Content]

MEASURING = (
    ("Enter", "goes on; nothing typed skips what is optional"),
    ("Esc, PgUp", "one question back"),
    ("PgDn", "one question on, as far as you have been"),
    ("↑ ↓", "choose in a list; beside a field they scroll the guidance"),
    ("F1", "this help"),
    ("F2", "inches or millimetres; what was typed keeps its unit"),
    ("F3", "the steps, to go to any of them"),
    ("F4", "skip a question that is optional"),
    ("F5", "keep a reading that was queried, with a reason"),
    ("F8, Ctrl+Z", "undo the last answer"),
    ("F9", "leave; the session waits on the first page"),
    ("1 to 9, y, n", "mark a line of a list; Enter takes it"),
    ("Space, 1 to 9", "tick a line where several can be ticked"),
)
HOME = (
    ("↑ ↓ Enter", "choose and open"),
    ("letters", "show only what holds them: a tag, a word, a verdict, a date"),
    ("F5", "measure a new vehicle"),
    ("F6", "measure the vehicle at hand again"),
    ("F7", "lay the session at hand beside the one it follows, or another one"),
    ("F8", "throw an unfinished session away, if that is meant"),
    ("F9", "quit; everything is on the disk"),
)
NUMBERS = (
    "Type numbers as the tape reads: 17 5/8, 17-5/8, 17.625, 1' 5 5/8\", 448 mm, 44.8 cm. Angles: "
    "8.5, 8 1/2 deg. Several readings of the same thing in one field: 17 5/8; 17 9/16. Take the "
    "tape off and sight the pivot again for each."
)
KEPT = (
    "Each accepted answer is on the disk before the next question is asked. If the laptop dies, "
    "the field being typed is all that is lost; the first page then offers to go on."
)


def help_on(question: Question, closing: Content) -> Sequence[Section]:
    """Help while a question is asked; `closing` says whether the readings close.

    It stands beside the question too, but not at full length where there is little room.
    """
    return (
        (question.ask, Content(question.do) + "\n" + reason(question)),
        *([("Do the readings close?", closing)] if closing else []),
        ("Keys", keys_text(MEASURING)),
        ("Numbers", Content(NUMBERS)),
        ("What is kept", Content(KEPT)),
        ("Cautions", Content(CAUTION_LINES)),
    )


def help_at_home() -> Sequence[Section]:
    """Help on the first page."""
    return (
        ("Keys", keys_text(HOME)),
        ("What is kept", Content(KEPT)),
        ("Cautions", Content(CAUTION_LINES)),
    )


def keys_text(keys: Sequence[tuple[str, str]]) -> Content:
    """Keys under each other with what they do."""
    wide = max(len(key) for key, _ in keys) + 2
    return Content("\n").join(
        Content.assemble((f"{key:<{wide}}", "bold $accent"), words) for key, words in keys
    )
