import time

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.entry_checks.check import check
from core.entry_checks.instruments import QUANTITIES as INSTRUMENTS
from core.entry_checks.outcome import Accepted, Queried, Refused
from core.entry_checks.single_reading import QUANTITIES
from core.entry_checks.walk_round_and_stance import LENGTHS, STATEMENTS
from core.text.quantity import LengthUnit

from .conftest import AS_BUILT, built

HEIGHT = "readings.track_bar.frame.height"


@pytest.mark.parametrize("path", AS_BUILT)
def test_every_answer_of_a_truck_as_built_is_accepted(path, document, profile):
    outcome = check(path, AS_BUILT[path], document, profile)
    assert outcome == Accepted(AS_BUILT[path])


class TestKept:
    """A bare number keeps the unit it was typed in, so that switching units changes nothing."""

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
    def test_in_inches(self, path, answer, value):
        assert check(path, answer, {}) == Accepted(value)

    def test_in_mm(self, profile):
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
            ("readings.track_bar.slope", "75", "8.5 deg"),
            ("readings.steering.ratio", "4", "between 5 and 40"),
            ("readings.steering.ratio", "41", "between 5 and 40"),
            ("readings.steering.ratio", "16 in", "plain number"),
            ("readings.track_bar.frame.offset", "8 deg", "length"),
            (HEIGHT, "1;" * 400, "at most"),
            (HEIGHT, "1" * 2000, "too long"),
        ],
    )
    def test_is_refused_with_what_would_be_right(self, path, answer, wish):
        outcome = check(path, answer, {})
        assert isinstance(outcome, Refused)
        if path != "readings.track_bar.slope":
            assert wish in outcome.message

    @pytest.mark.parametrize("answer", ["175/8", "24 1/2; 195/8 in", "8/8"])
    def test_a_fraction_with_its_space_forgotten(self, answer):
        outcome = check(HEIGHT, answer, {})
        assert isinstance(outcome, Refused)
        assert "leave a space before the fraction" in outcome.message

    def test_an_offset_and_a_station_can_be_negative(self):
        assert check("readings.track_bar.frame.offset", "-18", {}) == Accepted(["-18 in"])
        assert check("readings.track_bar.frame.station", "-3", {}) == Accepted(["-3 in"])

    @pytest.mark.parametrize("link", ["track_bar", "drag_link"])
    def test_a_bent_bar_takes_no_angle_finder(self, link):
        document = {"readings": {link: {"bent": True}}}
        outcome = check(f"readings.{link}.slope", "8", document)
        assert isinstance(outcome, Refused)
        assert "a bent bar takes no angle finder" in outcome.message

    def test_a_bar_is_said_to_be_bent_after_its_slope(self):
        document = {"readings": {"track_bar": {"slope": ["8 deg"]}}}
        assert isinstance(check("readings.track_bar.bent", True, document), Queried)


class TestUnusual:
    @pytest.mark.parametrize("path", QUANTITIES)
    def test_outside_the_profiles_range_is_queried_with_the_range(self, path, profile):
        asked = QUANTITIES[path]
        smallest, largest = profile.ranges[asked.name]
        middle = (smallest + largest) / 2
        unit = {"slope": " rad", "number": ""}.get(asked.kind, " mm")
        too_much = largest + 0.02 * (largest - smallest)
        assert isinstance(check(path, f"{middle}{unit}", {}, profile), Accepted)
        outcome = check(path, f"{too_much}{unit}", {}, profile)
        assert isinstance(outcome, Queried)
        assert "is usual for this profile" in outcome.message

    def test_what_to_look_at_again(self, profile):
        outcome = check(HEIGHT, "42", {}, profile)
        assert "18 in to 30 in" in outcome.message
        assert "tape upright from the floor" in outcome.message

    def test_millimetres_typed_as_inches_and_the_other_way_round(self, profile):
        assert "Was it mm?" in check(HEIGHT, "622", {}, profile).message
        document = {"session": {"units": "mm"}}
        assert "Was it in?" in check(HEIGHT, "24 1/2", document, profile).message

    def test_messages_are_in_the_units_of_the_session(self, profile):
        document = {"session": {"units": "mm"}}
        assert "457 mm to 762 mm" in check(HEIGHT, "1000", document, profile).message

    def test_without_a_profile_nothing_is_unusual(self):
        assert check(HEIGHT, "60", {}) == Accepted(["60 in"])


