"""Result of the search in one sentence: plans, or the reason that there is none."""

from collections.abc import Sequence

from core.fix.answers import Answer
from core.fix.plan import Plan
from core.fix.ranking import By
from core.fix.search import SearchResult
from core.verdict.direct_check import DecidedBy
from core.verdict.verdict import Overall, Verdict, decided_by
from wizard.phrases.amounts import count_words, listed
from wizard.phrases.headline import headline_words
from wizard.phrases.next_reading import advice_words
from wizard.phrases.plan_reasons import failing_rules_words
from wizard.phrases.verdict_meaning import HELD_BACK_REASONS as HELD_BACK_BY

NOTHING_TO_DO = "nothing is to be done."
NOT_CLOSING = (
    "! The readings do not fit each other. Find the mistaken reading first: these plans rest on it."
)
NOT_BY_ITS_PIVOTS = (
    "no plan is made. The vehicle does not do what its pivots say, and a plan moves pivots. Find "
    "out why first."
)
NOTHING_OFFERED = "nothing that could move a pivot is switched on, so there is no plan."


BAR = 24
"""Columns of the progress bar."""


def progress_words(share: float) -> str:
    """Progress of the search."""
    done = round(share * BAR)
    return f"… working through the combinations  {'█' * done}{'░' * (BAR - done)}  {share:.0%}"


FIRST = {
    "parts": "fewest parts first",
    "price": "lowest price first, then plans of unknown price",
    "hours": "fewest hours first, then plans of unknown hours",
}
"""Order of the plans."""


def search_result_words(verdict: Verdict, fix: SearchResult, by: By = "parts") -> str:
    """Result of the search, after the headline of the verdict."""
    return f"{headline_words(verdict)}: {_said(verdict, fix, by)}"


def _said(verdict: Verdict, fix: SearchResult, by: By) -> str:
    if verdict.overall != Overall.BUMP_STEER:
        return words_without_search(verdict)
    if decided_by(verdict) == DecidedBy.DIRECT:
        return NOT_BY_ITS_PIVOTS
    if not fix.plans:
        return NOTHING_OFFERED
    true = sum(plan.steers_true for plan in fix.plans)
    beware = "" if verdict.adjustment.closes and not verdict.suspect_groups else f" {NOT_CLOSING}"
    if true:
        plans = "one plan cures it" if true == 1 else f"{count_words(true)} plans cure it"
        return f"{plans}, of {fix.searched:,} combinations; {FIRST[by]}.{beware}"
    return (
        f"none of {fix.searched:,} combinations cures it. {_best_words(fix.plans)} What stops the "
        f"first of them: {failing_rules_words(fix.plans[0])}.{beware}"
    )


def _best_words(plans: Sequence[Plan]) -> str:
    """Kinds of the plans where none cures."""
    kinds = {plan.answer for plan in plans}
    if kinds == {Answer.NO_BETTER}:
        return "None improves it either; the nearest is shown."
    if kinds == {Answer.LIKELY}:
        return "The best are likely to cure it."
    if Answer.LIKELY in kinds:
        return "The best are likely to cure it, the others improve it."
    return "The best improve it."


def words_without_search(verdict: Verdict) -> str:
    """Advice where no plan is searched for."""
    if verdict.overall == Overall.STEERS_TRUE:
        return NOTHING_TO_DO
    if verdict.overall == Overall.HELD_BACK:
        reasons = listed([HELD_BACK_BY.get(path, path) for path in verdict.held_back_by])
        return f"{reasons}. No plan is made until that is put right and it is measured again."
    if verdict.overall == Overall.TOO_CLOSE and verdict.advice is not None:
        return f"no plan is made before it is settled. {advice_words(verdict.advice)}"
    return "no plan is made before it is settled. Take the readings again."
