"""Help while measuring and at home: guidance, keys, numbers, cautions."""

from collections.abc import Sequence

from wizard.phrases.fact import Fact
from wizard.phrases.guidance import guidance_of
from wizard.phrases.help_section import CAUTIONS_SECTION, HelpSection
from wizard.questions.question import Question

MEASURING = (
    ("Enter", "next question; an empty field skips an optional question"),
    ("Esc, PgUp", "one question back"),
    ("PgDn", "one question on, up to the first open one"),
    ("↑ ↓", "choose in a list; beside a field, scroll the guidance"),
    ("F1", "this help"),
    ("F2", "inches or millimetres; typed values keep their unit"),
    ("F3", "the steps, to go to any of them"),
    ("F4", "skip a question that is optional"),
    ("F5", "keep a reading that was queried, with a reason"),
    ("F6", "go on in another folder, after the disk has refused an answer"),
    ("F7", "enough: show the verdict; readings that are left are not asked for"),
    ("F8, Ctrl+Z", "undo the last answer"),
    ("F9", "leave; the session waits at home"),
    ("Ctrl+L", "the long way, every question in order, or back to the short way"),
    ("a, b, c", "on a sheet, tick a line; a second time, not so"),
    ("E", "change the instruments, where they are shown"),
    ("1 to 9, y, n", "mark a line of a list; Enter takes it"),
    ("Space, 1 to 9", "tick a line in a list of several"),
)
HOME = (
    ("↑ ↓ Enter", "choose and open"),
    ("letters", "filter the list: by a tag, a word, a verdict, a date"),
    ("F2", "plan a lift, on a measured vehicle or on a typical one"),
    ("F3", "make a sheet to print and to measure with"),
    ("F4", "judge a vehicle from photographs"),
    ("F5", "measure a new vehicle"),
    ("F6", "measure the marked vehicle again"),
    ("F7", "compare the marked session with the one it follows, or with another"),
    ("F8", "throw away an unfinished session, after a question"),
    ("Esc", "show all sessions again"),
    ("F9", "quit; every answer is on the disk"),
)
LIFTS_TEXT = (
    "A vehicle that is lifted steers true up to some ride height, because its links get steeper. "
    "The curve shows the peak steer at each ride height, with the limit. What has to go with a "
    "lift is searched among the corrections and conversions of the profile and of the shop."
)
LIFTS = (
    ("L", "lift by so much, and search what has to go with it"),
    ("W", "lay the curve of one conversion over the present one"),
    ("V", "choose other vehicles; of several each gets a row"),
    ("← →", "show another curve"),
    ("F2", "inches or millimetres"),
    ("Esc", "back"),
)
NUMBERS = (
    "Type numbers as the tape reads: 17 5/8, 17-5/8, 17.625, 1' 5 5/8\", 448 mm, 44.8 cm. Type "
    "angles like 8.5 or 8 1/2 deg. Type several readings into one field: 17 5/8; 17 9/16. Take the "
    "tape off and sight the pivot again for each reading."
)
KEPT = (
    "Each accepted answer is on the disk before the next question is asked. If the laptop dies, "
    "you lose only the field you were typing. Home then offers to resume the session. Another "
    "window can have the same session open: the answers of both are kept."
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


def help_on_lifts() -> tuple[HelpSection, ...]:
    """Help on lifts."""
    return (
        HelpSection("Lifts", LIFTS_TEXT),
        HelpSection("Keys", keys=LIFTS),
        CAUTIONS_SECTION,
    )


def help_at_home() -> tuple[HelpSection, ...]:
    """Help at home."""
    return (HelpSection("Keys", keys=HOME), HelpSection("What is kept", KEPT), CAUTIONS_SECTION)
