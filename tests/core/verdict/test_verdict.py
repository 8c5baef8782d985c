"""The verdict on a session."""

from dataclasses import replace

import numpy as np
import pytest

from core.documents.document import with_value
from core.statistics.conformity import Conformity
from core.verdict.verdict import Overall, evaluate, overall
from tests.geometries import (
    as_read,
    document_of,
    parallel_pair,
    random_linkage,
    session_of,
    true_readings,
)

WITHIN, OUT, TOO_CLOSE = Conformity.WITHIN, Conformity.OUT, Conformity.TOO_CLOSE


def verdict_on(linkage, draws=0, **changed):
    """The verdict on true readings, with changed fields of the session."""
    session = session_of(document_of(linkage, true_readings(linkage)))
    return evaluate(replace(session, **changed), draws)


@pytest.mark.parametrize(
    ("deciding", "expected"),
    [
        ((WITHIN, WITHIN, WITHIN), Overall.STEERS_TRUE),
        ((OUT, WITHIN, WITHIN), Overall.BUMP_STEER),
        ((WITHIN, OUT, TOO_CLOSE), Overall.BUMP_STEER),
        ((WITHIN, WITHIN, OUT), Overall.BUMP_STEER),
        ((WITHIN, TOO_CLOSE, WITHIN), Overall.TOO_CLOSE),
    ],
)
def test_the_overall_verdict_follows_the_three_deciding_rules(deciding, expected):
    assert overall(*deciding) == expected


@pytest.mark.parametrize(
    ("parallel_deg", "expected"),
    [(0.0, Overall.STEERS_TRUE), (4.0, Overall.BUMP_STEER), (1.5, Overall.TOO_CLOSE)],
)
def test_overall_verdict_by_the_parallel_angle(parallel_deg, expected):
    assert verdict_on(parallel_pair(parallel_deg=parallel_deg), 20_000).overall == expected


def test_flat_and_length_advise_but_do_not_decide():
    verdict = verdict_on(parallel_pair(slope_deg=14.0), 20_000)
    assert verdict.rules.flat == OUT
    assert verdict.overall == Overall.STEERS_TRUE
    short = verdict_on(parallel_pair(slope_deg=3.0, run_ratio=0.8), 20_000)
    assert short.rules.length.verdict == OUT
    assert short.overall != Overall.BUMP_STEER


def test_a_verdict_held_back_still_has_the_verdict_on_the_geometry():
    verdict = verdict_on(
        parallel_pair(parallel_deg=4.0), held_back_by=("walk_round.joints.track_bar_axle",)
    )
    assert verdict.overall == Overall.HELD_BACK
    assert verdict.geometry == Overall.BUMP_STEER


def test_without_wheels_there_is_no_roll_centre_and_no_articulation():
    linkage = parallel_pair()
    read = {name: value for name, value in true_readings(linkage).items() if "wheels" not in name}
    verdict = evaluate(session_of(document_of(linkage, read)), 0)
    assert verdict.roll_centre_height is None
    assert verdict.articulation is None
    assert verdict_on(linkage).roll_centre_height is not None


def test_the_toe_alone_can_decide():
    """Parallel and steer are within; the toe of an inverted-Y layout is out."""
    for seed in range(300):
        linkage = random_linkage(
            np.random.default_rng(seed), "inverted-y", same_side=True, parallel=0.0
        )
        verdict = verdict_on(linkage)
        if verdict.toe.ruling.verdict == OUT and verdict.steer.ruling.verdict == WITHIN:
            assert verdict.rules.parallel.verdict == WITHIN
            assert verdict.overall == Overall.BUMP_STEER
            return
    raise AssertionError("no linkage with its toe alone out")


def test_advice_is_given_only_where_the_verdict_is_too_close_to_call():
    assert verdict_on(parallel_pair(parallel_deg=4.0)).advice is None
    verdict = verdict_on(parallel_pair(parallel_deg=1.8))
    assert verdict.geometry == Overall.TOO_CLOSE
    assert verdict.advice is not None


def test_a_mistake_is_named_and_the_verdict_still_given():
    linkage = parallel_pair()
    read = true_readings(linkage)
    read["drag_link.frame.height"] += 50.8
    verdict = evaluate(session_of(document_of(linkage, read)), 0)
    assert verdict.suspect_groups[0].readings[0] == "drag_link.frame.height"
    assert verdict.geometry == Overall.BUMP_STEER


def test_draws_change_the_uncertainty_of_the_peaks_alone():
    rng = np.random.default_rng(1)
    linkage = random_linkage(rng, "inverted-y", same_side=True)
    session = session_of(document_of(linkage, as_read(true_readings(linkage), rng)))
    linear, drawn = evaluate(session, 0), evaluate(session, 2000)
    np.testing.assert_array_equal(linear.sweep.steer, drawn.sweep.steer)
    assert linear.steer.ruling.value == drawn.steer.ruling.value
    assert linear.rules.parallel.p_within == drawn.rules.parallel.p_within


def test_an_event_during_which_a_link_binds_has_no_drift():
    linkage = parallel_pair(slope_deg=0.0, run=300.0)
    document = document_of(linkage, true_readings(linkage))
    document = with_value(document, "events", [{**document["events"][0], "travel": "14 in"}])
    verdict = evaluate(session_of(document), 0)
    assert np.isnan(verdict.courses[0].drift)
    assert verdict.overall == Overall.STEERS_TRUE
