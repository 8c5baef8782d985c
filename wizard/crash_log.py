"""Faults in the program: one line for the user, the details in a file."""

import traceback
from contextlib import suppress
from datetime import datetime
from pathlib import Path

from core.text.plain_text import plain
from wizard.locations import crash_log_file


def log_fault(error: BaseException, files: Path) -> str:
    """Append the details of a fault to the crash log, and return a line about it.

    Parameters
    ----------
    error : BaseException
        The exception, with its traceback.
    files : Path
        The folder of records and drafts.
    """
    log = crash_log_file(files)
    details = "".join(traceback.format_exception(error))
    remark = ""
    with suppress(OSError):
        log.parent.mkdir(parents=True, exist_ok=True)
        with log.open("a", encoding="utf-8", errors="replace") as file:
            file.write(f"{datetime.now().astimezone().isoformat()}\n{details}\n")
        remark = f"; the details are in {plain(log, 300)}"
    return (
        f"evenarc: a fault in the program: {plain(type(error).__name__)}. "
        f"The session is kept up to the last answer{remark}"
    )
