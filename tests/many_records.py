"""Many invented records: copies of the demo sessions with other vehicles and dates.

python -m tests.many_records FOLDER 10000
"""

import sys
from datetime import datetime, timedelta
from itertools import cycle, islice
from pathlib import Path

from core.documents.digest import digest
from core.documents.document import Document, value_at, with_value, without
from core.documents.record import read_document
from wizard.locations import DEMO_SESSIONS

SESSIONS_OF_A_VEHICLE = 5

FIRST_DAY = datetime.fromisoformat("2020-01-06T08:00:00+01:00")


def make_records(files: Path, count: int) -> list[Path]:
    """File records quickly: only tag, id, dates and seal differ from those of a demo session.

    Returns
    -------
    list of Path
        The records, oldest first.
    """
    demo = sorted(DEMO_SESSIONS.glob("*/*.toml"))
    originals = cycle((path.read_text(encoding="utf-8"), read_document(path)) for path in demo)
    copies = enumerate(islice(originals, count))
    return [_file_copy(files, number, *original) for number, original in copies]


def _file_copy(files: Path, number: int, text: str, document: Document) -> Path:
    """File a copy of a record; the number gives it a vehicle and a date."""
    tag = f"MR-{number // SESSIONS_OF_A_VEHICLE + 1}"
    opened = FIRST_DAY + timedelta(hours=5 * number)
    name = f"{tag}_{opened:%Y%m%d-%H%M%S}_{value_at(document, 'session.kind')}_{number:05}"
    changes = (
        ("vehicle.tag", "tag", tag),
        ("session.id", "id", name),
        ("session.opened", "opened", opened),
    )
    # Decisions are left out: their links depend on the digest of the record.
    text, document = text.partition("\n[seal]")[0], without(document, "signatures")
    for path, key, value in changes:
        text = text.replace(_line(key, value_at(document, path)), _line(key, value), 1)
        document = with_value(document, path, value)
    path = files / tag / f"{name}.toml"
    path.parent.mkdir(parents=True, exist_ok=True)
    seal = f'\n[seal]\nrecord = "{digest(document)}"\ndecisions = []\n'
    path.write_text(text + seal, encoding="utf-8")
    return path


def _line(key: str, value: object) -> str:
    """A line of TOML, between the lines beside it."""
    return f"\n{key} = {value}\n" if isinstance(value, datetime) else f'\n{key} = "{value}"\n'


if __name__ == "__main__":
    make_records(Path(sys.argv[1]), int(sys.argv[2]))
