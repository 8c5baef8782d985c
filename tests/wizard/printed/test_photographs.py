"""Photographs on paper: the owner's page with the picture and its lines, and the sheet."""

from pathlib import Path

from core.kinematics.pivots import PIVOTS
from wizard.flow.filed_records import read_and_judge
from wizard.locations import DEMO_SESSIONS, PROFILES
from wizard.phrases.mark_names import POINTS
from wizard.printed.owners_page import page_html
from wizard.printed.photograph_sheet import STEPS, photograph_sheet_html
from wizard.printed.sources import Beside
from wizard.views.photograph import extended


def photographed():
    (path,) = (DEMO_SESSIONS / "FG-8").glob("*_first_*.toml")
    return path, *read_and_judge(str(path), [PROFILES])


def test_the_page_carries_both_pictures_with_the_lines():
    path, document, verdict = photographed()
    html = page_html(document, verdict, "in", Beside(folder=path.parent))
    assert html.count("data:image/jpeg;base64,") == 2
    assert html.count('class="sight track-bar"') == 2
    assert html.count('class="sight drag-link"') == 2
    assert "Joints were not checked" in html


def test_without_the_files_the_lines_stay():
    _, document, verdict = photographed()
    html = page_html(document, verdict, "in", Beside(folder=Path("/nowhere")))
    assert "data:image" not in html
    assert html.count('class="sight track-bar"') == 2


def test_a_line_is_extended_to_the_edges():
    assert extended((100, 50), (300, 150), (400, 300)) == ((0, 0), (400, 200))
    assert extended((200, 100), (200, 200), (400, 300)) == ((200, 0), (200, 300))


def test_the_sheet_names_every_step_and_every_point():
    html = photograph_sheet_html()
    assert all(step in html for step in STEPS)
    assert all(POINTS[pivot].replace("'", "&#39;") in html for pivot in PIVOTS)
