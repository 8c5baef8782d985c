from math import radians
from pathlib import Path

import pytest

from core.profiles.profile import ProfileError, load_profile, profile_names
from core.profiles.profile_tables import RANGES

SHIPPED = Path(__file__).parents[3] / "profiles"
NAMES = ("coil-crossover", "coil-inverted-y", "coil-tie-rod", "heavy-truck", "high-steer")


class TestShipped:
    def test_all_five_are_there(self):
        assert profile_names([SHIPPED]) == NAMES

    @pytest.mark.parametrize("name", NAMES)
    def test_is_complete(self, name):
        profile = load_profile(name, [SHIPPED])
        assert profile.name == name
        assert tuple(profile.ranges) == RANGES
        assert {event.name for event in profile.events} == {"dip", "hard stop with nose dive"}
        assert all(correction.caution for correction in profile.corrections)
        assert not profile.shop_own

    @pytest.mark.parametrize("name", NAMES)
    def test_says_that_its_numbers_are_invented(self, name):
        head = (SHIPPED / f"{name}.toml").read_text().partition("\nname")[0]
        assert "invented or common practice in the trade, without a published" in head

    @pytest.mark.parametrize("name", NAMES)
    def test_what_it_assumes_is_usual(self, name):
        profile = load_profile(name, [SHIPPED])
        stands_for = {
            **{f"steering.{key}": key for key in ("arm", "pitman_arm", "ratio")},
            **{f"tie_rod.{key}": key for key in ("near_arm", "joint_from_far_ball")},
            **{"travel.bump": "bump", "travel.droop": "droop", "wheelbase": "wheelbase"},
            "wheels.hub_height": "hub_height",
        }
        for reading, default in stands_for.items():
            smallest, largest = profile.ranges[reading]
            assert smallest <= getattr(profile.defaults, default) <= largest, reading
            assert profile.defaults[reading] == getattr(profile.defaults, default)

    @pytest.mark.parametrize("name", NAMES)
    def test_exclusions_are_said_on_both_sides(self, name):
        corrections = {one.name: one for one in load_profile(name, [SHIPPED]).corrections}
        for one in corrections.values():
            assert all(one.name in corrections[other].not_with for other in one.not_with)

    def test_limits_are_those_of_the_record(self):
        limits = load_profile("coil-crossover", [SHIPPED]).limits
        assert limits.parallel == pytest.approx(radians(1.5))
        assert limits.flat == pytest.approx(radians(10))
        assert limits.length_ratio == pytest.approx(0.85)
        assert limits.steer == pytest.approx(radians(0.5))
        assert limits.toe_change == pytest.approx(radians(0.25))
        assert limits.working_bump == limits.working_droop == pytest.approx(50.8)

    def test_only_the_heavy_one_is_heavy(self):
        heavy = [name for name in NAMES if load_profile(name, [SHIPPED]).over_10000_lb]
        assert heavy == ["heavy-truck"]

    def test_adjusters(self):
        adjusters = load_profile("coil-crossover", [SHIPPED]).adjusters
        assert adjusters["track_bar"].kind == "one-end"
        assert adjusters["track_bar"].pitch == pytest.approx(25.4 / 16)


@pytest.fixture
def shop(tmp_path):
    folder = tmp_path / "shop"
    folder.mkdir()
    return folder


def own_profile(shop: Path, changes=(), name="coil-crossover") -> Path:
    """A copy of the shipped profile, with (old, new) texts exchanged."""
    text = (SHIPPED / "coil-crossover.toml").read_text(encoding="utf-8")
    for old, new in changes:
        assert old in text
        text = text.replace(old, new, 1)
    file = shop / f"{name}.toml"
    file.write_text(text, encoding="utf-8")
    return file


