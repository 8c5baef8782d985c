"""`evenarc lift`: one vehicle in full, several in rows, and faults in one line."""

import json

import pytest

from wizard.commands import main
from wizard.locations import DEMO_SESSIONS, PROFILES


def run(capsys, *arguments):
    code = main(["--files", str(DEMO_SESSIONS), "lift", *arguments])
    captured = capsys.readouterr()
    return code, " ".join(captured.out.split()), captured.err


def test_without_more_every_profile_has_a_row(capsys):
    code, out, _ = run(capsys)
    assert code == 0
    for profile in PROFILES.glob("*.toml"):
        assert f"typical {profile.stem} from" in out


def test_one_vehicle_is_planned_in_full(capsys):
    code, out, _ = run(capsys, "4 in", "--typical", "coil-tie-rod")
    assert code == 0
    assert "lifted 4 in ≈ too close to call without more" in out
    assert "plan 1 track bar bracket lowered at the frame, down 1/2 in: cures, steers true" in out
    assert "Typical geometry is common practice without a source" in out


def test_vehicles_are_named_by_their_tags_one_row_each(capsys):
    code, out, _ = run(
        *(capsys, "--like", "FG-1", "--like", "FG-4", "--with", "both brackets of a lift")
    )
    assert code == 0
    assert "with both brackets of a lift" in out
    assert "FG-4 from 2 in lower to 8 in of lift" in out


def test_json_has_one_object(capsys):
    code, out, _ = run(capsys, "3 in", "--like", "FG-7", "--json")
    report = json.loads(out)
    (vehicle,) = report["vehicles"]
    assert report["lift_mm"] == pytest.approx(76.2)
    assert vehicle["like"].startswith("FG-7_")
    assert len(vehicle["now"]["rise_mm"]) == len(vehicle["now"]["peak_steer_deg"]) == 81
    assert code == (0 if any(p["answer"] == "cures" for p in vehicle["plans"]) else 1)


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        (("9 in",), "LIFT: “9 in” should lie between"),
        (("high",), "LIFT: “high” is not a length"),
        (("--like", "FG-99"), "FG-99: no vehicle is filed under this tag"),
        (("--like", "../FG-1"), "../FG-1: cannot be opened"),
        (("--like", "FG-6"), "is held back"),
        (("--like", "FG-3"), "its measured steer contradicts its pivots"),
        (("--typical", "nothing"), "no profile “nothing”"),
        (("--with", "magic"), "--with: no change is named “magic”"),
        (("--with", "ride height"), "--with: this correction needs its rise"),
    ],
)
def test_a_fault_is_one_line(capsys, arguments, words):
    code, out, err = run(capsys, *arguments)
    assert (code, out) == (2, "")
    assert words in err
    assert len(err.splitlines()) == 1
