"""Words that ask for a mark in a photograph."""

from core.readings.photograph import CONTACTS, HUBS, OWN_POINTS, PLUMB
from wizard.phrases.mark_names import POINTS
from wizard.questions.pivots import CENTRES

_WHERE = {
    **CENTRES,
    **dict.fromkeys(HUBS, "its centre, as the wheel's face shows it"),
    **dict.fromkeys(CONTACTS, "where the middle of the tread touches the floor"),
    PLUMB[0]: "of a cord with a weight, or of anything that hangs straight down",
    PLUMB[1]: "of the same cord, as low as it is seen",
    **dict.fromkeys(OWN_POINTS, "a bolt head or a weld that is seen in two pictures"),
}

HOW = "Arrows move the crosshair, Enter marks."
"""Keys that mark a point."""

NO_PICTURE = "No picture yet. A adds one: JPEG or PNG, from the front, with both hubs in view."
ALL_MARKED = "Everything is marked in this picture. A adds another one, G goes on."


def ask_mark(point: str) -> str:
    """The question for one point."""
    article = "" if point in OWN_POINTS else "the "
    return f"Mark {article}{POINTS[point]}: {_WHERE[point]}."
