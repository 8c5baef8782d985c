"""Words of the screens of the direct check: the set-up, the cells, and how far it is."""

from collections.abc import Mapping, Sequence
from typing import Any

from core.readings.direct import EXAMPLES, Method
from core.text.plain_text import plain
from core.text.quantity import LengthUnit, format_length, parse_length
from core.verdict.verdict import Verdict
from wizard.phrases.direct import AGREES, DISAGREES, peak_words
from wizard.questions.question import Choice

CAUTIONS = (
    "Caution: a vehicle that falls kills. Springs out or softened. Frame on rated stands, never "
    "on a jack. Nobody under the vehicle while the jack moves; local codes and licensed practice "
    "come first."
)

SET_UP = (
    "The jack goes straight up under the middle of the axle. A strap holds the steering wheel "
    "straight ahead. Wheels off the floor, or on turn plates. Read ride height first and last, and "
    "at least four heights between, evenly over the travel."
)

METHODS: tuple[Choice, ...] = (
    Choice("board", "a board and a chalk line"),
    Choice("laser", "a laser and a wall"),
    Choice("turn-plate", "a turn plate"),
)

HOW: Mapping[Method, str] = {
    "board": "Clamp a straight edge level to the wheel. Snap a chalk line along the vehicle beside "
    "it. Tape from the front and from the rear end of the board to the line.",
    "laser": "Fix a laser on the hub, level and ahead. Read how far its mark on the wall is from a "
    "line on the wall.",
    "turn-plate": "Stand the wheel on a turn plate. Read its angle, to the left plus.",
}
"""How each method reads the steer."""

LENGTH_ASKED: Mapping[Method, tuple[str, str]] = {
    "board": ("How long is the board?", "Between the two points that the tape starts at."),
    "laser": ("How far is the wall from the hub?", "Along the floor, square to the wall."),
}
"""Question for the length that a method divides by, and how to take it."""

LINE_ASKED: Mapping[Method, str] = {
    "board": "On which side of the wheel is the chalk line?",
    "laser": "On which side of the wheel is the line on the wall?",
}

SIDES_OF_LINE = (Choice("left", "to its left"), Choice("right", "to its right"))

ASK = {
    "side": "Which wheel is read?",
    "height": "How far is it from the hub up to the mark on the frame?",
    "front": "How far is the board's front end from the line?",
    "rear": "How far is the board's rear end from the line?",
    "mark": "How far is the laser's mark from the line on the wall?",
    "angle": "What does the turn plate show?",
    "going": "Which way did the jack go to this height?",
}
"""Question of each cell."""

HINTS = {
    "side": "left or right; l or r is enough",
    "angle": "degrees, to the left plus, like 0.3",
    "going": "up or down; u or d is enough",
}
"""Hints on the cells that have no length."""


def cell_hint(key: str, unit: LengthUnit) -> str:
    """Hint on a cell, with an example in the unit of the session."""
    if key in HINTS:
        return HINTS[key]
    example = format_length(parse_length(EXAMPLES[key]), unit).removesuffix(f" {unit}")
    return f"like {example}; a second reading after ;"


HEIGHTS_WANTED = 6
"""Rows of a whole check: ride height twice, and four more."""


def method_words(table: Mapping[str, Any]) -> str:
    """The method with its length and its line."""
    parts = (table.get(key) for key in ("method", "board", "distance"))
    words = ", ".join(plain(part) for part in parts if part)
    line = f", line to the {plain(table['line'])} of the wheel" if table.get("line") else ""
    return words + line


def progress_words(rows: Sequence[Mapping[str, Any]]) -> str:
    """Number of whole rows, and of those that a whole check has."""
    if len(rows) < HEIGHTS_WANTED:
        return f"{len(rows)} of at least {HEIGHTS_WANTED} rows; ride height first and last"
    return f"{len(rows)} rows; the last one at ride height again"


def so_far_words(verdict: Verdict | None) -> str:
    """The outcome of the rows so far."""
    if verdict is None or verdict.direct is None:
        return "The points show on the curve from the second height on."
    direct = verdict.direct
    agreement = AGREES if direct.agrees else DISAGREES
    return f"{agreement.partition('. ')[0]}. Peak steer {peak_words(direct)}."
