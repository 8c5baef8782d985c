"""How a bar is set in length: a sleeve with two threads, or a single threaded end."""

import re
from dataclasses import dataclass
from typing import Literal

from core import quantity
from core.quantity import QuantityError

AdjusterKind = Literal["sleeve", "one-end"]
KINDS: tuple[AdjusterKind, ...] = ("sleeve", "one-end")

INCH_MM = 25.4

_PER_INCH = re.compile(r"(.+?)\s*(?:(?:turns|threads)?\s*(?:per|/)\s*(?:in|inch)|tpi)\.?", re.I)


@dataclass(frozen=True)
class Adjuster:
    """The adjuster of one bar.

    Attributes
    ----------
    kind : "sleeve" or "one-end"
        A sleeve has a left- and a right-hand thread, so a turn moves both ends.
    pitch : float
        Thread pitch, mm a turn.
    """

    kind: AdjusterKind
    pitch: float

    def turns(self, change: float) -> float:
        """Turns that change the bar's length by `change` mm; positive turns make it longer."""
        return change / (2 * self.pitch if self.kind == "sleeve" else self.pitch)


def thread_pitch(text: str) -> float:
    """Thread pitch in mm a turn, typed as "16 per in" (turns to the inch) or as "1.5 mm".

    Raises
    ------
    QuantityError
        It is neither, or not more than 0.
    """
    per_inch = _PER_INCH.fullmatch(text.strip())
    try:
        value = quantity.number(per_inch[1]) if per_inch else quantity.length(text, "mm")
    except QuantityError:
        value = 0.0
    if value <= 0:
        raise QuantityError("a thread pitch is written like 16 per in (turns) or 1.5 mm")
    return INCH_MM / value if per_inch else value
