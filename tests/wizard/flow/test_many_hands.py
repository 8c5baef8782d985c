"""Eight programs that change the same drafts and records at once; nothing they report is lost."""

import subprocess
import sys
from datetime import UTC, datetime

import pytest

from core.documents.document import value_at, with_value
from core.documents.record import draft_path, file_record, read_document
from core.documents.signature import signatures_of
from wizard.flow import drafts
from wizard.flow.draft_store import DraftStore

pytestmark = pytest.mark.slow

OPENED = datetime(2026, 11, 25, 14, 12, 5, tzinfo=UTC)
PROGRAMS, ANSWERS, DRAFTS = 8, 225, 9
SIGNATURES, RECORDS = 25, 5

ANSWER = """
import sys
from pathlib import Path
from core.documents.document import with_value
from core.documents.record import RecordError, read_document
from wizard.flow.draft_store import DraftStore
files, program, answers = Path(sys.argv[1]), sys.argv[2], int(sys.argv[3])
store = DraftStore(files)
documents = [read_document(path) for path in sorted(files.glob("unfinished/[!.]*.toml"))]
for document in documents:
    store.remember(document)
print("ready", flush=True)
sys.stdin.readline()
number = 0
while number < answers:
    document = documents[number % len(documents)]
    answered = with_value(document, f"answers.of_{program}_number_{number}", "given")
    try:
        documents[number % len(documents)] = store.keep(answered, document).document
    except RecordError as error:
        assert "another program is writing it" in str(error), error
    else:
        number += 1
print(number)
"""

SIGN = """
import sys
from datetime import UTC, datetime
from pathlib import Path
from core.documents.record import RecordError, read_document, replace_signed
from core.documents.signature import sign
files, program, signatures = Path(sys.argv[1]), sys.argv[2], int(sys.argv[3])
paths = sorted(files.glob("FG-3/[!.]*.toml"))
print("ready", flush=True)
sys.stdin.readline()
number = 0
while number < signatures:
    path, by = paths[number % len(paths)], f"lead {program}, number {number}"
    try:
        replace_signed(path, sign(read_document(path), "signed", by, datetime.now(UTC)))
    except RecordError as error:
        assert "has changed since" in str(error) or "another program is" in str(error), error
    else:
        number += 1
print(number)
"""


def run_at_once(program, files, changes, programs=PROGRAMS):
    """Run a program several times at once; return the number of changes that it calls done."""
    running = [
        subprocess.Popen(
            [sys.executable, "-c", program, str(files), str(number), str(changes)],
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            text=True,
        )
        for number in range(programs)
    ]
    for started in running:
        assert started.stdout.readline() == "ready\n"
    for started in running:
        started.stdin.write("go\n")
        started.stdin.flush()
    return sum(int(started.communicate(timeout=300)[0]) for started in running)


def new_session():
    """Document of a session with a tag."""
    return drafts.with_id(with_value(drafts.new_session(OPENED), "vehicle.tag", "FG-3"))


def test_no_answer_of_eight_windows_is_lost(tmp_path):
    documents = [new_session() for _ in range(DRAFTS)]
    for document in documents:
        DraftStore(tmp_path).keep(document)
    done = run_at_once(ANSWER, tmp_path, ANSWERS)
    kept = [value_at(read_document(draft_path(tmp_path, item)), "answers") for item in documents]
    assert done == PROGRAMS * ANSWERS
    assert sum(map(len, kept)) == done
    assert len(list((tmp_path / "unfinished").iterdir())) == DRAFTS  # no lock is left


def test_no_signature_of_eight_leads_is_lost(tmp_path):
    paths = [file_record(tmp_path, new_session()) for _ in range(RECORDS)]
    done = run_at_once(SIGN, tmp_path, SIGNATURES)
    names = [item["by"] for path in paths for item in signatures_of(read_document(path))]
    assert done == PROGRAMS * SIGNATURES
    assert len(set(names)) == len(names) == done
