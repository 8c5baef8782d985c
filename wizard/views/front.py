"""The front view while the pivots are measured."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING

from core.documents.document import Document
from core.documents.entries import EntryError
from core.entry_checks.known import KnownAnswers
from core.readings.survey import pivots_so_far, wheels_so_far
from wizard.views.above import above_of_answers
from wizard.views.picture_data import (
    HUBS,
    LEFT_HUB,
    RIGHT_HUB,
    USUAL_PLACES,
    FrontPicture,
    Point,
    Wheels,
    link_and_end,
    seen_from_front,
)

if TYPE_CHECKING:
    from core.profiles.profile import Profile


def survey_picture(
    document: Document,
    profile: Profile | None,
    asked_path: str,
    earlier: Document | None = None,
) -> FrontPicture:
    """The pivots measured so far, the way of the tape, and behind them a whole front axle.

    Behind them is the earlier session, or in a first session the usual geometry.

    Parameters
    ----------
    document : mapping
    profile : Profile or None
        Gives the usual geometry.
    asked_path : str
        Path of the question at hand.
    earlier : mapping, optional
        The session that is measured again.
    """
    asked_reading = asked_path.removeprefix("readings.")
    try:
        pivots, wheels = seen_from_front(pivots_so_far(document)), _wheels(document)
        if earlier:
            before = seen_from_front(pivots_so_far(earlier))
            return FrontPicture(pivots, wheels=wheels, before=before, asked_reading=asked_reading)
        usual = usual_places(document, profile)
        return FrontPicture(
            pivots,
            wheels=Wheels(wheels.left or usual[LEFT_HUB], wheels.right or usual[RIGHT_HUB]),
            before=_of_unmeasured_links(usual, pivots),
            before_word="usual",
            after_word="measured",
            asked_reading=asked_reading,
        )
    except EntryError:  # a draft that was edited by hand: the question can still be answered
        return FrontPicture(asked_reading=asked_reading)


def usual_picture(document: Document, profile: Profile | None) -> FrontPicture:
    """A whole front axle with its links where they usually are, before anything is measured."""
    places = usual_places(document, profile)
    return FrontPicture(
        pivots={name: place for name, place in places.items() if name not in HUBS},
        wheels=Wheels(places[LEFT_HUB], places[RIGHT_HUB]),
    )


def usual_places(document: Document, profile: Profile | None) -> dict[str, Point]:
    """Places of pivots and hubs in this layout, mm: measured, or else where they usually are."""
    known, above = KnownAnswers(document, profile), above_of_answers(document, profile)
    across = {name: place[0] for name, place in above.points.items()}
    across |= {LEFT_HUB: above.hubs[0][0], RIGHT_HUB: above.hubs[1][0]}
    places = {}
    for name, usual in USUAL_PLACES.items():
        if name in across:
            height = "wheels.hub_height" if name in HUBS else f"{name}.height"
            places[name] = (across[name], known.value(height) or usual[1])
    return places


def _of_unmeasured_links(
    usual: Mapping[str, Point], measured: Mapping[str, Point]
) -> dict[str, Point]:
    """Both ends of each link that has an end without a measured place, mm."""
    places = {**usual, **measured}
    open_links = {link_and_end(name)[0] for name in usual if name not in (*measured, *HUBS)}
    return {name: place for name, place in places.items() if link_and_end(name)[0] in open_links}


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
