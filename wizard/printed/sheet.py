"""Sheet to measure with: drawings of where the tape goes, and a blank for each reading."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from enum import StrEnum
from typing import Any

from markupsafe import Markup

from core.documents.document import Document
from core.documents.entries import units_of
from core.kinematics.pivots import GuideKind, Layout
from core.profiles.profile import Profile
from core.readings.survey import COORDINATES
from core.text.plain_text import plain
from wizard import __version__
from wizard.phrases.answer_words import UNIT_WORDS, assumed_words, choice_words
from wizard.phrases.cautions import CAUTIONS
from wizard.printed.rendering import render
from wizard.printed.sheet_svg import above_sheet_svg, front_sheet_svg, side_sheet_svg
from wizard.questions import layout, stance, walk_round
from wizard.questions.question import Step
from wizard.questions.sheet_order import (
    CROSS_CHECKS,
    PIVOTS,
    STEERING,
    SheetLine,
    sheet_lines,
)
from wizard.questions.steps import QUESTIONS
from wizard.views.above import above_of_answers
from wizard.views.front import usual_places
from wizard.views.side import side_of_answers

TEMPLATE = "sheet.html"

HINTS = {
    PIVOTS: "To the centre of bolt or ball. Height: from the floor. Offset: from the datum line, "
    "right is plus. Station: from the axle, ahead is plus.",
    CROSS_CHECKS: "Centre to centre. Slope: frame end higher is plus.",
    STEERING: "Arms seen from above: kingpin line or shaft to the centre of the ball. A guide is "
    "read on one side of the vehicle.",
}
"""How the readings of a part are taken, in one line."""

LAYOUT_TICKS = ("layout.arm", "layout.pitman", "layout.steering_box", "layout.ball")
"""Questions on the layout that the sheet asks; the others are printed on it."""

NOT_CHECKED = "not checked"
"""Choice that a sheet does not offer: a line without a tick says the same."""

DIRECT_ROWS = 7
"""Rows of the direct check: ride height first and last, and five heights between."""


class Paper(StrEnum):
    """Size of the paper."""

    LETTER = "letter"
    A4 = "a4"


@dataclass(frozen=True)
class Blank:
    """A line to tick or to write on.

    Attributes
    ----------
    name : str
    choices : tuple of str
        Words beside the boxes to tick; () for a line to write on.
    usual : str
        Value that is usual; "" without one.
    """

    name: str
    choices: tuple[str, ...] = ()
    usual: str = ""


@dataclass(frozen=True)
class PivotRow:
    """A row of the table of pivots.

    Attributes
    ----------
    number : int
    name : str
    cells : tuple of bool
        True for each coordinate that is read: height, offset, station.
    """

    number: int
    name: str
    cells: tuple[bool, bool, bool]


@dataclass(frozen=True)
class SingleRow:
    """A reading with a line of its own.

    Attributes
    ----------
    number : int
    name : str
    kind : str
        Kind of its question.
    repeats : bool
        True if it has boxes for two readings.
    """

    number: int
    name: str
    kind: str
    repeats: bool


@dataclass(frozen=True)
class Sheet:
    """Data of the sheet, which the template lays out.

    Attributes
    ----------
    title : str
    paper : Paper
    kind_of_vehicle : str
        Title of the profile; "" where the sheet is for no profile.
    layout, guide : str
        In words.
    unit_words : str
        Unit of the lengths: "inches".
    cautions : tuple of str
    instruments, walk_round, stance, layout_ticks : tuple of Blank
    front_drawing, above_drawing, side_drawing : Markup
        SVG.
    pivots : tuple of PivotRow
    cross_checks, others : tuple of SingleRow
    hints : mapping of str to str
        How the readings of each part are taken.
    direct_rows : int
    program_version : str
    """

    title: str
    paper: Paper
    kind_of_vehicle: str
    layout: str
    guide: str
    unit_words: str
    cautions: tuple[str, ...]
    instruments: tuple[Blank, ...]
    walk_round: tuple[Blank, ...]
    stance: tuple[Blank, ...]
    layout_ticks: tuple[Blank, ...]
    front_drawing: Markup
    above_drawing: Markup
    side_drawing: Markup
    pivots: tuple[PivotRow, ...]
    cross_checks: tuple[SingleRow, ...]
    others: tuple[SingleRow, ...]
    hints: Mapping[str, str]
    direct_rows: int = DIRECT_ROWS
    program_version: str = __version__


def sheet_html(document: Document, profile: Profile, paper: Paper, is_named: bool) -> str:
    """HTML text of a sheet; parameters as for `sheet_of`."""
    return render(TEMPLATE, sheet_of(document, profile, paper, is_named))


def sheet_document(
    profile: Profile, steering: Layout | None, guide: GuideKind | None, units: str
) -> Document:
    """Answers that a sheet is made for: the layout, and the unit of lengths.

    Parameters
    ----------
    profile : Profile
    steering, guide : Layout and GuideKind, optional
        Instead of those of the profile.
    units : "in" or "mm"
    """
    is_usual = steering in (None, profile.steering)
    answers: dict[str, Any] = {
        "steering": (steering or profile.steering).value,
        "guide": (guide or profile.guide).value,
        "track_bar": profile.track_bar,
    }
    if is_usual:
        answers |= {"arm": profile.arm.value, "pitman": profile.pitman.value}
    return {"session": {"units": units}, "layout": answers}


def sheet_of(document: Document, profile: Profile, paper: Paper, is_named: bool) -> Sheet:
    """Data of a sheet.

    Parameters
    ----------
    document : mapping
        The answers that the sheet is made for.
    profile : Profile
    paper : Paper
    is_named : bool
        True if the sheet is for vehicles of this profile; otherwise the profile gives only the
        places in the drawings.
    """
    lines = sheet_lines(document, profile)
    words = {
        key: choice_words(QUESTIONS[f"layout.{key}"], document["layout"][key])
        for key in ("steering", "guide")
    }
    return Sheet(
        title="Evenarc measuring sheet",
        paper=paper,
        kind_of_vehicle=plain(profile.title, 100) if is_named else "",
        layout=words["steering"],
        guide=words["guide"],
        unit_words=UNIT_WORDS[units_of(document)],
        cautions=CAUTIONS,
        instruments=tuple(_instruments(document, profile)),
        walk_round=tuple(_blanks(walk_round.STEP, document, profile)),
        stance=tuple(_blanks(stance.STEP, document, profile)),
        layout_ticks=tuple(_layout_ticks(document)),
        # The program draws all three, and escapes the text in them itself.
        front_drawing=Markup(front_sheet_svg(lines, usual_places(document, profile))),
        above_drawing=Markup(above_sheet_svg(lines, above_of_answers(document, profile))),
        side_drawing=Markup(side_sheet_svg(lines, side_of_answers(document, profile))),
        pivots=tuple(map(_pivot_row, filter(_is_in_the_table, lines))),
        cross_checks=tuple(_single_row(line) for line in lines if line.part == CROSS_CHECKS),
        others=tuple(
            _single_row(line)
            for line in lines
            if line.part != CROSS_CHECKS and not _is_in_the_table(line)
        ),
        hints=HINTS,
    )


def _instruments(document: Document, profile: Profile) -> Iterator[Blank]:
    for question in layout.STEP.questions:
        if question.path.startswith("instruments."):
            usual = assumed_words(question, profile, units_of(document))
            yield Blank(question.name, usual=usual)


def _layout_ticks(document: Document) -> Iterator[Blank]:
    """Lines for the directions and places on the linkage, with their choices in short."""
    for path in LAYOUT_TICKS:
        question = QUESTIONS[path]
        choices = question.choices_for(document)
        yield Blank(question.name, tuple(str(choice.value) for choice in choices))


def _blanks(step: Step, document: Document, profile: Profile) -> Iterator[Blank]:
    """A line for each question of a step that applies; no tick means not checked."""
    for question in step.questions:
        if question.is_answered_by_a_value and question.is_asked(document, profile):
            words = [choice.words for choice in question.choices if choice.value != NOT_CHECKED]
            yield Blank(question.name, tuple(words))


def _is_in_the_table(line: SheetLine) -> bool:
    """True for a line of the table of pivots, which has the wheels too."""
    return line.is_pivot or line.part == PIVOTS


def _pivot_row(line: SheetLine) -> PivotRow:
    height, offset, station = (
        any(question.path.endswith(coordinate) for question in line.questions)
        for coordinate in COORDINATES
    )
    return PivotRow(line.number, line.name.partition(", offset")[0], (height, offset, station))


def _single_row(line: SheetLine) -> SingleRow:
    (question,) = line.questions
    return SingleRow(line.number, line.name, question.kind, question.repeats)
