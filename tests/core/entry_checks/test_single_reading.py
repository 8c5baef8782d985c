import pytest

from core.entry_checks.check import check
from core.entry_checks.outcome import Accepted, Queried, Refused
from core.entry_checks.single_reading import QUANTITIES, format_value

HEIGHT = "readings.track_bar.frame.height"


class TestKeptValue:
    """A bare number is kept with the unit it was typed in; changing units then changes nothing."""

    @pytest.mark.parametrize(
        ("path", "answer", "value"),
        [
            (HEIGHT, "24 1/2", ["24 1/2 in"]),
            (HEIGHT, "24 1/2; 24 9/16", ["24 1/2 in", "24 9/16 in"]),
            (HEIGHT, ["24 1/2", "62.3 cm"], ["24 1/2 in", "62.3 cm"]),
            ("readings.track_bar.slope", "8 1/2", ["8 1/2 deg"]),
            ("readings.steering.ratio", "16", "16"),
            ("readings.travel.bump", "4", "4 in"),
            ("vehicle.wheelbase", "118", "118 in"),
        ],
    )
    def test_a_bare_number_is_in_inches(self, path, answer, value):
        assert check(path, answer, {}) == Accepted(value)

    def test_a_bare_number_is_in_mm_where_the_session_is(self, profile):
        document = {"session": {"units": "mm"}}
        assert check(HEIGHT, "622", document, profile) == Accepted(["622 mm"])


class TestImpossible:
    @pytest.mark.parametrize(
        ("path", "answer", "wish"),
        [
            (HEIGHT, "-2", "on the floor or below"),
            (HEIGHT, "0", "on the floor or below"),
            (HEIGHT, "tall", "17 5/8"),
            (HEIGHT, "", "nothing was typed"),
            (HEIGHT, "400", "no vehicle is that large"),
            (HEIGHT, "24; -24", "on the floor or below"),
            ("readings.track_bar.length", "0", "more than 0"),
            ("readings.drag_link.length", "-30", "cannot be negative"),
            ("readings.braces.frame_ends", "0", "more than 0"),
            ("readings.steering.arm", "-6", "cannot be negative"),
            ("readings.steering.pitman_arm", "0", "more than 0"),
            ("readings.travel.droop", "-1", "cannot be negative"),
            ("readings.travel.bump", "4; 5", "single one"),
            ("readings.track_bar.slope", "75", "75.0 deg: a bar that steep"),
            ("readings.steering.ratio", "4", "between 5 and 40"),
            ("readings.steering.ratio", "41", "between 5 and 40"),
            ("readings.steering.ratio", "16 in", "plain number"),
            ("readings.track_bar.frame.offset", "8 deg", "length"),
            (HEIGHT, "1;" * 400, "at most"),
            (HEIGHT, "1" * 2000, "too long"),
        ],
    )
    def test_an_impossible_value_is_refused_with_what_would_be_right(self, path, answer, wish):
        outcome = check(path, answer, {})
        assert isinstance(outcome, Refused)
        assert wish in outcome.message

    @pytest.mark.parametrize("answer", ["175/8", "24 1/2; 195/8 in", "8/8"])
    def test_a_fraction_with_its_space_forgotten_is_refused(self, answer):
        outcome = check(HEIGHT, answer, {})
        assert isinstance(outcome, Refused)
        assert "leave a space before the fraction" in outcome.message

    def test_an_offset_and_a_station_can_be_negative(self):
        assert check("readings.track_bar.frame.offset", "-18", {}) == Accepted(["-18 in"])
        assert check("readings.track_bar.frame.station", "-3", {}) == Accepted(["-3 in"])

    @pytest.mark.parametrize("link", ["track_bar", "drag_link"])
    def test_a_slope_of_a_bent_bar_is_refused(self, link):
        document = {"readings": {link: {"bent": True}}}
        outcome = check(f"readings.{link}.slope", "8", document)
        assert isinstance(outcome, Refused)
        assert "An angle finder cannot be used on a bent bar" in outcome.message


class TestUnusual:
    @pytest.mark.parametrize("path", QUANTITIES)
    def test_a_value_outside_the_profiles_range_is_queried_with_the_range(self, path, profile):
        asked = QUANTITIES[path]
        smallest, largest = profile.ranges[asked.name]
        middle = (smallest + largest) / 2
        unit = {"slope": " rad", "angle": " rad", "number": ""}.get(asked.kind, " mm")
        too_much = largest + 0.02 * (largest - smallest)
        assert isinstance(check(path, f"{middle}{unit}", {}, profile), Accepted)
        outcome = check(path, f"{too_much}{unit}", {}, profile)
        assert isinstance(outcome, Queried)
        usual = " to ".join(format_value(end, asked.kind, "in") for end in (smallest, largest))
        assert f"Usual for this profile is {usual}." in outcome.message

    def test_a_query_says_how_to_take_it_again(self, profile):
        outcome = check(HEIGHT, "42", {}, profile)
        assert "18 in to 30 in" in outcome.message
        assert "tape upright from the floor" in outcome.message

    def test_a_number_in_the_other_unit_is_asked_about(self, profile):
        assert "Was it mm?" in check(HEIGHT, "622", {}, profile).message
        document = {"session": {"units": "mm"}}
        assert "Was it in?" in check(HEIGHT, "24 1/2", document, profile).message

    def test_messages_are_in_the_unit_of_the_session(self, profile):
        document = {"session": {"units": "mm"}}
        assert "457 mm to 762 mm" in check(HEIGHT, "1000", document, profile).message

    def test_without_a_profile_nothing_is_unusual(self):
        assert check(HEIGHT, "60", {}) == Accepted(["60 in"])


class TestRepeats:
    def test_repeats_that_agree_are_accepted(self, profile):
        outcome = check(HEIGHT, "24 1/2; 24 9/16; 24 1/2", {}, profile)
        assert outcome == Accepted(["24 1/2 in", "24 9/16 in", "24 1/2 in"])

    def test_repeats_that_scatter_more_than_the_instruments_claim_are_queried(self, profile):
        outcome = check(HEIGHT, "24 1/2; 25 1/4", {}, profile)
        assert isinstance(outcome, Queried)
        assert outcome.value == ["24 1/2 in", "25 1/4 in"]
        assert "3/4 in apart (24 1/2 in to 25 1/4 in)" in outcome.message

    def test_the_sessions_instruments_decide(self, profile):
        coarse = {"instruments": {"sighting": "1 in"}}
        assert isinstance(check(HEIGHT, "24 1/2; 25 1/4", coarse, profile), Accepted)

    def test_the_scatter_of_a_slope_is_in_degrees(self, profile):
        outcome = check("readings.track_bar.slope", "7; 9.5", {}, profile)
        assert "2.5 deg apart" in outcome.message
