from pathlib import Path

import pytest

from core.profiles.corrections import Correction
from core.profiles.parts_shelf import load_shelf, with_shelf
from core.profiles.profile import ProfileError, load_profile

SHIPPED = Path(__file__).parents[3] / "profiles"

SHELF = """
[[corrections]]
name = "bracket we make ourselves"
pivot = "track_bar.axle"
rises = ["1 in", "40 mm"]
caution = "Weld it on the bench, never on the vehicle."
not_with = ["track bar bracket raised at the axle"]
"""


@pytest.fixture
def shelf(tmp_path):
    file = tmp_path / "parts_shelf.toml"
    file.write_text(SHELF)
    return file


def test_a_shop_without_a_shelf_has_nothing_on_it(tmp_path):
    assert load_shelf(tmp_path / "parts_shelf.toml", [SHIPPED]) == ()


def test_what_is_on_it(shelf):
    (correction,) = load_shelf(shelf, [SHIPPED])
    assert correction == Correction(
        name="bracket we make ourselves",
        pivot="track_bar.axle",
        rises=(pytest.approx(25.4), pytest.approx(40.0)),
        caution="Weld it on the bench, never on the vehicle.",
        not_with=("track bar bracket raised at the axle",),
        least_rise=pytest.approx(25.4),
    )


def test_it_joins_the_corrections_of_a_profile(shelf):
    profile = load_profile("coil-crossover", [SHIPPED])
    joined = with_shelf(profile, load_shelf(shelf, [SHIPPED]))
    assert len(joined.corrections) == len(profile.corrections) + 1
    assert joined.corrections[-1].name == "bracket we make ourselves"


def test_one_of_the_same_name_takes_the_place_of_the_profiles():
    own = Correction("ride height", "ride_height", (-10.0,))
    profile = load_profile("coil-crossover", [SHIPPED])
    found = [one for one in with_shelf(profile, [own]).corrections if one.name == "ride height"]
    assert found == [own]


@pytest.mark.parametrize(
    ("old", "new", "place"),
    [
        ("track_bar.axle", "track_bar.middle", "[corrections 1] pivot: "),
        ('"1 in"', '"1"', "[corrections 1] rises: "),
        ('"1 in"', '"1001 mm"', "[corrections 1] rises: should be rises of at most 1 m"),
        ("caution", "warning", "[corrections 1] warning: "),
        ("raised at the axle", "raised at the moon", "[corrections 1] not_with: "),
        ("[[corrections]]", 'title = "ours"\n[[corrections]]', "title: "),
        ("[[corrections]]", "[[corrections", "is not TOML"),
    ],
)
def test_a_faulty_entry_is_refused_with_its_place(shelf, old, new, place):
    shelf.write_text(SHELF.replace(old, new, 1))
    with pytest.raises(ProfileError) as refused:
        load_shelf(shelf, [SHIPPED])
    assert str(refused.value).startswith(f"{shelf}: ")
    assert place in str(refused.value)


def test_more_combinations_than_can_be_searched_are_refused(shelf):
    rises = ", ".join(f'"{number} mm"' for number in range(1, 201))
    entry = SHELF.replace('"1 in", "40 mm"', f"{rises}").replace('"1 in"', '"1 mm"')
    shelf.write_text("".join(entry.replace("bracket", f"bracket {part}", 1) for part in "abc"))
    with pytest.raises(ProfileError, match="corrections: offer 8,120,600 combinations; at most"):
        load_shelf(shelf, [SHIPPED])
