"""Pages as a browser prints them: size of the paper, and the number of sheets."""

import pytest

from tests.wizard.printed.printing import SIZES, joined, needs_chromium, printed, sheets, size
from tests.wizard.tui.looking import DEMO
from wizard.commands import main
from wizard.locations import DEMO_SESSIONS

PLANNED = ("lifted", "re-mounted", "toe", "leaf springs")
"""Demo sessions with a plan."""

pytestmark = [needs_chromium, pytest.mark.slow]


def page_of(name, page, *options, kind="page", files=()):
    """The page or the work order of a demo session."""
    record = str(DEMO[name].path_in(DEMO_SESSIONS))
    assert main([*files, kind, record, str(page), *options]) == 0
    return page.read_text("utf-8")


@pytest.fixture
def shop(tmp_path):
    """The option of a files folder with the longest head that a shop can have."""
    folder = tmp_path / "files" / "shop"
    folder.mkdir(parents=True)
    line = "A line of the address that is as long as it can be, invented"
    lines = ", ".join([f'"{line}"'] * 3)
    (folder / "shop.toml").write_text(f'name = "{line}"\naddress = [{lines}]\nphone = "555 0100"\n')
    return "--files", str(tmp_path / "files")


@pytest.mark.parametrize("paper", SIZES)
def test_every_owners_page_is_one_sheet(tmp_path, shop, paper):
    pages = [
        page_of(name, tmp_path / f"{place}.html", "--paper", paper, files=shop)
        for place, name in enumerate(DEMO)
    ]
    pdf = printed(joined(pages), tmp_path)
    assert sheets(pdf) == len(DEMO)
    assert size(pdf) == SIZES[paper]


def test_the_usual_paper_is_that_of_the_unit(tmp_path):
    pdf = printed(page_of("re-mounted", tmp_path / "order.html", kind="order"), tmp_path)
    assert size(pdf) == SIZES["letter"]


@pytest.mark.parametrize("paper", SIZES)
def test_every_work_order_is_one_sheet(tmp_path, paper):
    pages = [
        page_of(name, tmp_path / f"{place}.html", "--paper", paper, kind="order")
        for place, name in enumerate(PLANNED)
    ]
    assert sheets(printed(joined(pages), tmp_path)) == len(PLANNED)


def test_a_page_of_two_sheets_would_be_seen(tmp_path):
    page = page_of("lifted", tmp_path / "page.html")
    longer = page.replace("</body>", "<p>one more line</p>" * 60 + "</body>")
    assert sheets(printed(joined([page, longer, page]), tmp_path)) > 3
