"""Kinds of answers to a search, and the marks that tell its plans apart."""

from collections.abc import Sequence
from enum import StrEnum
from typing import TYPE_CHECKING

from core.statistics.conformity import SURE

if TYPE_CHECKING:  # a plan knows its answer
    from core.fix.plan import Plan

LIKELY_FROM = 0.5
"""Probability of steering true from which a plan is likely to cure."""


class Answer(StrEnum):
    """Promise of a plan."""

    CURES = "cures"
    LIKELY = "likely"
    IMPROVES = "improves, does not cure"
    NO_BETTER = "does not improve"


class Mark(StrEnum):
    """Distinction of a plan among others."""

    LEAST = "least"
    MARGIN = "most margin"
    CHEAPEST = "cheapest"


def answer_to(p_true: float, improves: bool) -> Answer:
    """Answer of a plan by its probability of steering true, and by whether it improves at all."""
    if p_true >= SURE:
        return Answer.CURES
    if p_true >= LIKELY_FROM:
        return Answer.LIKELY
    return Answer.IMPROVES if improves else Answer.NO_BETTER


def marks_of(plans: Sequence["Plan"]) -> tuple[tuple[Mark, ...], ...]:
    """Marks of each plan. A plan that stands alone has none.

    The cheapest plan is marked where at least two prices are known, all in one currency.
    """
    if len(plans) < 2:
        return ((),) * len(plans)
    places = range(len(plans))
    least = min(places, key=lambda place: plans[place].size)
    margin = min(places, key=lambda place: plans[place].after.excess)
    prices = {place: price for place in places if (price := plans[place].cost.price)}
    cheapest = None
    if len(prices) > 1 and len({price.currency for price in prices.values()}) == 1:
        cheapest = min(prices, key=lambda place: prices[place].amount)
    marked = ((Mark.LEAST, least), (Mark.MARGIN, margin), (Mark.CHEAPEST, cheapest))
    return tuple(tuple(mark for mark, of_place in marked if of_place == place) for place in places)
