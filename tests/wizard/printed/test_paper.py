"""Pages as a browser prints them: size of the paper, and the number of sheets."""

import re
import shutil
import subprocess
from pathlib import Path

import pytest

from tests.wizard.tui.looking import DEMO
from wizard.commands import main
from wizard.locations import DEMO_SESSIONS

CHROMIUM = shutil.which("chromium") or shutil.which("chromium-browser")

needs_browser = pytest.mark.skipif(not CHROMIUM, reason="no chromium to print with")

SIZES = {"letter": (612, 792), "a4": (595, 842)}
"""Width and height of a sheet, points."""


def printed(page: Path) -> bytes:
    """PDF of a page, printed without head and foot."""
    pdf = page.with_suffix(".pdf")
    command = [
        *(CHROMIUM, "--headless", "--no-sandbox", "--disable-gpu", "--no-pdf-header-footer"),
        f"--user-data-dir={page.parent / 'browser'}",
        *(f"--print-to-pdf={pdf}", page.as_uri()),
    ]
    subprocess.run(command, check=True, capture_output=True, timeout=120)
    return pdf.read_bytes()


def sheets(pdf: bytes) -> int:
    return len(re.findall(rb"/Type\s*/Page[^s]", pdf))


def size(pdf: bytes) -> tuple[int, int]:
    (box,) = set(re.findall(rb"/MediaBox\s*\[0 0 ([\d.]+) ([\d.]+)\]", pdf))
    return tuple(round(float(side)) for side in box)


@pytest.fixture
def shop(tmp_path):
    """A files folder with the longest head that a shop can have."""
    folder = tmp_path / "files" / "shop"
    folder.mkdir(parents=True)
    line = "A line of the address that is as long as it can be, invented"
    lines = ", ".join([f'"{line}"'] * 3)
    (folder / "shop.toml").write_text(f'name = "{line}"\naddress = [{lines}]\nphone = "555 0100"\n')
    return tmp_path / "files"


@needs_browser
@pytest.mark.slow
@pytest.mark.parametrize("paper", SIZES)
@pytest.mark.parametrize("name", DEMO)
def test_the_owners_page_is_one_sheet(tmp_path, shop, name, paper):
    page, record = tmp_path / "page.html", DEMO[name].path_in(DEMO_SESSIONS)
    arguments = ["--files", str(shop), "page", str(record), str(page), "--paper", paper]
    assert main(arguments) == 0
    pdf = printed(page)
    assert sheets(pdf) == 1
    assert size(pdf) == SIZES[paper]


@needs_browser
@pytest.mark.slow
def test_the_usual_paper_is_that_of_the_unit(tmp_path):
    page, record = tmp_path / "order.html", DEMO["re-mounted"].path_in(DEMO_SESSIONS)
    assert main(["order", str(record), str(page)]) == 0
    pdf = printed(page)
    assert size(pdf) == SIZES["letter"]


@needs_browser
@pytest.mark.slow
@pytest.mark.parametrize("paper", SIZES)
@pytest.mark.parametrize("name", ["lifted", "re-mounted", "toe", "leaf springs"])
def test_a_work_order_is_one_sheet(tmp_path, name, paper):
    page, record = tmp_path / "order.html", DEMO[name].path_in(DEMO_SESSIONS)
    assert main(["order", str(record), str(page), "--paper", paper]) == 0
    assert sheets(printed(page)) == 1
