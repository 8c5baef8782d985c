"""Answers of another window, taken into a session that is being measured."""

from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path

from core.documents.document import Document, value_at, with_value
from core.documents.merge import merged
from wizard.flow.answers import with_results_open
from wizard.flow.draft_store import MERGED_LISTS
from wizard.flow.flow import PLACE, Flow
from wizard.flow.opening import flow_of
from wizard.questions.steps import QUESTIONS


def answers_elsewhere(flow: Flow, document: Document) -> tuple[str, ...]:
    """Paths of the questions that a document answers otherwise than a flow does."""
    return tuple(
        path
        for path, question in QUESTIONS.items()
        if question.is_answered_by_a_value
        and value_at(flow.document, path) != value_at(document, path)
    )


def joined(flow: Flow, document: Document, profile_folders: Sequence[Path]) -> tuple[Flow, str]:
    """Flow with the document that is on the disk, at its own place.

    An undo takes back the answers of this window alone. If another window has chosen another
    profile, nothing can be undone.

    Returns
    -------
    flow : Flow
    remark : str
        Why the profile is asked for again; empty if it is sound.
    """
    if document == flow.document:
        return flow, ""
    place = value_at(flow.document, PLACE)
    if place is not None:
        document = with_value(document, PLACE, place)
    if answers_elsewhere(flow, document):
        document = with_results_open(document)
    if value_at(document, "session.profile") != value_at(flow.document, "session.profile"):
        return flow_of(document, profile_folders)
    past: list[Flow] = []
    for earlier in flow.past:
        both = merged(flow.document, earlier.document, document, MERGED_LISTS)
        past.append(replace(earlier, document=both.document, past=tuple(past)))
    return replace(flow, document=document, past=tuple(past)), ""
