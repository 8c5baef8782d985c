"""Heave and roll of the axle on the screen of its travel."""

import pytest

from wizard.views.travel_state import LARGEST_ROLL, PERIOD, TravelState

AT_REST = TravelState(droop=120.0, bump=100.0)


def test_heave_and_roll_are_limited():
    assert AT_REST.at_heave(500.0).heave == 100.0
    assert AT_REST.at_heave(-500.0).heave == -120.0
    assert AT_REST.at_roll(1.0).roll == LARGEST_ROLL


@pytest.mark.parametrize("start", [-120.0, -30.0, 0.0, 100.0])
def test_play_begins_at_the_present_heave_and_returns_after_a_period(start):
    state = AT_REST.at_heave(start).playing("heave")
    assert state.heave == start
    assert state.after(0.0).heave == pytest.approx(start)
    assert state.after(PERIOD).heave == pytest.approx(start)


def test_play_reaches_both_ends_of_the_travel():
    state, heaves = AT_REST.playing("heave"), []
    for _ in range(500):
        state = state.after(PERIOD / 500)
        heaves.append(state.heave)
    assert max(heaves) == pytest.approx(100.0, abs=0.05)
    assert min(heaves) == pytest.approx(-120.0, abs=0.05)


def test_playing_the_roll_keeps_the_heave():
    state = AT_REST.at_heave(40.0).playing("roll").after(PERIOD / 4)
    assert state.heave == 40.0
    assert state.roll == pytest.approx(LARGEST_ROLL)


def test_a_step_and_a_reset_stop_the_play():
    playing = AT_REST.playing("heave")
    assert playing.at_heave(0.0).plays == ""
    assert playing.at_roll(0.0).plays == ""
    assert playing.stopped().plays == ""
    assert playing.reset() == AT_REST
    assert AT_REST.after(1.0) == AT_REST