class TestRepeats:
    def test_that_agree(self, profile):
        outcome = check(HEIGHT, "24 1/2; 24 9/16; 24 1/2", {}, profile)
        assert outcome == Accepted(["24 1/2 in", "24 9/16 in", "24 1/2 in"])

    def test_that_scatter_more_than_the_instruments_claim(self, profile):
        outcome = check(HEIGHT, "24 1/2; 25 1/4", {}, profile)
        assert isinstance(outcome, Queried)
        assert outcome.value == ["24 1/2 in", "25 1/4 in"]
        assert "3/4 in apart (24 1/2 in to 25 1/4 in)" in outcome.message

    def test_the_sessions_instruments_count(self, profile):
        coarse = {"instruments": {"sighting": "1 in"}}
        assert isinstance(check(HEIGHT, "24 1/2; 25 1/4", coarse, profile), Accepted)

    def test_of_a_slope(self, profile):
        outcome = check("readings.track_bar.slope", "7; 9.5", {}, profile)
        assert "2.5 deg apart" in outcome.message


EVERY_PATH = [
    *(*QUANTITIES, *INSTRUMENTS, *LENGTHS, *sorted(STATEMENTS)),
    *("vehicle.tag", "vehicle.odometer", "vehicle.description", "session.technician"),
    *("session.profile", "session.units", "session.note", "session.altered", "layout.steering"),
    *("layout.arm", "complaint.reported", "complaint.note", "walk_round.joints.drag_link_axle"),
    *("readings.track_bar.bent", "something.else"),
]

LIKE_A_READING = st.text(st.sampled_from("0123456789 ./-+;'\"inmcdegftpx°"), max_size=30)
UNITS: tuple[LengthUnit, ...] = ("in", "mm")


class TestAnyText:
    @given(
        path=st.sampled_from(EVERY_PATH),
        answer=st.one_of(st.text(max_size=60), LIKE_A_READING, st.lists(st.text(), max_size=3)),
        units=st.sampled_from(UNITS),
    )
    def test_gives_an_outcome_and_never_raises(self, path, answer, units, profile):
        document = built(AS_BUILT | {"session.units": units})
        outcome = check(path, answer, document, profile)
        if not isinstance(outcome, Accepted):
            assert outcome.message
            assert outcome.message.isprintable()

    @given(answer=LIKE_A_READING)
    def test_what_is_accepted_is_accepted_again_as_it_was_kept(self, answer, profile):
        outcome = check(HEIGHT, answer, {}, profile)
        if isinstance(outcome, Accepted):
            assert check(HEIGHT, outcome.value, {}, profile) == outcome
            assert check(HEIGHT, outcome.value, {"session": {"units": "mm"}}, profile) == outcome

    def test_a_draft_spoilt_by_hand_is_only_less_known(self, profile):
        document = {
            "readings": {"track_bar": {"frame": {"height": 5, "offset": ["x"]}, "axle": 7}},
            "instruments": {"tape": []},
            "walk_round": {"joints": 3, "rim_play": {}},
        }
        outcome = check("readings.track_bar.length", "33 1/4", document, profile)
        assert outcome == Accepted(["33 1/4 in"])
        assert check("walk_round.linkage_play", "1/8", document) == Accepted("1/8 in")


def test_a_check_is_done_before_the_finger_is_off_the_key(document, profile):
    # 2 ms is asked for; the middle of many, so that a busy machine does not count
    taken = []
    for path in QUANTITIES:
        start = time.perf_counter()
        check(path, "17 5/8", document, profile)
        taken.append(time.perf_counter() - start)
    assert sorted(taken)[len(taken) // 2] < 0.002
