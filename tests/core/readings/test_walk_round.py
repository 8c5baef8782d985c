import pytest

from core.documents.entries import EntryError
from core.readings.walk_round import failures


def test_a_walk_round_without_answers_has_no_failures():
    assert failures({}, is_heavy=False) == ()


def test_failures_are_paths():
    document = {
        "walk_round": {
            "rim_play": "3 in",
            "linkage_play": "3/8 in",
            "joints": {
                "track_bar_frame": "tight",
                "track_bar_axle": "loose",
                "drag_link_axle": "not checked",
            },
            "bolts_torqued": True,
            "tyres_alike": False,
        }
    }
    assert failures(document, is_heavy=False) == (
        "walk_round.rim_play",
        "walk_round.linkage_play",
        "walk_round.joints.track_bar_axle",
        "walk_round.tyres_alike",
    )


def test_a_bare_number_takes_the_unit_of_the_session():
    document = {"session": {"units": "mm"}, "walk_round": {"rim_play": "30"}}
    assert failures(document, is_heavy=False) == ()
    assert failures({"walk_round": {"rim_play": "30"}}, is_heavy=False) == ("walk_round.rim_play",)


@pytest.mark.parametrize(
    ("walk_round", "path"),
    [
        ({"joints": {"track_bar_axle": "wobbly"}}, "[walk_round.joints] track_bar_axle: "),
        ({"joints": "tight"}, "[walk_round] joints: "),
        ({"rim_play": "much"}, "[walk_round] rim_play: "),
        ({"tyres_alike": "yes"}, "[walk_round] tyres_alike: "),
    ],
)
def test_a_faulty_answer_is_refused_with_its_path(walk_round, path):
    with pytest.raises(EntryError) as refusal:
        failures({"walk_round": walk_round}, is_heavy=False)
    assert str(refusal.value).startswith(path)
