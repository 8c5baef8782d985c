"""Photographs of a session that is measured: pictures, marks, and what is asked for next."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from core.documents.document import Document, value_at, with_value
from core.documents.picture import KeptPicture
from core.kinematics.pivots import Layout, pivots_of
from core.readings.photograph import CONTACTS, HUBS, OWN_POINTS, PHOTOGRAPHS, PLUMB, Means
from wizard.flow import drafts

UNSEEN = "draft.unseen"
"""Path of the list of marks that are not in their picture, "1.track_bar.frame"."""

PENDING = "draft.pictures"
"""Path of the list of pictures that were named before the vehicle had a tag."""


@dataclass(frozen=True)
class PictureMarks:
    """One photograph with its marks so far.

    Attributes
    ----------
    file : str
        In the vehicle's folder.
    width, height : int
        Pixels.
    marks : mapping of (float, float)
        Pixels across and down, by the point.
    unseen : frozenset of str
        Points that are not in the picture.
    """

    file: str
    width: int
    height: int
    marks: Mapping[str, tuple[float, float]]
    unseen: frozenset[str]


def new_photograph_session(pictures: list[str]) -> Document:
    """Document of a new session from photographs, with the pictures that were named."""
    document = with_value(
        drafts.new_session(drafts.now()), "session.means", Means.PHOTOGRAPHS.value
    )
    return with_value(document, PENDING, pictures) if pictures else document


def points_asked(document: Document) -> tuple[str, ...]:
    """Points that are asked for in each photograph, in order."""
    steering = value_at(document, "layout.steering", Layout.KNUCKLE.value)
    has_track_bar = value_at(document, "layout.track_bar") is not False
    pivots = pivots_of(Layout(steering), has_track_bar)
    return (*pivots, *HUBS, *CONTACTS, *PLUMB, *OWN_POINTS)


def pictures_of(document: Document) -> tuple[PictureMarks, ...]:
    """The photographs of a draft."""
    unseen = value_at(document, UNSEEN, [])
    return tuple(
        PictureMarks(
            str(table.get("file", "")),
            int(table["width"]),
            int(table["height"]),
            {point: (place[0], place[1]) for point, place in table.get("marks", {}).items()},
            frozenset(name.partition(".")[2] for name in unseen if name.startswith(f"{number}.")),
        )
        for number, table in enumerate(value_at(document, PHOTOGRAPHS, []), start=1)
    )


def next_point(document: Document, number: int) -> str | None:
    """First point of a photograph that is neither marked nor said to be out of view."""
    picture = pictures_of(document)[number - 1]
    settled = {*picture.marks, *picture.unseen}
    return next((point for point in points_asked(document) if point not in settled), None)


def with_picture(document: Document, kept: KeptPicture) -> Document:
    """The document with one more photograph."""
    table: dict[str, Any] = {
        "file": kept.file,
        "sha256": kept.sha256,
        "width": kept.width,
        "height": kept.height,
        "note": "",
        "marks": {},
    }
    if kept.f35:
        table["f35"] = kept.f35
    return with_value(document, PHOTOGRAPHS, [*value_at(document, PHOTOGRAPHS, []), table])


def without_picture(document: Document, number: int) -> Document:
    """The document without a photograph; its file stays in the vehicle's folder."""
    tables = value_at(document, PHOTOGRAPHS, [])
    document = with_value(document, PHOTOGRAPHS, [*tables[: number - 1], *tables[number:]])
    kept = []
    for name in value_at(document, UNSEEN, []):
        of, _, point = name.partition(".")
        if int(of) != number:
            kept.append(f"{int(of) - (int(of) > number)}.{point}")
    return with_value(document, UNSEEN, kept)


def with_mark(
    document: Document, number: int, point: str, place: tuple[float, float] | None
) -> Document:
    """The document with a point marked in a photograph, or said to be out of view.

    Parameters
    ----------
    document : mapping
    number : int
        Of the photograph, from 1.
    point : str
    place : (float, float) or None
        Pixels across and down; None where the point is not in the picture.
    """
    tables = [dict(table) for table in value_at(document, PHOTOGRAPHS, [])]
    marks = {
        name: where for name, where in tables[number - 1].get("marks", {}).items() if name != point
    }
    unseen = [name for name in value_at(document, UNSEEN, []) if name != f"{number}.{point}"]
    if place is None:
        unseen.append(f"{number}.{point}")
    else:
        marks[point] = [round(place[0], 1), round(place[1], 1)]
    tables[number - 1]["marks"] = marks
    return with_value(with_value(document, PHOTOGRAPHS, tables), UNSEEN, unseen)
