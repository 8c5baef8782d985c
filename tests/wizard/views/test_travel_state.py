"""Where the axle is while its travel is looked at."""

import pytest

from wizard.views.travel_state import LARGEST_ROLL, PERIOD, TravelState

RIDE = TravelState(droop=120.0, bump=100.0)


def test_it_stays_within_the_travel():
    assert RIDE.at_heave(500.0).heave == 100.0
    assert RIDE.at_heave(-500.0).heave == -120.0
    assert RIDE.at_roll(1.0).roll == LARGEST_ROLL


@pytest.mark.parametrize("start", [-120.0, -30.0, 0.0, 100.0])
def test_play_begins_where_it_stands_and_comes_back_after_a_round(start):
    ride = RIDE.at_heave(start).playing("heave")
    assert ride.heave == start
    assert ride.after(0.0).heave == pytest.approx(start)
    assert ride.after(PERIOD).heave == pytest.approx(start)


def test_play_reaches_both_ends_and_nothing_beyond():
    ride, heaves = RIDE.playing("heave"), []
    for _ in range(500):
        ride = ride.after(PERIOD / 500)
        heaves.append(ride.heave)
    assert max(heaves) == pytest.approx(100.0, abs=0.05)
    assert min(heaves) == pytest.approx(-120.0, abs=0.05)


def test_playing_the_roll_leaves_the_heave():
    ride = RIDE.at_heave(40.0).playing("roll").after(PERIOD / 4)
    assert ride.heave == 40.0
    assert ride.roll == pytest.approx(LARGEST_ROLL)


def test_a_step_and_a_reset_stop_the_play():
    playing = RIDE.playing("heave")
    assert playing.at_heave(0.0).plays == ""
    assert playing.at_roll(0.0).plays == ""
    assert playing.stopped().plays == ""
    assert playing.reset() == RIDE
    assert RIDE.after(1.0) == RIDE
