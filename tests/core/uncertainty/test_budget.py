import numpy as np
import pytest

from core.adjustment.least_squares import adjust
from core.statistics.conformity import Conformity, magnitude_ruling
from core.uncertainty.budget import budget
from core.uncertainty.measured_linkage import measured_linkage
from core.uncertainty.next_reading import MOST_REPEATS, advice
from core.verdict.rules import parallel_angle, rules_of
from core.verdict.verdict import evaluate
from tests.geometries import as_read, document_of, parallel_pair, session_of, true_readings


def surveyed(linkage, read):
    session = session_of(document_of(linkage, read))
    adjustment = adjust(session.readings, session.instruments, session.layout)
    subject = measured_linkage(session, adjustment)
    gradient = subject.gradient(parallel_angle)[: 3 * len(adjustment.pivots)]
    return session, adjustment, subject, gradient


@pytest.fixture
def heights_and_offsets():
    linkage = parallel_pair(parallel_deg=1.0)
    read = {
        name: value
        for name, value in true_readings(linkage).items()
        if not name.endswith(("station", "length", "slope")) and not name.startswith("brace")
    }
    return linkage, read


def test_shares_add_up_and_come_largest_first(heights_and_offsets):
    _, adjustment, _, gradient = surveyed(*heights_and_offsets)
    shares = budget(adjustment, gradient)
    assert sum(share.share for share in shares) == pytest.approx(1.0)
    assert [share.share for share in shares] == sorted((s.share for s in shares), reverse=True)
    # Slopes hang on heights; offsets count with the square of the slope.
    assert all(share.reading.endswith("height") for share in shares[:4])


def test_a_share_is_what_the_variance_would_lose_without_that_doubt(heights_and_offsets):
    _, adjustment, subject, gradient = surveyed(*heights_and_offsets)
    whole = subject.standard_uncertainty(subject.gradient(parallel_angle)) ** 2
    for share in budget(adjustment, gradient):
        i = [item.reading.name for item in adjustment.items].index(share.reading)
        part = (gradient @ adjustment.sensitivity[:, i] * adjustment.items[i].u) ** 2
        assert share.share == pytest.approx(part / whole)


def test_a_reading_taken_more_often_weighs_less(heights_and_offsets):
    linkage, read = heights_and_offsets
    often = {**read, "track_bar.frame.height": [read["track_bar.frame.height"]] * 4}
    shares = []
    for each in (read, often):
        _, adjustment, _, gradient = surveyed(linkage, each)
        by_name = {share.reading: share.share for share in budget(adjustment, gradient)}
        shares.append(by_name["track_bar.frame.height"] / by_name["track_bar.axle.height"])
    assert shares[1] == pytest.approx(shares[0] / 4)


@pytest.mark.parametrize("parallel_deg", [1.2, 1.25, 1.8, 1.85])
def test_taking_the_advice_settles_it_and_less_would_not(parallel_deg):
    """The repeats advised are entered, at the values that were read."""
    linkage = parallel_pair(parallel_deg=parallel_deg)
    read = true_readings(linkage)
    session, adjustment, subject, gradient = surveyed(linkage, read)
    ruling = rules_of(subject, session.limits).parallel
    assert ruling.verdict == Conformity.TOO_CLOSE
    advised = advice(adjustment, [(ruling, gradient)])
    assert advised.readings

    def called(more):
        again = {name: [read[name]] * (1 + more) for name in advised.readings}
        _, _, subject, _ = surveyed(linkage, {**read, **again})
        return rules_of(subject, session.limits).parallel.verdict

    assert called(advised.repeats) != Conformity.TOO_CLOSE
    assert called(advised.repeats - 1) == Conformity.TOO_CLOSE


@pytest.mark.parametrize("parallel_deg", [1.15, 1.2, 1.8, 1.85])
def test_advice_holds_where_readings_that_disagree_are_read_as_before(parallel_deg):
    """A reading taken again with its residual pulls the value towards itself."""
    rng = np.random.default_rng(5)
    linkage = parallel_pair(parallel_deg=parallel_deg)
    settled = 0
    for _ in range(40):
        read = as_read(true_readings(linkage), rng)
        before = evaluate(session_of(document_of(linkage, read)), draws=0)
        if before.advice is None or not before.advice.readings:
            continue
        again = {
            name: [read[name]] * (1 + before.advice.repeats) for name in before.advice.readings
        }
        after = evaluate(session_of(document_of(linkage, {**read, **again})), draws=0)
        assert after.overall != Conformity.TOO_CLOSE
        settled += 1
    assert settled > 3


def test_at_the_limit_no_number_of_repeats_settles_it():
    linkage = parallel_pair(parallel_deg=1.5)
    session, adjustment, subject, gradient = surveyed(linkage, true_readings(linkage))
    advised = advice(adjustment, [(rules_of(subject, session.limits).parallel, gradient)])
    assert (advised.readings, advised.repeats) == ((), 0)


def test_nobody_is_sent_back_more_often_than_bearable():
    rng = np.random.default_rng(3)
    for _ in range(20):
        linkage = parallel_pair(parallel_deg=rng.uniform(0.5, 2.5))
        read = as_read(true_readings(linkage), rng)
        session, adjustment, subject, gradient = surveyed(linkage, read)
        ruling = rules_of(subject, session.limits).parallel
        if ruling.verdict == Conformity.TOO_CLOSE:
            advised = advice(adjustment, [(ruling, gradient)])
            assert len(advised.readings) <= 4
            assert advised.repeats <= MOST_REPEATS


def test_doubt_that_the_readings_do_not_carry_stays():
    """A ruling whose u comes from elsewhere is not settled by taking the readings again."""
    linkage = parallel_pair(parallel_deg=1.2)
    _, adjustment, _, gradient = surveyed(linkage, true_readings(linkage))
    elsewhere = magnitude_ruling(np.radians(1.2), np.radians(2.0), np.radians(1.5))
    assert advice(adjustment, [(elsewhere, gradient)]).readings == ()
