"""Faulty records: one line with file, table and key, exit code 2, and nothing is written."""

import os
import warnings
from functools import partial
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from tomli_w import dumps

from core.documents.document import with_value, without
from core.documents.record import read_document
from core.verdict.assess import assess
from tests.wizard.reports.conftest import DEMO, demo
from wizard.commands import main
from wizard.flow import filed_records

PIVOTS = ("track_bar.frame", "track_bar.axle", "drag_link.frame", "drag_link.axle")
EVENT = {
    "name": "dip",
    "rise": "0.25 s",
    "hold": "0.1 s",
    "returns": True,
    "travel": "2 in",
    "speed": "60 km/h",
    "deceleration": "0 m/s2",
}
HEIGHT = "readings.track_bar.frame.height"


def refused(run, path):
    """Line with which a record is refused by every command."""
    for command in (("check", path), ("check", "--json", path), ("compare", path, path)):
        code, out, err = run(*command)
        assert code == 2
        assert not out
        assert err.startswith("evenarc: ")
        assert err.endswith("\n")
        assert err[:-1].isprintable()
    return err


@pytest.mark.parametrize(
    ("content", "expected"),
    [
        (b"", "format: is no Evenarc record"),
        (b"\x7fELF\x02\x01\x01\x00\xff\xfe", "is not UTF-8 text"),
        (b"\x00\x00\x00\x00", "is not TOML"),
        (b"[session\nid = ", "is not TOML"),
        (b'format = "something else"', "it should be \u201cevenarc session\u201d"),
        (b'format = "evenarc session"\nformat_version = "1"', "format_version"),
        (b'format = "evenarc session"\nformat_version = 2', "2 is newer than this program"),
        (b'format = "evenarc session"\nformat_version = 1', "[session] profile: is missing"),
        (b"x = 1" * 400_000, "is larger than 1 MB"),
        (b"a = " + b"[" * 100_000, "is not TOML"),
        (b"a = " + b"9" * 10_000, "is not TOML"),
    ],
)
def test_a_file_that_is_no_record_is_refused(run, tmp_path, content, expected):
    path = tmp_path / "record.toml"
    path.write_bytes(content)
    line = refused(run, str(path))
    assert expected in line
    assert str(path) in line


def test_a_missing_file_is_refused(run, tmp_path):
    assert "nothing.toml: cannot be opened" in refused(run, str(tmp_path / "nothing.toml"))


def test_a_folder_is_refused(run, tmp_path):
    assert "cannot be opened" in refused(run, str(tmp_path))


def test_an_impossible_path_is_refused(run):
    assert "cannot be opened" in refused(run, "a\0b")
    assert "cannot be opened" in refused(run, "x" * 5000)


@pytest.mark.skipif(os.name == "nt" or os.geteuid() == 0, reason="every file can be read")
def test_a_file_without_permission_to_read_is_refused(run, tmp_path):
    path = tmp_path / "record.toml"
    path.touch(mode=0o000)
    assert "cannot be opened" in refused(run, str(path))


