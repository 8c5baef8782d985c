"""Answers to the question at hand: accepted, queried or refused."""

from collections.abc import Sequence
from contextlib import suppress
from dataclasses import replace
from pathlib import Path
from typing import Any

from core.documents.document import Document, value_at, with_value
from core.documents.entries import EntryError, units_of
from core.documents.record import RecordError, SessionKind
from core.documents.record_list import list_vehicle
from core.entry_checks.check import check
from core.entry_checks.known import KnownAnswers
from core.entry_checks.outcome import Accepted, Queried, Refused
from core.entry_checks.re_measure import differences_from_before
from core.fix.plan_record import filed_plan
from core.profiles.profile import ProfileError, load_profile
from core.text.plain_text import plain
from wizard.flow import drafts
from wizard.flow.carrying import (
    CARRIED,
    carried_over,
    checked_against,
    with_offsets_shifted,
)
from wizard.flow.flow import Flow
from wizard.flow.likeness import LIKE, NothingTakenOver, taken_over
from wizard.phrases.filed_plan import planned_words

READINGS = "readings."
"""Beginning of the path of every reading."""

LONGEST_REASON = 500
"""Characters."""


def answer_question(
    flow: Flow,
    answer: Any,
    profile_folders: Sequence[Path],
    files: Path | None = None,
    earlier: Document | None = None,
) -> Flow | Queried | Refused:
    """Check an answer to the question at hand and take it if nothing is against it.

    Parameters
    ----------
    flow : Flow
        The session, at the question.
    answer : str, bool or list of str
        The answer as typed or chosen.
    profile_folders : sequence of Path
        Folders in which a chosen profile is looked for.
    files : Path, optional
        Files folder in which earlier sessions of the vehicle are looked for.
    earlier : mapping, optional
        Record of the session that is measured again.

    Returns
    -------
    Flow, Queried or Refused
        The flow at its next question, or the reason why the answer was not taken.
    """
    question = flow.question
    if question.kind == "profile" and str(answer).startswith(LIKE) and files:
        return _take_over(flow, str(answer), files, profile_folders)
    try:
        if question.kind == "profile":
            flow = flow.with_profile(load_profile(answer, profile_folders))
        answers = checked_against(flow.document, question.path)
        outcome = check(question.path, answer, answers, flow.profile)
    except (ProfileError, EntryError) as error:  # EntryError: the draft was edited by hand
        return Refused(str(error))
    if isinstance(outcome, Accepted) and question.path == "vehicle.tag" and files:
        outcome = _query_known_tag(outcome, flow, files)
    if isinstance(outcome, Accepted) and question.path == "session.altered" and earlier:
        outcome = _query_nothing_altered(outcome, earlier)
    if isinstance(outcome, Accepted) and question.path.startswith(READINGS) and earlier:
        outcome = _query_difference(outcome, flow, earlier)
    if isinstance(outcome, Accepted):
        return accept_value(flow, outcome.value, earlier=earlier)
    if isinstance(outcome, Queried) and (reason := flow.reason_for(outcome.value)):
        return accept_value(flow, outcome.value, reason, earlier)
    return outcome


def _take_over(
    flow: Flow, choice: str, files: Path, profile_folders: Sequence[Path]
) -> Flow | Refused:
    """Answer the question for the profile by a vehicle of the same kind."""
    try:
        likeness = taken_over(flow.document, choice, files, profile_folders)
    except NothingTakenOver as error:
        return Refused(str(error))
    alike = flow.with_document(likeness.document).with_profile(likeness.profile)
    return replace(accept_value(alike, likeness.profile.name), past=(*flow.past, flow))


def keep_queried(
    flow: Flow, value: Any, reason: str, earlier: Document | None = None
) -> Flow | Refused:
    """Take a queried value with its reason; refuse it if the reason is missing or too long."""
    if not reason.strip():
        return Refused("a reason is needed: what was seen, in a few words")
    if len(reason.strip()) > LONGEST_REASON:
        return Refused(f"the reason is too long: {LONGEST_REASON} characters at most")
    return accept_value(flow, value, plain(reason.strip(), LONGEST_REASON), earlier)


def accept_value(flow: Flow, value: Any, reason: str = "", earlier: Document | None = None) -> Flow:
    """Put a value into the session as the answer to the question at hand.

    The tag of a vehicle gives the session its id. An altered part of a re-measure removes the
    values of that part that were copied from the earlier session. On the short way the readings
    that nobody altered are carried over.

    Parameters
    ----------
    flow : Flow
    value
        The value for the document.
    reason : str
        Why the value was kept although it was queried.
    earlier : mapping, optional
        Record of the session that is measured again.
    """
    answered = flow.answered(value, reason)
    document = answered.document
    if flow.question.path == "session.altered":
        already_altered = value_at(flow.document, "session.altered", ())
        newly_altered = [part for part in value if part not in already_altered]
        document = drafts.without_altered(document, newly_altered)
        if flow.is_short and earlier is not None:
            document = carried_over(document, earlier)
    elif earlier is not None and value_at(document, CARRIED) is not None:
        document = with_offsets_shifted(document, earlier, flow.profile)
    return answered.with_document(drafts.with_id(document))


def _query_known_tag(accepted: Accepted, flow: Flow, files: Path) -> Accepted | Queried:
    """Query the tag of a first session if a filed session has the same tag."""
    if value_at(flow.document, "session.kind") != SessionKind.FIRST:
        return accepted
    tag = str(accepted.value)
    with suppress(RecordError):
        for entry in list_vehicle(files, tag):
            if entry.tag.casefold() == tag.casefold():
                last = f", last on {entry.opened:%Y-%m-%d}" if entry.opened else ""
                return Queried(
                    accepted.value,
                    f"{plain(tag)} was measured before{last}. To measure it again, leave with F9 "
                    "and press F6 on that session. "
                    "Keep the tag if this is a separate first session",
                )
    return accepted


def _query_difference(accepted: Accepted, flow: Flow, earlier: Document) -> Accepted | Queried:
    """Query a reading of an unaltered pivot that differs from the session before."""
    path = flow.question.path
    answers = checked_against(flow.document, path)
    known = KnownAnswers(with_value(answers, path, accepted.value), flow.profile)
    before = KnownAnswers(earlier, flow.profile)
    for objection in differences_from_before(path.removeprefix(READINGS), known, before):
        return Queried(accepted.value, objection.message)
    return accepted


def _query_nothing_altered(accepted: Accepted, earlier: Document) -> Accepted | Queried:
    """Query the answer "nothing altered" if the earlier session has a plan."""
    with suppress(EntryError):
        if not accepted.value and (planned := filed_plan(earlier)) and planned.moves:
            moves = planned_words(planned, units_of(earlier))
            return Queried(
                accepted.value,
                f"nothing is ticked, but the session before planned {moves}. "
                "Tick the parts that were moved, or keep the answer if none was",
            )
    return accepted
