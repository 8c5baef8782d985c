"""What the front view shows while the pivots are measured."""

from __future__ import annotations

from core.documents.document import Document
from core.documents.entries import EntryError
from core.readings.survey import pivots_so_far, wheels_so_far
from wizard.views.picture_data import FrontPicture, Wheels, seen_from_front


def survey_picture(document: Document, asked: str, earlier: Document | None = None) -> FrontPicture:
    """The pivots taken so far, where the tape goes next, and the earlier session behind them.

    Parameters
    ----------
    document : mapping
    asked : str
        Path of the question at hand.
    earlier : mapping, optional
        The session that is measured again.
    """
    try:
        return FrontPicture(
            pivots=seen_from_front(pivots_so_far(document)),
            wheels=_wheels(document),
            before=seen_from_front(pivots_so_far(earlier)) if earlier else {},
            asked=asked.removeprefix("readings."),
        )
    except EntryError:  # a draft that was edited by hand: the question can still be answered
        return FrontPicture(asked=asked.removeprefix("readings."))


def _wheels(document: Document) -> Wheels:
    taken = wheels_so_far(document)
    hub = taken.get("hub_height")
    if hub is None:
        return Wheels()
    left, right = taken.get("left_offset"), taken.get("right_offset")
    return Wheels(
        left=None if left is None else (left, hub), right=None if right is None else (right, hub)
    )
