"""What becomes of an answer: the flow with it in, or why it is queried or refused."""

from __future__ import annotations

from collections.abc import Sequence
from contextlib import suppress
from pathlib import Path
from typing import Any

from core.documents.document import Document, value_at
from core.documents.entries import EntryError, units_of
from core.documents.record import RecordError
from core.documents.record_list import list_records
from core.entry_checks.check import check
from core.entry_checks.outcome import Accepted, Queried, Refused
from core.fix.plan_record import filed_plan
from core.profiles.profile import ProfileError, load_profile
from core.text.plain_text import plain
from wizard.flow import drafts
from wizard.flow.flow import Flow
from wizard.phrases.filed_plan import planned_words

LONGEST_REASON = 500
"""Characters."""


def answer_question(
    flow: Flow,
    given: Any,
    profile_folders: Sequence[Path],
    files: Path | None = None,
    earlier: Document | None = None,
) -> Flow | Queried | Refused:
    """The question at hand answered, if the core has nothing against it.

    Parameters
    ----------
    flow : Flow
    given : str, bool or list of str
        As typed or chosen.
    profile_folders : sequence of Path
        Where a profile that is chosen is looked for.
    files : Path, optional
        Where a vehicle that was measured before is looked for.
    earlier : mapping, optional
        The session that is measured again.
    """
    question = flow.question
    try:
        if question.kind == "profile":
            flow = flow.with_profile(load_profile(given, profile_folders))
        outcome = check(question.path, given, flow.document, flow.profile)
    except (ProfileError, EntryError) as error:  # EntryError: a draft that was edited by hand
        return Refused(str(error))
    if isinstance(outcome, Accepted) and question.path == "vehicle.tag" and files:
        outcome = _measured_before(outcome, flow, files)
    if isinstance(outcome, Accepted) and question.path == "session.altered" and earlier:
        outcome = _altered_as_planned(outcome, earlier)
    if isinstance(outcome, Accepted):
        return accept_value(flow, outcome.value)
    if isinstance(outcome, Queried) and (reason := flow.reason_for(outcome.value)):
        return accept_value(flow, outcome.value, reason)
    return outcome


def keep_queried(flow: Flow, value: Any, reason: str) -> Flow | Refused:
    """The question at hand answered with a value that was queried, if there is a reason for it."""
    if not reason.strip():
        return Refused("a reason is needed: what was seen, in a few words")
    if len(reason.strip()) > LONGEST_REASON:
        return Refused(f"a reason is {LONGEST_REASON} characters at most: the gist of it")
    return accept_value(flow, value, plain(reason.strip(), LONGEST_REASON))


def accept_value(flow: Flow, value: Any, reason: str = "") -> Flow:
    """The question at hand answered with a value, and why it was kept if it was queried.

    A session gets its id with the vehicle's tag; a re-measure loses what was taken over and does
    not hold for a part that was altered.
    """
    answered = flow.answered(value, reason)
    document = answered.document
    if flow.question.path == "session.altered":
        said = value_at(flow.document, "session.altered", ())
        newly = [part for part in value if part not in said]
        document = drafts.without_altered(document, newly)
    return answered.with_document(drafts.with_id(document))


def _measured_before(accepted: Accepted, flow: Flow, files: Path) -> Accepted | Queried:
    """A tag that a filed session has, given to a first session, is more often a re-measure."""
    if value_at(flow.document, "session.kind") != "first":
        return accepted
    tag = str(accepted.value)
    with suppress(RecordError):
        for entry in list_records(files):
            if entry.tag.casefold() == tag.casefold():
                last = f", last on {entry.opened:%Y-%m-%d}" if entry.opened else ""
                return Queried(
                    accepted.value,
                    f"{plain(tag)} was measured before{last}: to measure it again leave with F9 "
                    "and press F6 on that session; keep it if this is to stand by itself",
                )
    return accepted


def _altered_as_planned(accepted: Accepted, earlier: Document) -> Accepted | Queried:
    """Nothing altered, though something was planned, is more often forgotten than meant."""
    with suppress(EntryError):
        if not accepted.value and (planned := filed_plan(earlier)) and planned.moves:
            moves = planned_words(planned, units_of(earlier))
            return Queried(
                accepted.value,
                f"nothing is ticked, and the session before planned {moves}: tick what was moved, "
                "or keep it if nothing was",
            )
    return accepted
