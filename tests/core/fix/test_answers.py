"""Kinds of answers, marks, and the order of plans by price and hours."""

from decimal import Decimal

import pytest

from core.fix.answers import Answer, Mark, answer_to, marks_of
from core.fix.search import search
from core.kinematics.raising import raised
from core.profiles.conversions import Conversion
from core.profiles.corrections import Correction, PivotStep
from core.profiles.part import Part, Price
from tests.geometries import INCH, parallel_pair
from tests.plans import COARSE, done, verdict_on

CROSSED = raised(parallel_pair(), "drag_link.frame", 3 * INCH)


@pytest.fixture(scope="module")
def verdict():
    return verdict_on(CROSSED)


def drop(name, amount, currency="USD", hours=None):
    part = Part(price=Price(Decimal(amount), currency), hours=hours)
    return Correction(name, "drag_link.frame", (-3 * INCH,), part=part)


@pytest.mark.parametrize(
    ("p_true", "improves", "answer"),
    [
        (0.95, True, Answer.CURES),
        (0.949, True, Answer.LIKELY),
        (0.5, True, Answer.LIKELY),
        (0.499, True, Answer.IMPROVES),
        (0.1, False, Answer.NO_BETTER),
    ],
)
def test_an_answer_follows_from_the_probability(p_true, improves, answer):
    assert answer_to(p_true, improves) == answer


def test_with_nothing_that_cures_the_best_three_are_shown(verdict):
    near = [
        Correction(f"{part} of the way", "drag_link.frame", (-3 * INCH * part,))
        for part in (0.05, 0.1, 0.15, 0.2)
    ]
    plans = search(verdict, near).plans
    assert [plan.answer for plan in plans] == [Answer.IMPROVES] * 3
    assert plans[0].after.excess < plans[1].after.excess < plans[2].after.excess
    assert plans[2].after.excess < plans[2].after.excess_before


def test_a_plan_that_makes_it_worse_is_not_offered_beside_one_that_improves(verdict):
    worse = Correction("less drop", "drag_link.frame", (1 * INCH,))
    near = Correction("more drop", "drag_link.frame", (-1 * INCH,), not_with=("less drop",))
    plans = search(verdict, [worse, near]).plans
    assert [done(plan.moves) for plan in plans] == [(("more drop", -25.4),)]
    (nearest,) = search(verdict, [worse]).plans
    assert nearest.answer == Answer.NO_BETTER


def test_plans_come_by_price_or_by_hours(verdict):
    changes = [
        drop("dear", "300", hours=1.0),
        drop("cheap", "20", hours=4.0),
        Correction("unpriced", "drag_link.frame", (-3 * INCH,)),
        drop("foreign", "1", "EUR", hours=2.0),
    ]

    def names(by):
        return [plan.moves[0].correction.name for plan in search(verdict, changes, by=by).plans]

    assert names("parts") == ["dear", "cheap", "unpriced", "foreign"]
    assert names("price") == ["cheap", "dear", "foreign", "unpriced"]
    assert names("hours") == ["dear", "foreign", "cheap", "unpriced"]


def test_two_cheap_parts_can_come_before_one_dear_part(verdict):
    cheap = Part(price=Price(Decimal(5), "USD"))
    changes = [
        drop("dear", "300"),
        Correction("half", "drag_link.frame", (-1.5 * INCH,), part=cheap),
        Correction("other half", "drag_link.frame", (-1.5 * INCH,), part=cheap),
    ]
    first, second = search(verdict, changes, by="price").plans[:2]
    assert [move.correction.name for move in first.moves] == ["half", "other half"]
    assert first.cost.price == Price(Decimal(10), "USD")
    assert [move.correction.name for move in second.moves] == ["dear"]
    assert Mark.CHEAPEST in marks_of([first, second])[0]
    assert Mark.LEAST in marks_of([first, second])[1]


def test_the_cheapest_is_not_marked_across_currencies(verdict):
    plans = search(verdict, [drop("here", "300"), drop("there", "1", "EUR")]).plans
    assert len(plans) == 2
    assert not any(Mark.CHEAPEST in marks for marks in marks_of(plans))


def test_a_plan_that_stands_alone_has_no_mark(verdict):
    assert marks_of(search(verdict, [drop("alone", "1")]).plans) == ((),)


def test_a_correction_comes_with_what_it_needs(verdict):
    needy = Correction("needy", "drag_link.frame", (-3 * INCH,), needs=("bracket",))
    bracket = Correction("bracket", "track_bar.frame", (0.25 * INCH,))
    assert search(verdict, [needy]).plans == ()
    plans = search(verdict, [needy, bracket]).plans
    cures = [done(plan.moves) for plan in plans if plan.steers_true]
    assert cures == [(("needy", -76.2), ("bracket", 6.35))]


def test_a_conversion_counts_as_one_part(verdict):
    both = Conversion(
        "both", (PivotStep("drag_link.frame", -2 * INCH), PivotStep("track_bar.frame", INCH))
    )
    (plan,) = search(verdict, [both]).plans
    assert plan.size == (1, pytest.approx(3 * INCH))
    assert plan.moved == ("track_bar.frame", "drag_link.frame")
    result = search(verdict, [both, *COARSE[:3]])
    alone = sum(len(each.rises) for each in COARSE[:3])
    pairs = 4 * 4 + 4 * 4  # less and more drop exclude each other
    assert result.searched == (alone + pairs) + (1 + alone + pairs)
