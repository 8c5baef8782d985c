"""A session that is not filed yet: begun, begun again from an earlier one."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import datetime
from typing import Any

from core.documents.document import Document, value_at, with_value, without
from core.documents.record import FORMAT, FORMAT_VERSION, new_id
from wizard import __version__

CARRIED = (
    *("session.profile", "session.units"),
    *("vehicle.tag", "vehicle.description", "vehicle.wheelbase", "layout", "instruments"),
    *("readings.track_bar.bent", "readings.drag_link.bent"),
    *("readings.steering", "readings.travel"),
    *("readings.tie_rod.joint_from_far_ball", "readings.tie_rod.near_arm"),
)
"""What a re-measure takes over; what was altered is asked, and the rest is measured again."""

ALTERED = {
    "drag_link.frame": ("readings.steering.pitman_arm",),
    "drag_link.axle": ("readings.steering.arm", "readings.tie_rod.joint_from_far_ball"),
    "ride_height": ("readings.travel",),
    "lengths": ("readings.track_bar.bent", "readings.drag_link.bent"),
}
"""What cannot be taken over when a part was altered."""


def now() -> datetime:
    """The time with its offset, to the second."""
    return datetime.now().astimezone().replace(microsecond=0)


def new_session(opened: datetime) -> Document:
    """An empty first session of a vehicle that is not named yet."""
    return {
        "format": FORMAT,
        "format_version": FORMAT_VERSION,
        "program_version": __version__,
        "session": {"kind": "first", "follows": "", "opened": opened},
    }


def new_re_measure(earlier: Document, opened: datetime) -> Document:
    """A session that measures a vehicle again: what does not change by itself is taken over."""
    document = new_session(opened)
    for path in CARRIED:
        value = value_at(earlier, path)
        if value is not None:
            document = with_value(document, path, value)
    document = with_value(document, "session.kind", "re-measure")
    document = with_value(document, "session.follows", value_at(earlier, "session.id"))
    return with_id(document)


def with_id(document: Document) -> Document:
    """With an id of its own, as soon as the vehicle has a tag. Raises RecordError for a bad tag."""
    tag = value_at(document, "vehicle.tag")
    if tag is None or str(value_at(document, "session.id", "")).startswith(f"{tag}_"):
        return document
    session: dict[str, Any] = document["session"]
    return with_value(document, "session.id", new_id(tag, session["kind"], session["opened"]))


def without_altered(document: Document, parts: Iterable[str]) -> Document:
    """A re-measure without what was taken over and does not hold for parts that were altered."""
    for part in parts:
        for path in ALTERED.get(part, ()):
            document = without(document, path)
    return document
