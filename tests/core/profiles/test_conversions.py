"""Conversions of a profile or a parts shelf: read, refused, and fitted to a vehicle."""

from pathlib import Path

import pytest

from core.documents.entries import EntryError
from core.kinematics.pivots import Direction, GuideKind, Layout
from core.profiles.conversions import Conversion, fitting
from core.profiles.correction_tables import changes_at, conversions_at
from core.profiles.corrections import PivotStep
from core.profiles.parts_shelf import load_shelf, with_shelf
from core.profiles.profile import load_profile, profile_names
from core.text.quantity import INCH

SHIPPED = Path(__file__).parents[3] / "profiles"

ARMS = {
    "name": "high arms",
    "caution": "Torque them.",
    "moves": [
        {"pivot": "drag_link.axle", "rise": "3 in", "to_offset": "60 in"},
        {"pivot": "guide.frame", "to_station": "-30 in"},
    ],
    "layout": {"steering": "knuckle"},
    "readings": {"arm": "7 in"},
}


def test_a_conversion_is_in_mm():
    (conversion,) = conversions_at({"conversions": [ARMS]})
    assert conversion.moves == (
        PivotStep("drag_link.axle", pytest.approx(3 * INCH), None, 60 * INCH),
        PivotStep("guide.frame", 0.0, -30 * INCH, None),
    )
    assert conversion.steering == Layout.KNUCKLE
    assert conversion.readings == {"steering.arm": pytest.approx(7 * INCH)}


def test_readings_can_have_the_name_of_their_table():
    entry = ARMS | {"readings": {"steering": {"arm": "7 in"}, "kingpin": {"castor": "4 deg"}}}
    (conversion,) = conversions_at({"conversions": [entry]})
    assert set(conversion.readings) == {"steering.arm", "kingpin.castor"}


@pytest.mark.parametrize(
    ("entries", "place"),
    [
        ({"moves": [{"pivot": "steering.arm", "rise": "1 in"}]}, "[conversions 1, moves 1] pivot"),
        ({"moves": [{"pivot": "drag_link.axle"}]}, "[conversions 1, moves 1] rise"),
        (
            {"moves": [{"pivot": "drag_link.axle", "rise": "3"}]},
            "[conversions 1, moves 1] rise",
        ),
        (
            {"moves": [{"pivot": "ride_height", "to_station": "1 in"}]},
            "[conversions 1, moves 1] to_station",
        ),
        (
            {"moves": [{"pivot": "guide.frame", "to_offset": "1 in"}]},
            "[conversions 1, moves 1] to_offset",
        ),
        ({"moves": [ARMS["moves"][0]] * 2}, "[conversions 1, moves 2] pivot"),
        ({"moves": [{"pivot": "drag_link.axle", "by": "1 in"}]}, "[conversions 1, moves 1] by"),
        ({"moves": "up"}, "moves: should be tables"),
        ({"layout": {"steering": "inverted-y"}}, "[conversions 1.layout] steering"),
        ({"layout": {"arm": "sideways"}}, "[conversions 1.layout] arm"),
        ({"readings": {"arm": "9 ft"}}, "[conversions 1.readings] arm"),
        ({"readings": {"weight": "9 lb"}}, "[conversions 1.readings] weight"),
        ({"moves": [], "layout": {}, "readings": {}}, "[conversions 1] moves"),
        ({"caution": ""}, "[conversions 1] caution"),
        ({"price": "5"}, "[conversions 1] price"),
    ],
)
def test_a_faulty_conversion_is_refused_with_table_and_key(entries, place):
    with pytest.raises(EntryError) as refused:
        conversions_at({"conversions": [ARMS | entries]})
    assert str(refused.value).startswith(place)


def test_a_name_is_used_once_among_corrections_and_conversions():
    drop = {
        **{"name": "high arms", "pivot": "drag_link.frame", "rises": ["1 in"]},
        "caution": "Torque it.",
    }
    with pytest.raises(EntryError, match=r"^\[conversions 1\] name: .*correction's name"):
        changes_at({"corrections": [drop], "conversions": [ARMS]})


@pytest.mark.parametrize(
    ("layout", "guide", "fits"),
    [
        (Layout.INVERTED_Y, GuideKind.RADIUS_ARMS, True),
        (Layout.KNUCKLE, GuideKind.RADIUS_ARMS, False),  # it is so already
        (Layout.INVERTED_Y, GuideKind.LEAF, False),  # it has no such pivot
        (Layout.FORE_AFT, GuideKind.RADIUS_ARMS, False),  # its arms point elsewhere
    ],
)
def test_a_conversion_fits_a_vehicle_that_has_what_it_changes(layout, guide, fits):
    (conversion,) = conversions_at({"conversions": [ARMS]})
    lengthwise = layout == Layout.FORE_AFT
    arm = Direction.INBOARD if lengthwise else Direction.AHEAD
    pitman = Direction.DOWN if lengthwise else Direction.AHEAD
    assert conversion.fits(layout, arm, pitman, guide, has_track_bar=True) is fits


def test_corrections_of_the_layout_it_leads_to_are_kept():
    (conversion,) = conversions_at(
        {
            "conversions": [
                ARMS
                | {
                    "moves": [],
                    "layout": {"steering": "knuckle", "arm": "ahead", "pitman": "ahead"},
                }
            ]
        }
    )
    bar = load_profile("coil-crossover", [SHIPPED]).corrections[2]
    assert bar.pivot == "track_bar.axle"
    document = {"layout": {"steering": "fore-aft", "arm": "inboard", "pitman": "down"}}
    assert fitting([bar], document) == ()
    assert fitting([bar, conversion], document) == (bar, conversion)


@pytest.mark.parametrize("name", profile_names([SHIPPED]))
def test_the_conversions_of_a_profile_fit_its_own_layout(name):
    profile = load_profile(name, [SHIPPED])
    assert profile.conversions
    for conversion in profile.conversions:
        assert any(
            conversion.fits(profile.steering, profile.arm, profile.pitman, guide, has_track_bar)
            for guide in GuideKind
            for has_track_bar in (True, False)
        ), conversion.name


def test_a_shelf_has_conversions_of_its_own(tmp_path):
    shelf = tmp_path / "parts_shelf.toml"
    shelf.write_text(
        '[[conversions]]\nname = "both brackets of a lift"\ncaution = "Torque them."\n'
        'moves = [{ pivot = "track_bar.frame", rise = "-1 in" }]\nprice = "90 USD"\n'
    )
    (own,) = load_shelf(shelf, [SHIPPED])
    assert isinstance(own, Conversion)
    joined = with_shelf(load_profile("coil-crossover", [SHIPPED]), [own])
    assert [each for each in joined.conversions if each.name == own.name] == [own]
