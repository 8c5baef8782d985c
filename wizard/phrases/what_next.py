"""The next thing to do where a screen has no answer, with its key."""

from collections.abc import Sequence

from core.fix.search import SearchResult
from core.verdict.verdict import READINGS, Overall, Verdict
from wizard.phrases.reading_names import name_of_reading

AS_IT_IS = "Enter goes on with the verdict as it is."


MEASURE_STEER = (
    "D measures the steer while the axle travels, so that the road wheels themselves show the fix. "
    "Enter goes on without."
)


def next_after_verdict(
    verdict: Verdict, advised: Sequence[str], refines_at: str, follows: bool = False
) -> str:
    """The next thing to do about a verdict that is too close to call or held back.

    Where it is decided, a re-measure is offered the direct check; a first session has no next
    thing to do.

    Parameters
    ----------
    verdict : Verdict
    advised : sequence of str
        Names of the readings that the verdict asks for.
    refines_at : str
        Name of the step that offers further readings.
    follows : bool
        True in a re-measure.
    """
    if verdict.overall == Overall.TOO_CLOSE:
        if verdict.advice is not None and verdict.advice.photograph is not None:
            return f"Next: A goes to the photographs, to add one. {AS_IT_IS}"
        if advised:
            return f"Next: A goes to the {name_of_reading(advised[0])}. {AS_IT_IS}"
        return f"Next: F3 and {refines_at} offers further readings. {AS_IT_IS}"
    if verdict.overall != Overall.HELD_BACK:
        return MEASURE_STEER if follows and verdict.direct is None else ""
    if READINGS in verdict.held_back_by:
        ways = []
        if verdict.slips:
            ways.append("M mends the likeliest slip")
        if verdict.suspect_groups:
            suspect = name_of_reading(verdict.suspect_groups[0].readings[0])
            ways.append(f"S goes to the {suspect}")
        return f"Next: {', '.join(ways) or 'F3 goes to any reading'}. {AS_IT_IS}"
    step = "Walk-round" if verdict.held_back_by[0].startswith("walk_round.") else "Stance"
    return f"Next: put it right, then F3 and {step} takes the new answer. {AS_IT_IS}"


def next_after_search(verdict: Verdict, result: SearchResult) -> str:
    """The next thing to do where no plan steers true; empty where one does."""
    if verdict.overall == Overall.STEERS_TRUE:
        return "Enter goes on."
    if verdict.overall != Overall.BUMP_STEER:
        return "Next: Esc goes back to the verdict, which says what to take. Enter goes on."
    if any(plan.steers_true for plan in result.plans):
        return ""
    return "Next: S switches corrections on, B tries other places by hand, F4 takes no plan."
