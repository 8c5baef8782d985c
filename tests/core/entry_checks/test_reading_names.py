import pytest

from core.entry_checks.reading_names import look_again, reading_name
from core.entry_checks.single_reading import QUANTITIES

NAMES = list(dict.fromkeys(asked.name for asked in QUANTITIES.values()))
KINDS = list(dict.fromkeys(asked.kind for asked in QUANTITIES.values() if asked.kind != "number"))


@pytest.mark.parametrize(
    ("name", "words"),
    [
        ("track_bar.frame.height", "height of the track bar's frame end"),
        ("drag_link.length", "length of the drag link"),
        ("tie_rod.near.offset", "offset of the tie rod's near ball"),
        ("braces.axle_ends", "distance between the two axle ends"),
        ("steering.arm", "steering arm"),
        ("walk_round.rim_play", "rim play"),
    ],
)
def test_names_in_words(name, words):
    assert reading_name(name) == words


@pytest.mark.parametrize("name", ["height", "sway_bar.length"])
def test_a_reading_of_an_unknown_pivot_or_link_has_no_name(name):
    with pytest.raises(KeyError):
        reading_name(name)


def test_no_two_readings_have_one_name():
    assert len({reading_name(name) for name in NAMES}) == len(NAMES)


@pytest.mark.parametrize("kind", KINDS)
def test_every_kind_of_reading_has_a_way_to_take_it_again(kind):
    assert look_again(kind).startswith("Take it again: ")
    assert look_again(kind).endswith(".")
