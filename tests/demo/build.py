"""Build demo_sessions/ from the typed answers.

    python -m tests.demo.build

Every answer goes through the entry checks and the flow of the wizard, and the session is filed like
any other. Only ids and times are fixed: the program draws its ids and reads the clock.
"""

import shutil
from datetime import datetime
from pathlib import Path
from tempfile import TemporaryDirectory

from core.documents.document import Document, value_at, with_value
from core.documents.picture import FOLDER, keep_picture
from core.documents.record import file_record, read_document, replace_signed
from core.documents.signature import sign
from core.entry_checks.outcome import Queried
from core.fix.plan import Plan
from core.fix.search import search
from core.profiles.profile import Profile, load_profile
from core.verdict.assess import assess
from tests.demo import fg_1, fg_2, fg_3, fg_4, fg_5, fg_6, fg_7, fg_8
from tests.demo.typed import TypedSession
from wizard.flow import answering, drafts
from wizard.flow.answers import applicable_answers
from wizard.flow.filing import finished_record
from wizard.flow.flow import Flow
from wizard.flow.mending import mended
from wizard.flow.photographs import with_mark, with_picture
from wizard.flow.planning import with_plan
from wizard.locations import DEMO_SESSIONS, PROFILES

TRUCKS = (fg_8, fg_7, fg_6, fg_5, fg_4, fg_3, fg_2, fg_1)
SESSIONS: tuple[TypedSession, ...] = tuple(
    sorted(
        (session for truck in TRUCKS for session in truck.SESSIONS),
        key=lambda session: session.opened,
    )
)
"""Every session, oldest first."""

LEAD = "workshop lead (invented)"


class NotTaken(Exception):
    """A typed answer that the wizard does not accept."""


def build(files: Path) -> None:
    """File every demo session in a folder."""
    filed: dict[str, Path] = {}
    for typed in SESSIONS:
        earlier = read_document(filed[typed.follows]) if typed.follows else None
        filed[typed.id] = file_session(files, typed, earlier)


def file_session(files: Path, typed: TypedSession, earlier: Document | None) -> Path:
    """Take one session through the steps of the wizard, file it, and return its path."""
    flow = opened_flow(typed, earlier)
    if typed.draw:
        flow = flow.with_document(with_photographs(flow.document, files, typed))
    flow = answer_all(flow, typed)
    if typed.mends:
        flow = mend(flow)
    assert flow.profile is not None
    answered = flow.document
    if typed.direct:
        answered = with_value(answered, "direct", dict(typed.direct))
    path = file_record(
        files, finished_record(answered, flow.profile, datetime.fromisoformat(typed.closed))
    )
    if typed.decision:
        decision, at, note = typed.decision
        document = read_document(path)
        replace_signed(path, sign(document, decision, LEAD, datetime.fromisoformat(at), note))
    return path


def with_photographs(document: Document, files: Path, typed: TypedSession) -> Document:
    """The document of a session from photographs with its pictures and marks."""
    tag = typed.id.partition("_")[0]
    document = with_value(document, "session.means", "photographs")
    assert typed.draw is not None
    with TemporaryDirectory() as folder:
        for number, drawn in enumerate(typed.draw(Path(folder)), start=1):
            kept = keep_picture(drawn.path, files / tag, tag)
            document = with_picture(document, kept)
            for point, place in drawn.marks.items():
                document = with_mark(document, number, point, place)
    return document


def mend(flow: Flow) -> Flow:
    """Undo the likeliest slip, as the key on the verdict does."""
    profile = flow.profile
    assert profile is not None
    verdict = assess(applicable_answers(flow.document, profile), lambda _: profile)
    return flow.with_document(mended(flow.document, verdict.slips[0]))


def opened_flow(typed: TypedSession, earlier: Document | None) -> Flow:
    """A new session at its first question, with its fixed id."""
    opened = datetime.fromisoformat(typed.opened)
    document = drafts.new_re_measure(earlier, opened) if earlier else drafts.new_session(opened)
    flow = Flow(with_value(document, "session.id", typed.id))
    return flow.with_profile(profile_of(value_at(document, "session.profile"))) if earlier else flow


def answer_all(flow: Flow, typed: TypedSession) -> Flow:
    """Answer or skip every question in order, then the answers that were carried over."""
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


def answer_one(flow: Flow, typed: TypedSession) -> Flow:
    """Answer the question at hand, as the screen of the wizard does."""
    question = flow.question
    if question.path == "fix" and typed.plan:
        return with_plan(flow, chosen_plan(flow, typed))
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


def chosen_plan(flow: Flow, typed: TypedSession) -> Plan:
    """The chosen plan among the plans of the search."""
    assert flow.profile is not None
    profile = flow.profile
    verdict = assess(applicable_answers(flow.document, profile), lambda _: profile)
    for plan in search(verdict, profile.corrections).plans:
        if tuple(correction.name for correction in plan.corrections) == typed.plan:
            return plan
    raise NotTaken(f"{typed.id}: the search gives no such plan")


def profile_of(name: str) -> Profile:
    """A profile of the program."""
    return load_profile(name, (PROFILES,))


def main() -> None:
    """Replace the records in demo_sessions/."""
    with TemporaryDirectory() as folder:
        build(Path(folder))
        for old in DEMO_SESSIONS.glob("*/*.toml"):
            old.unlink()
        for new in Path(folder).glob("*/*.toml"):
            place = DEMO_SESSIONS / new.parent.name
            place.mkdir(exist_ok=True)
            shutil.copyfile(new, place / new.name)
        for pictures in Path(folder).glob(f"*/{FOLDER}"):
            place = DEMO_SESSIONS / pictures.parent.name / FOLDER
            shutil.copytree(pictures, place, dirs_exist_ok=True)


if __name__ == "__main__":
    main()
