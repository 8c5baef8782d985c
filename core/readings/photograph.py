"""Photographs of a record: their size, and the marks that were set in them.

A record is complete without the files of its pictures: the marks are kept in it, in pixels.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from enum import StrEnum
from math import isfinite
from typing import Any

from core.documents.entries import EntryError, quantity_at, text_at
from core.documents.tables import tables_at
from core.kinematics.pivots import NEAR_BALL, PIVOTS
from core.text.plain_text import plain
from core.text.quantity import parse_number

PHOTOGRAPHS = "photographs"
"""Key of the list of photographs in a record."""


class Means(StrEnum):
    """Means by which a session was taken."""

    TAPE = "tape"
    PHOTOGRAPHS = "photographs"


HUBS = ("wheels.left_hub", "wheels.right_hub")
CONTACTS = ("wheels.left_contact", "wheels.right_contact")
"""Middles of the tyres' treads at the floor."""
PLUMB = ("plumb.top", "plumb.bottom")
MOST_OWN_POINTS = 8
OWN_POINTS = tuple(f"own.{number}" for number in range(1, MOST_OWN_POINTS + 1))

MARKS = (*PIVOTS, NEAR_BALL, *HUBS, *CONTACTS, *PLUMB, *OWN_POINTS)
"""Points that can be marked in a photograph."""

MOST_PHOTOGRAPHS = 12
SMALLEST_SIDE, LARGEST_SIDE = 100, 100_000
"""Pixels; no camera gives a smaller or a larger picture."""

SHORTEST_F35, LONGEST_F35 = 5.0, 2_000.0
"""mm; no lens has a shorter or a longer focal length, as on 35 mm film."""


@dataclass(frozen=True)
class Mark:
    """The place of a point in a photograph.

    Attributes
    ----------
    point : str
        One of MARKS.
    across, down : float
        Pixels from the top left corner.
    counts : bool
        False if the mark is set aside: it then is no observation.
    """

    point: str
    across: float
    down: float
    counts: bool = True


@dataclass(frozen=True)
class Photograph:
    """A photograph with its marks.

    Attributes
    ----------
    number : int
        Its place in the record, from 1.
    file : str
        Picture in the vehicle's folder; "" where the record names none.
    sha256 : str
    width, height : int
        Pixels.
    f35 : float or None
        Focal length as on 35 mm film, mm; None where it is not known.
    note : str
    marks : tuple of Mark
    """

    number: int
    file: str
    sha256: str
    width: int
    height: int
    f35: float | None
    note: str
    marks: tuple[Mark, ...]

    def name_of(self, mark: Mark) -> str:
        """Name of a mark among the readings: "photographs.1.track_bar.frame"."""
        return f"{PHOTOGRAPHS}.{self.number}.{mark.point}"


def is_mark(name: str) -> bool:
    """True if a name among the readings is that of a mark."""
    return name.startswith(f"{PHOTOGRAPHS}.")


def without_mark(photographs: tuple[Photograph, ...], name: str) -> tuple[Photograph, ...]:
    """The photographs with one mark set aside, by its name among the readings."""
    return tuple(
        replace(
            photograph,
            marks=tuple(
                replace(mark, counts=mark.counts and photograph.name_of(mark) != name)
                for mark in photograph.marks
            ),
        )
        for photograph in photographs
    )


def photographs_in(document: Mapping[str, Any]) -> tuple[Photograph, ...]:
    """Photographs of a document; () where it has none.

    Raises
    ------
    core.documents.entries.EntryError
        A photograph is faulty.
    """
    tables = tables_at(document, PHOTOGRAPHS)
    if len(tables) > MOST_PHOTOGRAPHS:
        raise EntryError(PHOTOGRAPHS, f"are too many; {MOST_PHOTOGRAPHS} at most can be judged")
    return tuple(
        _photograph(number, place, table) for number, (place, table) in enumerate(tables, 1)
    )


def _photograph(number: int, place: str, table: Mapping[str, Any]) -> Photograph:
    try:
        width, height = (_side(table, key) for key in ("width", "height"))
        return Photograph(
            number=number,
            file=_file(table),
            sha256=text_at(table, "sha256", ""),
            width=width,
            height=height,
            f35=_f35(table),
            note=text_at(table, "note", ""),
            marks=tuple(_marks(table, width, height)),
        )
    except EntryError as error:
        raise EntryError(f"{place}.{error.path}", error.reason) from None


def _file(table: Mapping[str, Any]) -> str:
    """Path of the picture, inside the vehicle's folder."""
    file = text_at(table, "file", "")
    parts = file.replace("\\", "/").split("/")
    if file and (".." in parts or parts[0] == "" or ":" in parts[0] or not file.isprintable()):
        raise EntryError(
            "file", 'should lie in the vehicle\'s folder, such as "photographs/FG-2_1.jpg"'
        )
    return file


def _side(table: Mapping[str, Any], key: str) -> int:
    side = table.get(key)
    if isinstance(side, bool) or not isinstance(side, int):
        raise EntryError(key, "should be a whole number of pixels, such as 4032")
    if not SMALLEST_SIDE <= side <= LARGEST_SIDE:
        raise EntryError(
            key, f"should lie between {SMALLEST_SIDE} and {LARGEST_SIDE} pixels, such as 4032"
        )
    return side


def _f35(table: Mapping[str, Any]) -> float | None:
    if table.get("f35") == "":
        return None
    f35 = quantity_at(table, "f35", lambda text: parse_number(text.removesuffix("mm")), "26")
    if f35 is not None and not SHORTEST_F35 <= f35 <= LONGEST_F35:
        raise EntryError(
            "f35", f'should lie between {SHORTEST_F35:g} and {LONGEST_F35:g} mm, such as "26"'
        )
    return f35


def _marks(table: Mapping[str, Any], width: int, height: int) -> Iterator[Mark]:
    marks = table.get("marks", {})
    if not isinstance(marks, Mapping):
        raise EntryError("marks", "should be a table of marks, such as [1820.5, 1210.0]")
    for point, place in marks.items():
        path = f"marks.{plain(point)}"
        if point not in MARKS:
            raise EntryError("marks", f"“{plain(point)}” is no point that can be marked")
        if (
            not isinstance(place, list)
            or len(place) != 2
            or any(isinstance(part, bool) or not isinstance(part, int | float) for part in place)
            or not all(isfinite(part) for part in place)
        ):
            raise EntryError(path, "should be two numbers of pixels, such as [1820.5, 1210.0]")
        across, down = float(place[0]), float(place[1])
        if not (0 <= across <= width and 0 <= down <= height):
            raise EntryError(path, f"lies outside the picture of {width} x {height} pixels")
        yield Mark(point, across, down)
