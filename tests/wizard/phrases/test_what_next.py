"""The next thing to do after a verdict, with its key."""

from core.verdict.verdict import Overall, evaluate
from tests.geometries import document_of, parallel_pair, session_of
from wizard.phrases.what_next import next_after_verdict


def test_a_decided_re_measure_is_offered_the_direct_check():
    decided = evaluate(session_of(document_of(parallel_pair(parallel_deg=6.0))))
    assert decided.overall == Overall.BUMP_STEER
    assert next_after_verdict(decided, (), "Cross-checks") == ""
    assert next_after_verdict(decided, (), "Cross-checks", follows=True).startswith("D measures")