@pytest.mark.parametrize(
    ("changes", "expected"),
    [
        ({"session.id": None}, "[session] id: is missing"),
        ({"session": None}, "[session] profile: is missing"),
        ({"session": "x"}, "session: is a value; it should be a table, under [session]"),
        ({"session.units": "inches"}, "[session] units: “inches” is not known"),
        ({"layout.steering": None}, "[layout] steering: is missing"),
        ({"layout.arm": ["ahead"]}, "[layout] arm: is a list"),
        ({HEIGHT: None}, "[readings.track_bar.frame] height: is missing"),
        ({HEIGHT: []}, "[readings.track_bar.frame] height: is missing"),
        ({HEIGHT: "24 in"}, "[readings.track_bar.frame] height: is a text; it should be a list"),
        ({HEIGHT: [True]}, "[readings.track_bar.frame] height: is true or false"),
        ({HEIGHT: ["24 apples"]}, "[readings.track_bar.frame] height: apples is not a unit"),
        (
            {HEIGHT: [1e308]},
            "[readings.track_bar.frame] height: \u201c1e+308\u201d is not a length",
        ),
        ({HEIGHT: [float("nan")]}, "[readings.track_bar.frame] height: \u201cnan\u201d"),
        ({HEIGHT: [float("inf")]}, "[readings.track_bar.frame] height: \u201cinf\u201d"),
        ({HEIGHT: ["9" * 40 + " in"]}, "[readings.track_bar.frame] height: is more than 100 m"),
        ({HEIGHT: [10**12]}, "[readings.track_bar.frame] height: is more than 100 m"),
        ({HEIGHT: ["9" * 500]}, "[readings.track_bar.frame] height: "),
        ({"readings.steering.arm": ["0 in"]}, "[readings.steering] arm: should be more than 0"),
        ({"readings.steering.arm": ["-6 in"]}, "[readings.steering] arm: should be more than 0"),
        ({"readings.steering.pitman_arm": ["0"]}, "pitman_arm: should be more than 0"),
        ({"readings.steering.ratio": "0"}, "[readings.steering] ratio: should be more than 0"),
        ({"readings.travel.bump": "0 in"}, "[readings.travel] bump: should be more than 0"),
        ({"readings.travel.bump": "1 parsec"}, "[readings.travel] bump: is more than 40 in"),
        ({"readings.steering.arm": ["828 1/2 in"]}, "[readings.steering] arm: is more than 24 in"),
        ({"readings.steering.ratio": "900"}, "[readings.steering] ratio: is more than 60"),
        ({"readings.guide.span": ["900 in"]}, "[readings.guide] span: is more than 100 in"),
        (
            {"readings.steering.ratio": None, "assumed.steering.ratio": "900"},
            "[assumed.steering] ratio: should lie between 1 and 60",
        ),
        (
            {"readings.guide.span": None, "assumed_within.guide.span": "99 in"},
            "[assumed_within.guide] span: is too wide",
        ),
        ({"limits.steer": "9999999999 deg"}, "[limits] steer: should be at most 45 deg"),
        ({"limits.parallel": "46 deg"}, "[limits] parallel: should be at most 45 deg"),
        ({"limits.working_travel.bump": "25 in"}, "bump: should be at most 24 in"),
        ({"vehicle.wheelbase": "-1 in"}, "[vehicle] wheelbase: should be more than 0"),
        ({"readings.wheels.hub_height": ["0"]}, "hub_height: should be more than 0"),
        ({"instruments.tape": "0 in"}, "[instruments] tape: should be more than 0"),
        ({"instruments.tape": "0.0000001 in"}, "[instruments] tape: should lie between"),
        ({"limits.parallel": "0 deg"}, "[limits] parallel: should be more than 0"),
        ({"limits.length_ratio": 2}, "[limits] length_ratio: should be at most 1"),
        ({"limits.working_travel.bump": "-2 in"}, "[limits.working_travel] bump"),
        ({"stance.level_floor": "yes"}, "[stance] level_floor: is a text"),
        ({"walk_round.rim_play": ["1 in"]}, "[walk_round] rim_play: is a list"),
        ({"walk_round.rim_play": "-1 in"}, "[walk_round] rim_play: should lie between 0 and"),
        ({"walk_round.rim_size": "900 in"}, "[walk_round] rim_size: should lie between 0 and"),
        ({"events": [EVENT | {"rise": "3600 s"}]}, "[events 1] rise: should be at most 60 s"),
        ({"events": [EVENT | {"travel": "-99 in"}]}, "[events 1] travel: should be at most"),
        ({"walk_round.joints": "tight"}, "[walk_round] joints: is a value; it should be a table"),
        ({"walk_round.joints.track_bar_axle": "wobbly"}, "[walk_round.joints] track_bar_axle"),
        ({"walk_round": "x"}, "walk_round: is a value; it should be a table"),
        ({"walk_Round": {}}, "walk_Round: is not known, and is probably damaged"),
        ({"limits": "x"}, "limits: is a value; it should be a table, under [limits]"),
        ({"limits.ster": "9 deg"}, "[limits] ster: is not known, and is probably damaged"),
        ({"readings.travel.bump": {}}, "[readings.travel] bump: is a table"),
        ({"assumed.travl.bump": "4 in"}, "[assumed] travl: is not known, and is probably"),
        ({"signatures": "x"}, "signatures: should be tables of their own"),
        ({"events": "dip"}, "events: should be tables of their own"),
        ({"events": [{"name": "dip"}]}, "[events 1] returns: is missing"),
        ({"session.profile": "a/../b", "limits": None}, "[session] profile: no profile"),
    ],
)
def test_a_faulty_entry_is_refused_with_its_path(run, altered, changes, expected):
    path = altered("as built", changes)
    line = refused(run, path)
    assert expected in line
    assert path in line


