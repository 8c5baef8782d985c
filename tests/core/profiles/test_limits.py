from dataclasses import replace

import pytest

from core.documents.entries import EntryError
from core.profiles.limits import Limits, refuse_impossible_length_ratio, refuse_impossible_limits
from core.text.quantity import parse_angle, parse_length

LARGEST = Limits(
    parallel=parse_angle("45 deg"),
    flat=parse_angle("45 deg"),
    length_ratio=1.0,
    steer=parse_angle("45 deg"),
    toe_change=parse_angle("45 deg"),
    working_bump=parse_length("24 in"),
    working_droop=parse_length("24 in"),
)


def test_a_length_ratio_above_1_is_refused():
    refuse_impossible_length_ratio(1.0)
    with pytest.raises(EntryError, match=r"^\[limits\] length_ratio: should be at most 1"):
        refuse_impossible_length_ratio(1.001)


@pytest.mark.parametrize(
    ("key", "place"),
    [
        ("parallel", "[limits] parallel: should be at most 45 deg"),
        ("flat", "[limits] flat: should be at most 45 deg"),
        ("length_ratio", "[limits] length_ratio: should be at most 1"),
        ("steer", "[limits] steer: should be at most 45 deg"),
        ("toe_change", "[limits] toe_change: should be at most 45 deg"),
        ("working_bump", "[limits.working_travel] bump: should be at most 24 in"),
        ("working_droop", "[limits.working_travel] droop: should be at most 24 in"),
    ],
)
def test_a_limit_that_every_axle_keeps_is_refused(key, place):
    refuse_impossible_limits(LARGEST)
    beyond = replace(LARGEST, **{key: 1.01 * getattr(LARGEST, key)})
    with pytest.raises(EntryError) as refused:
        refuse_impossible_limits(beyond)
    assert str(refused.value).startswith(place)
