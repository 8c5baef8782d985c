"""The sheet to measure with: every reading of every layout and guide has a blank on one page."""

import json
import re
import shutil
import subprocess
from html import unescape
from itertools import combinations, product
from xml.etree import ElementTree

import pytest

from core.kinematics.pivots import GUIDE_PIVOTS, GuideKind, Layout
from core.profiles.profile import load_profile, profile_names
from core.readings.survey import SURVEY, WHEELS
from tests.wizard.printed.printing import (
    SIZES,
    joined,
    needs_chromium,
    printed,
    run_chromium,
    sheets,
    size,
)
from wizard.commands import main
from wizard.exit_codes import CANNOT_READ
from wizard.flow.profile_choices import nearest_profile
from wizard.locations import PROFILES
from wizard.phrases.cautions import CAUTIONS
from wizard.printed.sheet import Paper, sheet_document, sheet_html, sheet_of
from wizard.printed.sketch import RADIUS
from wizard.questions.sheet_order import sheet_lines
from wizard.questions.stance import STEP as STANCE
from wizard.questions.walk_round import STEP as WALK_ROUND

KINDS = list(product(Layout, GuideKind))
PAGES = [(*kind, paper) for kind in KINDS for paper in Paper]

MEASURES = """<script>
const faults = [];
const of = (part) => part.getBoundingClientRect();
for (const page of document.querySelectorAll("main")) {
  const foot = of(page.querySelector("footer"));
  for (const part of page.querySelectorAll(".left > *, .right > *, figure"))
    if (of(part).bottom > foot.top + 1) faults.push("below: " + part.textContent.slice(0, 40));
  if (foot.bottom > of(page).bottom + 1) faults.push("foot");
  for (const part of page.querySelectorAll("*"))
    if (of(part).right > of(page).right + 1) faults.push("beside: " + part.className);
  for (const line of page.querySelectorAll(".line, .reading"))
    if (line.scrollWidth > line.clientWidth + 1 || line.scrollHeight > line.clientHeight + 4)
      faults.push("in line: " + line.textContent.slice(0, 40));
}
document.title = JSON.stringify(faults);
</script>"""
"""Names every part of a page that leaves its place, in the title of the document."""


def profile_for(layout, guide):
    return nearest_profile([PROFILES], layout, guide)


def html_of(layout, guide, paper=Paper.LETTER, units="in"):
    profile = profile_for(layout, guide)
    return sheet_html(sheet_document(profile, layout, guide, units), profile, paper, False)


def sheet(layout, guide):
    profile = profile_for(layout, guide)
    return sheet_of(sheet_document(profile, layout, guide, "in"), profile, Paper.A4, False)


def discs(svg):
    """Number and centre of every disc of a drawing."""
    root = ElementTree.fromstring(svg)
    for group in root.iter("g"):
        circle, text = group
        yield int(text.text), (float(circle.get("cx")), float(circle.get("cy")))


@pytest.mark.parametrize(("layout", "guide"), KINDS)
def test_every_reading_that_the_wizard_asks_for_has_a_line(layout, guide):
    profile = profile_for(layout, guide)
    document = sheet_document(profile, layout, guide, "in")
    paths = {
        question.path.removeprefix("readings.")
        for line in sheet_lines(document, profile)
        for question in line.questions
    }
    wanted = {name for name in (*SURVEY, *WHEELS) if not name.startswith("tie_rod.")}
    if not profile.track_bar:
        wanted = {name for name in wanted if not name.startswith(("track_bar.", "braces."))}
    if layout == Layout.INVERTED_Y:
        wanted |= {"tie_rod.near.height", "tie_rod.near.station", "tie_rod.near_arm"}
    wanted |= {f"{pivot}.height" for pivot in GUIDE_PIVOTS[guide]}
    wanted |= {"steering.arm", "steering.ratio", "travel.bump", "kingpin.castor", "guide.castor"}
    assert wanted <= paths


@pytest.mark.parametrize(("layout", "guide"), KINDS)
def test_each_line_of_the_sheet_has_its_own_number(layout, guide):
    page = sheet(layout, guide)
    rows = [*page.pivots, *page.cross_checks, *page.others]
    assert sorted(row.number for row in rows) == list(range(1, len(rows) + 1))


@pytest.mark.parametrize(("layout", "guide"), KINDS)
def test_numbers_in_the_drawings_are_whole_clear_of_each_other_and_of_a_line(layout, guide):
    page = sheet(layout, guide)
    numbered = {row.number for row in (*page.pivots, *page.cross_checks, *page.others)}
    seen = set()
    for svg in (page.front_drawing, page.above_drawing, page.side_drawing):
        _, _, width, height = map(float, ElementTree.fromstring(svg).get("viewBox").split())
        placed = dict(discs(svg))
        seen |= placed.keys()
        for x, y in placed.values():
            assert RADIUS <= x <= width - RADIUS
            assert RADIUS <= y <= height - RADIUS
        for (x, y), (other_x, other_y) in combinations(placed.values(), 2):
            assert max(abs(x - other_x), abs(y - other_y)) >= 2 * RADIUS
    assert seen <= numbered
    assert {row.number for row in page.pivots} <= seen