class TestShopFolder:
    def test_the_shops_own_comes_first_and_is_marked(self, shop):
        file = own_profile(shop, [('flat = "10 deg"', 'flat = "8 deg"')])
        profile = load_profile("coil-crossover", [shop, SHIPPED])
        assert profile.limits.flat == pytest.approx(radians(8))
        assert profile.shop_own
        assert profile.source == file

    def test_its_own_name_stands_beside_the_others(self, shop):
        own_profile(shop, [('name = "coil-crossover"', 'name = "ours"')], name="ours")
        assert profile_names([shop, SHIPPED]) == tuple(sorted((*NAMES, "ours")))
        assert load_profile("ours", [shop, SHIPPED]).shop_own
        assert not load_profile("coil-crossover", [shop, SHIPPED]).shop_own

    def test_a_folder_that_is_not_there_has_none(self, tmp_path):
        assert profile_names([tmp_path / "no", SHIPPED]) == NAMES

    @pytest.mark.parametrize(
        "name", ["", "nothing", "../profiles/coil-crossover", "a\x1b[31m", "\0"]
    )
    def test_an_unknown_name_is_refused_with_those_there_are(self, name, shop):
        with pytest.raises(ProfileError) as refused:
            load_profile(name, [shop, SHIPPED])
        message = str(refused.value)
        assert "there are: coil-crossover, coil-inverted-y" in message
        assert message.isprintable()


FAULTS = [
    # what is exchanged for what, and the place and the wish the message names
    ('title = "Coil springs, drag link across to the far knuckle"', "", "title: ", "missing"),
    ('title = "Coil', 'title = 5 # "Coil', "title: ", "text"),
    ('title = "Coil', 'title = "\\u001b[31mCoil', "title: ", "control characters"),
    ('name = "coil-crossover"', 'name = "other"', "name: ", "coil-crossover"),
    ('steering = "knuckle"', 'steering = "knukle"', "[layout] steering: ", "inverted-y"),
    ('arm = "ahead"', 'arm = "up"', "[layout] arm: ", "ahead, behind"),
    ('height = ["18 in", "30 in"]', "", "[ranges.track_bar.frame] height: ", "missing"),
    ('["18 in", "30 in"]', '["30 in", "18 in"]', "[ranges.track_bar.frame] height: ", "upside"),
    ('["18 in", "30 in"]', '["18 in"]', "[ranges.track_bar.frame] height: ", '["18 in", "30 in"]'),
    ('["18 in", "30 in"]', '"18 in"', "[ranges.track_bar.frame] height: ", "list of two"),
    ('["18 in", "30 in"]', '["18 deg", "30 in"]', "[ranges.track_bar.frame] height: ", "length"),
    ('["18 in", "30 in"]', '["18", "30 in"]', "[ranges.track_bar.frame] height: ", "unit"),
    ('["18 in", "30 in"]', "[18, 30]", "[ranges.track_bar.frame] height: ", "unit"),
    ('["-5 deg", "25 deg"]', '["-5 in", "25 deg"]', "[ranges.track_bar] slope: ", "angle"),
    ('ratio = ["12", "22"]', 'ratio = ["12 in", "22"]', "[ranges.steering] ratio: ", "number"),
    ("[ranges.wheels]", "[ranges.wheel]", "[ranges.wheel] hub_height: ", "not known"),
    ("hub_height = [", "hub_heigth = [", "[ranges.wheels] hub_heigth: ", "hub_height"),
    ("[ranges.wheels]", '[ranges."a.b"]', '[ranges."a.b"] hub_height: ', "not known"),
    ('wheelbase = ["80 in", "180 in"]', "wheelbase = {}", "[ranges] wheelbase: ", "list of two"),
    ('arm = "6 1/2 in"', "", "[defaults] arm: ", "missing"),
    ('arm = "6 1/2 in"', 'arm = "0 in"', "[defaults] arm: ", "cannot be 0"),
    ('ratio = "16"', 'ratio = "sixteen"', "[defaults] ratio: ", "16 1/2"),
    ('ratio = "16"', 'ratio = "16"\nlash = "1"', "[defaults] lash: ", "not known"),
    ('tape = "1/16 in"', 'tape = "-1/16 in"', "[instruments] tape: ", "negative"),
    ('seating = "0.5 deg"', "seating = true", "[instruments] seating: ", "quantity"),
    ('parallel = "1.5 deg"', 'parallel = "-1.5 deg"', "[limits] parallel: ", "negative"),
    ("length_ratio = 0.85", "length_ratio = 1.2", "[limits] length_ratio: ", "at most 1"),
    ("length_ratio = 0.85", "length_ratio = nan", "[limits] length_ratio: ", "number"),
    ("working_travel = {", 'working_travel = "2 in" # {', "[limits] working_travel: ", "table"),
    ("over_10000_lb = false", "", "[walk_round] over_10000_lb: ", "true or false"),
    ('kind = "one-end"', 'kind = "left"', "[adjusters.track_bar] kind: ", "sleeve, one-end"),
    ('pitch = "16 per in"', 'pitch = "coarse"', "[adjusters.track_bar] pitch: ", "16 per in"),
    ("[[corrections]]", "[corrections]", "line", "not TOML"),
    (
        'pivot = "drag_link.frame"',
        'pivot = "drag_link.front"',
        "[corrections 1] pivot: ",
        "drag_link.frame",
    ),
    ('rises = ["1/2 in", ', 'rises = ["0 in", ', "[corrections 1] rises: ", "none of them 0"),
    ('rises = ["1/2 in", ', 'rises = ["1/2 deg", ', "[corrections 1] rises: ", "length"),
    ('rises = ["1/2 in", ', 'rises = [5, "1/2 in", ', "[corrections 1] rises: ", "unit"),
    (
        'not_with = ["pitman arm with more drop"]',
        'not_with = ["pitman arm with less drip"]',
        "[corrections 1] not_with: ",
        "less drip",
    ),
    (
        'name = "pitman arm with more drop"',
        'name = "pitman arm with less drop"',
        "[corrections 2] name: ",
        "twice",
    ),
    ('rise = "0.25 s"', 'rise = "0.25 in"', "[events 1] rise: ", "duration"),
    ("returns = true", "", "[events 1] returns: ", "true or false"),
    ('travel = "2 in"', 'travel = "0 in"', "[events 1] travel: ", "2 in"),
    ('speed = "60 km/h"', 'speed = "60"', "[events 1] speed: ", "km/h"),
    ('speed = "60 km/h"', 'speed = "60 km/h"\ngrip = 1', "[events 1] grip: ", "not known"),
]


