"""Order of the readings on a sheet: lines that a person fills in on one walk round the vehicle.

The readings of one pivot stand in one line, so that the tape, the plumb line and the mark on the
floor serve them all.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING

from core.documents.document import Document
from core.readings.survey import COORDINATES
from wizard.questions.question import Kind, Question
from wizard.questions.steps import STEPS

if TYPE_CHECKING:
    from core.profiles.profile import Profile

PIVOTS, CROSS_CHECKS, GUIDE, STEERING = (
    "Pivots",
    "Cross-checks",
    "Guide and kingpin",
    "Steering and travel",
)
"""Names of the parts of a sheet."""

WHEELBASE = "vehicle.wheelbase"

READING_KINDS: tuple[Kind, ...] = ("length", "angle", "number", "castor", "yes or no")

_PARTS = (
    ("readings.braces.", CROSS_CHECKS),
    ("readings.guide.", GUIDE),
    ("readings.kingpin.", GUIDE),
    ("readings.steering.", STEERING),
    ("readings.travel.", STEERING),
    ("readings.tie_rod.near.", PIVOTS),
    ("readings.tie_rod.", STEERING),
    (WHEELBASE, STEERING),
)
"""Parts by the beginning of a path."""


@dataclass(frozen=True)
class SheetLine:
    """One line of a sheet.

    Attributes
    ----------
    number : int
        Number of the line on the sheet and in its drawings, from 1.
    name : str
        Name of the pivot or of the single reading.
    part : str
        Name of the part that the line stands in.
    questions : tuple of Question
        Readings of the line: height, offset and station of a pivot, or one reading.
    """

    number: int
    name: str
    part: str
    questions: tuple[Question, ...]

    @property
    def is_pivot(self) -> bool:
        """True for a line with the coordinates of a pivot."""
        return coordinate_of(self.questions[0]) != ""


def sheet_lines(document: Document, profile: Profile | None) -> tuple[SheetLine, ...]:
    """Lines of the sheet of a vehicle, in walking order.

    Parameters
    ----------
    document : mapping
        With the layout and the guide.
    profile : Profile, optional
    """
    by_line: dict[str, list[Question]] = {}
    for question in readings_asked(document, profile):
        by_line.setdefault(_line_of(question), []).append(question)
    ordered = sorted(by_line.values(), key=lambda questions: _place(questions[0]))
    return tuple(
        SheetLine(number, _name(questions), part_of(questions[0].path), tuple(questions))
        for number, questions in enumerate(ordered, 1)
    )


def readings_asked(document: Document, profile: Profile | None) -> Iterator[Question]:
    """Questions about a reading that apply to a vehicle, in the order of the steps."""
    for step in STEPS:
        for question in step.questions:
            if _is_reading(question) and question.is_asked(document, profile):
                yield question.as_asked(document)


def _is_reading(question: Question) -> bool:
    """True if a sheet has a blank for the answer to a question."""
    is_read_off = question.path.startswith("readings.") or question.path == WHEELBASE
    return is_read_off and question.kind in READING_KINDS


def part_of(path: str) -> str:
    """Part of the sheet that a reading stands in."""
    named = (part for beginning, part in _PARTS if path.startswith(beginning))
    if path.endswith((".length", ".bent", ".slope")):
        return CROSS_CHECKS
    return next(named, PIVOTS)


def coordinate_of(question: Question) -> str:
    """Coordinate of a pivot that a question asks for: "height", "offset", "station", or ""."""
    pivot, _, kind = question.path.rpartition(".")
    return kind if kind in COORDINATES and pivot.count(".") == 2 else ""


def _line_of(question: Question) -> str:
    return question.path.rpartition(".")[0] if coordinate_of(question) else question.path


def _place(question: Question) -> int:
    return (PIVOTS, CROSS_CHECKS, GUIDE, STEERING).index(part_of(question.path))


def _name(questions: list[Question]) -> str:
    """Name of a line: that of its readings without the coordinate."""
    name = questions[0].name
    return name.rpartition(", ")[0] if coordinate_of(questions[0]) else name
