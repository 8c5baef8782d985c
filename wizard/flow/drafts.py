"""Documents of sessions that are not filed yet: new ones, and re-measures of earlier ones."""

from collections.abc import Iterable, Mapping
from datetime import datetime
from typing import Any

from core.documents.document import Document, value_at, with_value, without
from core.documents.record import FORMAT, FORMAT_VERSION, SessionKind, new_id
from wizard import __version__
from wizard.flow.short_way import WAY

COPIED = (
    *("session.profile", "session.units"),
    *("vehicle.tag", "vehicle.description", "vehicle.wheelbase", "layout", "instruments"),
    *("readings.track_bar.bent", "readings.drag_link.bent"),
    *("readings.steering", "readings.travel", "readings.guide", "readings.kingpin"),
    *("readings.tie_rod.joint_from_far_ball", "readings.tie_rod.near_arm"),
)
"""Values that a re-measure copies from the earlier session. All others are measured again."""

NOT_COPIED_IF_ALTERED = {
    "drag_link.frame": ("readings.steering.pitman_arm",),
    "drag_link.axle": ("readings.steering.arm", "readings.tie_rod.joint_from_far_ball"),
    "ride_height": ("readings.travel", "readings.guide", "readings.kingpin.castor"),
    "lengths": ("readings.track_bar.bent", "readings.drag_link.bent"),
}
"""Values that have to be measured again after a part was altered, by part."""


def now() -> datetime:
    """Present time with its offset, to the second."""
    return datetime.now().astimezone().replace(microsecond=0)


def new_session(opened: datetime) -> Document:
    """Document of a first session without any answer, on the long way."""
    return {
        "format": FORMAT,
        "format_version": FORMAT_VERSION,
        "program_version": __version__,
        "session": {"kind": SessionKind.FIRST.value, "follows": "", "opened": opened},
    }


def on_short_way(document: Document, usual: Mapping[str, Any]) -> Document:
    """The session on the short way, with the answers that the shop usually gives.

    Parameters
    ----------
    document : mapping
    usual : mapping
        As from `wizard.flow.usual_answers.usual_answers`.
    """
    document = with_value(document, WAY, "short")
    return with_value(document, "draft.usual", dict(usual)) if usual else document


def new_re_measure(earlier: Document, opened: datetime) -> Document:
    """Document of a re-measure, with the values of the earlier session that do not change."""
    document = new_session(opened)
    for path in COPIED:
        value = value_at(earlier, path)
        if value is not None:
            document = with_value(document, path, value)
    document = with_value(document, "session.kind", SessionKind.RE_MEASURE.value)
    document = with_value(document, "session.follows", value_at(earlier, "session.id"))
    return with_id(document)


def with_id(document: Document) -> Document:
    """Give the session an id if the vehicle has a tag and the id does not begin with it.

    Raises
    ------
    core.documents.record.RecordError
        The tag cannot name a folder.
    """
    tag = value_at(document, "vehicle.tag")
    if tag is None or str(value_at(document, "session.id", "")).startswith(f"{tag}_"):
        return document
    session: dict[str, Any] = document["session"]
    return with_value(document, "session.id", new_id(tag, session["kind"], session["opened"]))


def without_altered(document: Document, parts: Iterable[str]) -> Document:
    """Remove from a re-measure the copied values that the altered parts make invalid."""
    for part in parts:
        for path in NOT_COPIED_IF_ALTERED.get(part, ()):
            document = without(document, path)
    return document
