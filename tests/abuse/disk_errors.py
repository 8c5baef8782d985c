"""Errors of the disk: any call of the system fails while a draft is kept or a session filed."""

import errno
import os
import random
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any
from unittest.mock import patch

from core.documents.document import Document, value_at, with_value
from core.documents.record import (
    NotConfirmed,
    RecordError,
    draft_path,
    read_document,
    record_path,
)
from core.documents.seal import sealed
from tests.abuse.tally import Tally
from tests.wizard.flow.test_many_hands import new_session
from wizard.flow.draft_store import DraftStore

CALLS = ("os.fsync", "os.link", "os.replace", "os.unlink", "os.open", "io.open", "os.mkdir")
ERRORS = (errno.EIO, errno.ENOSPC, errno.EACCES, errno.EROFS, errno.ENOENT, errno.EINTR)


@contextmanager
def failing(call: str, number: int, code: int, is_late: bool) -> Iterator[None]:
    """Let one call of the system fail, before its work is done or after it."""
    module, _, name = call.partition(".")
    target = {"os": os, "io": __import__("io")}[module]
    real: Callable[..., Any] = getattr(target, name)
    seen = 0

    def wrapper(*arguments: Any, **options: Any) -> Any:
        nonlocal seen
        seen += 1
        if seen != number:
            return real(*arguments, **options)
        if is_late:
            result = real(*arguments, **options)
            if hasattr(result, "close"):
                result.close()
            elif name == "open":
                os.close(result)
        raise OSError(code, os.strerror(code))

    with patch.object(target, name, wrapper):
        yield


def attack(count: int, folder: Path) -> Tally:
    """Let one call fail in each of `count` trials; what the program says has to be true."""
    tally, chance = Tally(), random.Random(2)
    for number in range(count):
        files = folder / f"files {number}"
        document = new_session()
        store = DraftStore(files)
        before = store.keep(document).document
        answered = with_value(before, "answers.first", "given")
        does_file = chance.random() < 0.5
        trial = (
            chance.choice(CALLS),
            chance.randint(1, 4),
            chance.choice(ERRORS),
            chance.random() < 0.4,
        )
        tally.tried += 1
        said = "done"
        try:
            with failing(*trial):
                store.file(before, before) if does_file else store.keep(answered, before)
        except NotConfirmed:
            said = "done"
        except RecordError as error:
            said = "not done"
            tally.expect(str(error).isprintable(), f"{trial}: not one line: {error!r}")
        except OSError as error:
            tally.faults.append(f"{trial}: the error itself: {error!r}")
        _look(tally, files, before, does_file, said, str(trial))
    return tally


def _look(
    tally: Tally, files: Path, before: Document, does_file: bool, said: str, trial: str
) -> None:
    """Compare the disk with what was said."""
    draft, record = draft_path(files, before), record_path(files, before)
    try:
        if does_file:
            if said == "done":
                tally.expect(read_document(record) == sealed(before), f"{trial}: filed otherwise")
            else:
                tally.expect(read_document(draft) == before, f"{trial}: the draft is lost")
        else:
            answers = value_at(read_document(draft), "answers", {})
            tally.expect(said == "not done" or bool(answers), f"{trial}: said {said}, and is not")
    except RecordError as error:
        tally.faults.append(f"{trial}: not whole: {error}")
