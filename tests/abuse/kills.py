"""Kills: a program dies at any moment while it keeps answers or files a session."""

import random
import subprocess
import sys
import time
from pathlib import Path

from core.documents.document import value_at
from core.documents.record import RecordError, draft_path, read_document, record_path
from core.documents.record_list import list_drafts, list_records
from tests.abuse.tally import Tally
from tests.wizard.flow.test_many_hands import new_session
from wizard.flow.draft_store import DraftStore

ANSWERS = 12
"""Answers that each program gives before it files."""

LONGEST_LIFE = 0.06
"""s; time until the latest kill, which is about that of all answers and the filing."""

PROGRAM = """
import sys
from pathlib import Path
from core.documents.document import with_value
from core.documents.record import file_record, read_document
from wizard.flow.draft_store import DraftStore
files, draft = Path(sys.argv[1]), Path(sys.argv[2])
store = DraftStore(files)
document = read_document(draft)
store.remember(document)
print("ready", flush=True)
sys.stdin.readline()
for number in range(int(sys.argv[3])):
    answered = with_value(document, f"answers.number_{number}", "given")
    document = store.keep(answered, document).document
    print(number, flush=True)
store.file(document, document)
print("filed", flush=True)
"""


def attack(count: int, folder: Path) -> Tally:
    """Kill `count` programs; what they have reported as kept or filed has to be on the disk."""
    tally, chance = Tally(), random.Random(1)
    for number in range(count):
        files = folder / f"files {number}"
        document = new_session()
        DraftStore(files).keep(document)
        draft, record = draft_path(files, document), record_path(files, document)
        arguments = [sys.executable, "-c", PROGRAM, str(files), str(draft), str(ANSWERS)]
        with subprocess.Popen(
            arguments, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True
        ) as program:
            assert program.stdin is not None
            assert program.stdout is not None
            program.stdout.readline()
            program.stdin.write("go\n")
            program.stdin.flush()
            time.sleep(chance.uniform(0, LONGEST_LIFE))
            program.kill()
            said = program.stdout.read().split()
        tally.tried += 1
        _look(tally, files, draft, record, said)
    return tally


def _look(tally: Tally, files: Path, draft: Path, record: Path, said: list[str]) -> None:
    """Compare the disk with what a killed program has said."""
    is_filed = record.exists()
    tally.expect(is_filed or "filed" not in said, f"said to be filed, and is not: {record}")
    try:
        kept = value_at(read_document(record if is_filed else draft), "answers", {})
    except RecordError as error:
        tally.faults.append(f"not whole after a kill: {error}")
        return
    numbers = [word for word in said if word.isdigit()]
    tally.expect(len(kept) >= len(numbers), f"{len(numbers)} answers kept, {len(kept)} there")
    listed = [*list_drafts(files), *list_records(files)]
    tally.expect([entry.fault for entry in listed] == [""], f"listed otherwise: {listed}")
