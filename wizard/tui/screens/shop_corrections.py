"""What the shop has: the corrections it can make, and the adjusters of the two bars."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from functools import partial
from itertools import product
from typing import Any

from textual.app import App

from core.profiles.adjuster import KINDS, Adjuster, thread_pitch
from core.profiles.corrections import Correction
from core.readings.survey import LINKS
from core.text.plain_text import plain
from core.text.quantity import LengthUnit
from wizard.phrases.reading_names import name_of_pivot
from wizard.phrases.work_steps import ADJUSTER_NAMES as KINDS_CALLED
from wizard.phrases.work_steps import adjuster_words, thread_words, rise_range_words
from wizard.questions.question import Choice
from wizard.tui.screens.pick import PickScreen
from wizard.tui.screens.prompt import PromptScreen


def what_it_has(
    corrections: Sequence[Correction], on: Sequence[Correction], unit: LengthUnit
) -> PickScreen:
    """Gives the names of the corrections that are left switched on."""
    choices = [
        Choice(one.name, plain(one.name), rise_range_words(one.rises, unit)) for one in corrections
    ]
    return PickScreen(
        "What can the shop make?",
        "What is not ticked is left out of the search.",
        choices,
        [one.name for one in on],
        several=True,
    )


def ask_adjuster(
    app: App[Any],
    adjusters: Mapping[str, Adjuster],
    unit: LengthUnit,
    said: Callable[[str, dict[str, str]], None],
) -> None:
    """Ask how a bar is set in length; `said` is given its link, and its table for the record."""

    def chosen(link_and_kind: str | None) -> None:
        for link, kind in product(LINKS, KINDS):
            if link_and_kind == f"{link} {kind}":
                asked = which_thread(link, replace(adjusters[link], kind=kind), unit)
                app.push_screen(asked, partial(typed, link, kind))

    def typed(link: str, kind: str, pitch: str | None) -> None:
        if pitch is not None:
            said(link, {"kind": kind, "pitch": pitch})

    app.push_screen(which_adjuster(adjusters, unit), chosen)


def which_adjuster(adjusters: Mapping[str, Adjuster], unit: LengthUnit) -> PickScreen:
    """Gives link and kind of an adjuster, as "track_bar sleeve"."""
    choices = [
        Choice(
            f"{link} {kind}",
            f"{name_of_pivot(link)}: {KINDS_CALLED[kind]}",
            _as_it_is(adjusters[link], kind, unit),
        )
        for link, kind in product(LINKS, KINDS)
    ]
    return PickScreen(
        "How is a bar set in length?",
        "A sleeve with a left- and a right-hand thread moves both ends with one turn; a threaded "
        "end moves one.",
        choices,
        f"{LINKS[0]} {adjusters[LINKS[0]].kind}",
    )


def _as_it_is(adjuster: Adjuster, kind: str, unit: LengthUnit) -> str:
    return f"as it is, {thread_words(adjuster.pitch, unit)}" if adjuster.kind == kind else ""


def which_thread(link: str, adjuster: Adjuster, unit: LengthUnit) -> PromptScreen[str]:
    """Gives the pitch of a thread as text with its unit."""

    def judge(text: str) -> tuple[str, str]:
        pitch = thread_pitch(text)
        typed = text.strip()
        with_unit = typed if any(map(str.isalpha, typed)) else f"{typed} mm"
        return with_unit, adjuster_words(Adjuster(adjuster.kind, pitch), unit)

    return PromptScreen(
        f"What thread has the {name_of_pivot(link)}'s {KINDS_CALLED[adjuster.kind]}?",
        "Turns to the inch, like 16 per in, or millimetres a turn, like 1.5 mm. Count the turns "
        "of bare thread along a tape.",
        thread_words(adjuster.pitch, unit),
        judge,
    )
