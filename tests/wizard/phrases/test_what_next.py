"""The next thing to do after a verdict, with its key."""

from core.verdict.verdict import Overall
from tests.geometries import parallel_pair
from tests.plans import verdict_on
from wizard.phrases.what_next import next_after_verdict


def test_a_decided_re_measure_is_offered_the_direct_check():
    decided = verdict_on(parallel_pair(parallel_deg=6.0))
    assert decided.overall == Overall.BUMP_STEER
    assert next_after_verdict(decided, (), "Cross-checks") == ""
    assert next_after_verdict(decided, (), "Cross-checks", follows=True).startswith("D measures")
