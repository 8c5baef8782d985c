"""The next thing to do after a verdict, with its key."""

from dataclasses import replace

from core.uncertainty.next_photograph import Viewpoint
from core.uncertainty.next_reading import Advice
from core.verdict.verdict import Overall
from tests.geometries import parallel_pair
from tests.plans import verdict_on
from wizard.phrases.what_next import next_after_verdict


def test_a_decided_re_measure_is_offered_the_direct_check():
    decided = verdict_on(parallel_pair(parallel_deg=6.0))
    assert decided.overall == Overall.BUMP_STEER
    assert next_after_verdict(decided, (), "Cross-checks") == ""
    assert next_after_verdict(decided, (), "Cross-checks", follows=True).startswith("D measures")


def test_one_more_photograph_has_its_key():
    verdict = verdict_on(parallel_pair(parallel_deg=1.4))
    view = Viewpoint(beside=1, right=600.0, up=0.0)
    advice = Advice((), 0, photograph=view)
    unsure = replace(verdict, overall=Overall.TOO_CLOSE, advice=advice)
    assert next_after_verdict(unsure, (), "Cross-checks").startswith("Next: A goes to the photog")
