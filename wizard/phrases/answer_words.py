"""Answers in words, for lists and fields."""

from __future__ import annotations

from collections.abc import Mapping
from contextlib import suppress
from typing import TYPE_CHECKING, Any

from core.documents.document import Document, value_at
from core.documents.entries import EntryError
from core.entry_checks.castor_rows import EXAMPLE
from core.fix.plan_record import filed_plan
from core.kinematics.pivots import GUIDE_PIVOTS, GuideKind
from core.text import quantity
from core.text.plain_text import plain
from core.text.quantity import LengthUnit
from wizard.questions.question import Question

if TYPE_CHECKING:
    from core.profiles.profile import Profile

INSTRUMENTS = {
    "tape": "tape",
    "sighting": "sighting",
    "floor": "floor",
    "angle_finder": "finder",
    "seating": "seating",
}
"""Short names of what the readings are taken with."""

UNIT_WORDS = {"in": "inches", "mm": "millimetres"}


def answer_in_words(question: Question, value: Any, units: LengthUnit) -> str:
    """An answer in words; a length typed in the other unit has both units."""
    if value is None:
        return ""
    if question.kind in ("one of", "yes or no", "any of"):
        return choice_words(question, value)
    parts = value if isinstance(value, list) else [value]
    if question.kind == "castor":
        return castor_text(value)
    if question.kind == "length":
        parts = [typed_length_words(str(part), units) for part in parts]
    return "; ".join(map(str, parts))


def choice_words(question: Question, value: Any) -> str:
    """The words of what was chosen."""
    chosen = value if isinstance(value, list) else [value]
    words = [choice.words for choice in question.choices if choice.value in chosen]
    return "; ".join(words) or "nothing"


def typed_length_words(typed: str, units: LengthUnit) -> str:
    """A length as it was typed, before it the same in the units shown where they differ."""
    is_metric = "m" in typed.casefold()
    if is_metric == (units == "mm"):
        return typed
    try:
        return f"{quantity.format_length(quantity.parse_length(typed, units), units)} ({typed})"
    except quantity.QuantityError:
        return typed


def field_text(value: Any) -> str:
    """An answer as it stands in the field when it is asked again."""
    if value is None:
        return ""
    if isinstance(value, list) and all(isinstance(row, Mapping) for row in value) and value:
        return castor_text(value)
    return "; ".join(map(str, value)) if isinstance(value, list) else str(value)


def castor_text(rows: Any) -> str:
    """Castor at some heights, as it is typed: "5.5 deg at 0 in; 8.5 deg at 2 in"."""
    if not isinstance(rows, list):
        return str(rows)
    return "; ".join(
        f"{row.get('castor', '')} at {row.get('heave', '')}"
        for row in rows
        if isinstance(row, Mapping)
    )


def assumed_words(
    question: Question,
    profile: Profile | None,
    units: LengthUnit,
    document: Document | None = None,
) -> str:
    """Value that is assumed for a skipped answer; empty where none is.

    It comes from the profile, or from a vehicle of the same kind that the document names.
    """
    if profile is None or not question.assumed:
        return ""
    if document and (taken_over := value_at(document, f"assumed.{question.assumed}")) is not None:
        like = plain(value_at(document, "session.like", ""), 60).partition("_")[0]
        words = typed_length_words(str(taken_over), units)
        return f"{words} of {like}" if like else words
    value = _assumed(question.assumed, profile)
    if question.kind == "length":
        return quantity.format_length(value, units, decimals=1 if value < 10 else 0)
    if question.kind == "castor":
        return f"{quantity.format_angle_per_length(value, units)} of pitch"
    return quantity.format_angle(value) if question.kind == "angle" else f"{value:g}"


def _assumed(name: str, profile: Profile) -> float:
    """Value that a profile assumes for a reading or an instrument, by its name."""
    table, _, key = name.partition(".")
    if table == "instruments":
        return float(getattr(profile.instruments, key))
    guides = (kind for kind, pivots in GUIDE_PIVOTS.items() if name.rpartition(".")[0] in pivots)
    return profile.defaults.value(name, next(guides, GuideKind.UNMEASURED))


def instruments_words(document: Document, profile: Profile, units: LengthUnit) -> str:
    """The usual instruments in one line: those of the shop, else those of the profile."""
    words = []
    for key, name in INSTRUMENTS.items():
        usual = value_at(document, f"instruments.{key}")
        if usual is None:
            usual = value_at(document, f"draft.usual.instruments.{key}")
        if usual is None:
            usual = profile.as_written["instruments"][key]
        words.append(f"{name} {usual}")
    return f"{UNIT_WORDS[units]}; {', '.join(words)}. Enter keeps, E changes."


def hint(
    question: Question,
    profile: Profile | None,
    units: LengthUnit,
    earlier: Document | None = None,
    document: Document | None = None,
) -> str:
    """The line under the field: the form of an answer, the earlier answer, the effect of a skip."""
    parts = [earlier_answer_words(question, earlier, units)] if earlier else []
    if question.usual and profile is not None:
        usual = choice_words(question, getattr(profile, question.usual))
        parts.append(f"usual for this profile: {usual}")
    if question.kind == "length":
        like = question.examples[units == "mm"]
        parts.append(f"{UNIT_WORDS[units]}, like {like}")
    if question.kind == "castor":
        parts.append(f"like {EXAMPLE}")
    if question.kind == "angle":
        parts.append("degrees, like 8.5")
    if question.repeats:
        parts.append("repeats with ;")
    if question.optional:
        assumed = assumed_words(question, profile, units, document)
        parts.append(f"skipped: {assumed} is assumed" if assumed else "may be skipped")
    return " · ".join(filter(None, parts))


def planned_parts(earlier: Document) -> list[str]:
    """Parts that the plan of a session moves, as `session.altered` names them."""
    with suppress(EntryError):
        planned = filed_plan(earlier)
        return [pivot for _, pivot, _ in planned.moves] if planned else []
    return []


def earlier_answer_words(question: Question, earlier: Document, units: LengthUnit) -> str:
    """Answer of the session that is measured again, or its plan."""
    if question.path == "session.altered":
        pivots = planned_parts(earlier)
        return f"planned: {choice_words(question, pivots)}" if pivots else ""
    before = value_at(earlier, question.path)
    return "" if before is None else f"before: {answer_in_words(question, before, units)}"
