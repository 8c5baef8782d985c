"""Mending of a slip: the readings as they should have been typed, with what was typed first."""

from __future__ import annotations

from collections.abc import Sequence
from functools import partial
from typing import Any

from core.adjustment.slips import Slip, SlipKind
from core.documents.document import Document, value_at, with_value, without
from core.documents.entries import units_of
from core.readings.photograph import PHOTOGRAPHS, is_mark
from core.readings.reading import Reading
from core.text.quantity import format_angle, format_length

MENDED = "mended"
"""Path of the list of mended slips."""


def mended(document: Document, slip: Slip) -> Document:
    """The document with a slip undone; `[[mended]]` keeps what was typed first.

    Parameters
    ----------
    document : mapping
        The draft.
    slip : Slip
        As from `core.adjustment.slips.slips_of`.
    """
    if is_mark(slip.readings[0]):
        return _with_marks_mended(document, slip)
    after = {reading.name: reading for reading in slip.readings_after}
    was = [value_at(document, f"readings.{name}") for name in slip.readings]
    now = _texts(document, slip, after, was)
    for name, texts in zip(slip.readings, now, strict=True):
        path = f"readings.{name}"
        document = with_value(document, path, texts) if texts else without(document, path)
    entry: dict[str, Any] = {
        "slip": slip.slip.value,
        "readings": list(slip.readings),
        "was": was,
        "now": now,
    }
    return with_value(document, MENDED, [*value_at(document, MENDED, []), entry])


def _with_marks_mended(document: Document, slip: Slip) -> Document:
    """The document with the marks of a slip where they belong, or without them."""
    after = {
        photograph.name_of(mark): (mark.across, mark.down)
        for photograph in slip.photographs_after
        for mark in photograph.marks
        if mark.counts
    }
    tables = [dict(table) for table in value_at(document, PHOTOGRAPHS, [])]
    was: list[list[str]] = []
    now: list[list[str]] = []
    for name in slip.readings:
        number, _, point = name.removeprefix(f"{PHOTOGRAPHS}.").partition(".")
        table = tables[int(number) - 1]
        marks = dict(table["marks"])
        was.append([_place_text(marks.pop(point))])
        now.append([])
        if name in after:
            marks[point] = list(after[name])
            now[-1] = [_place_text(marks[point])]
        table["marks"] = marks
    entry = {"slip": slip.slip.value, "readings": list(slip.readings), "was": was, "now": now}
    document = with_value(document, PHOTOGRAPHS, tables)
    return with_value(document, MENDED, [*value_at(document, MENDED, []), entry])


def _place_text(place: Sequence[float]) -> str:
    """Place of a mark as text, "1820.5, 1210.0"."""
    return ", ".join(f"{part:.1f}" for part in place)


def _texts(
    document: Document, slip: Slip, after: dict[str, Reading], was: list[Any]
) -> list[list[str]]:
    """Texts of the mended readings; [] for a reading that is set aside."""
    if slip.slip == SlipKind.SET_ASIDE:
        return [[] for _ in slip.readings]
    if slip.slip == SlipKind.EXCHANGED:
        return list(reversed(was))
    length_text = partial(format_length, unit=units_of(document))
    return [
        [
            format_angle(value) if after[name].kind == "slope" else length_text(value)
            for value in after[name].repeats
        ]
        for name in slip.readings
    ]
