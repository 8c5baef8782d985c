"""Answers in words: the vehicle's tag, a line, a note, one of some words, yes or no."""

import re
import unicodedata
from collections.abc import Collection, Sequence

from core.documents.record import tag_fault
from core.entry_checks.outcome import Accepted, Outcome, Queried, Refused
from core.text.plain_text import plain

LONGEST_LINE = 200
"""Characters."""

LONGEST_NOTE = 4000
"""Characters."""

_JOINERS = "\n\u200c\u200d"  # The lines of a note, and joiners that some scripts need.

YES = {"yes", "y", "true", "1"}
NO = {"no", "n", "false", "0"}

_DISTANCE = re.compile(r"[0-9][0-9 ,.']*(?P<unit>km|kilomet(er|re)s?|mi|miles?)?", re.IGNORECASE)


def tag(text: str) -> Outcome:
    """Tag that can name the vehicle's folder, with its accents in one Unicode form (NFC)."""
    text = unicodedata.normalize("NFC", text.strip())
    if not text:
        return Refused("nothing was typed: the tag names the vehicle's folder, like FG-3")
    fault = tag_fault(text)
    return Refused(fault) if fault else Accepted(text)


def line(text: str) -> Outcome:
    """Line of text that is not empty."""
    text = " ".join(text.split())
    if not text:
        return Refused("nothing was typed: a few words or initials are enough")
    return _clean(text, LONGEST_LINE)


def note(text: str) -> Outcome:
    """Text of several lines, which may be empty."""
    return _clean("\n".join(part.rstrip() for part in text.splitlines()).strip(), LONGEST_NOTE)


def _clean(text: str, longest: int) -> Outcome:
    """Text without control characters, at most so many characters long."""
    if len(text) > longest:
        return Refused(f"is {len(text)} characters long: {longest} at most")
    for character in text:
        # Control characters, direction marks and halves of characters are not text.
        if unicodedata.category(character) in {"Cc", "Cf", "Cs"} and character not in _JOINERS:
            return Refused(f"has a character that is no text, {plain(character)}: leave it out")
    return Accepted(text)


def odometer(text: str) -> Outcome:
    """Distance on the odometer, with its unit."""
    text = " ".join(text.split())
    distance = _DISTANCE.fullmatch(text) if len(text) <= LONGEST_LINE else None
    if distance is None:
        return Refused(f"“{plain(text)}” is no distance: write it like 48210 km or 30100 miles")
    if not distance["unit"]:
        return Queried(text, f"Is {text} in km or in miles? Type the unit too: {text} km.")
    return Accepted(text)


def one_of(text: str, choices: Collection[str]) -> str | Refused:
    """One of some words, whatever its case."""
    word = " ".join(text.split())
    for choice in choices:
        if word.casefold() == choice.casefold():
            return choice
    return Refused(f"“{plain(word)}” is not known: it is one of {', '.join(choices)}")


def any_of(words: Sequence[str], choices: Collection[str]) -> Outcome:
    """Any of some words, each once, in the order of the choices; none is an answer too."""
    chosen = [" ".join(word.split()) for word in words if word.strip()]
    for word in chosen:
        if word not in choices:
            return Refused(f"“{plain(word)}” is not known: any of {', '.join(choices)}")
    return Accepted([choice for choice in choices if choice in chosen])


def yes_or_no(answer: str | bool | Sequence[str]) -> bool | None:
    """True for yes, False for no, None where the answer is neither."""
    if isinstance(answer, bool):
        return answer
    word = "".join(answer).strip().casefold()
    return True if word in YES else False if word in NO else None
