"""A session completed with the usual linkage of its profile, where readings are still to come.

The result is good for the size of a doubt and for nothing else: it is never a verdict.
"""

from collections.abc import Mapping
from math import sqrt
from typing import Any

from core.documents.document import Document, value_at, with_value
from core.documents.entries import EntryError
from core.kinematics.pivots import Layout, pivots_of
from core.profiles.profile import Profile
from core.readings.survey import LINKS, reading_at

USUAL_OFFSET = 450.0
"""Distance of a frame end from the datum line, mm (common practice, no source)."""


def completed(document: Document, profile: Profile) -> Document:
    """The document with a usual reading for each height and offset that was not taken.

    Heights and lengths stand in the middle of the profile's usual ranges. A link that runs
    lengthwise has its length in its stations.
    """
    for key in ("steering", "arm", "pitman"):
        if value_at(document, f"layout.{key}") is None:
            document = with_value(document, f"layout.{key}", str(getattr(profile, key)))
    for path, usual in (("session.id", "usual"), ("layout.steering_box", "left")):
        if value_at(document, path) is None:
            document = with_value(document, path, usual)
    layout = Layout(value_at(document, "layout.steering"))
    has_track_bar = value_at(document, "layout.track_bar", profile.track_bar) is not False
    pivots = pivots_of(layout, has_track_bar)
    for pivot in pivots:
        document = _with_usual(document, f"{pivot}.height", _middle(profile, f"{pivot}.height"))
    for link in LINKS:
        if f"{link}.frame" in pivots:
            lengthwise = layout == Layout.FORE_AFT and link == "drag_link"
            document = _with_run(document, profile, link, "station" if lengthwise else "offset")
    for pivot in pivots:
        document = _with_usual(document, f"{pivot}.offset", USUAL_OFFSET)
    return document


def _middle(profile: Profile, name: str) -> float:
    low, high = profile.ranges[name]
    return (low + high) / 2


def _value(document: Document, name: str) -> float | None:
    """Mean of a reading of the document, mm; None where it was not taken or is faulty."""
    try:
        reading = reading_at(document, name, "length")
    except EntryError:
        return None
    return None if reading is None else reading.value


def _with_usual(document: Document, name: str, value: float) -> dict[str, Any]:
    """The document with a reading, where it has none."""
    if _value(document, name) is not None:
        return dict(document)
    return with_value(document, f"readings.{name}", [f"{value:.1f} mm"])


def _with_run(
    document: Mapping[str, Any], profile: Profile, link: str, coordinate: str
) -> dict[str, Any]:
    """The document with both ends of a link, as far apart as such a link usually is."""
    frame, axle = f"{link}.frame", f"{link}.axle"
    heights = [_value(document, f"{end}.height") or 0.0 for end in (frame, axle)]
    rise = heights[0] - heights[1]
    length = _middle(profile, f"{link}.length")
    run = sqrt(max(length**2 - rise**2, (length / 2) ** 2))
    at_axle = _value(document, f"{axle}.{coordinate}")
    usual_frame = USUAL_OFFSET if at_axle is None else at_axle - run
    document = _with_usual(document, f"{frame}.{coordinate}", usual_frame)
    at_frame = _value(document, f"{frame}.{coordinate}") or 0.0
    return _with_usual(document, f"{axle}.{coordinate}", at_frame + run)
