"""Words of the screen for the direct check: how it is set up, and how far it is."""

from collections.abc import Mapping, Sequence
from typing import Any

from core.text.plain_text import plain
from core.text.quantity import LengthUnit
from core.verdict.verdict import Verdict
from wizard.phrases.amounts import travel_words

SET_UP = (
    "Caution: a vehicle that falls kills. Springs out or softened. Frame on rated stands, never "
    "on a jack. Nobody under the vehicle while the jack moves; local codes and licensed practice "
    "come first.",
    "The jack goes straight up under the middle of the axle. A strap holds the steering wheel "
    "straight ahead. Wheels off the floor, or on turn plates.",
    "Board: clamp a straight edge level to the wheel; tape from its front and its rear end to a "
    "chalk line along the vehicle. Laser: its mark on a wall ahead. Height: from the hub to a mark "
    "on the frame. Read ride height first and last, and at least four heights between.",
)
"""Set-up and cautions, one paragraph each."""

HEIGHTS_WANTED = 6
"""Rows of a whole check: ride height twice, and four more."""


def method_words(table: Mapping[str, Any]) -> str:
    """The method with its length and its line."""
    parts = (table.get(key) for key in ("method", "board", "distance"))
    words = ", ".join(plain(part) for part in parts if part)
    line = f", line to the {plain(table['line'])} of the wheel" if table.get("line") else ""
    return words + line


def row_words(number: int, row: Mapping[str, Any]) -> str:
    """A row as it was typed."""
    keys = ("height", "front", "rear", "mark", "angle")
    readings = (f"{key} {plain('; '.join(map(str, row[key])))}" for key in keys if row.get(key))
    going = f", going {plain(row['going'])}" if row.get("going") else ""
    return f"{number:2}  {plain(row.get('side', '')):6}{', '.join(readings)}{going}"


def progress_words(rows: Sequence[Mapping[str, Any]]) -> str:
    """Number of rows that are typed, and of those that a whole check has."""
    if len(rows) < HEIGHTS_WANTED:
        return f"{len(rows)} of at least {HEIGHTS_WANTED} rows; ride height first and last."
    return f"{len(rows)} rows; the last one at ride height again?"


def steer_rows(verdict: Verdict, unit: LengthUnit) -> list[str]:
    """One line a height: the steer that was read, with its doubt, and the computed one."""
    direct = verdict.direct
    if direct is None:
        return []
    columns = (direct.heave_mm, direct.steer_deg, direct.u_deg, direct.computed_deg)
    return [
        f"{travel_words(heave, unit):18}read {steer:+.2f} deg, give or take {2 * u:.2f}; "
        f"computed {computed:+.2f}"
        for heave, steer, u, computed in zip(*(item.tolist() for item in columns), strict=True)
    ]
