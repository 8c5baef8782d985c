"""Records: entries are damaged, texts carry codes and markup, tables grow without bounds."""

import contextlib
import io
import random
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any

import tomli_w

from core.documents.document import with_value, without
from core.documents.record import read_document
from tests.abuse.nonsense import CODES, MARKUP, TEXTS, VALUES
from tests.abuse.tally import Tally
from wizard.commands import main
from wizard.locations import DEMO_SESSIONS

RECORDS = sorted(DEMO_SESSIONS.glob("*/*.toml"))

LONGEST_REPORT = 200_000
"""Characters of a report on a record of any size."""


def paths_in(table: Mapping[str, Any], above: str = "") -> Iterator[str]:
    """Dotted paths of all tables and values of a document, without its format and results."""
    for key, value in table.items():
        path = f"{above}{key}"
        if path not in ("format", "format_version", "results"):
            yield path
            if isinstance(value, dict):
                yield from paths_in(value, f"{path}.")


def mutate(count: int, folder: Path) -> Tally:
    """Replace, rename or remove some entries of `count` records."""
    tally, chance = Tally(), random.Random(4)
    for _ in range(count):
        document: dict[str, Any] = read_document(chance.choice(RECORDS))
        for _ in range(chance.randint(1, 3)):
            path = chance.choice(sorted(paths_in(document)))
            if chance.random() < 0.2:
                document = without(document, path)
            elif chance.random() < 0.2:
                document = with_value(document, path + chance.choice("xS_"), "x")
            else:
                document = with_value(document, path, chance.choice(VALUES))
        _report(tally, document, folder, chance.choice(COMMANDS))
    return tally


def inject(count: int, folder: Path) -> Tally:
    """Put codes and markup into every text of `count` records."""
    tally, chance = Tally(), random.Random(5)

    def spoilt(value: Any, path: str = "") -> Any:
        if isinstance(value, dict):
            return {key: spoilt(item, f"{path}.{key}") for key, item in value.items()}
        is_free = path.endswith((".note", ".description", ".technician", ".reason", ".by"))
        if isinstance(value, list):
            return [spoilt(item, path) for item in value]
        if is_free or path == ".program_version":
            return f"{chance.choice(CODES)} {chance.choice(MARKUP)} {value}"
        return value

    for number in range(count):
        document = spoilt(read_document(RECORDS[number % len(RECORDS)]))
        _report(tally, document, folder, COMMANDS[number % len(COMMANDS)])
    return tally


def grow(count: int, folder: Path) -> Tally:
    """Make `count` records with long texts, many repeats, many rows or many unknown entries."""
    tally, chance = Tally(), random.Random(6)
    for number in range(count):
        document: dict[str, Any] = read_document(RECORDS[number % len(RECORDS)])
        size = chance.choice((10, 300, 3_000))
        kind = number % 5
        if kind == 0:
            document["session"] |= {"note": "a long note " * size}
        elif kind == 1:
            document = with_value(document, "readings.wheels.hub_height", ["16 in"] * size)
        elif kind == 2:
            document["kept"] = [{"reading": "x", "reason": chance.choice(TEXTS)}] * min(size, 300)
        elif kind == 3:
            document |= {f"unknown_entry_{entry}": entry for entry in range(size)}
        else:
            deep: Any = "x"
            for _ in range(min(size, 300)):
                deep = {"deeper": deep}
            document["unknown_depth"] = deep
        _report(tally, document, folder, COMMANDS[number % 2])
    return tally


COMMANDS = ("check", "check --json", "compare", "page", "fix")


def _report(tally: Tally, document: Mapping[str, Any], folder: Path, command: str) -> None:
    """Run a command on a record; it reports or refuses in one line, and changes no file."""
    folder.mkdir(exist_ok=True)
    path, page = folder / "record.toml", folder / "page.html"
    try:
        content = tomli_w.dumps(document).encode()
    except (UnicodeEncodeError, ValueError):  # TOML cannot keep it
        return
    path.write_bytes(content)
    page.unlink(missing_ok=True)
    name, *options = command.split()
    others = {"compare": [str(RECORDS[0])], "page": [str(page)]}.get(name, [])
    out, err = io.StringIO(), io.StringIO()
    tally.tried += 1
    try:
        with contextlib.redirect_stdout(out), contextlib.redirect_stderr(err):
            code = main([name, *options, str(path), *others])
    except BaseException as error:  # a traceback, or an exit that is not meant
        tally.faults.append(f"{command}: {error!r:.200}")
        return
    said, warned = out.getvalue(), err.getvalue()
    tally.expect(code in (0, 1, 2), f"{command}: code {code}")
    tally.expect(warned.count("\n") <= 1, f"{command}: not one line: {warned:.300}")
    printed = (said + warned).splitlines()
    tally.expect(all(map(str.isprintable, printed)), f"{command}: control codes are printed")
    tally.expect(len(said) < LONGEST_REPORT, f"{command}: {len(said)} characters")
    tally.expect(path.read_bytes() == content, f"{command}: the record was changed")
    if page.exists():
        html = page.read_text("utf-8")
        tally.expect("<script" not in html and "<img" not in html, f"{command}: markup in a page")
        tally.expect("\x1b" not in html and "\0" not in html, f"{command}: codes in a page")
