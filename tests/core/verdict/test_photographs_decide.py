"""A record with photographs: from its marks to the verdict, its advice and its JSON."""

import json
from pathlib import Path

import numpy as np
import pytest

from core.as_json.verdict import verdict_as_json
from core.documents.entries import EntryError
from core.fix.comparison import compare
from core.profiles.profile import load_profile
from core.verdict.assess import assess
from tests.geometries import INCH
from tests.photographed import PIVOTS, WITH_WHEELS, parallel, photographed

PROFILES = [Path(__file__).parents[3] / "profiles"]


def record(pictures, **changes):
    """A record of a session from photographs."""
    return {
        "format": "evenarc session",
        "format_version": 1,
        "session": {
            "id": "PH-1_20261125-141205_first_k3f9",
            "means": "photographs",
            "units": "in",
            "profile": "coil-crossover",
        },
        "vehicle": {"tag": "PH-1"},
        "layout": {"steering": "knuckle", "arm": "ahead", "pitman": "ahead"},
        "photographs": [
            {
                "file": f"photographs/PH-1_{each.number}.jpg",
                "width": each.width,
                "height": each.height,
                "f35": "26",
                "marks": {mark.point: [mark.across, mark.down] for mark in each.marks},
            }
            for each in pictures
        ],
        **changes,
    }


def judged(document):
    return assess(document, lambda name: load_profile(name, PROFILES))


@pytest.fixture(scope="module")
def drawn():
    return photographed(np.random.default_rng(3), 2)


@pytest.fixture(scope="module")
def verdict(drawn):
    return judged(record(drawn[1]))


def test_the_parallel_angle_is_near_the_truth(drawn, verdict):
    truth = parallel([drawn[0][pivot] for pivot in PIVOTS])
    ruling = verdict.rules.parallel
    assert abs(ruling.value - truth) < 2.5 * ruling.u
    assert np.radians(0.2) < ruling.u < np.radians(0.8)


def test_json_has_cameras_and_marks(verdict):
    written = json.loads(json.dumps(verdict_as_json(verdict, ""), allow_nan=False))
    first, second = written["photographs"]
    assert first["file"] == "photographs/PH-1_1.jpg"
    assert first["camera_mm"][0] > 1500
    assert second["camera_mm"][1] > first["camera_mm"][1]
    assert 2500 < first["focal_px"] < 3600
    assert [mark["mark"] for mark in first["marks"]] == list(WITH_WHEELS)
    for mark in first["marks"]:
        assert {"mark", "residual_px", "u_px", "w"} <= mark.keys()
        assert len(mark["residual_px"]) == 2
    assert "wheels.track" in written["assumed"]


def test_hubs_in_view_give_the_centre_plane(drawn, verdict):
    assert verdict.roll_centre_height is not None
    assert verdict.articulation is not None
    middle = verdict.measured.linkage.hub_height
    truth = np.mean([drawn[0][f"wheels.{side}_hub"][2] for side in ("left", "right")])
    assert abs(middle - truth) < 1.5 * INCH


def test_joints_were_not_checked(drawn, verdict):
    assert verdict.session.has_unchecked_joints
    looked = judged(record(drawn[1], walk_round={"joints": {"track_bar_frame": "tight"}}))
    assert not looked.session.has_unchecked_joints


def test_advice_is_given_where_it_is_too_close_to_call():
    """One of: a reading, one more photograph, the tape."""
    advised = []
    for seed in range(12):
        _, pictures = photographed(np.random.default_rng(seed), 1 + seed % 3)
        if advice := judged(record(pictures)).advice:
            advised.append(advice)
            assert advice.skipped or advice.photograph or advice.tape
    assert any(advice.photograph for advice in advised)


def test_marks_that_were_exchanged_are_named():
    _, pictures = photographed(np.random.default_rng(8), 3)
    document = record(pictures)
    marks = document["photographs"][1]["marks"]
    frame_ends = ("track_bar.frame", "drag_link.frame")
    marks[frame_ends[0]], marks[frame_ends[1]] = (marks[end] for end in reversed(frame_ends))
    verdict = judged(document)
    assert not verdict.adjustment.closes
    assert verdict.slips[0].slip == "exchanged"
    assert set(verdict.slips[0].readings) == {f"photographs.2.{end}" for end in frame_ends}


def test_a_tape_session_agrees_with_the_photographs(drawn, verdict):
    vehicle, _ = drawn
    readings = {
        link: {
            end: {
                "height": [f"{vehicle[f'{link}.{end}'][2]} mm"],
                "offset": [f"{900 - vehicle[f'{link}.{end}'][1]} mm"],
                "station": [f"{vehicle[f'{link}.{end}'][0]} mm"],
            }
            for end in ("frame", "axle")
        }
        for link in ("track_bar", "drag_link")
    }
    later = judged(
        {
            **record((), readings=readings),
            "session": {
                "id": "PH-1_20261126-141205_re-measure_k3f9",
                "kind": "re-measure",
                "units": "in",
                "profile": "coil-crossover",
            },
            "photographs": [],
        }
    )
    comparison = compare(verdict, later, ())
    assert not comparison.change("parallel").changed
    assert all(control.unchanged for control in comparison.controls)


def test_a_record_without_marks_of_a_pivot_names_it(drawn):
    document = record(drawn[1])
    for table in document["photographs"]:
        del table["marks"]["drag_link.axle"]
    with pytest.raises(EntryError, match=r"drag_link\.axle is marked in none"):
        judged(document)


def test_a_session_from_photographs_needs_one():
    with pytest.raises(EntryError, match="photographs: are missing"):
        judged(record(()))


def test_unknown_means_are_refused(drawn):
    document = record(drawn[1])
    document["session"]["means"] = "guess"
    with pytest.raises(EntryError, match="tape, photographs"):
        judged(document)


def test_the_same_view_twice_is_judged():
    """Two photographs from one place check each other's marks and little more."""
    _, (first, _) = photographed(np.random.default_rng(9), 2)
    verdict = judged(record((first, first)))
    assert verdict.adjustment.closes
    assert len(verdict.adjustment.cameras) == 2


def test_marks_that_are_all_wrong_decide_nothing(drawn):
    document = record(drawn[1])
    marks = document["photographs"][0]["marks"]
    marks |= {point: [2000.0, 1500.0] for point in marks}
    assert judged(document).overall == "held back"


def test_marks_of_one_hub_and_a_whole_tape_session_are_judged_together(drawn):
    """Offsets were read, and the wheels' were not: the centre plane lies about the pivots."""
    vehicle, pictures = drawn
    readings = {
        link: {
            end: {
                "height": [f"{vehicle[f'{link}.{end}'][2]} mm"],
                "offset": [f"{900 - vehicle[f'{link}.{end}'][1]} mm"],
            }
            for end in ("frame", "axle")
        }
        for link in ("track_bar", "drag_link")
    }
    document = record(pictures[:1], readings=readings)
    document["photographs"][0]["marks"] = {"wheels.left_hub": [2000.0, 1500.0]}
    assert judged(document).adjustment.closes


def test_a_length_that_is_a_foot_wrong_is_named(drawn):
    vehicle, pictures = drawn
    ends = [vehicle[f"track_bar.{end}"] for end in ("frame", "axle")]
    length = float(np.linalg.norm(ends[0] - ends[1])) + 12 * INCH
    document = record(pictures, readings={"track_bar": {"length": [f"{length} mm"]}})
    assert "track_bar.length" in {name for slip in judged(document).slips for name in slip.readings}
