"""Pictures of where the tape goes: a usual front axle with a tape of each kind."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from core.documents.document import Document
from wizard.views.above import AbovePicture, above_of_answers
from wizard.views.front import usual_picture
from wizard.views.picture_data import FrontPicture

if TYPE_CHECKING:
    from core.profiles.profile import Profile

FROM_FRONT = {
    "drag_link.axle.height": "height",
    "track_bar.frame.offset": "offset",
    "braces.axle_ends": "brace",
}
"""Readings that the view from the front shows, with the word beside the tape."""

FROM_ABOVE = {
    "track_bar.axle.station": "station",
    "steering.arm": "kingpin to ball",
    "steering.pitman_arm": "shaft to ball",
}
"""Readings that the view from above shows, with the word beside the tape."""


def tapes_from_front(document: Document, profile: Profile | None) -> FrontPicture:
    """The usual front axle with a height, an offset, a brace, a length and a slope."""
    return replace(
        usual_picture(document, profile),
        tapes=FROM_FRONT,
        notes={"track_bar": "length", "drag_link": "slope"},
    )


def tapes_from_above(document: Document, profile: Profile | None) -> AbovePicture:
    """The usual front axle with a station and the two arms."""
    return replace(above_of_answers(document, profile), tapes=FROM_ABOVE)
