"""Help on a verdict, a comparison and the travel: keys, words, cautions."""

from wizard.phrases.help_section import CAUTIONS_SECTION, HelpSection, Keys

SCROLLING = (
    ("1 to 9", "a section of the screen"),
    ("↑ ↓", "scroll; PgUp and PgDn by a page, Home and End to its ends"),
    ("F1", "this help"),
    ("F2", "inches or millimetres"),
    ("Esc", "back"),
)
BOTH = (
    *SCROLLING,
    ("T", "move the axle through its travel"),
    ("B", "the bench: try other pivots, or plan a lift"),
    ("C", "compare before and after"),
)
STEP = (
    *BOTH,
    ("Enter", "the next step"),
    ("A", "take the reading again that would settle a verdict too close to call"),
    ("S", "go to a reading that cannot be right"),
    ("F3", "the steps, to go to any of them"),
    ("F9", "leave; the session waits at home"),
)
FILED = (
    *BOTH,
    ("P", "plans for a vehicle with bump steer; none is kept"),
    ("D", "the lead's decision: sign it or send it back"),
    ("W", "write the owner's page to print, beside the record"),
    ("F6", "measure the vehicle again"),
)
TRAVEL = (
    ("Space", "play and stop"),
    ("↑ ↓", "the axle up and down by a step"),
    ("PgUp PgDn", "up and down by four steps"),
    ("← →", "roll: left lifts the right wheel, right lifts the left one"),
    ("X", "play the roll instead of the heave"),
    ("0", "back to ride height"),
    ("V", "the axle and its arms or springs from the side, or from the front again"),
    ("mouse", "press or drag on the curve to move the axle"),
    ("mouse wheel", "a step up or down; with Shift it rolls the axle"),
    ("F1", "this help"),
    ("F2", "inches or millimetres"),
    ("Esc", "back"),
)
WORDS = (
    ("✓ within, steers true", "at least 95 in 100 that the true value is within its limit"),
    ("✗ out, bump steer", "at most 5 in 100"),
    ("≈ too close to call", "between the two: the readings cannot tell"),
    ("■ held back", "the walk-round or the stance failed: put that right and measure again"),
    (
        "give or take",
        "two standard uncertainties: the true value is that near 19 times in 20",
    ),
    ("parallel", "the angle between the two links, as seen from the front"),
    ("peak steer", "the largest steer over the working travel with the steering wheel held"),
    ("toe change", "the change of total toe-in over the working travel"),
    ("flat, near in length", "rules of the trade that advise; they do not decide"),
)


def help_on_verdict(is_filed: bool) -> tuple[HelpSection, ...]:
    """Help beside a verdict."""
    return _sections("A verdict", FILED if is_filed else STEP)


def help_on_comparison() -> tuple[HelpSection, ...]:
    """Help beside a comparison."""
    return _sections("Before and after", (*SCROLLING, ("O", "another session to compare with")))


def help_on_travel() -> tuple[HelpSection, ...]:
    """Help beside the moving axle."""
    return _sections("The axle through its travel", TRAVEL)


def _sections(title: str, keys: Keys) -> tuple[HelpSection, ...]:
    return (
        HelpSection(title, keys=keys),
        HelpSection("The words", glossary=WORDS),
        CAUTIONS_SECTION,
    )