class TestFaulty:
    @pytest.mark.parametrize(("old", "new", "place", "wish"), FAULTS)
    def test_one_line_with_file_table_key_and_what_was_expected(self, shop, old, new, place, wish):
        file = own_profile(shop, [(old, new)])
        with pytest.raises(ProfileError) as refused:
            load_profile("coil-crossover", [shop, SHIPPED])
        message = str(refused.value)
        assert message.startswith(f"{file}: ")
        assert place in message
        assert wish in message
        assert message.isprintable()

    def test_corrections_that_are_one_table(self, shop):
        text = (SHIPPED / "coil-crossover.toml").read_text().partition("[[corrections]]")[0]
        (shop / "coil-crossover.toml").write_text(text + '[corrections]\nname = "lift"\n')
        with pytest.raises(ProfileError, match=r"corrections"):
            load_profile("coil-crossover", [shop])

    def test_broken_toml_is_refused_with_its_line(self, shop):
        own_profile(shop, [('flat = "10 deg"', 'flat = "10 deg')])
        with pytest.raises(ProfileError, match=r"is not TOML: .*line \d+, column \d+"):
            load_profile("coil-crossover", [shop])

    @pytest.mark.parametrize(
        ("content", "reason"),
        [
            (b'name = "a"\ntitle = "\xff"', "line 2: is not UTF-8 text"),
            (b"a = " + b"[" * 100_000, "is not TOML"),
            (b"# much\n" * 200_000, "is larger than 1 MB"),
            (b"", "name: "),
        ],
        ids=["latin-1", "nested", "large", "empty"],
    )
    def test_what_is_no_profile_at_all(self, shop, content, reason):
        (shop / "odd.toml").write_bytes(content)
        with pytest.raises(ProfileError) as refused:
            load_profile("odd", [shop])
        assert reason in str(refused.value)

    def test_a_folder_in_the_place_of_a_file(self, shop):
        (shop / "odd.toml").mkdir()
        with pytest.raises(ProfileError, match=r"odd\.toml: cannot be opened"):
            load_profile("odd", [shop])
