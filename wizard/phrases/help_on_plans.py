"""Help on plans and on the bench: keys, the search, cautions."""

from wizard.phrases.help_section import CAUTIONS_SECTION, HelpSection

FILED = (
    ("← →", "another plan"),
    ("M", "change a move: another rise, and every number follows"),
    ("B", "the bench: try changes of the marked plan"),
    ("H", "the curve by ride height: how far a lift works; H again: by travel"),
    ("S", "parts of the shop; the search leaves out what is switched off"),
    ("A", "the adjuster of each bar, and its thread"),
    ("P", "the plans of lowest price, or fewest hours, first; where the shop's shelf knows them"),
    ("1 to 9, 0", "a section of the screen; 0 is the tenth"),
    ("↑ ↓ PgUp PgDn", "scroll"),
    ("Esc", "back to the verdict"),
    ("F2", "inches or millimetres"),
)
"""Keys that leave the session as it is."""

ORDER = ("O", "the work order of the marked plan, as a page to print")

UNFINISHED = (
    ("Enter", "choose the marked plan; it goes into the record"),
    ("F4", "continue without a plan"),
    *FILED,
    ("F3", "the steps, to go to any of them"),
    ("F9", "leave; the session waits at home"),
)
SEARCH = (
    "The search works through every combination of up to three corrections of the profile and of "
    "the parts shelf. A conversion counts as one of them. Plans with the fewest corrections come "
    "first. Among those the likeliest come "
    "first; steps of 5 in 100 count as equal. Then come the smallest moves, then the flatter "
    "links. The chance of a plan counts the doubt of today's readings. It also counts that a pivot "
    "is set only to 1/16 in."
)
BENCH = (
    ("1 to 9, ← →", "choose the part to move"),
    ("↑ ↓", "move it up or down by a step; an arm longer or shorter"),
    ("+ -", "a larger or smaller step"),
    ("Backspace, F8", "undo the last step"),
    ("0", "put everything back as it was measured"),
    ("L", "lift: the ride height in one step"),
    ("H", "the curve by ride height: how far a lift works; H again: by travel"),
    ("Enter", "keep it as a plan, in an unfinished session"),
    ("F2", "inches or millimetres"),
    ("Esc", "back; the nudges are dropped"),
)
TRYING = (
    "The picture, the curve and the rules follow each step. The axle is centred again and the "
    "steering wheel is straight, as after any work. So the bars get new lengths. Where a pivot of "
    "an arm or spring moves, the axle keeps its attitude: the arm is set to length."
)


def help_on_plans(is_filed: bool) -> tuple[HelpSection, ...]:
    """Help on the plans."""
    return (
        HelpSection("Keys", keys=(ORDER, *FILED) if is_filed else UNFINISHED),
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
