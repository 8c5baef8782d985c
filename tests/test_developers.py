"""DEVELOPERS.md is true: its files and names exist, its tables are complete, its example runs."""

import ast
import doctest
import re
import tomllib
from importlib import import_module
from pathlib import Path

import pytest

from tests.conftest import ROOT

PATH = ROOT / "DEVELOPERS.md"
TEXT = PATH.read_text(encoding="utf-8")
PROSE = re.sub(r"```.*?```", "", TEXT, flags=re.DOTALL)
QUOTED = sorted(set(re.findall(r"`([^`\n]+)`", PROSE)))

PATHS = [
    quoted for quoted in QUOTED if re.fullmatch(r"[\w.*-]+(/[\w.*-]*)+|[\w-]+\.(md|toml)", quoted)
]
NAMES = [quoted for quoted in QUOTED if re.fullmatch(r"(core|wizard|tests)(\.\w+)+", quoted)]
OF_THE_FILES_FOLDER = {"shop/profiles/"}

LAYOUT = re.compile(r"INVERTED_Y|inverted-y|NEAR_BALL|near_ball|tie_rod\.")
"""Words of a file that decides by the layout or by a pivot that the inverted-Y alone has."""


def section(title: str) -> str:
    """Text under a heading, up to the next heading of any level."""
    return re.split(r"^##", TEXT.partition(f"# {title}\n")[2], maxsplit=1, flags=re.MULTILINE)[0]


def rows(title: str) -> list[list[str]]:
    """Rows of the table under a heading, without its head."""
    lines = [line for line in section(title).splitlines() if line.startswith("|")]
    return [[cell.strip() for cell in line.strip("| ").split(" | ")] for line in lines[2:]]


ROOMS = [
    (package, *row)
    for package, title in (
        ("core", "The rooms of core, in the order a reading passes through them"),
        ("wizard", "The rooms of wizard"),
    )
    for row in rows(title)
]


def modules_in(folder: Path) -> set[str]:
    """Names of the modules and subfolders of a room."""
    files = {path.stem for path in folder.glob("*.py") if path.stem != "__init__"}
    folders = {f"{path.name}/" for path in folder.iterdir() if (path / "__init__.py").exists()}
    return files | folders


def imported_rooms(package: str, room: str) -> set[str]:
    """Rooms that the files of a room import, "core" for all of core where wizard asks it."""
    rooms = set()
    for path in (ROOT / package / room).rglob("*.py"):
        for node in ast.walk(ast.parse(path.read_text("utf-8"))):
            if isinstance(node, ast.ImportFrom) and node.module:
                top, _, rest = node.module.partition(".")
                if top == package and rest:
                    rooms.add(rest.split(".")[0])
                elif top == "core":
                    rooms.add("core")
    return rooms - {room}


@pytest.mark.parametrize("path", PATHS)
def test_every_file_exists(path):
    if path not in OF_THE_FILES_FOLDER:
        inside = ("", "core/", "wizard/", "wizard/tui/")
        assert any(list(ROOT.glob(f"{folder}{path.rstrip(chr(47))}")) for folder in inside), path


@pytest.mark.parametrize("name", NAMES)
def test_every_dotted_name_exists(name):
    try:
        import_module(name)
    except ModuleNotFoundError:
        module, _, attribute = name.rpartition(".")
        assert hasattr(import_module(module), attribute), name


@pytest.mark.parametrize(("package", "room", "_knows", "files", "_imports"), ROOMS)
def test_the_files_of_a_room_are_listed(package, room, _knows, files, _imports):
    listed = set(re.findall(r"`([^`]+)`", files))
    assert listed == modules_in(ROOT / package / room.strip("`/"))


@pytest.mark.parametrize(("package", "room", "_knows", "_files", "imports"), ROOMS)
def test_a_room_imports_only_the_rooms_of_its_row(package, room, _knows, _files, imports):
    room = room.strip("`/")
    assert imported_rooms(package, room) <= set(re.findall(r"`([^`/]+)", imports))


def test_every_room_is_listed():
    for package in ("core", "wizard"):
        listed = {row[1].strip("`/") for row in ROOMS if row[0] == package}
        folders = {path.parent.name for path in (ROOT / package).glob("*/__init__.py")}
        assert listed == folders


def test_the_list_for_a_layout_is_complete():
    listed = re.findall(r"^- `([^`]+)`", section("How to"), flags=re.MULTILINE)
    decide = [
        path.relative_to(ROOT).as_posix()
        for package in ("core", "wizard")
        for path in sorted((ROOT / package).rglob("*.py"))
        if LAYOUT.search(path.read_text("utf-8"))
    ]
    assert sorted(listed) == decide


def test_the_libraries_are_those_of_the_project():
    project = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))["project"]
    needed = {re.match(r"[\w-]+", line)[0] for line in project["dependencies"]}
    assert {row[0] for row in rows("Libraries, and why")} == needed
    for line in project["optional-dependencies"]["test"]:
        assert re.match(r"[\w-]+", line)[0] in TEXT


def test_the_example_runs(monkeypatch):
    monkeypatch.chdir(ROOT)
    assert doctest.testfile(str(PATH), module_relative=False).failed == 0
