"""A vehicle of the same kind as one that was measured: what is taken over from its record.

Layout, arms, ratio and guide are taken over, never a reading of the pivots. A dimension that was
measured on the other vehicle is assumed for this one, with half the usual half-width.
"""

from collections.abc import Sequence
from contextlib import suppress
from dataclasses import dataclass
from math import degrees
from pathlib import Path

from core.documents.document import Document, value_at, with_value
from core.documents.entries import EntryError
from core.documents.record import RecordError
from core.documents.record_list import find_record, record_files
from core.profiles.profile import Profile, ProfileError, load_profile
from core.sessions.dimensions import PLAIN_NUMBERS, READ, Dimension
from core.sessions.session import Session, session_from
from core.text.plain_text import plain
from core.text.quantity import INCH
from wizard.flow.sound_document import read_sound_document
from wizard.questions.question import Choice

LIKE = "like "
"""Beginning of a choice of the question for the profile; the id of a record follows."""

NAMED = "session.like"
"""Path of the id of the record that a session takes over from."""

MOST_OFFERED = 4
"""Vehicles that are offered, the latest first."""

TAKEN_OVER = ("steering.", "tie_rod.", "guide.")
"""Beginnings of the names of the dimensions that are taken over."""

LAYOUT = ("steering", "arm", "pitman", "track_bar", "guide", "ball")

SHARE = 0.5
"""Part of the usual half-width that stays for a vehicle of the same kind."""


class NothingTakenOver(ValueError):
    """A record from which nothing can be taken over; the message says why."""


@dataclass(frozen=True, eq=False)
class Likeness:
    """A session that takes over from a record, with its profile."""

    document: Document
    profile: Profile


def like_choices(files: Path, document: Document) -> tuple[Choice, ...]:
    """Choices "like FG-2" for the latest vehicles of the shop, for a first session."""
    own = str(value_at(document, "vehicle.tag", "")).casefold()
    choices: dict[str, Choice] = {}
    with suppress(RecordError):
        for file in record_files(files):
            tag = file.path.parent.name
            if file.fault or tag.casefold() == own or tag in choices:
                continue
            words = f"like {plain(tag, 40)}"
            note = "its layout, arms and guide, assumed"
            choices[tag] = Choice(f"{LIKE}{file.path.stem}", words, note)
            if len(choices) == MOST_OFFERED:
                break
    return tuple(choices.values())


def taken_over(
    document: Document, choice: str, files: Path, profile_folders: Sequence[Path]
) -> Likeness:
    """The session with what it takes over from the record of a choice.

    Raises
    ------
    NothingTakenOver
        The record or its profile cannot be read.
    """
    session_id = choice.removeprefix(LIKE)
    try:
        entry = find_record(files, session_id)
        if entry is None:
            raise NothingTakenOver(f"{plain(session_id)} is not filed any more")
        record = read_sound_document(entry.path)
        profile = load_profile(str(value_at(record, "session.profile")), profile_folders)
        other = session_from(record, lambda _: profile)
    except (RecordError, EntryError, ProfileError) as error:
        raise NothingTakenOver(str(error)) from None
    for key in LAYOUT:
        value = value_at(record, f"layout.{key}")
        if value is not None:
            document = with_value(document, f"layout.{key}", value)
    for dimension in other.dimensions.values():
        if not dimension.is_assumed and dimension.name.startswith(TAKEN_OVER):
            document = _with_assumed(document, dimension, other, profile)
    return Likeness(with_value(document, NAMED, session_id), profile)


def _with_assumed(
    document: Document, dimension: Dimension, other: Session, profile: Profile
) -> Document:
    """The session with a dimension that was measured on the other vehicle."""
    name = dimension.name
    within = SHARE * profile.defaults.within(name, other.guide)
    document = with_value(document, f"assumed.{name}", _text(name, dimension.value))
    return with_value(document, f"assumed_within.{name}", _text(name, within))


def _text(name: str, value: float) -> str:
    """A value of a dimension as a record writes it."""
    if name in PLAIN_NUMBERS:
        return f"{value:.6g}"
    if READ[name] == "angle":
        return f"{degrees(value):.6g} deg"
    if READ[name] == "gain":
        return f"{degrees(value) * INCH:.6g} deg/in"
    return f"{value:.6g} mm"
