"""A fault of the program itself: one line for the user, the details in a file."""

import traceback
from contextlib import suppress
from datetime import datetime
from pathlib import Path

from core.text.plain_text import plain
from wizard.locations import crash_log_file


def log_fault(error: BaseException, files: Path) -> str:
    """Write the details of a fault into the files folder and return the line that says so."""
    log = crash_log_file(files)
    details = "".join(traceback.format_exception(error))
    where = ""
    with suppress(OSError):
        log.parent.mkdir(parents=True, exist_ok=True)
        with log.open("a", encoding="utf-8", errors="replace") as file:
            file.write(f"{datetime.now().astimezone().isoformat()}\n{details}\n")
        where = f"; the details are in {plain(log, 300)}"
    return (
        f"evenarc: a fault in the program: {plain(type(error).__name__)}. "
        f"The session is kept as it was at the last answer{where}"
    )
