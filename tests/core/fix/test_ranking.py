"""The order of the combinations of a search."""

from decimal import Decimal

import pytest

from core.fix.moves import Move
from core.fix.ranking import Candidate, known_orders
from core.profiles.corrections import Correction
from core.profiles.part import NO_PART, Part, Price


def candidate(count=1, p_true=1.0, rise=10.0, flatness=0.1, excess=0.5, place=0, peak=3):
    """A candidate with `count` equal moves."""
    move = Move(Correction("x", "track_bar.axle", (rise,)), rise)
    return Candidate((move,) * count, p_true, excess, peak, flatness, place)


@pytest.mark.parametrize(
    ("first", "second"),
    [
        pytest.param(
            candidate(count=1, p_true=0.95), candidate(count=2, p_true=1.0), id="fewer corrections"
        ),
        pytest.param(
            candidate(p_true=1.0, rise=90.0),
            candidate(p_true=0.9, rise=10.0),
            id="higher probability",
        ),
        pytest.param(
            candidate(p_true=0.98, rise=10.0),
            candidate(p_true=1.0, rise=20.0),
            id="smaller rise at one step of probability",
        ),
        pytest.param(
            candidate(peak=2, rise=90.0), candidate(peak=3, rise=10.0), id="smaller peak steer"
        ),
        pytest.param(
            candidate(rise=-10.0, flatness=0.3),
            candidate(rise=20.0, flatness=0.1),
            id="smaller rise in magnitude",
        ),
        pytest.param(candidate(flatness=0.1), candidate(flatness=0.2), id="flatter links"),
        pytest.param(
            candidate(p_true=0.0, excess=2.0, rise=50.0),
            candidate(p_true=0.0, excess=3.0),
            id="smaller excess without a chance",
        ),
        pytest.param(candidate(place=1), candidate(place=2), id="earlier set"),
    ],
)
def test_the_first_goes_before_the_second(first, second):
    assert first.order < second.order


def test_excess_does_not_count_where_there_is_a_chance():
    assert candidate(p_true=0.5, excess=0.9).order == candidate(p_true=0.5, excess=0.1).order


def test_a_candidate_within_one_step_of_certainty_is_sure():
    assert candidate(p_true=0.98).is_sure
    assert not candidate(p_true=0.97).is_sure


def test_only_a_smaller_move_could_precede_a_sure_candidate():
    sure, unsure = candidate(p_true=1.0), candidate(p_true=0.9)
    small, large = candidate(p_true=0.0, rise=5.0), candidate(p_true=0.0, rise=15.0)
    assert small.could_precede(sure)
    assert not large.could_precede(sure)
    assert large.could_precede(unsure)


@pytest.mark.parametrize(
    ("parts", "orders"),
    [
        ([], ("parts",)),
        ([NO_PART, NO_PART], ("parts",)),
        ([NO_PART, Part(hours=2.0)], ("parts", "hours")),
        ([Part(price=Price(Decimal(40), "USD")), NO_PART], ("parts", "price")),
        ([Part(price=Price(Decimal(40), "USD"), hours=0.0)], ("parts", "price", "hours")),
    ],
)
def test_plans_are_ordered_only_by_facts_that_some_part_states(parts, orders):
    assert known_orders(parts) == orders
