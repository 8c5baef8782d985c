"""Helpers that print pages with a browser engine, where the machine has one."""

import re
import shutil
import subprocess
from collections.abc import Iterable
from pathlib import Path

import pytest

CHROMIUM = next(filter(None, map(shutil.which, ("chromium", "chromium-browser", "chrome"))), None)

needs_chromium = pytest.mark.skipif(CHROMIUM is None, reason="no chromium here to print with")

SIZES = {"letter": (612, 792), "a4": (595, 842)}
"""Width and height of a sheet, points."""

PAGE_BREAK = '<div style="break-before: page"></div>'


def run_chromium(*arguments: str) -> str:
    """Run the browser engine without a window, and return what it prints."""
    command = [CHROMIUM, "--headless", "--no-sandbox", "--disable-gpu", *arguments]
    return subprocess.run(command, capture_output=True, text=True, check=True, timeout=120).stdout


def joined(pages: Iterable[str]) -> str:
    """One document of many with the same style, each of which begins on a sheet of its own."""
    first, *others = pages
    bodies = (re.search(r"<body>(.*)</body>", page, re.DOTALL)[1] for page in others)
    added = "".join(f"{PAGE_BREAK}{body}" for body in bodies)
    return first.replace("</body>", f"{added}</body>")


def printed(page: str, folder: Path) -> bytes:
    """PDF of a document, printed without head and foot."""
    html, pdf = folder / "printed.html", folder / "printed.pdf"
    html.write_text(page, "utf-8")
    browser = f"--user-data-dir={folder / 'browser'}"
    run_chromium("--no-pdf-header-footer", browser, f"--print-to-pdf={pdf}", html.as_uri())
    return pdf.read_bytes()


def sheets(pdf: bytes) -> int:
    """Number of sheets."""
    return len(re.findall(rb"/Type\s*/Page\b", pdf))


def size(pdf: bytes) -> tuple[int, ...]:
    """Width and height of every sheet, points; they are all alike."""
    (box,) = set(re.findall(rb"/MediaBox\s*\[0 0 ([\d.]+) ([\d.]+)\]", pdf))
    return tuple(round(float(side)) for side in box)
