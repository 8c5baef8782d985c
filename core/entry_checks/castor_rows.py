"""Castor at two heights, typed as "5.5 at 0; 8.5 at 2": angle and height of the axle in turn."""

from collections.abc import Sequence

from core.entry_checks.outcome import Accepted, Outcome, Queried, Refused
from core.readings.guide_survey import SMALLEST_RISE
from core.text import quantity
from core.text.plain_text import plain
from core.text.quantity import LengthUnit, QuantityError, format_length

PATH = "readings.guide.castor"
EXAMPLE = "5.5 at 0; 8.5 at 2"
MOST_ROWS = 12


def castor_rows(parts: Sequence[str], unit: LengthUnit) -> Outcome:
    """Rows of castor and heave for the document, from a typed answer."""
    typed = [text.strip() for part in parts for text in part.split(";") if text.strip()]
    if not 2 <= len(typed) <= MOST_ROWS:
        return Refused(f"takes 2 to {MOST_ROWS} pairs of angle and height, like {EXAMPLE}")
    rows, heaves = [], []
    for text in typed:
        angle, at, height = text.partition(" at ")
        if not at:
            return Refused(f"“{plain(text)}” is no pair of angle and height, like {EXAMPLE}")
        try:
            quantity.parse_angle(angle)
            heaves.append(quantity.parse_length(height, unit))
        except QuantityError as error:
            return Refused(str(error))
        rows.append(
            {
                "heave": quantity.with_unit(height.strip(), unit),
                "castor": quantity.with_unit(angle.strip(), "deg"),
            }
        )
    if max(heaves) - min(heaves) < SMALLEST_RISE:
        least = format_length(SMALLEST_RISE, unit)
        return Queried(rows, f"The two heights differ by less than {least}. They give no pitch.")
    return Accepted(rows)
