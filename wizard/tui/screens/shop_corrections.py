"""Questions about the shop: the corrections it can make, the adjusters of the two bars."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from functools import partial
from itertools import product
from typing import Any

from textual.app import App

from core.profiles.adjuster import KINDS, Adjuster, thread_pitch
from core.profiles.conversions import Change, Conversion
from core.text.plain_text import plain
from core.text.quantity import LengthUnit
from wizard.phrases.bar_lengths import ADJUSTER_NAMES, adjuster_words, thread_words
from wizard.phrases.reading_names import name_of_pivot
from wizard.phrases.rises import rise_range_words
from wizard.questions.question import Choice
from wizard.tui.screens.pick import PickScreen
from wizard.tui.screens.prompt import PromptScreen


def corrections_question(
    corrections: Sequence[Change], possible: Sequence[Change], unit: LengthUnit
) -> PickScreen:
    """Screen whose result is the names of the corrections that the shop can make."""
    choices = [
        Choice(correction.name, plain(correction.name), _range_words(correction, unit))
        for correction in corrections
    ]
    return PickScreen(
        "What can the shop make?",
        "What is not ticked is left out of the search.",
        choices,
        [correction.name for correction in possible],
        several=True,
    )


def _range_words(change: Change, unit: LengthUnit) -> str:
    """Rises on offer, or that several changes are made together."""
    if isinstance(change, Conversion):
        return "several changes together"
    return rise_range_words(change.rises, unit)


def ask_adjuster(
    app: App[Any],
    adjusters: Mapping[str, Adjuster],
    unit: LengthUnit,
    keep: Callable[[str, dict[str, str]], None],
) -> None:
    """Ask for the adjuster of a bar.

    Parameters
    ----------
    app : App
    adjusters : mapping of str to Adjuster
        By link.
    unit : "in" or "mm"
    keep : callable
        Takes the link and the table of its adjuster for the record.
    """

    def ask_thread(link_and_kind: str | None) -> None:
        for link, kind in product(adjusters, KINDS):
            if link_and_kind == f"{link} {kind}":
                question = thread_question(link, replace(adjusters[link], kind=kind), unit)
                app.push_screen(question, partial(keep_thread, link, kind))

    def keep_thread(link: str, kind: str, pitch: str | None) -> None:
        if pitch is not None:
            keep(link, {"kind": kind, "pitch": pitch})

    app.push_screen(adjuster_question(adjusters, unit), ask_thread)


def adjuster_question(adjusters: Mapping[str, Adjuster], unit: LengthUnit) -> PickScreen:
    """Screen whose result is link and kind of an adjuster, such as "track_bar sleeve"."""
    first = next(iter(adjusters))
    choices = [
        Choice(
            f"{link} {kind}",
            f"{name_of_pivot(link)}: {ADJUSTER_NAMES[kind]}",
            _present_thread_words(adjusters[link], kind, unit),
        )
        for link, kind in product(adjusters, KINDS)
    ]
    return PickScreen(
        "How is a bar set in length?",
        "A sleeve with a left- and a right-hand thread moves both ends with one turn; a threaded "
        "end moves one.",
        choices,
        f"{first} {adjusters[first].kind}",
    )


def _present_thread_words(adjuster: Adjuster, kind: str, unit: LengthUnit) -> str:
    return f"as it is, {thread_words(adjuster.pitch, unit)}" if adjuster.kind == kind else ""


def thread_question(link: str, adjuster: Adjuster, unit: LengthUnit) -> PromptScreen[str]:
    """Screen whose result is the pitch of a thread as text with its unit."""

    def read_pitch(text: str) -> tuple[str, str]:
        pitch = thread_pitch(text)
        typed = text.strip()
        with_unit = typed if any(map(str.isalpha, typed)) else f"{typed} mm"
        return with_unit, adjuster_words(Adjuster(adjuster.kind, pitch), unit)

    return PromptScreen(
        f"What thread has the {name_of_pivot(link)}'s {ADJUSTER_NAMES[adjuster.kind]}?",
        "Turns to the inch, like 16 per in, or millimetres a turn, like 1.5 mm. Count the turns "
        "of bare thread along a tape.",
        thread_words(adjuster.pitch, unit),
        read_pitch,
    )
