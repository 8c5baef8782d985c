"""What F1 says where a fix is planned: the keys, what the words mean, the cautions."""

from wizard.phrases.help_section import CAUTIONS_SECTION, HelpSection

PLANS = (
    ("← →", "another plan"),
    ("Enter", "choose the plan at hand; it goes into the record"),
    ("F4", "go on without a plan"),
    ("M", "change a move: another rise, and every number follows"),
    ("B", "the bench: try the plan at hand out further"),
    ("S", "what the shop has; what is switched off is left out of the search"),
    ("A", "how each bar is set in length, and its thread"),
    ("1 to 9", "a part of the page"),
    ("↑ ↓ PgUp PgDn", "scroll"),
    ("Esc", "back to the verdict"),
    ("F2", "inches or millimetres"),
    ("F3", "the steps, to go to any of them"),
    ("F9", "leave; the session waits on the first page"),
)
SEARCH = (
    "Every combination of up to three corrections of the profile and of the shop's parts shelf is "
    "worked through. First come the plans with the fewest corrections, among those the likeliest "
    "ones (steps of 5 in 100 count as equal), then the smallest moves, then the flatter links. "
    "How likely it is that a plan steers true counts today's doubt of the readings, and that a "
    "pivot can be set to 1/16 in."
)
BENCH = (
    ("1 to 7, ← →", "choose what to move"),
    ("↑ ↓", "move it up or down by a step; an arm longer or shorter"),
    ("+ -", "a larger or smaller step"),
    ("Backspace, F8", "undo the last step"),
    ("0", "put everything back as it was measured"),
    ("L", "lift by: the ride height in one go"),
    ("Enter", "keep it as a plan, where a session is planned"),
    ("F2", "inches or millimetres"),
    ("Esc", "back; nothing is kept"),
)
TRYING = (
    "The picture, the curve and the rules follow each step. As after any work the axle is taken to "
    "be centred again and the steering wheel straight, so the bars get new lengths."
)


def help_on_plans() -> tuple[HelpSection, ...]:
    """Help on the plans."""
    return (
        HelpSection("Keys", keys=PLANS),
        HelpSection("How plans are found", SEARCH),
        CAUTIONS_SECTION,
    )


def help_on_bench() -> tuple[HelpSection, ...]:
    """Help on the bench."""
    return (
        HelpSection("Keys", keys=BENCH),
        HelpSection("What is worked out", TRYING),
        CAUTIONS_SECTION,
    )