def same_place(first, second, kinds=("height", "offset", "station")):
    """Changes that give the second pivot the readings of the first."""
    document = read_document(Path(demo("as built")))
    readings = document["readings"]
    link, end = first.split(".")
    return {f"readings.{second}.{kind}": readings[link][end][kind] for kind in kinds}


@pytest.mark.parametrize("link", ["track_bar", "drag_link"])
@pytest.mark.parametrize(
    "kinds",
    [("height", "offset", "station"), ("offset", "station"), ("offset",)],
    ids=["in one place", "one above the other", "one behind the other"],
)
def test_a_link_without_a_lateral_run_is_refused(run, altered, link, kinds):
    path = altered("as built", same_place(f"{link}.frame", f"{link}.axle", kinds))
    line = refused(run, path)
    assert f"[readings.{link}.axle] offset: leaves the {link.replace('_', ' ')} no run" in line


@pytest.mark.parametrize(
    ("joint", "expected"),
    [("60 in", "lies beyond the drag link's frame end"), ("0 in", "should be more than 0")],
)
def test_a_joint_that_is_not_on_the_drag_link_is_refused(run, altered, joint, expected):
    path = altered("toe", {"readings.tie_rod.joint_from_far_ball": [joint]})
    assert f"[readings.tie_rod] joint_from_far_ball: {expected}" in refused(run, path)


def test_a_tie_rod_without_a_lateral_run_is_refused(run, altered):
    """The joint is 9 in along a drag link that runs 40 in, from 60 1/16 to 20 1/16."""
    path = altered("toe", {"readings.tie_rod.near.offset": ["51 1/8 in"]})
    assert "[readings.tie_rod.near] offset: leaves the tie rod no run" in refused(run, path)


@pytest.mark.parametrize(
    "changes",
    [
        {"readings.travel.bump": "40 in", "readings.travel.droop": "40 in"},
        {"limits.working_travel.bump": "24 in"},
        {"readings.steering.arm": ["0.01 in"]},
        {"readings.steering.pitman_arm": ["0.01 in"]},
        {"readings.drag_link.frame.height": ["500 in"]},
    ],
    ids=["beyond reach", "working travel beyond reach", "no arm", "no pitman arm", "upright"],
)
def test_links_that_cannot_reach_still_have_a_verdict(run, altered, changes):
    path = altered("as built", changes)
    for form in ((), ("--json",)):
        code, out, err = run("check", path, *form)
        assert code in (0, 1)
        assert out
        assert not err


def test_a_travel_that_cannot_be_reached_is_reported(run, altered):
    path = altered("as built", {"readings.travel.bump": "40 in"})
    assert "a link binds" in run("check", path)[1]


def test_a_faulty_plan_is_refused_by_compare(run, altered):
    path = altered("lifted", {"plan.moves": [{"pivot": "hub"}]})
    assert run("check", path)[0] == 1
    code, _, err = run("compare", path, demo("fixed"))
    assert code == 2
    assert f"{path}: [plan] moves 1.pivot: " in err or f"{path}: [plan.moves 1] pivot: " in err


def test_entries_of_other_programs_are_kept_and_named(run, altered):
    path = altered("as built", {"vehicle.colour": "red", "weather": {"rain": True}})
    code, out, err = run("check", path)
    assert (code, err) == (0, "")
    assert " ".join(out.split()).count("vehicle.colour and weather. Kept as it is") == 1
    assert "not checked" not in out


