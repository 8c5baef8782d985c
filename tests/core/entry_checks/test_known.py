from math import atan, hypot

import pytest
from uncertainties import ufloat, umath

from core.entry_checks.known import KnownAnswers, Separation
from core.readings.reading import standard_uncertainty
from core.text.quantity import INCH

from .conftest import built

PIVOTS = ("track_bar.frame", "track_bar.axle")


@pytest.fixture
def known(document, profile):
    return KnownAnswers(document, profile)


class TestSeparation:
    """First pivot less second pivot; x ahead, y to the left, z up (ISO 8855:2011)."""

    def test_a_first_pivot_ahead_to_the_left_and_higher_is_positive(self, known):
        # stations 6 and 5, offsets (to the right) 17 and 50, heights 22 1/2 and 18 1/2
        separation = known.separation(*PIVOTS)
        assert separation.ahead == pytest.approx(1 * INCH)
        assert separation.left == pytest.approx(33 * INCH)
        assert separation.up == pytest.approx(4 * INCH)
        assert separation.slope == pytest.approx(atan(4 / hypot(33, 1)))

    def test_swapped_pivots_have_the_other_sign_and_the_same_distance(self, known):
        there, back = known.separation(*PIVOTS), known.separation(*reversed(PIVOTS))
        assert (back.ahead, back.left, back.up) == (-there.ahead, -there.left, -there.up)
        assert back.slope == -there.slope
        assert back.distance == there.distance

    def test_without_stations_the_distance_is_that_of_the_front_view(
        self, without_stations, profile
    ):
        separation = KnownAnswers(without_stations, profile).separation(*PIVOTS)
        assert separation.ahead is None
        assert separation.run == pytest.approx(33 * INCH)
        assert separation.distance == pytest.approx(hypot(33, 4) * INCH)

    @pytest.mark.parametrize("kind", ["height", "offset"])
    def test_without_a_height_or_an_offset_there_is_none(self, kind, profile):
        known = KnownAnswers(built(without=[f"readings.track_bar.axle.{kind}"]), profile)
        assert known.separation(*PIVOTS) is None

    def test_the_uncertainty_of_a_difference_is_that_of_both_readings(self, known):
        reading = known.reading("track_bar.frame.height")
        u = standard_uncertainty(reading, known.instruments)
        assert known.separation(*PIVOTS).u_up == pytest.approx(hypot(u, u))

    @pytest.mark.parametrize(
        "separation",
        [
            Separation(ahead=30.0, left=-800.0, up=90.0, u_ahead=4.0, u_left=2.0, u_up=3.0),
            Separation(ahead=-200.0, left=500.0, up=-400.0, u_ahead=4.0, u_left=2.0, u_up=3.0),
        ],
        ids=["flat", "steep"],
    )
    def test_uncertainties_are_those_of_the_uncertainties_library(self, separation):
        ahead = ufloat(separation.ahead, separation.u_ahead)
        left = ufloat(separation.left, separation.u_left)
        up = ufloat(separation.up, separation.u_up)
        run = umath.sqrt(ahead**2 + left**2)
        distance, slope = umath.sqrt(run**2 + up**2), umath.atan2(up, run)
        assert separation.distance == pytest.approx(distance.nominal_value)
        assert separation.u_distance == pytest.approx(distance.std_dev)
        assert separation.slope == pytest.approx(slope.nominal_value)
        assert separation.u_slope == pytest.approx(slope.std_dev)

    def test_without_a_run_or_a_distance_the_uncertainty_is_zero(self):
        assert Separation(0.0, 0.0, 90.0, 4.0, 2.0, 3.0).u_slope == 0.0
        assert Separation(None, 0.0, 0.0, 4.0, 2.0, 3.0).u_distance == 0.0


class TestInstruments:
    def test_the_sessions_instruments_come_before_the_profiles(self, profile):
        known = KnownAnswers({"instruments": {"tape": "1 in"}}, profile)
        assert known.instruments.tape == INCH
        assert known.instruments.floor == profile.instruments.floor

    def test_without_a_profile_an_uncertainty_is_zero(self, document):
        known = KnownAnswers(document, None)
        assert known.instruments is None
        assert known.u("track_bar.frame.height") == 0.0


class TestReadings:
    @pytest.mark.parametrize(("layout", "value"), [("knuckle", None), ("inverted-y", 11 * INCH)])
    def test_readings_of_the_tie_rod_count_for_the_inverted_y_alone(self, layout, value, profile):
        changes = {"readings.tie_rod.near.offset": ["11 in"], "layout.steering": layout}
        assert KnownAnswers(built(changes), profile).value("tie_rod.near.offset") == value

    def test_a_reading_spoilt_by_hand_is_unknown(self, profile):
        known = KnownAnswers(built({"readings.steering.arm": 5}), profile)
        assert known.reading("steering.arm") is None

    def test_a_further_answer_leaves_the_known_answers_alone(self, known):
        later = known.with_answer("readings.steering.arm", ["7 in"])
        assert later.value("steering.arm") == pytest.approx(7 * INCH)
        assert known.value("steering.arm") == pytest.approx(6.5 * INCH)
