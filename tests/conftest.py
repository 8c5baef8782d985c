"""What every test stands on: the checkout, an empty home, the same answers on every run."""

import gc
import os
from pathlib import Path

import pytest
from hypothesis import settings

ROOT = Path(__file__).parents[1]

# The same examples on every machine: a failure is then a failure for everybody.
settings.register_profile("same", derandomize=True, deadline=None)
settings.load_profile("same")


def pytest_collection_finish():
    """Collect garbage seldom: of two files of screens it took about a quarter of the time."""
    gc.collect()
    gc.freeze()
    gc.set_threshold(200_000, 50, 50)


@pytest.fixture(autouse=True)
def own_surroundings(tmp_path, monkeypatch):
    """No test writes into a person's files, and what it starts runs the checkout."""
    monkeypatch.setenv("EVENARC_FILES", str(tmp_path / "files"))
    monkeypatch.setenv("PYTHONPATH", os.pathsep.join([str(ROOT), *_python_path()]))
    for name in ("NO_COLOR", "COLUMNS", "LINES"):
        monkeypatch.delenv(name, raising=False)


def _python_path() -> list[str]:
    return [folder for folder in os.getenv("PYTHONPATH", "").split(os.pathsep) if folder]
