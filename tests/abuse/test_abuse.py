"""A small part of the campaign of abuse, in which nothing goes wrong."""

import pytest

from tests.abuse.campaign import CAMPAIGN


@pytest.mark.parametrize("abuse", CAMPAIGN, ids=lambda abuse: abuse.name)
def test_nothing_goes_wrong(abuse, tmp_path):
    tally = abuse.attack(abuse.small, tmp_path)
    assert tally.tried
    assert tally.faults == []
