"""Records to report on, and a way to make one that is wrong in some place."""

from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from tomli_w import dumps

from core.documents.document import with_value, without
from core.documents.record import read_document
from tests.demo import fg_1, fg_2, fg_3, fg_4, fg_5, fg_6
from wizard.commands import main
from wizard.locations import DEMO_SESSIONS

DEMO = {
    "as built": fg_1.AS_BUILT,
    "lifted": fg_1.LIFTED,
    "fixed": fg_1.FIXED,
    "over the knuckle": fg_2.OVER_THE_KNUCKLE,
    "not closing": fg_3.NOT_CLOSING,
    "close": fg_4.CLOSE,
    "toe": fg_5.TOE,
    "worn joint": fg_6.WORN_JOINT,
}


def demo(name: str) -> str:
    """Path of a demo session, as it is typed."""
    return str(DEMO[name].path_in(DEMO_SESSIONS))


@pytest.fixture
def altered(tmp_path: Path) -> Callable[..., str]:
    """Makes a copy of a demo session with some values changed; None takes one away."""

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
    """Runs a command in this process; gives its code and what it printed."""

    def command(*arguments: str) -> tuple[int, str, str]:
        code = main(arguments)
        said = capsys.readouterr()
        return code, said.out, said.err

    return command
