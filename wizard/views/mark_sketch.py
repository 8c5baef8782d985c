"""Sketch of a point that is to be marked in a photograph: a usual front axle with a ring at it."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from core.documents.document import Document
from core.readings.photograph import CONTACTS, HUBS, PLUMB
from wizard.views.front import usual_picture
from wizard.views.picture_data import FrontPicture, Point

if TYPE_CHECKING:
    from core.profiles.profile import Profile

PLUMB_BESIDE, PLUMB_TOP, PLUMB_BOTTOM = 500.0, 700.0, 60.0
"""mm: a plumb line outside the left wheel, from its top to its bottom. Invented."""


def mark_sketch(document: Document, profile: Profile | None, point: str) -> FrontPicture | None:
    """The usual front axle with a ring at a point; None for a point of one's own.

    Parameters
    ----------
    document : mapping
        With the layout.
    profile : Profile or None
    point : str
        One of `core.readings.photograph.MARKS`.
    """
    picture = usual_picture(document, profile)
    place = _place(picture, point)
    return None if place is None else replace(picture, ringed=(place,))


def _place(picture: FrontPicture, point: str) -> Point | None:
    """Place of a point in the front view, mm."""
    left, right = picture.wheels.left, picture.wheels.right
    if left is None or right is None:
        return None
    beside = left[0] + PLUMB_BESIDE
    return {
        **picture.pivots,
        **dict(zip(HUBS, (left, right), strict=True)),
        **dict(zip(CONTACTS, ((left[0], 0.0), (right[0], 0.0)), strict=True)),
        **dict(zip(PLUMB, ((beside, PLUMB_TOP), (beside, PLUMB_BOTTOM)), strict=True)),
    }.get(point)
