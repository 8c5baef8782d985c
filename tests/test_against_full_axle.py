"""Peak steer and its uncertainty against a mechanical model of the whole axle.

The model (`tests.full_axle`) has arms on rubber bushes, two leaning kingpins that are not quite
mirror images, and a real tie rod. It uses nothing of core. Vehicles are drawn, measured with drawn
errors, and judged from their records alone.
"""

import pytest

from tests.full_axle.coverage import GUIDES, Figures, figures, outcomes
from tests.full_axle.tape import Survey, everything, without_arm_and_stations

pytestmark = pytest.mark.slow

VEHICLES = 300


@pytest.mark.parametrize("guide", GUIDES)
def test_every_reading_taken(guide, capsys):
    result = printed(guide, everything, capsys)
    assert 0.92 <= result.covered <= 0.98
    assert max(result.false_within, result.false_out) < 0.05


@pytest.mark.parametrize("guide", GUIDES)
def test_arm_and_stations_skipped(guide, capsys):
    """Assumed values carry the doubt of the readings that were not taken."""
    result = printed(guide, without_arm_and_stations, capsys)
    assert result.covered >= 0.92
    assert max(result.false_within, result.false_out) < 0.05


def printed(guide, survey: Survey, capsys) -> Figures:
    """Figures of one survey, printed beside the result of the test."""
    result = figures(outcomes(guide, VEHICLES, survey))
    with capsys.disabled():
        print(f"\n{VEHICLES} vehicles on {guide}, {survey.__name__}: {result}")
    return result
