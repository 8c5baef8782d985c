"""The front view while the pivots are measured."""

from __future__ import annotations

from core.documents.document import Document
from core.documents.entries import EntryError
from core.readings.survey import pivots_so_far, wheels_so_far
from wizard.views.picture_data import FrontPicture, Wheels, seen_from_front


def survey_picture(
    document: Document, asked_path: str, earlier: Document | None = None
) -> FrontPicture:
    """The pivots measured so far, the way of the tape, and the earlier session behind them.

    Parameters
    ----------
    document : mapping
    asked_path : str
        Path of the question at hand.
    earlier : mapping, optional
        The session that is measured again.
    """
    asked_reading = asked_path.removeprefix("readings.")
    try:
        return FrontPicture(
            pivots=seen_from_front(pivots_so_far(document)),
            wheels=_wheels(document),
            before=seen_from_front(pivots_so_far(earlier)) if earlier else {},
            asked_reading=asked_reading,
        )
    except EntryError:  # a draft that was edited by hand: the question can still be answered
        return FrontPicture(asked_reading=asked_reading)


def _wheels(document: Document) -> Wheels:
    """The hubs that are measured so far."""
    places = wheels_so_far(document)
    height = places.get("hub_height")
    if height is None:
        return Wheels()
    left, right = places.get("left_offset"), places.get("right_offset")
    return Wheels(
        left=None if left is None else (left, height),
        right=None if right is None else (right, height),
    )
