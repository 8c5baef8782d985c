"""Readings that check the others: lengths, slopes and braces, centre to centre."""

from __future__ import annotations

from typing import TYPE_CHECKING

from core.documents.document import Document, value_at
from wizard.questions.pivots import has_track_bar
from wizard.questions.question import YES_OR_NO, Question, Step, always

if TYPE_CHECKING:
    from core.profiles.profile import Profile


def _link(link: str, name: str) -> tuple[Question, ...]:
    is_there = has_track_bar if link == "track_bar" else always

    def is_straight(document: Document, profile: Profile | None) -> bool:
        return is_there(document, profile) and not value_at(
            document, f"readings.{link}.bent", False
        )

    return (
        Question(
            f"readings.{link}.length",
            "length",
            f"{name} length",
            f"How long is the {name.lower()}, centre to centre?",
            "Straight tape from the centre of its frame end to the centre of its axle end, past "
            "the bar if it is bent. Where the tape cannot run straight, skip it.",
            "Two heights and two offsets give its length too. If the tape disagrees, "
            "one of the five is wrong, and you find it before the vehicle leaves.",
            optional=True,
            repeats=True,
            is_asked=is_there,
        ),
        Question(
            f"readings.{link}.bent",
            "yes or no",
            f"{name} bent",
            f"Is the {name.lower()} bent between its ends?",
            "A bar cranked around the differential or the springs counts as bent.",
            "Only the straight line between its centres moves the axle. "
            "An angle finder on a bent bar reads another angle, so its slope is not asked for.",
            choices=YES_OR_NO,
            is_asked=is_there,
        ),
        Question(
            f"readings.{link}.slope",
            "angle",
            f"{name} slope",
            f"What does the angle finder read on the {name.lower()}?",
            "Zero it on this floor first. Lay it along the straight bar. The slope is plus "
            "with the frame end higher, and minus with the axle end higher.",
            "It checks both heights at once, and needs no plumb line.",
            optional=True,
            repeats=True,
            is_asked=is_straight,
        ),
    )


def _brace(key: str, name: str, ends: str, why: str) -> Question:
    return Question(
        f"readings.braces.{key}",
        "length",
        name,
        f"How far is it {ends}?",
        "Straight tape, centre to centre, through the air.",
        why,
        optional=True,
        repeats=True,
        is_asked=has_track_bar,
    )


STEP = Step(
    "Cross-checks",
    "Readings that catch a slip in the others.",
    (
        *_link("track_bar", "Track bar"),
        *_link("drag_link", "Drag link"),
        _brace(
            "frame_ends",
            "Frame end to frame end",
            "from the track bar's frame end to the drag link's frame end",
            "A brace between the two links tells which of two heights is wrong.",
        ),
        _brace(
            "axle_ends",
            "Axle end to axle end",
            "from the track bar's axle end to the drag link's axle end",
            "It tells a slip at the axle from a slip at the frame.",
        ),
        _brace(
            "frame_to_axle",
            "Across",
            "from the track bar's frame end to the drag link's axle end",
            "The diagonal fixes the shape, so that a single wrong height can be named.",
        ),
    ),
    picture="front",
    shows_closing=True,
)
