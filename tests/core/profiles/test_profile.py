from math import radians
from pathlib import Path

import pytest

from core.kinematics.pivots import GUIDE_PIVOTS, Direction, GuideKind, Layout
from core.profiles.profile import ProfileError, load_profile, profile_names
from core.profiles.profile_tables import RANGES

SHIPPED = Path(__file__).parents[3] / "profiles"
COIL = ("coil-crossover", "coil-inverted-y", "coil-tie-rod", "high-steer")
LEAF = ("heavy-truck", "leaf-cross", "leaf-fore-aft")
NAMES = tuple(sorted((*COIL, *LEAF)))


EVERY_VEHICLE = (
    *("steering.arm", "steering.pitman_arm", "steering.ratio", "wheels.hub_height"),
    *("tie_rod.near_arm", "tie_rod.joint_from_far_ball"),
    *("kingpin.castor", "kingpin.inclination", "guide.span", "guide.pitch_gain"),
)


def of_guide(guide):
    """Readings of the pivots of a guide."""
    return [f"{pivot}.{key}" for pivot in GUIDE_PIVOTS[guide] for key in ("height", "station")]


class TestShipped:
    def test_all_seven_are_there(self):
        assert profile_names([SHIPPED]) == NAMES

    @pytest.mark.parametrize("name", NAMES)
    def test_is_complete(self, name):
        profile = load_profile(name, [SHIPPED])
        assert profile.name == name
        assert tuple(profile.ranges) == (*RANGES, "wheels.track")
        assert {event.name for event in profile.events} == {"dip", "hard stop with nose dive"}
        assert all(correction.caution for correction in profile.corrections)
        assert not profile.shop_own

    @pytest.mark.parametrize("name", NAMES)
    def test_says_that_its_numbers_are_invented(self, name):
        head = (SHIPPED / f"{name}.toml").read_text().partition("\nname")[0]
        assert "invented or common practice in the trade, without a published" in head

    @pytest.mark.parametrize("guide", GuideKind)
    @pytest.mark.parametrize("name", NAMES)
    def test_what_it_assumes_is_usual(self, name, guide):
        profile = load_profile(name, [SHIPPED])
        for reading in (*EVERY_VEHICLE, *of_guide(guide)):
            smallest, largest = profile.ranges[reading]
            value = profile.defaults.value(reading, guide)
            half_width = profile.defaults.within(reading, guide)
            assert smallest <= value - half_width, reading
            assert value + half_width <= largest, reading
        for condition in ("travel.bump", "travel.droop", "vehicle.wheelbase"):
            smallest, largest = profile.ranges[condition.removeprefix("vehicle.")]
            assert smallest <= profile.defaults.value(condition, guide) <= largest

    def test_what_the_brakes_do_to_the_axle(self):
        for name in NAMES:
            dip, stop = load_profile(name, [SHIPPED]).events
            assert (dip.windup, dip.windup_within) == (0.0, 0.0)
            windup, within = (2.0, 1.0) if name in LEAF else (0.5, 0.4)
            assert stop.windup == pytest.approx(radians(windup))
            assert stop.windup_within == pytest.approx(radians(within))

    @pytest.mark.parametrize("name", NAMES)
    def test_arms_are_offered_as_their_layout_has_them(self, name):
        profile = load_profile(name, [SHIPPED])
        lengthwise = name == "leaf-fore-aft"
        assert (profile.steering == Layout.FORE_AFT) == lengthwise
        assert (profile.arm, profile.pitman) == (
            (Direction.INBOARD, Direction.DOWN) if lengthwise else (Direction.AHEAD,) * 2
        )

    def test_the_guides_that_are_offered_first(self):
        guides = {name: load_profile(name, [SHIPPED]).guide for name in NAMES}
        assert {name for name in NAMES if guides[name] == GuideKind.LEAF} == set(LEAF)
        assert guides["high-steer"] == GuideKind.UNMEASURED

    def test_only_leaf_springs_do_without_a_track_bar(self):
        profiles = [load_profile(name, [SHIPPED]) for name in NAMES]
        without = {profile.name: profile for profile in profiles if not profile.track_bar}
        assert set(without) == {"leaf-cross", "leaf-fore-aft"}
        assert set(without["leaf-fore-aft"].adjusters) == {"drag_link"}
        assert set(without["leaf-cross"].adjusters) == {"track_bar", "drag_link"}

    @pytest.mark.parametrize("name", NAMES)
    def test_a_change_of_ride_height_below_half_an_inch_is_not_tried(self, name):
        (ride,) = (
            correction
            for correction in load_profile(name, [SHIPPED]).corrections
            if correction.pivot == "ride_height"
        )
        assert min(map(abs, ride.rises)) < 12.7 <= min(map(abs, ride.rises_tried))

    @pytest.mark.parametrize("name", NAMES)
    def test_a_ball_is_re_mounted_where_it_is_not_yet(self, name):
        corrections = load_profile(name, [SHIPPED]).corrections
        needs = {
            above_or_below: correction.needs_ball
            for correction in corrections
            for above_or_below in ("above", "below")
            if f"re-mounted {above_or_below}" in correction.name
        }
        assert needs == ({} if name == "high-steer" else {"above": "below", "below": "above"})

    @pytest.mark.parametrize("name", NAMES)
    def test_the_guide_can_be_corrected(self, name):
        pivots = {correction.pivot for correction in load_profile(name, [SHIPPED]).corrections}
        assert ("guide.seat" in pivots, "guide.frame" in pivots) == (name in LEAF, name in COIL)

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
    ('arm = "6 1/2 in"', 'arm = "0 in"', "[defaults] arm: ", "between 1 in and 24 in"),
    ('arm = "6 1/2 in"', 'arm = "3 ft"', "[defaults] arm: ", "between 1 in and 24 in"),
    ('arm = "1 1/4 in"', "", "[defaults_within] arm: ", "missing"),
    ('arm = "1 1/4 in"', 'arm = "0 in"', "[defaults_within] arm: ", "cannot be 0"),
    ('arm = "1 1/4 in"', 'arm = "6 in"', "[defaults_within] arm: ", "too wide"),
    ('pitch_gain = "-0.7 deg/in"', 'pitch_gain = "-1"', "[defaults] pitch_gain: ", "deg/in"),
    ('castor = "5 deg"', 'castor = "25 deg"', "[defaults] castor: ", "20 deg"),
    (
        'frame = { height = "18 in"',
        'frame = { height = "18"',
        "[defaults.guide.radius-arms.frame] height: ",
        "unit",
    ),
    ("effective_length = ", "efective_length = ", "[defaults.guide.leaf] efective_", "effective_"),
    ('guide = "radius-arms"', 'guide = "arms"', "[layout] guide: ", "radius-arms, two-arms, leaf"),
    ("track_bar = true", "", "[layout] track_bar: ", "true or false"),
    ('pitman = "ahead"', 'pitman = "down"', "[layout] pitman: ", "ahead, behind"),
    ('clearance = "1 1/2 in"', 'clearance = "1 m"', "clearance: ", "at most 12 in"),
    ('mass = "2300 kg"', 'mass = "2300"', "[road] mass: ", "2300 kg"),
    ("front_share = 0.55", "front_share = 55", "[road] front_share: ", "below 1"),
    ('cornering_rear = "120 kN/rad"', "", "[road] cornering_rear: ", "missing"),
    ('windup = "0.5 deg"', 'windup = "-1 deg"', "[events 2] windup: ", "negative"),
    ('windup = "0.5 deg"', 'windup = "40 deg"', "[events 2] windup: ", "at most 10 deg"),
    ('parallel = "1.5 deg"', 'parallel = "50 deg"', "[limits] parallel: ", "at most 45 deg"),
    ('{ bump = "2 in"', '{ bump = "3 ft"', "[limits.working_travel] bump: ", "at most 24 in"),
    ('rises = ["1/2 in", ', 'rises = ["4 ft", ', "[corrections 1] rises: ", "at most 1 m"),
    ('ball = "below"', 'ball = "under"', "[corrections 5] ball: ", "below, above"),
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
