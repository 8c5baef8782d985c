"""What F1 says: the guidance of the question at hand, the keys, the words, the cautions."""

from collections.abc import Sequence

from wizard.phrases.fact import Fact
from wizard.phrases.guidance import guidance_of
from wizard.phrases.help_section import CAUTIONS_SECTION, HelpSection
from wizard.questions.question import Question

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


def help_on(question: Question, closure: Sequence[Fact]) -> tuple[HelpSection, ...]:
    """Help while a question is asked.

    `closure` says whether the readings close. It stands beside the question too, but in short
    where the screen is low.
    """
    return (
        HelpSection(question.ask, guidance_of(question), question.reason),
        *([HelpSection("Do the readings close?", facts=tuple(closure))] if closure else []),
        HelpSection("Keys", keys=MEASURING),
        HelpSection("Numbers", NUMBERS),
        HelpSection("What is kept", KEPT),
        CAUTIONS_SECTION,
    )


def help_at_home() -> tuple[HelpSection, ...]:
    """Help at home."""
    return (HelpSection("Keys", keys=HOME), HelpSection("What is kept", KEPT), CAUTIONS_SECTION)