@pytest.mark.parametrize(
    ("left_out", "headline"),
    [
        ("walk_round.joints", "✓ STEERS TRUE, JOINTS NOT CHECKED"),
        ("walk_round", "✓ STEERS TRUE, WALK-ROUND NOT CHECKED"),
        ("walk_round.tyres_alike", "✓ STEERS TRUE, TYRES NOT CHECKED"),
        ("stance", "✓ STEERS TRUE, STANCE NOT CHECKED"),
    ],
)
def test_the_headline_says_what_was_not_checked(run, altered, left_out, headline):
    path = altered("as built", {left_out: None})
    code, out, _ = run("check", path)
    assert code == 0
    assert out.startswith(headline)
    shorter = headline.capitalize().removeprefix("✓ s")
    assert shorter.casefold()[2:] in " ".join(run("compare", demo("as built"), path)[1].split())


NASTY = st.one_of(
    st.sampled_from(
        [
            *(0, 1, -1, 10**30, 1e308, -1e308, float("inf"), float("nan"), True, False),
            *("", " ", "0", "0 in", "-1 in", "9" * 50 + " in", "1e308", "nan", "inf", "1 parsec"),
            *("[red]x[/red]", "\x1b[31mx", "a\nb", "１７ in", "x" * 5000, "0.0000001 mm", "90 deg"),
            *("mm", "in", "knuckle", "inverted-y", "tie-rod", "ahead", "behind", "loose"),
            *([], ["0 in"], ["1 in", "2 in"], [[]], [1, 2], {}, {"a": 1}, ["24 in", "90 in"]),
            *(["90 deg"], ["-89.9 deg"], ["24 in"], ["99 m"], ["-99 m"], ["1/16 in"], [{}]),
        ]
    ),
    st.text(max_size=20),
    st.floats(),
    st.integers(),
    st.lists(st.text(max_size=8), max_size=3),
    st.floats(-200, 200).map(lambda inches: [f"{inches:.3f} in"]),
)


def paths_in(table, above=""):
    """Dotted paths of all tables and values in a document, without format and results."""
    for key, value in table.items():
        path = f"{above}{key}"
        if path not in ("format", "format_version", "results"):
            yield path
            if isinstance(value, dict):
                yield from paths_in(value, f"{path}.")


GOOD = {name: read_document(Path(demo(name))) for name in DEMO}


@st.composite
def mutated(draw):
    """Demo session with one to three entries replaced or removed."""
    document = GOOD[draw(st.sampled_from(sorted(GOOD)))]
    for _ in range(draw(st.integers(1, 3))):
        place = draw(st.sampled_from(sorted(paths_in(document))))
        if draw(st.booleans()) and draw(st.booleans()):
            document = without(document, place)
        else:
            document = with_value(document, place, draw(NASTY))
    return document


@settings(max_examples=150, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(mutated(), st.sampled_from([("check",), ("check", "--json"), ("compare",)]))
def test_every_record_has_a_report_or_is_refused_in_one_line(
    tmp_path, capsys, monkeypatch, document, command
):
    """There is no traceback and no arithmetic warning."""
    monkeypatch.setattr(filed_records, "assess", partial(assess, draws=500))
    path = tmp_path / "record.toml"
    try:
        path.write_bytes(dumps(document).encode())
    except (UnicodeEncodeError, ValueError):  # half a character, which TOML cannot store
        return
    other = (demo("fixed"),) if command == ("compare",) else ()
    with warnings.catch_warnings():
        warnings.simplefilter("error")
        code = main([*command, str(path), *other])
    out, err = capsys.readouterr()
    assert code in (0, 1, 2)
    assert (code == 2) == bool(err)
    if err:
        assert err.count("\n") == 1
        assert err[:-1].isprintable()
        assert str(path) in err
    else:
        assert all(line.isprintable() for line in out.splitlines())
    assert sorted(tmp_path.iterdir()) == [path]
