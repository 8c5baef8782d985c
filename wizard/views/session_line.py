"""One line for each session of a list: its parts, each with the name of its style."""

from collections.abc import Iterable
from dataclasses import dataclass

from rich.cells import cell_len, set_cell_size

from core.documents.listed_session import ListedSession
from core.documents.record import SessionKind
from core.documents.seal import SealState
from core.shop.settled import is_settled
from wizard.phrases.decisions import DECISIONS
from wizard.phrases.seal import CHANGED, DECISION_CHANGED, NO_SEAL
from wizard.phrases.verdict_words import mark_and_word, tone_of

WIDEST_TAG = 16
"""Most columns of a tag; the opened session shows all of it."""

VERDICT_WIDTH = 19
KIND_WIDTH = len(SessionKind.RE_MEASURE)

Part = tuple[str, str]
"""A text and the name of its style: a tone, "head", "look", "waiting", "quiet" or none."""


@dataclass(frozen=True)
class Widths:
    """Columns of the tag and of the decision in a list."""

    tag: int = 0
    decision: int = 0


def widths_of(entries: Iterable[ListedSession]) -> Widths:
    """Widths that fit a list of filed sessions."""
    tags, decisions = set(), set()
    for entry in entries:
        tags.add(entry.tag)
        decisions.add(entry.decision)
    return Widths(
        min(max(map(cell_len, tags), default=0), WIDEST_TAG),
        max((len(DECISIONS.get(decision, decision)) for decision in decisions), default=0),
    )


def filed_parts(entry: ListedSession, widths: Widths) -> tuple[Part, ...]:
    """Line of a filed session, with its verdict in mark and word, or with its fault."""
    if entry.fault:
        return ("! cannot be read  ", "look"), (entry.fault, "")
    columns = [_date(entry), set_cell_size(entry.kind, KIND_WIDTH), entry.description]
    if widths.decision:
        decision = DECISIONS.get(entry.decision, entry.decision)
        columns.insert(2, set_cell_size(decision, widths.decision))
    return (
        (f"{set_cell_size(entry.tag, widths.tag)}  ", "head"),
        (set_cell_size(verdict_words(entry), VERDICT_WIDTH), tone_of(entry.overall)),
        *note_parts(entry),
        (f"  {'  '.join(columns)}", ""),
    )


def unfinished_parts(entry: ListedSession, reached: str) -> tuple[Part, ...]:
    """Line of an unfinished session, with the step it has reached, or with its fault."""
    if entry.fault:
        return filed_parts(entry, Widths())
    at = f"at {reached}  " if reached else ""
    return (
        ("… unfinished, go on  ", "waiting"),
        (f"{entry.tag}  ", "head"),
        (f"{at}{_date(entry)}  {entry.kind}  {entry.description}", ""),
    )


def verdict_words(entry: ListedSession) -> str:
    """The verdict in mark and word."""
    if entry.overall and is_settled(entry):
        return mark_and_word(entry.overall)
    return "— no verdict" if is_settled(entry) else "… computing"


def note_parts(entry: ListedSession) -> tuple[Part, ...]:
    """A note on the seal, to stand beside the verdict."""
    if entry.seal == SealState.BROKEN:
        return ((f"  ! {CHANGED}", "look"),)
    if entry.is_decision_changed:
        return ((f"  ! {DECISION_CHANGED}", "look"),)
    return ((f"  {NO_SEAL}", "quiet"),) if entry.seal == SealState.NONE else ()


def searched_text(entry: ListedSession, reached: str, is_unfinished: bool) -> str:
    """Text in which words are sought: that of the line without its columns, in small letters."""
    if entry.fault:
        return f"cannot be read {entry.fault}".casefold()
    state = f"unfinished at {reached}" if is_unfinished else verdict_words(entry)
    notes = "" if is_unfinished else "".join(text for text, _ in note_parts(entry))
    decision = DECISIONS.get(entry.decision, entry.decision)
    words = (entry.tag, state, notes, _date(entry), entry.kind, decision, entry.description)
    return " ".join(words).casefold()


def _date(entry: ListedSession) -> str:
    return f"{entry.opened:%Y-%m-%d}" if entry.opened else ""
