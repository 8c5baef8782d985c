"""Adjusters of a bar's length: a sleeve with two threads, or a single threaded end."""

import re
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, Literal, cast, get_args

from core.documents.document import value_at
from core.documents.entries import choice_at
from core.documents.tables import quantity_above_zero
from core.readings.survey import LINKS
from core.text import quantity
from core.text.quantity import INCH, QuantityError

AdjusterKind = Literal["sleeve", "one-end"]
KINDS: tuple[AdjusterKind, ...] = get_args(AdjusterKind)

COARSEST = INCH / 4
"""Coarsest pitch, mm a turn. A larger number is turns to the inch, typed without their unit."""

_PER_INCH = re.compile(r"(.+?)\s*(?:(?:turns|threads)?\s*(?:per|/)\s*(?:in|inch)|tpi)\.?", re.I)


@dataclass(frozen=True)
class Adjuster:
    """The adjuster of one bar.

    Attributes
    ----------
    kind : "sleeve" or "one-end"
        A sleeve has a left-hand and a right-hand thread, so a turn moves both ends.
    pitch : float
        Thread pitch, mm a turn.
    """

    kind: AdjusterKind
    pitch: float

    def turns(self, change: float) -> float:
        """Turns that change the bar's length by `change` mm; positive turns lengthen the bar."""
        return change / (2 * self.pitch if self.kind == "sleeve" else self.pitch)


def thread_pitch(text: str) -> float:
    """Thread pitch in mm a turn, typed as "16 per in" (turns to the inch) or as "1.5 mm".

    Raises
    ------
    QuantityError
        The text is neither, or no thread has this pitch.
    """
    per_inch = _PER_INCH.fullmatch(text.strip())
    try:
        value = (
            quantity.parse_number(per_inch[1]) if per_inch else quantity.parse_length(text, "mm")
        )
    except QuantityError:
        value = 0.0
    pitch = INCH / value if per_inch and value > 0 else value
    if not 0 < pitch <= COARSEST:
        raise QuantityError("a thread pitch is written like 16 per in (turns) or 1.5 mm")
    return pitch


def adjuster_at(tables: Mapping[str, Any], path: str) -> Adjuster:
    """Adjuster in the table at a path, with its kind and pitch.

    Raises
    ------
    core.documents.entries.EntryError
        The kind or the pitch is missing or is not what it should be.
    """
    kind = cast(AdjusterKind, choice_at(tables, f"{path}.kind", KINDS))
    pitch = quantity_above_zero(tables, f"{path}.pitch", thread_pitch, "16 per in")
    return Adjuster(kind, pitch)


def adjusters_of(document: Mapping[str, Any], usual: Mapping[str, Adjuster]) -> dict[str, Adjuster]:
    """Adjusters of a vehicle by link: those in its document, else the usual ones.

    A link that has neither is left out.

    Raises
    ------
    core.documents.entries.EntryError
        An adjuster in the document is faulty.
    """
    return {
        link: usual[link]
        if value_at(document, f"adjusters.{link}") is None
        else adjuster_at(document, f"adjusters.{link}")
        for link in LINKS
        if link in usual or value_at(document, f"adjusters.{link}") is not None
    }