@pytest.mark.parametrize(("layout", "guide"), KINDS)
def test_the_page_has_the_cautions_the_walk_round_the_stance_and_the_direct_check(layout, guide):
    text = unescape(re.sub(r"<[^>]+>", " ", html_of(layout, guide)))
    has_track_bar = layout is not Layout.FORE_AFT
    vehicle = {"layout": {"track_bar": has_track_bar}}
    assert ("Track bar at the axle" in text) is has_track_bar
    for caution in CAUTIONS:
        assert caution in text
    for question in (*WALK_ROUND.questions, *STANCE.questions):
        if question.is_answered_by_a_value and question.is_asked(vehicle, None):
            assert question.name in text
    for word in ("board", "laser", "turn plate", "hub to frame", "Instruments", "inches"):
        assert word in text
    assert "nan" not in text.split()


def test_lengths_are_in_the_unit_that_was_chosen():
    page = html_of(Layout.KNUCKLE, GuideKind.LEAF, units="mm")
    assert "<b>millimetres</b>" in page
    assert "mm)" in page


def test_hostile_text_of_a_profile_is_printed_as_text(tmp_path):
    text = (PROFILES / "coil-crossover.toml").read_text("utf-8")
    title = 'title = "<script>x</script>{{ page }}&amp;"'
    (tmp_path / "shop.toml").write_text(
        re.sub(r"^title = .*$", title, text, flags=re.MULTILINE).replace(
            'name = "coil-crossover"', 'name = "shop"'
        ),
        "utf-8",
    )
    profile = load_profile("shop", [tmp_path, PROFILES])
    page = sheet_html(sheet_document(profile, None, None, "in"), profile, Paper.A4, True)
    assert "&lt;script&gt;x&lt;/script&gt;{{ page }}&amp;amp;" in page
    assert "<script" not in page


@pytest.mark.parametrize("name", profile_names([PROFILES]))
def test_the_command_makes_a_sheet_for_a_profile_and_does_not_replace_a_file(
    name, tmp_path, capsys
):
    path = tmp_path / "sheet.html"
    arguments = ["sheet", "--profile", name, "--paper", "a4", str(path)]
    assert main(arguments) == 0
    assert load_profile(name, [PROFILES]).title in unescape(path.read_text("utf-8"))
    assert str(path) in capsys.readouterr().out
    path.write_text("mine", "utf-8")
    assert main(arguments) == CANNOT_READ
    assert path.read_text("utf-8") == "mine"
    assert re.fullmatch(r"evenarc: .*exists already .*\n", capsys.readouterr().err)


def test_a_sheet_for_no_profile_names_none(tmp_path):
    path = tmp_path / "sheet.html"
    assert main(["sheet", "--layout", "inverted-y", "--guide", "leaf", str(path)]) == 0
    page = path.read_text("utf-8")
    assert "Tie rod near end" in page
    assert "seat" in page
    assert not any(
        load_profile(name, [PROFILES]).title in page for name in profile_names([PROFILES])
    )


def test_a_profile_that_is_not_there_is_refused_in_one_line(tmp_path, capsys):
    assert main(["sheet", "--profile", "none", str(tmp_path / "s.html")]) == CANNOT_READ
    assert capsys.readouterr().err.count("\n") == 1


@needs_chromium
def test_nothing_leaves_its_place_on_any_page(tmp_path):
    pages = [html_of(*page) for page in PAGES]
    mains = "".join(re.search(r"<main.*</main>", page, re.DOTALL)[0] for page in pages)
    whole = re.sub(r"<main.*</main>", lambda _: mains + MEASURES, pages[0], flags=re.DOTALL)
    path = tmp_path / "all.html"
    path.write_text(whole, "utf-8")
    title = re.search(r"<title>(.*)</title>", run_chromium("--dump-dom", path.as_uri()))[1]
    assert json.loads(unescape(title)) == []


@needs_chromium
@pytest.mark.slow
@pytest.mark.parametrize("paper", Paper)
def test_every_sheet_is_printed_on_one_page(paper, tmp_path):
    pdf = printed(joined(html_of(*kind, paper) for kind in KINDS), tmp_path)
    assert sheets(pdf) == len(KINDS)
    assert size(pdf) == SIZES[paper]
    if reads_pdf := shutil.which("pdftotext"):
        command = [reads_pdf, str(tmp_path / "printed.pdf"), "-"]
        text = subprocess.run(command, capture_output=True, text=True, check=True).stdout
        pages = text.split("\f")[: len(KINDS)]
        for words in ("Evenarc measuring sheet", "approves nothing", "Wheelbase"):
            assert all(words in page for page in pages)
