"""Questions that change a move of a plan: the move, and its rise."""

from collections.abc import Callable
from dataclasses import replace
from typing import Any

from textual.app import App

from core.fix.bench import BY_HAND
from core.fix.plan import Plan, plan_of
from core.profiles.conversions import Conversion
from core.profiles.corrections import Correction
from core.text.plain_text import plain
from core.text.quantity import INCH, LengthUnit, QuantityError, parse_length
from core.verdict.verdict import Verdict
from wizard.flow.planning import SAME_RISE
from wizard.phrases.plan_outcomes import plan_outcome_words
from wizard.phrases.rises import format_setting, rise_range_words
from wizard.phrases.work_steps import move_words
from wizard.questions.question import Choice
from wizard.tui.screens.pick import PickScreen
from wizard.tui.screens.prompt import PromptScreen

FARTHEST = 12 * INCH
"""Largest rise of a pivot, up or down, mm."""


def ask_move(
    app: App[Any],
    verdict: Verdict,
    plan: Plan,
    unit: LengthUnit,
    show_changed: Callable[[Plan | None], None],
) -> None:
    """Ask for another rise of one move of a plan.

    Parameters
    ----------
    app : App
    verdict : Verdict
        On the vehicle as it was measured.
    plan : Plan
    unit : "in" or "mm"
    show_changed : callable
        Takes the changed plan, or None if the plan stays as it is.
    """

    def ask_rise(index: str | None) -> None:
        if index is not None:
            app.push_screen(rise_question(verdict, plan, int(index), unit), show_changed)

    places = changeable_moves(plan)
    if len(places) == 1:
        ask_rise(str(places[0]))
    elif places:
        app.push_screen(move_question(plan, unit), ask_rise)


def changeable_moves(plan: Plan) -> tuple[int, ...]:
    """Indices of the moves that can have another rise: a conversion is made as it is."""
    return tuple(
        index for index, move in enumerate(plan.moves) if isinstance(move.correction, Correction)
    )


def move_question(plan: Plan, unit: LengthUnit) -> PickScreen:
    """Screen whose result is the index of the move to be changed, as text."""
    places = changeable_moves(plan)
    choices = [Choice(str(index), move_words(plan.moves[index], unit)) for index in places]
    ask = "Which move is to be changed?"
    return PickScreen(ask, "The others stay as they are.", choices, str(places[0]))


def rise_question(verdict: Verdict, plan: Plan, index: int, unit: LengthUnit) -> PromptScreen[Plan]:
    """Screen whose result is the plan with another rise of one of its moves."""
    move = plan.moves[index]

    def read_plan(text: str) -> tuple[Plan, str]:
        rise = parse_rise(text, unit)
        assert isinstance(move.correction, Correction)  # no other move is asked for
        rises = move.correction.rises
        is_free = move.correction.name == BY_HAND
        if rise and not is_free and not min(rises) - SAME_RISE <= rise <= max(rises) + SAME_RISE:
            raise QuantityError(
                f"this correction goes {rise_range_words(rises, unit)}; "
                "the bench moves a pivot anywhere"
            )
        changed_move = replace(move, rise=rise)
        moves = (*plan.moves[:index], changed_move, *plan.moves[index + 1 :])
        moves = tuple(
            move for move in moves if move.rise or isinstance(move.correction, Conversion)
        )
        if not moves and not plan.arms:
            raise QuantityError("then nothing would be moved; Esc leaves it as it was")
        changed = plan_of(verdict, moves, plan.arms)
        return changed, plan_outcome_words(verdict, changed)

    return PromptScreen(
        f"How far, {plain(move.correction.name)}?",
        "Up is plus and down is minus, from where the pivot is now. 0 leaves it where it is.",
        format_setting(move.rise, unit),
        read_plan,
    )


def parse_rise(text: str, unit: LengthUnit) -> float:
    """Read a rise from text, mm. Raises QuantityError."""
    rise = parse_length(text, unit)
    if abs(rise) > FARTHEST:
        raise QuantityError(
            f"no pivot goes further than {format_setting(FARTHEST, unit)}, up or down"
        )
    return rise
