"""Words for probabilities; the probabilities are held to scipy.stats in test_against_normal."""

import pytest

from core.statistics.conformity import OUT, TOO_CLOSE, WITHIN, Ruling, decide, worst


@pytest.mark.parametrize(
    ("p", "verdict"),
    [
        (1.0, WITHIN),
        (0.95, WITHIN),
        (0.9499, TOO_CLOSE),
        (0.5, TOO_CLOSE),
        (0.0501, TOO_CLOSE),
        (0.05, OUT),
        (0.0, OUT),
    ],
)
def test_a_probability_decides(p, verdict):
    assert decide(p) == verdict
    assert Ruling(1.0, 2.0, 0.1, p).verdict == verdict


@pytest.mark.parametrize(
    ("verdicts", "together"),
    [
        ([WITHIN, WITHIN], WITHIN),
        ([WITHIN, OUT], OUT),
        ([TOO_CLOSE, OUT], OUT),
        ([WITHIN, TOO_CLOSE], TOO_CLOSE),
    ],
)
def test_the_worst_of_several(verdicts, together):
    assert worst(verdicts) == worst(verdicts[::-1]) == together
