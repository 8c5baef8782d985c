"""Assumed values, skipped answers, and the questions that stay open for want of them."""

from collections.abc import Iterator, Mapping, Sequence
from math import degrees
from typing import Any

from core.documents.document import Document, value_at
from core.readings.photograph import Means
from core.sessions.dimensions import PLAIN_NUMBERS
from core.sessions.known_entries import unknown_names
from core.sessions.session import Session
from core.text.plain_text import plain
from core.text.quantity import INCH, LengthUnit, format_length
from core.verdict.open_questions import OpenQuestion, Topic, open_questions_of
from core.verdict.verdict import Verdict
from wizard.phrases.amounts import listed
from wizard.phrases.fact import LOOK, Fact
from wizard.phrases.reading_names import name_of_reading, names_of_readings
from wizard.questions import stance, walk_round
from wizard.questions.steps import QUESTIONS

MOST_LISTED = 5
"""Parts that are listed for a session from photographs; more are counted."""

OPEN = {
    Topic.ARTICULATION: "how it steers while the axle rolls; it needs the {}",
    Topic.ROLL_CENTRE: "the height of the roll centre; it needs the {}",
    Topic.FORE_AND_AFT: "how the links lie fore and aft: the usual places count, with their "
    "doubt; it needs the {}",
    Topic.CHECKED: "whether a reading has a slip, because no reading checks another; it "
    "needs the {}, or the lengths",
    Topic.SLIPS: "whether these have a slip, because no other reading checks them: {}",
    Topic.ROAD: "what happens on the road; the profile with its events is not here",
}
"""Each topic in words; {} stands for the readings that are missing or unchecked."""

MOST_NAMES = 6
"""Names of unknown entries that are shown."""


def open_question_facts(verdict: Verdict, document: Document, unit: LengthUnit) -> Iterator[Fact]:
    """Assumed values, open questions, unchecked parts and kept readings."""
    yield from assumed_facts(verdict.session, unit)
    yield from taken_over_facts(document)
    for gap in open_questions_of(verdict):
        yield Fact("not answered", open_question_words(gap))
    if missed := unchecked_names(document):
        yield Fact(
            "not looked at",
            f"{_missed_words(verdict, missed)}. Wear and slack there feel like bump steer.",
            LOOK,
        )
    if unknown := unknown_names(document):
        yield Fact("not known", f"{unknown_words(unknown)}. Kept as it is; nothing here uses it.")
    yield from mended_facts(document)
    for kept in kept_reading_words(document):
        yield Fact("kept as it is", kept)


def _missed_words(verdict: Verdict, missed: list[str]) -> str:
    """Parts of walk-round and stance that nobody looked at; photographs show few of them."""
    if verdict.session.means == Means.PHOTOGRAPHS and len(missed) > MOST_LISTED:
        return f"{len(missed)} parts of walk-round and stance, which photographs do not show"
    return listed(missed)


def assumed_facts(session: Session, unit: LengthUnit) -> Iterator[Fact]:
    """Values that were not measured and come from the profile."""
    conditions = {
        "travel.bump": session.bump,
        "travel.droop": session.droop,
        "vehicle.wheelbase": session.wheelbase,
    }
    words = []
    for name in session.assumed:
        value = conditions[name] if name in conditions else session.dimensions[name].value
        words.append(
            f"{name_of_reading(name.removeprefix('vehicle.'))} "
            f"{format_dimension(name, value, unit)}"
        )
    if words:
        yield Fact("assumed", "Not measured, so the profile's values count:")
    yield from (Fact("", text) for text in words)


def taken_over_facts(document: Mapping[str, Any]) -> Iterator[Fact]:
    """Values of another vehicle, and readings of the session before."""
    if like := value_at(document, "session.like"):
        yield Fact(
            "taken over",
            f"Layout, arms and guide are those of {plain(like, 80)}. Half of the usual doubt stays "
            "on what was measured there and not here.",
        )
    if carried := value_at(document, "session.carried"):
        names = names_of_readings(str(name) for name in carried)
        yield Fact(
            "carried over",
            f"Nobody altered these since the session before; they were not taken again: {names}.",
        )


def format_dimension(name: str, value: float, unit: LengthUnit) -> str:
    """A dimension in its unit: "6 1/2 in", "5.0 deg", "-0.70 deg/in" or a plain number."""
    if name in PLAIN_NUMBERS:
        return f"{value:g}"
    if name.startswith("kingpin."):
        return f"{degrees(value):.1f} deg"
    if name == "guide.pitch_gain":
        scale = INCH if unit == "in" else 1.0
        return f"{degrees(value) * scale:.2f} deg/{unit}"
    return format_length(value, unit)


def open_question_words(gap: OpenQuestion) -> str:
    """One question left open."""
    return OPEN[gap.topic].format(names_of_readings(gap.readings))


def unchecked_names(document: Document) -> list[str]:
    """Names of what the walk-round and the stance would have asked and nobody answered."""
    return [
        question.name.lower()
        for step in (walk_round.STEP, stance.STEP)
        for question in step.questions
        if question.is_asked(document, None)
        and question.is_answered_by_a_value
        and not question.path.startswith("stance.ride_height")
        and value_at(document, question.path) in (None, "not checked")
    ]


def unknown_words(names: Sequence[str]) -> str:
    """Names of the entries that this program does not know, the first few of them."""
    shown = [plain(name, 60) for name in names[:MOST_NAMES]]
    return listed([*shown, f"{len(names) - MOST_NAMES} more"] if names[MOST_NAMES:] else shown)


def mended_facts(document: Mapping[str, Any]) -> Iterator[Fact]:
    """Readings that were mended, with what was typed first."""
    entries = document.get("mended")
    for entry in entries if isinstance(entries, list) else ():
        if not isinstance(entry, Mapping):
            continue
        parts = [entry.get(key) for key in ("readings", "was", "now")]
        lists = [part for part in parts if isinstance(part, list)]
        for name, before, after in zip(*lists, strict=False) if len(lists) == len(parts) else ():
            yield Fact(
                "mended",
                f"{name_of_reading(str(name))}: typed {_texts(before)}, now {_texts(after)}",
            )


def _texts(repeats: object) -> str:
    """Repeats of a record as they were typed."""
    texts = repeats if isinstance(repeats, list) else [repeats]
    return "; ".join(plain(text) for text in texts) or "set aside"


def kept_reading_words(document: Mapping[str, Any]) -> Iterator[str]:
    """Readings that were queried and kept, with the reason given."""
    entries = document.get("kept")
    for kept in entries if isinstance(entries, list) else ():
        if isinstance(kept, Mapping):
            name = str(kept.get("reading", ""))
            shown = QUESTIONS[name].name if name in QUESTIONS else name_of_reading(name)
            yield f"{plain(shown)}: {plain(kept.get('reason', ''), 300)}"
