"""A move of a plan is changed: which one, and how far it goes."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import Any

from textual.app import App

from core.fix.bench import BY_HAND
from core.fix.plan import Plan, plan_of
from core.text import quantity
from core.text.plain_text import plain
from core.text.quantity import LengthUnit, QuantityError
from core.verdict.verdict import Verdict
from wizard.flow.planning import SAME_RISE
from wizard.phrases.plan_outcomes import outcome_words
from wizard.phrases.work_steps import format_setting, move_words, range_words
from wizard.questions.question import Choice
from wizard.tui.screens.pick import PickScreen
from wizard.tui.screens.prompt import PromptScreen

FARTHEST = 12 * 25.4
"""mm; no pivot is moved further than this."""


def ask_move(
    app: App[Any],
    verdict: Verdict,
    plan: Plan,
    unit: LengthUnit,
    changed: Callable[[Plan], None],
) -> None:
    """Ask for another rise of one of a plan's moves; `changed` is given the plan with it."""

    def chosen(place: str | None) -> None:
        if place is not None:
            app.push_screen(how_far(verdict, plan, int(place), unit), typed)

    def typed(other: Plan | None) -> None:
        if other is not None:
            changed(other)

    if len(plan.moves) == 1:
        chosen("0")
    elif plan.moves:
        app.push_screen(which_move(plan, unit), chosen)


def which_move(plan: Plan, unit: LengthUnit) -> PickScreen:
    """Gives the place of the move to be changed, as text."""
    choices = [Choice(str(index), move_words(move, unit)) for index, move in enumerate(plan.moves)]
    return PickScreen("Which move is to be changed?", "The others stay as they are.", choices, "0")


def how_far(verdict: Verdict, plan: Plan, index: int, unit: LengthUnit) -> PromptScreen[Plan]:
    """Gives the plan with another rise for one of its moves."""
    move = plan.moves[index]

    def judge(text: str) -> tuple[Plan, str]:
        rise = rise_typed(text, unit)
        rises = move.correction.rises
        is_free = move.correction.name == BY_HAND
        if rise and not is_free and not min(rises) - SAME_RISE <= rise <= max(rises) + SAME_RISE:
            raise QuantityError(
                f"this correction goes {range_words(rises, unit)}; the bench moves a pivot anywhere"
            )
        moved = replace(move, rise=rise)
        moves = (*plan.moves[:index], moved, *plan.moves[index + 1 :])
        moves = tuple(one for one in moves if one.rise)
        if not moves and not plan.arms:
            raise QuantityError("then nothing would be moved; Esc leaves it as it was")
        changed = plan_of(verdict, moves, plan.arms)
        return changed, outcome_words(verdict, changed)

    return PromptScreen(
        f"How far, {plain(move.correction.name)}?",
        "Up is plus and down is minus, from where the pivot is now. 0 leaves it where it is.",
        format_setting(move.rise, unit),
        judge,
    )


def rise_typed(text: str, unit: LengthUnit) -> float:
    """A rise, mm. Raises QuantityError."""
    rise = quantity.parse_length(text, unit)
    if abs(rise) > FARTHEST:
        raise QuantityError(
            f"no pivot goes further than {format_setting(FARTHEST, unit)}, up or down"
        )
    return rise
