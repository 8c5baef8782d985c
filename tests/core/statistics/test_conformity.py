"""Decisions at probabilities; test_against_normal checks the probabilities."""

import pytest

from core.statistics.conformity import Conformity, Ruling, combined_decision, decide


@pytest.mark.parametrize(
    ("p", "verdict"),
    [
        (1.0, Conformity.WITHIN),
        (0.95, Conformity.WITHIN),
        (0.9499, Conformity.TOO_CLOSE),
        (0.5, Conformity.TOO_CLOSE),
        (0.0501, Conformity.TOO_CLOSE),
        (0.05, Conformity.OUT),
        (0.0, Conformity.OUT),
    ],
)
def test_a_probability_gives_its_decision(p, verdict):
    assert decide(p) == verdict
    assert Ruling(1.0, 2.0, 0.1, p).verdict == verdict


@pytest.mark.parametrize(
    ("verdicts", "together"),
    [
        ([Conformity.WITHIN, Conformity.WITHIN], Conformity.WITHIN),
        ([Conformity.WITHIN, Conformity.OUT], Conformity.OUT),
        ([Conformity.TOO_CLOSE, Conformity.OUT], Conformity.OUT),
        ([Conformity.WITHIN, Conformity.TOO_CLOSE], Conformity.TOO_CLOSE),
    ],
)
def test_the_worst_of_several_decisions_counts(verdicts, together):
    assert combined_decision(verdicts) == combined_decision(verdicts[::-1]) == together
