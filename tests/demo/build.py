"""Makes demo_sessions/ anew from what was typed, by the program's own way.

    python -m tests.demo.build

Every answer goes through the checks at entry and the flow of the wizard, and is filed as any
session is. Only ids and times are given, where the program would draw a name and look at the
clock.
"""

import shutil
from datetime import datetime
from pathlib import Path
from tempfile import TemporaryDirectory

from core.documents.document import Document, value_at, with_value
from core.documents.record import file_record, read_document, replace_signed
from core.documents.signature import sign
from core.entry_checks.outcome import Queried
from core.fix.plan import Plan
from core.fix.search import search
from core.profiles.profile import Profile, load_profile
from core.verdict.assess import assess
from tests.demo import fg_1, fg_2, fg_3, fg_4, fg_5, fg_6
from tests.demo.typed import Typed
from wizard.flow import answering, drafts
from wizard.flow.filing import finished_record
from wizard.flow.flow import Flow, applicable_answers
from wizard.flow.planning import with_plan
from wizard.locations import DEMO_SESSIONS, PROFILES

TRUCKS = (fg_6, fg_5, fg_4, fg_3, fg_2, fg_1)
SESSIONS: tuple[Typed, ...] = tuple(session for truck in TRUCKS for session in truck.SESSIONS)
"""Every session, oldest first."""

LEAD = "workshop lead (invented)"


class NotTaken(Exception):
    """The wizard would not have taken what was typed."""


def build(files: Path) -> None:
    """File every demo session in a folder."""
    filed: dict[str, Path] = {}
    for typed in SESSIONS:
        earlier = read_document(filed[typed.follows]) if typed.follows else None
        filed[typed.id] = file_session(files, typed, earlier)


def file_session(files: Path, typed: Typed, earlier: Document | None) -> Path:
    """Take one session through the wizard's steps and file it."""
    flow = answer_all(begun(typed, earlier), typed)
    assert flow.profile is not None
    path = file_record(
        files, finished_record(flow.document, flow.profile, datetime.fromisoformat(typed.closed))
    )
    if typed.decision:
        decision, at, note = typed.decision
        document = read_document(path)
        replace_signed(path, sign(document, decision, LEAD, datetime.fromisoformat(at), note))
    return path


def begun(typed: Typed, earlier: Document | None) -> Flow:
    """A session as it is before its first question, under the id it is to have."""
    opened = datetime.fromisoformat(typed.opened)
    document = drafts.new_re_measure(earlier, opened) if earlier else drafts.new_session(opened)
    flow = Flow(with_value(document, "session.id", typed.id))
    return flow.with_profile(profile_of(value_at(document, "session.profile"))) if earlier else flow


def answer_all(flow: Flow, typed: Typed) -> Flow:
    """Every question answered or skipped in the order they come, then those carried over."""
    asked = set()
    while flow.question.path != "file":
        asked.add(flow.question.path)
        flow = answer_one(flow, typed)
    for path in [path for path in typed.answers if path not in asked]:
        flow = flow.going_to(path)
        if flow.question.path != path:
            raise NotTaken(f"{typed.id}: {path} is not asked")
        flow = answer_one(flow, typed)
    if flow.missing:
        raise NotTaken(f"{typed.id}: {flow.missing[0].path} was not answered")
    return flow.going_to("file")


def answer_one(flow: Flow, typed: Typed) -> Flow:
    """The question at hand, as the wizard's screen takes it."""
    question = flow.question
    if question.path == "fix" and typed.plan:
        return with_plan(flow, chosen(flow, typed))
    if question.path not in typed.answers:
        return flow.skipped()
    answered = answering.answer_question(flow, typed.answers[question.path], (PROFILES,))
    reason = typed.reasons.get(question.path, "")
    if isinstance(answered, Queried) and reason:
        return answering.accept_value(flow, answered.value, reason)
    if not isinstance(answered, Flow):
        raise NotTaken(f"{typed.id}: {question.path}: {answered.message}")
    if reason:
        raise NotTaken(f"{typed.id}: {question.path}: is not queried")
    return answered


def chosen(flow: Flow, typed: Typed) -> Plan:
    """The plan that was chosen of those the search brings."""
    assert flow.profile is not None
    profile = flow.profile
    verdict = assess(applicable_answers(flow.document, profile), lambda _: profile)
    for plan in search(verdict, profile.corrections).plans:
        if tuple(correction.name for correction in plan.corrections) == typed.plan:
            return plan
    raise NotTaken(f"{typed.id}: no such plan is shown")


def profile_of(name: str) -> Profile:
    """A profile that is delivered."""
    return load_profile(name, (PROFILES,))


def main() -> None:
    """Replace what is in demo_sessions/."""
    with TemporaryDirectory() as folder:
        build(Path(folder))
        for old in DEMO_SESSIONS.glob("*/*.toml"):
            old.unlink()
        for new in Path(folder).glob("*/*.toml"):
            place = DEMO_SESSIONS / new.parent.name
            place.mkdir(exist_ok=True)
            shutil.copyfile(new, place / new.name)


if __name__ == "__main__":
    main()
