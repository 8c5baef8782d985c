"""Records for the reports, and a fixture that makes a faulty one."""

from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from tomli_w import dumps

from core.documents.document import with_value, without
from core.documents.record import read_document
from tests.wizard.tui.looking import DEMO
from wizard.commands import main
from wizard.locations import DEMO_SESSIONS


def demo(name: str) -> str:
    """Path of a demo session, as typed."""
    return str(DEMO[name].path_in(DEMO_SESSIONS))


@pytest.fixture
def altered(tmp_path: Path) -> Callable[..., str]:
    """Function that copies a demo session with some values changed; None removes a value."""

    def make(name: str, changes: dict[str, Any]) -> str:
        document: Any = read_document(Path(demo(name)))
        for path, value in changes.items():
            document = (
                without(document, path) if value is None else with_value(document, path, value)
            )
        copy = tmp_path / "altered.toml"
        copy.write_text(dumps(document), encoding="utf-8")
        return str(copy)

    return make


@pytest.fixture
def run(capsys: pytest.CaptureFixture[str]) -> Callable[..., tuple[int, str, str]]:
    """Function that runs a command in this process; it returns exit code, output and errors."""

    def command(*arguments: str) -> tuple[int, str, str]:
        code = main(arguments)
        printed = capsys.readouterr()
        return code, printed.out, printed.err

    return command
