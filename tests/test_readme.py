"""The README says what is so: commands, pictures, cautions, profiles, limits.

When a screen looks different than before: python -m tests.readme.pictures
"""

import re
from math import degrees

import pytest

from core.profiles.profile import load_profile, profile_names
from core.text import quantity
from tests.readme.pictures import PICTURES, README, drawn, path_of, with_report
from wizard.commands import parser
from wizard.locations import PROFILES
from wizard.phrases.cautions import CAUTIONS
from wizard.phrases.verdict_words import MARKS
from wizard.questions import photographs
from wizard.questions.steps import STEPS

TEXT = README.read_text(encoding="utf-8")
ROOT = README.parent


def part(title):
    """The text under a heading."""
    return re.split(r"^## ", TEXT.partition(f"\n## {title}\n")[2], flags=re.MULTILINE)[0]


def rows(text):
    """Rows of the table in a part, without its head."""
    lines = [line for line in text.splitlines() if line.startswith("|")]
    return [[cell.strip() for cell in line.strip("|").split(" | ")] for line in lines[2:]]


def test_the_job_comes_first_in_one_paragraph():
    title, _, paragraph, *_ = TEXT.split("\n")
    assert title == "# Evenarc"
    assert paragraph.startswith("Evenarc is a terminal wizard for the workshop floor.")


@pytest.mark.parametrize(
    "command",
    [
        "python3 -m venv .venv && .venv/bin/pip install . && .venv/bin/evenarc demo",
        "python3 -m venv .venv && .venv/bin/pip install '.[test]' && "
        ".venv/bin/python -m pytest -n auto",
    ],
)
def test_set_up_is_a_single_line(command):
    assert f"\n```\n{command}\n```\n" in TEXT


@pytest.mark.parametrize("picture", PICTURES, ids=lambda picture: picture.name)
async def test_a_picture_is_what_the_program_draws(picture):
    if path_of(picture).read_text(encoding="utf-8") != await drawn(picture):
        pytest.fail(f"{picture} is out of date: python -m tests.readme.pictures draws it", False)


def test_the_report_is_what_check_says():
    assert with_report(TEXT) == TEXT
    assert "✗ BUMP STEER  FG-1" in TEXT


def test_every_picture_is_shown_and_every_link_leads_somewhere():
    links = re.findall(r"\]\(([^)]+)\)", TEXT)
    for link in links:
        if link.startswith("#"):
            headings = re.findall(r"^##* (.+)$", TEXT, flags=re.MULTILINE)
            assert link[1:] in [heading.casefold().replace(" ", "-") for heading in headings]
        else:
            assert (ROOT / link).is_file(), link
    shown = {(ROOT / link).resolve() for link in links if link.endswith(".svg")}
    assert shown == set((ROOT / "tests" / "readme").glob("*.svg"))


def test_pictures_need_nothing_from_elsewhere():
    for path in (ROOT / "tests" / "readme").glob("*.svg"):
        svg = path.read_text(encoding="utf-8")
        assert not re.search(r"url\(\s*[\"']?http|href=|@import|<image", svg)


def test_the_commands_are_those_there_are():
    usage = parser().format_help()
    there = set(re.findall(r"^    (\w+)  ", usage, flags=re.MULTILINE))
    named = [re.fullmatch(r"`\.venv/bin/evenarc ?(\w*).*`", row[0]) for row in rows(part("Start"))]
    assert {name[1] for name in named} - {""} == there
    assert "--files" in usage


def test_the_steps_are_those_of_the_wizard():
    told = part("A first session, step by step")
    assert re.findall(r"^\d+\. .*?\*\*([A-Z][^*]+)\*\*", told, flags=re.MULTILINE) == [
        step.name for step in STEPS if step is not photographs.STEP
    ]


@pytest.mark.parametrize("typed", ["17 5/8", "17-5/8", "17.625", "1' 5 5/8\"", "448 mm", "44.8 cm"])
def test_numbers_are_typed_as_it_says(typed):
    assert f"`{typed}`" in TEXT
    assert quantity.parse_length(typed) == pytest.approx(447.675, abs=0.5)


def test_the_cautions_are_those_of_the_program():
    told = [line[2:] for line in part("Cautions").splitlines() if line.startswith("- ")]
    assert tuple(told) == CAUTIONS


def test_the_words_are_those_of_the_program():
    for row in rows(part("What the verdict means")):
        mark, _, word = row[0].partition(" ")
        assert MARKS[word] == mark


def test_the_profiles_are_those_delivered():
    told = {row[0].strip("`"): row[1] for row in rows(part("Files"))}
    titles = {name: load_profile(name, [PROFILES]).title for name in profile_names([PROFILES])}
    assert told == titles


def test_the_limits_are_those_of_the_profiles():
    told = next(row[0] for row in rows(part("Where the values come from")) if "limits" in row[0])
    for name in profile_names([PROFILES]):
        limits = load_profile(name, [PROFILES]).limits
        words = (
            f"parallel {degrees(limits.parallel):.3g} deg, flat {degrees(limits.flat):.3g} deg, "
            f"length {limits.length_ratio:g}, peak steer {degrees(limits.steer):.3g} deg, "
            f"toe change {degrees(limits.toe_change):.3g} deg"
        )
        if name == "heavy-truck":
            assert limits.steer > load_profile("coil-crossover", [PROFILES]).limits.steer
        else:
            assert words in told, name
