"""Races: several programs answer the same drafts and sign the same records at once."""

from pathlib import Path

from core.documents.document import value_at
from core.documents.record import draft_path, file_record, read_document
from core.documents.signature import signatures_of
from tests.abuse.tally import Tally
from tests.wizard.flow.test_many_hands import ANSWER, SIGN, new_session, run_at_once
from wizard.flow.draft_store import DraftStore

PROGRAMS, SESSIONS = 3, 3


def attack(count: int, folder: Path) -> Tally:
    """Let PROGRAMS give `count` answers and signatures each; all of them have to be on the disk."""
    tally = Tally()
    documents = [new_session() for _ in range(SESSIONS)]
    for document in documents:
        DraftStore(folder / "drafts").keep(document)
    done = run_at_once(ANSWER, folder / "drafts", count, PROGRAMS)
    drafts = [read_document(draft_path(folder / "drafts", document)) for document in documents]
    kept = sum(len(value_at(draft, "answers", {})) for draft in drafts)
    tally.expect(kept == done == PROGRAMS * count, f"{done} answers given, {kept} kept")
    paths = [file_record(folder / "records", new_session()) for _ in range(SESSIONS)]
    signed = run_at_once(SIGN, folder / "records", count, PROGRAMS)
    names = {item["by"] for path in paths for item in signatures_of(read_document(path))}
    tally.expect(len(names) == signed, f"{signed} signatures given, {len(names)} kept")
    tally.tried = done + signed
    return tally
