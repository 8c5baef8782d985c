"""Words that ask for a mark in a photograph."""

from core.readings.photograph import CONTACTS, HUBS, OWN_POINTS, PLUMB
from wizard.phrases.mark_names import POINTS
from wizard.questions.pivots import SIGHT

_WHERE = {
    **SIGHT,
    **dict.fromkeys(HUBS, "The centre of the hub, as the wheel's face shows it."),
    **dict.fromkeys(CONTACTS, "Where the middle of the tread touches the floor."),
    PLUMB[0]: "The top of a plumb line, or of anything that hangs straight down.",
    PLUMB[1]: "The bottom of the same plumb line.",
    **dict.fromkeys(OWN_POINTS, "A point of your own, seen in two pictures, such as a bolt head."),
}

HOW = "Arrows move the crosshair. Enter or a click marks. F4: not in the picture."
"""Keys that mark a point."""

NO_PICTURE = "No picture yet. A adds one: JPEG or PNG, from the front, with both hubs in view."
ALL_MARKED = "Everything is marked in this picture. A adds another one, G goes on."


def ask_mark(point: str) -> str:
    """The question for one point."""
    return f"Mark the {POINTS[point]}. {_WHERE[point]}"
