import pytest

from core.documents.entries import EntryError
from core.profiles.limits import refuse_impossible_length_ratio


def test_a_length_ratio_above_1_is_refused():
    refuse_impossible_length_ratio(1.0)
    with pytest.raises(EntryError, match=r"^\[limits\] length_ratio: should be at most 1"):
        refuse_impossible_length_ratio(1.001)
